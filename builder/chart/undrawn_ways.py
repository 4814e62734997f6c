"""Ways out that are said in a step's box, because no line is drawn for them.

In: a step, the numbers of all steps, the lines that are drawn. Out: short words such as "still
there: go to 3".
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from builder.chart.hazard_marks import HazardMark
from builder.graph.routes import Exit, ExitKind, exits, list_step
from builder.model.checks import Branch, Check
from builder.model.library import Library
from builder.model.tree import Step, Tree
from builder.plan.numbering import ChartLines

ORDINALS = ("", "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth",
            "ninth", "tenth")  # fmt: skip


@dataclass(frozen=True, slots=True)
class NumberedTree:
    """A tree with its numbers and lines."""

    tree: Tree
    numbers: Mapping[str, int]
    drawn: ChartLines
    library: Library | None
    marks: Mapping[str, HazardMark]


def way_notes(at: NumberedTree, step: Step) -> Iterator[str]:
    """Yield what a step's box says about ways out."""
    if isinstance(step.body, Check) and step.body.several:
        yield "take the first that fits"
    for way in undrawn_ways(at.drawn, step):
        where = _where(at, step, way)
        match way.kind:
            case ExitKind.SPENT if where:
                yield f"{spent_words(step)}: go to {where}"
            case ExitKind.STILL_THERE if where:
                yield f"still there: go to {where}"
            case ExitKind.BACK:
                yield f"then back to {_callers(at, step) or 'the step before'}"
            case _:
                pass


def undrawn_ways(drawn: ChartLines, step: Step) -> Sequence[Exit]:
    """Return the ways out of a step for which no line is drawn."""
    lines = [line.exit for line in drawn[step.id]]
    return [way for way in exits(step) if way not in lines]


def steps_named_in_notes(at: NumberedTree) -> frozenset[str]:
    """Return the steps that the words in a box send the reader to."""
    return frozenset(
        str(way.branch.step)
        for step in at.tree.steps.values()
        for way in undrawn_ways(at.drawn, step)
        if way.branch.step and not way.branch.leaves
    )


def spent_words(step: Step) -> str:
    """Say when a step may not be tried again."""
    if step.each:
        return "list at its end"
    return f"the {ordinal(int(step.at_most or 1) + 1)} time"


def ordinal(number: int) -> str:
    """Write a place in a row as people say it: second, third, 11th."""
    return ORDINALS[number] if number < len(ORDINALS) else nth(number)


def nth(number: int) -> str:
    """Write a place in a row in short: 2nd, 3rd, 11th."""
    ending = {1: "st", 2: "nd", 3: "rd"}.get(number % 10, "th") if number // 10 % 10 != 1 else "th"
    return f"{number}{ending}"


def handoff_title(branch: Branch, library: Library | None) -> str:
    """Name the tree that is handed off to, by its title if it is known."""
    known = library.trees.get(branch.tree or "") if library else None
    return str(known.title) if known else str(branch.tree)


def _where(at: NumberedTree, step: Step, way: Exit) -> str:
    if way.branch.returns:
        return f"the end, {way.branch.text}"
    if way.branch.tree:
        return f"the tree {handoff_title(way.branch, at.library)}"
    target = list_step(at.tree, step) if way.branch.next_item else way.branch.step
    return str(at.numbers.get(target or "", ""))


def _callers(at: NumberedTree, step: Step) -> str:
    found = {
        at.numbers[other.id]
        for other in at.tree.steps.values()
        for way in exits(other)
        if way.branch.step == step.id and not way.branch.tree and way.kind is not ExitKind.BACK
    }
    return " or ".join(map(str, sorted(found)))
