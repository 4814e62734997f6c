"""A step that differs from the same test in another tree: the same measurement has another spec,
the same part is tested with another load, or only this step lacks the `put_back` that takes its
tool off, or the cautions.

Why: By the limit of another wire a bad one passes, and a small load hides a weak connection. A
clamp that nobody takes off stays on the hose.

Wrong:

    # kb/specs.yml
    intake-level: {text: intake, unit: kPa, from: 0, to: 900, good: at most 200, origin: practice}
    cooler-level: {text: cooler, unit: kPa, from: 0, to: 900, good: at most 400, origin: practice}
    # trees/charging/case.yml
    steps:
      wire:
        check: Read the intake level
        when: [engine-running]
        spec: cooler-level
        tools: [coarse-gauge]
        results: {within spec: all-good, above spec: repair}
    # trees/charging/other.yml
    steps:
      wire:
        check: Read the intake level
        when: [engine-running]
        spec: intake-level
        tools: [coarse-gauge]
        results: {within spec: all-good, above spec: repair}

Right:

    # kb/specs.yml
    intake-level: {text: intake, unit: kPa, from: 0, to: 900, good: at most 200, origin: practice}
    # trees/charging/case.yml
    steps:
      wire:
        check: Read the intake level
        when: [engine-running]
        spec: intake-level
        tools: [coarse-gauge]
        results: {within spec: all-good, above spec: repair}
    # trees/charging/other.yml
    steps:
      wire:
        check: Read the intake level
        when: [engine-running]
        spec: intake-level
        tools: [coarse-gauge]
        results: {within spec: all-good, above spec: repair}

Fix: Write it as the other tree has it. Where both are right, ask in other words what is different.
"""

import re
from collections import Counter, defaultdict
from collections.abc import Iterator
from datetime import date

from builder.model.finding import Finding, Related, Severity
from builder.model.knowledge import Signal
from builder.model.library import Library
from builder.model.summary import JudgedBy, Work
from builder.model.text import Position
from builder.model.tree import Status
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="unlike-twin-elsewhere",
    family=Family.UPKEEP,
    severity=Severity.WARNING,
    summary="A step that differs from the same test in another tree.",
)
FEW = 2  # others whose `put_back` takes the same tool off
WARNS = (Signal.DANGER, Signal.WARNING)
WORDS = re.compile(r"[a-z]+")
_Judged = tuple[str, JudgedBy]  # the tree, and what it has
_Worked = tuple[str, Work]


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every step that differs from its twins."""
    judged: dict[str, list[_Judged]] = defaultdict(list)
    used: dict[str, list[_Worked]] = defaultdict(list)
    for id_, listing in library.listings.items():
        if listing.status is not Status.RETIRED:
            for one in listing.judged:
                judged[one.of].append((id_, one))
            for work in listing.work:
                for tool in work.tools:
                    used[tool].append((id_, work))
    for twins in judged.values():
        yield from _judged_otherwise(library, twins)
    for tool, steps in used.items():
        yield from _left_on(library, tool, steps)
    yield from _without_cautions(library, used)


def _judged_otherwise(library: Library, twins: list[_Judged]) -> Iterator[Finding]:
    """Yield where one of two limits is used less; of two used alike, the one less asked for."""
    by = Counter(one.by for _, one in twins)
    if len(by) != 2 or any("<" in name for name in by):  # blanks of a procedure say nothing
        return
    asked = {*WORDS.findall(twins[0][1].of)}
    usual, rare = sorted(by, key=lambda name: (-by[name], -len(asked & {*WORDS.findall(name)})))
    right = next((tree, one) for tree, one in twins if one.by == usual)
    for tree, one in twins:
        same_vehicles = library.trees[tree].applies_to == library.trees[right[0]].applies_to
        at = _judged_at(library, tree, one)
        if one.by == rare and same_vehicles and at:
            yield RULE.finding(
                at,
                f"`{rare}` here, and `{usual}` for the same test elsewhere",
                "by one of the two a bad part passes, or a good one is sold",
                f"write `{usual}`, or correct the other one",
                *_related(_judged_at(library, *right)),
            )


def _left_on(library: Library, tool: str, steps: list[_Worked]) -> Iterator[Finding]:
    """Yield where only one step with a tool isn't told to take it off."""
    named = WORDS.findall(tool.casefold())[-1:]
    off = [one for one in steps if {*named} & {*WORDS.findall(one[1].puts_back)}]
    lacking = [one for one in steps if not one[1].puts_back]
    if len(lacking) == 1 and len(off) >= FEW and len(off) + 1 == len(steps):
        at = _work_at(library, *lacking[0])
        if at and lacking[0][0] not in {tree for tree, _ in off}:
            yield RULE.finding(
                at,
                f"this uses `{tool}` and has no `put_back`, which all other {len(off)} steps with "
                "it have",
                f"the {tool.replace('-', ' ')} stays where it is, as nobody is told to remove it",
                f"add `put_back: {off[0][1].puts_back.capitalize()}`, or how it's done here",
                *_related(_work_at(library, *off[0])),
            )


def _without_cautions(library: Library, used: dict[str, list[_Worked]]) -> Iterator[Finding]:
    """Yield where a step has no caution, and all others with its tool and how-to warn."""
    same: dict[tuple[str, str], list[_Worked]] = defaultdict(list)
    for tool, steps in used.items():
        for tree, work in steps if len(steps) > 1 else ():
            if work.how_to in library.how_tos:
                same[(tool, work.how_to)].append((tree, work))
    told: set[Position] = set()
    for (tool, how_to), twins in same.items():
        warning = [name for name in map(str, library.how_tos[how_to].hazards)
                   if (hazard := library.hazards.get(name)) and hazard.signal in WARNS]  # fmt: skip
        lacking = [one for one in twins if not one[1].hazards]
        others = [one for one in twins if one not in lacking]
        names = [name for name in warning if all(name in work.hazards for _, work in others)]
        at = _work_at(library, *lacking[0]) if len(lacking) == 1 and others and names else None
        if at and at not in told:
            told.add(at)
            yield RULE.finding(
                at,
                f"this has no `hazards`, and the same work elsewhere, with `{tool}` and the how-to "
                f"`{how_to}`, has `{', '.join(names)}`",
                "here the tech isn't warned of what can hurt them",
                f"add `hazards: [{', '.join(names)}]`, those that can happen here",
                *_related(_work_at(library, *others[0])),
            )


def _judged_at(library: Library, tree: str, one: JudgedBy) -> Position | None:
    return next((o.at for o in library.trees[tree].judged if o._replace(at=None) == one), None)


def _work_at(library: Library, tree: str, work: Work) -> Position | None:
    return next((o.at for o in library.trees[tree].work if o._replace(at=None) == work), None)


def _related(at: Position | None) -> list[Related]:
    return [Related(at, "the other one")] if at else []
