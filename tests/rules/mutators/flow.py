"""Ways to break the rules of flow: where branches lead, and where they do not.

In: a sound tree. Out: mutants of it.
"""

from collections.abc import Iterator

from builder.graph.routes import ExitKind, exits
from builder.model.tree import Action

from .sound import Mutant, Sound


def branch_to_nowhere(sound: Sound) -> Iterator[Mutant]:
    """Let a branch lead to a step that is not there."""
    for step in sound.steps:
        for way in exits(step):
            if way.branch.step and not way.branch.tree:
                yield sound.replaced(way.at, f"{way.branch.text}-zz")


def node_orphaned(sound: Sound) -> Iterator[Mutant]:
    """Turn the only branch that leads to a step away from it."""
    ways = [(step, way) for step in sound.steps for way in exits(step)]
    entered = {step for _, step in sound.library.callers.get(sound.tree.id, ())}
    for target in list(sound.steps)[1:]:
        leading = [way for _, way in ways if way.branch.step == target.id and not way.branch.tree]
        if len(leading) == 1 and target.id not in entered:
            others = (one for one in sound.tree.steps if one != target.id)
            yield sound.replaced(leading[0].at, next(others), target.id.at.line)


def no_way_on(sound: Sound) -> Iterator[Mutant]:
    """Take `then` out of an action."""
    for step in sound.steps:
        if isinstance(step.body, Action) and step.body.then:
            yield sound.without(step.body.then.text.at, "then", step.id.at.line)


def one_way(sound: Sound) -> Iterator[Mutant]:
    """Let every result of a check lead where its first leads."""
    for _, check in sound.checks:
        first = check.results[0].branch.text
        mutant = sound
        for result in check.results[1:]:
            text = mutant.replaced(result.branch.text.at, first).text
            mutant = Sound(sound.tree, text, sound.library)
        yield Mutant(mutant.text, frozenset(r.branch.text.at.line for r in check.results))


def phrase_repeated(sound: Sound) -> Iterator[Mutant]:
    """Write the first phrase of a check once more, in capitals."""
    for _, check in sound.checks:
        first, *others = check.results
        if not first.ranges and not check.figure and others and not others[0].ranges:
            yield sound.replaced(others[0].said.at, f'"{first.said.upper()}"')


def bound_removed(sound: Sound) -> Iterator[Mutant]:
    """Take the only bound out of a step that leads back to itself through one other step."""
    for step in sound.steps:
        if not step.at_most or step.spent:
            continue
        for way in exits(step):
            there = sound.tree.steps.get(way.branch.step or "")
            if there is None or there.at_most or way.kind in (ExitKind.SPENT, ExitKind.STILL_THERE):
                continue
            back = [one for one in exits(there) if one.branch.step == step.id]
            if any(one.kind is not ExitKind.STILL_THERE for one in back):
                around = {one.at.line for one in (*back, *exits(step))}
                yield sound.without(step.at_most.at, "at_most", *around)
                break


def sent_round(sound: Sound) -> Iterator[Mutant]:
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
    check: Part {} good
    results:
      - result: good
        branch: {}
      - result: worn
        branch: {}"""


def asked_one_by_one(sound: Sound) -> Iterator[Mutant]:
    """Ask part by part, as many as a path may have steps, before the tree begins."""
    most, start = sound.library.shop.longest_path, sound.tree.start
    end = next((step.id for step, _ in sound.fixes), start.id)
    onward = [*(f"one-more-{n}" for n in range(1, most)), start.id]
    steps = [QUESTION.format(n, n, on, end) for n, on in enumerate(onward)]
    text = "\n".join(steps)
    yield sound.inserted(start.id.at.line - 1, text, text.count("\n") + 1)
