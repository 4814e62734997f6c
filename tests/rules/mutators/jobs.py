"""Mutators for the rule of closed jobs: a result that was found leads elsewhere.

In: a sound tree. Out: mutants of it.
"""

from collections.abc import Iterator

from .sound import Mutant, Sound


def led_to_another_fix(sound: Sound) -> Iterator[Mutant]:
    """Lead the result that convicted a part to another fix."""
    fixes = [str(step.id) for step, _ in sound.fixes]
    for case in sound.library.cases.values():
        if not case.walked or case.tree != sound.tree.id:
            continue
        last = case.path[-1]
        for step, check in sound.checks:
            for result in check.results:
                if step.id == last.step and result.text == last.result:
                    for fix in fixes:
                        if fix != case.fix:
                            yield sound.replaced(result.branch.text.at, fix, step.text.at.line)
