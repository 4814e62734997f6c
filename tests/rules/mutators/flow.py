"""Mutators for the rules of flow: where branches lead, and where they don't.

In: a sound tree. Out: mutants of it.
"""

from collections.abc import Iterator

from builder.graph.routes import ExitKind, exits
from builder.model.checks import Check
from builder.model.tree import Action

from .sound import Mutant, Sound


def branch_to_nowhere(sound: Sound) -> Iterator[Mutant]:
    """Lead a branch to a step that doesn't exist."""
    for _, exit_ in sound.exits:
        if exit_.branch.step and not exit_.branch.tree:
            yield sound.replaced(exit_.at, f"{exit_.branch.text}-zz")


def step_orphaned(sound: Sound) -> Iterator[Mutant]:
    """Lead the only branch to a step to another end: a loop would be the mistake to correct."""
    own = [exit_ for _, exit_ in sound.exits if not exit_.branch.tree]
    entered = {step for _, step in sound.library.callers.get(sound.tree.id, ())}
    ends = [one.id for one in sound.steps if not isinstance(one.body, Action | Check)]
    for target in list(sound.steps)[1:]:
        leading = [exit_ for exit_ in own if exit_.branch.step == target.id]
        if len(leading) == 1 and target.id not in entered:
            other = next(one for one in ends if one != target.id)
            yield sound.replaced(leading[0].at, other, target.id.at.line)


def next_step_removed(sound: Sound) -> Iterator[Mutant]:
    """Remove `then` from an action."""
    for step in sound.steps:
        if isinstance(step.body, Action) and step.body.then:
            yield sound.without(step.body.then.text.at, "then", step.id.at.line)


def one_way(sound: Sound) -> Iterator[Mutant]:
    """Lead every result of a check where its first leads."""
    for _, check in sound.checks:
        first = check.results[0].branch.text
        mutant = sound
        for result in check.results[1:]:
            text = mutant.replaced(result.branch.text.at, first).text
            mutant = Sound(sound.tree, text, sound.library)
        yield Mutant(mutant.text, frozenset(r.branch.text.at.line for r in check.results))


def phrase_repeated(sound: Sound) -> Iterator[Mutant]:
    """Repeat the first phrase of a check in capitals."""
    for _, check in sound.checks:
        first, *others = check.results
        if not first.ranges and not check.figure and others and not others[0].ranges:
            yield sound.replaced(others[0].text.at, f'"{first.text.upper()}"')


def bound_removed(sound: Sound) -> Iterator[Mutant]:
    """Remove the only limit of a step that leads back to itself through one other step."""
    for step in sound.steps:
        if not step.at_most or step.spent:
            continue
        for exit_ in exits(step):
            target = sound.tree.steps.get(exit_.branch.step or "")
            is_usual = exit_.kind not in (ExitKind.SPENT, ExitKind.STILL_THERE)
            if target is None or target.at_most or not is_usual:
                continue
            back = [one for one in exits(target) if one.branch.step == step.id]
            if any(one.kind is not ExitKind.STILL_THERE for one in back):
                around = {one.at.line for one in (*back, *exits(step))}
                yield sound.without(step.at_most.at, "at_most", *around)
                break


def sent_around(sound: Sound) -> Iterator[Mutant]:
    """Send an action to itself, or back to the action that led to it."""
    actions = {
        step.id: step.body.then
        for step in sound.steps
        if isinstance(step.body, Action) and step.body.then and not step.at_most and not step.each
    }
    for name, then in actions.items():
        yield sound.replaced(then.text.at, name)
        after = actions.get(str(then.step)) if not then.tree else None
        if after:
            yield sound.replaced(after.text.at, name, then.text.at.line)


QUESTION = """\
  one-more-{}:
    check: Is part {} good?
    results:
      - result: good
        branch: {}
      - result: worn
        branch: {}"""


def asked_one_by_one(sound: Sound) -> Iterator[Mutant]:
    """Ask about one part after another before the tree begins, as long as a path may be."""
    limit, start = sound.library.shop.longest_path, sound.tree.start
    end = next((step.id for step, _ in sound.fixes), start.id)
    targets = [*(f"one-more-{n}" for n in range(1, limit)), start.id]
    steps = [QUESTION.format(n, n, target, end) for n, target in enumerate(targets)]
    text = "\n".join(steps)
    yield sound.inserted(start.id.at.line - 1, text, text.count("\n") + 1)
