"""Something that all other trees have otherwise: a fix with a tenth of its hours, a part with ten
times its price, a step without the caution that every other step with its tool has, or a step that
is the same elsewhere but with a caution or a `put_back` more.

Why: A decimal point that slipped makes an estimate of 14 hours out of 1.4. A caution that got lost
in one tree is one that somebody in the bay doesn't read.

Wrong:

    # trees/charging/case.yml
    steps:
      belt:
        check: Is the belt good?
        results: {yes: all-good, no: belt-fix}
      belt-fix:
        fix: Replace the drive belt
        cause: The belt slips
        weight: 1
        hours: 14
        verify: [the check passes]
    # trees/charging/other.yml
    steps:
      noise:
        check: Does the belt squeal?
        results: {yes: belt-fix, no: all-good}
      belt-fix:
        fix: Replace the drive belt
        cause: The belt is hard
        weight: 1
        hours: 1.4
        verify: [the check passes]

Right:

    # trees/charging/case.yml
    steps:
      belt:
        check: Is the belt good?
        results: {yes: all-good, no: belt-fix}
      belt-fix:
        fix: Replace the drive belt
        cause: The belt slips
        weight: 1
        hours: 1.4
        verify: [the check passes]
    # trees/charging/other.yml
    steps:
      noise:
        check: Does the belt squeal?
        results: {yes: belt-fix, no: all-good}
      belt-fix:
        fix: Replace the drive belt
        cause: The belt is hard
        weight: 1
        hours: 1.4
        verify: [the check passes]

Fix: Correct the figure, or add what is missing. Where it's right, say in other words what is
different here.
"""

from collections import defaultdict
from collections.abc import Iterator
from datetime import date
from decimal import Decimal
from typing import NamedTuple

from builder.graph.work_lines import LINES, work_of
from builder.model.finding import Finding, Related, Severity
from builder.model.knowledge import Signal
from builder.model.library import Library
from builder.model.summary import Labor, Work
from builder.model.text import Position
from builder.model.tree import Status
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="unlike-other-trees",
    family=Family.UPKEEP,
    severity=Severity.WARNING,
    summary="Something that all other trees have otherwise.",
)
UNITS = {"labor": " h", "prices": "", "minutes": " min"}
_Priced = tuple[str, Labor]  # the tree, and its figure
FEW = 2  # figures; of two, the larger one is named
FAR, FAR_FROM_ONE = 5, 8  # times as much or as little; a lost decimal point is 10
ENOUGH = 4  # other steps with a tool
WARNS = (Signal.DANGER, Signal.WARNING)
HOURS, PRICES, MINUTES = "labor", "prices", "minutes"


class _Step(NamedTuple):
    """A step, and the tree that has it; of a procedure with its folder, as `procedures/x`."""

    tree: str
    work: Work


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for everything that is unlike all that is like it."""
    for kind in (HOURS, PRICES, MINUTES):
        yield from _far_off(library, kind)
    by_tool: dict[str, list[_Step]] = defaultdict(list)
    by_words: dict[str, list[_Step]] = defaultdict(list)
    for step in _steps(library):
        by_words[step.work.words].append(step)
        for tool in step.work.tools:
            by_tool[tool].append(step)
    for tool, steps in by_tool.items():
        yield from _without_caution(library, tool, steps)
    for words, steps in by_words.items():
        if LINES in words:  # a question alone may be asked in two ways
            yield from _not_the_same(library, steps)


def _steps(library: Library) -> Iterator[_Step]:
    for id_, listing in library.listings.items():
        if listing.status is not Status.RETIRED:
            yield from (_Step(id_, work) for work in listing.work)
    for procedure in library.procedures.values():
        yield from (_Step(procedure.tree.id, work) for work in work_of(procedure.tree))


def _far_off(library: Library, kind: str) -> Iterator[Finding]:
    same: dict[str, list[_Priced]] = defaultdict(list)
    for id_, listing in library.listings.items():
        for one in getattr(listing, kind) if listing.status is not Status.RETIRED else ():
            same[one.of].append((id_, one))
    for entries in same.values():
        if len(entries) > 1:
            yield from _farthest(library, kind, sorted(entries, key=lambda entry: entry[1].low))


def _farthest(library: Library, kind: str, entries: list[_Priced]) -> Iterator[Finding]:
    """Yield the most and the least of a kind, where one is far from all others."""
    times = FAR if len(entries) > FEW else FAR_FROM_ONE
    (_, least), (tree, most) = entries[0], entries[-1]
    below = entries[-2][1]
    if most.low >= below.high * times and below.high > 0:
        yield from _figures(library, kind, tree, (most, below))
    elif len(entries) > FEW and least.high > 0 and entries[1][1].low >= least.high * times:
        yield from _figures(library, kind, entries[0][0], (least, entries[1][1]))


def _figures(
    library: Library, kind: str, tree: str, pair: tuple[Labor, Labor]
) -> Iterator[Finding]:
    one, other = pair
    for found in getattr(library.trees[tree], kind):
        if found._replace(at=None) == one and found.at:
            what = "for the" if kind == PRICES else "of labor for"
            yield RULE.finding(
                found.at,
                f"{_amount(kind, one)} {what} `{one.of}`: other trees have {_amount(kind, other)}",
                "the estimate and the order of the checks are counted from it",
                f"write `{_plain(other.low)}`, or how much it is: is the decimal point right?",
                *_elsewhere(library, kind, other),
            )


def _plain(number: Decimal) -> str:
    return f"{number.normalize():f}"


def _amount(kind: str, one: Labor) -> str:
    span = _plain(one.low) if one.low == one.high else f"{_plain(one.low)} to {_plain(one.high)}"
    return f"{span}{UNITS[kind]}"


def _elsewhere(library: Library, kind: str, other: Labor) -> Iterator[Related]:
    for id_, listing in library.listings.items():
        if other in getattr(listing, kind):
            same = (one for one in getattr(library.trees[id_], kind)
                    if one._replace(at=None) == other)  # fmt: skip
            yield from (Related(one.at, "the same, elsewhere") for one in same if one.at)
            return


def _without_caution(library: Library, tool: str, steps: list[_Step]) -> Iterator[Finding]:
    if len(steps) <= ENOUGH:
        return
    names = dict.fromkeys(name for step in steps for name in step.work.hazards)
    for name in [one for one in names if _warns(library, one)]:
        lacking = [step for step in steps if name not in step.work.hazards]
        warned = {step.tree for step in steps if name in step.work.hazards}
        if len(lacking) == 1 and len(warned) > 1 and lacking[0].tree not in warned:
            yield from _lacking(
                library, lacking[0], f"uses `{tool}` without `hazards: [{name}]`, which all other "
                f"{len(steps) - 1} steps with it have", f"add `hazards: [{name}]`",
            )  # fmt: skip


def _not_the_same(library: Library, steps: list[_Step]) -> Iterator[Finding]:
    full = max(steps, key=lambda other: len(other.work.hazards))
    putting = next((other for other in steps if other.work.puts_back), None)
    for step in steps if len(steps) > 1 else ():
        missing = [name for name in full.work.hazards if name not in step.work.hazards]
        missing = [name for name in missing if _warns(library, name)]
        if missing and {*step.work.hazards} < {*full.work.hazards}:
            names = f"`hazards: [{', '.join(missing)}]`"
            what = f"is the same as another step, and lacks its {names}"
            yield from _lacking(library, step, what, f"add {names}", full)
        if putting and not step.work.puts_back:
            what = "is the same as another step, and lacks its `put_back`"
            yield from _lacking(library, step, what, "add that `put_back` here", putting)


def _warns(library: Library, name: str) -> bool:
    hazard = library.hazards.get(name)
    return hazard is not None and hazard.signal in WARNS


def _lacking(
    library: Library, step: _Step, what: str, hint: str, like: _Step | None = None
) -> Iterator[Finding]:
    at = _place(library, step)
    other = _place(library, like) if like else None
    if at:
        yield RULE.finding(
            at, f"this {what}", "here the tech isn't told what everywhere else they are", hint,
            *([Related(other, "the other one")] if other else []),
        )  # fmt: skip


def _place(library: Library, step: _Step) -> Position | None:
    if step.tree in library.trees:
        works = library.trees[step.tree].work
        return next((one.at for one in works if one._replace(at=None) == step.work), None)
    return step.work.at
