"""A fix that lacks what the other fixes of its tree have for the same part or check: the state in
which it's done, or the good answer in `verify`. Or a torque that its state ends with, such as that
of the lug nuts with the wheels off.

Why: A torque that is left out isn't checked. A part that is changed with the battery connected
bites. A test that passes at the bad answer proves nothing.

Wrong:

    light:
      check: Is the light on?
      results: {yes: belt, no: all-good}
    belt:
      check: What does the belt look like?
      results: {worn: belt-fix, loose: tensioner-fix, oily: seal-fix}
    belt-fix:
      fix: Replace the belt
      cause: The belt is worn
      weight: 1
      verify: [{light: yes}]
    tensioner-fix:
      fix: Replace the tensioner
      cause: The tensioner is weak
      weight: 1
      verify: [{light: no}]
    seal-fix:
      fix: Replace the front seal
      cause: The seal oils the belt
      weight: 1
      verify: [{light: no}]

Right:

    light:
      check: Is the light on?
      results: {yes: belt, no: all-good}
    belt:
      check: What does the belt look like?
      results: {worn: belt-fix, loose: tensioner-fix, oily: seal-fix}
    belt-fix:
      fix: Replace the belt
      cause: The belt is worn
      weight: 1
      verify: [{light: no}]
    tensioner-fix:
      fix: Replace the tensioner
      cause: The tensioner is weak
      weight: 1
      verify: [{light: no}]
    seal-fix:
      fix: Replace the front seal
      cause: The seal oils the belt
      weight: 1
      verify: [{light: no}]

Fix: Write what the others have. Where this fix is another kind of work, say so in its words.
"""

from collections import defaultdict
from collections.abc import Callable, Iterator

from builder.model.conditions import POWER, CountsAs
from builder.model.ends import Fix
from builder.model.finding import Finding, Related, Severity
from builder.model.tree import Step
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="unlike-other-fixes",
    family=Family.UPKEEP,
    severity=Severity.WARNING,
    summary="A fix that lacks what the other fixes like it have.",
)
FEW = 2  # others, for the same part or check
Groups = dict[str, list[tuple[Step, Fix]]]


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every fix that alone lacks something."""
    fixes = [(step, step.body) for step in facts.steps if isinstance(step.body, Fix)]
    if len(fixes) > FEW:
        yield from _torques(facts, fixes)
        yield from _states(facts, fixes)
        yield from _answers(facts, fixes)


def _torques(facts: Facts, fixes: list[tuple[Step, Fix]]) -> Iterator[Finding]:
    """Yield where going back to normal torques something, and the fix doesn't name its torque."""
    conditions = facts.conditions() if any(step.needs for step, _ in fixes) else {}
    names = {str(name) for _, fix in fixes for name in fix.torques}
    for step, fix in fixes:
        undone = [line for need in step.needs if (one := conditions.get(str(need.condition)))
                  for line in one.undo]  # fmt: skip
        for name in sorted(names - {*map(str, fix.torques)}):
            if any(f"torque the {name.replace('-', ' ')}" in line.casefold() for line in undone):
                yield RULE.finding(
                    step.text.at,
                    f"`{step.id}` ends with `torque the {name.replace('-', ' ')}`, and names no "
                    f"torque `{name}`",
                    "the walk and the paper have no figure for it, and it can come loose",
                    f"add `{name}` to `torques`",
                )


def _states(facts: Facts, fixes: list[tuple[Step, Fix]]) -> Iterator[Finding]:
    """Yield where a part is changed with the power on, and with it off in the other fixes."""
    conditions = facts.conditions() if any(step.needs for step, _ in fixes) else {}
    off = {str(one.id) for one in conditions.values()
           if one.group == POWER and one.counts_as is CountsAs.POWER_OFF}  # fmt: skip

    def sold(step: Step, fix: Fix) -> list[str]:
        return [str(one.part) for one in fix.parts if str(one.part) in step.text]

    for part, same in _grouped(fixes, sold).items():
        for name in sorted(off):
            having = [step for step, _ in same if _has(step, name)]
            lacking = [step for step, _ in same if not _has(step, name)]
            if len(lacking) == 1 and len(having) >= FEW:
                yield RULE.finding(
                    lacking[0].text.at,
                    f"`{lacking[0].id}` changes the {part} without `{name}`, which the other "
                    f"{len(having)} fixes of it have",
                    "the walk leaves the power on, and a wrench to ground burns",
                    f"write `{name}` in `when`",
                    _like(having[0]),
                )


def _answers(facts: Facts, fixes: list[tuple[Step, Fix]]) -> Iterator[Finding]:
    """Yield where a check passes at another answer than in all other fixes."""
    passing: dict[str, list[tuple[Step, tuple[str, ...]]]] = defaultdict(list)
    for step, fix in fixes:
        for one in fix.verify:
            if one.passes and one.text in facts.tree.steps:
                passing[str(one.text)].append((step, tuple(map(str, one.passes))))
    for name, every in passing.items():
        for step, words in every:
            others = {other for one, other in every if one is not step}
            if len(every) > FEW and len(others) == 1 and not {*words} & {*(usual := others.pop())}:
                yield RULE.finding(
                    step.text.at,
                    f"`{step.id}` is proved by `{name}: {' or '.join(words)}`, the other "
                    f"{len(every) - 1} fixes by `{name}: {' or '.join(usual)}`",
                    "the repair would pass while the fault is still there",
                    f"write `{{{name}: {', '.join(usual)}}}` in `verify`",
                )


def _grouped(fixes: list[tuple[Step, Fix]], keys: Callable[[Step, Fix], list[str]]) -> Groups:
    groups: Groups = defaultdict(list)
    for step, fix in fixes:
        for key in dict.fromkeys(keys(step, fix)):
            groups[key].append((step, fix))
    return groups


def _has(step: Step, state: str) -> bool:
    return any(need.condition == state for need in step.needs)


def _like(step: Step) -> Related:
    return Related(step.text.at, f"`{step.id}`, which is like it")
