"""The reading order of a graph of steps: sections that run straight down, and what branches off.

In: where each step leads and how often. Out: `Section`s, the one order that numbers, charts and
lists share.

A section follows the heaviest way (by weight, then by the longest path) from step to step. What
branches off is drawn beside it if it ends there (a fix, or a few actions up to one); a branch that
goes on checking starts a section of its own, which follows after this one in the order met. A step
stands in one place only; every other way to it is a connector. Only ends are repeated.
"""

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

LONGEST_CHAIN = 3  # actions and end drawn beside a section; more becomes a section of its own


@dataclass(frozen=True, slots=True)
class Lead:
    """One way from a step to another, and its share of all walks."""

    target: str
    weight: Fraction | float = 0


@dataclass(frozen=True, slots=True)
class Link:
    """A step drawn in place, and by which lead of the step before it."""

    lead: int
    step: str


@dataclass(frozen=True, slots=True)
class Side:
    """What a lead that does not run straight down goes to; without links it is a connector."""

    lead: int
    links: tuple[Link, ...] = ()


@dataclass(frozen=True, slots=True)
class Block:
    """A step of a section, what branches off, and the lead to the next step of the section."""

    step: str
    sides: tuple[Side, ...]
    down: int | None


@dataclass(frozen=True, slots=True)
class Section:
    """Steps straight down from a head."""

    blocks: tuple[Block, ...]


@dataclass(frozen=True, slots=True)
class Steps:
    """A graph to be put in order: the first step, the leads, and the kinds that matter."""

    start: str
    leads: Mapping[str, Sequence[Lead]]
    ends: Collection[str]  # steps that lead nowhere, drawn again wherever they are met
    checks: Collection[str]  # steps that are never drawn beside a section


def outline(steps: Steps) -> tuple[Section, ...]:
    """Put every step in reading order; what cannot be reached follows last, in the order given."""
    lengths = _lengths(steps)
    placed: set[str] = set()
    sections: list[Section] = []
    for start in (steps.start, *steps.leads):
        waiting = [start]
        while waiting:
            head = waiting.pop()
            if head in placed:
                continue
            section, heads = _section(head, steps, lengths, placed)
            sections.append(section)
            waiting += reversed(heads)
    return tuple(sections)


def order(sections: Iterable[Section]) -> Iterator[str]:
    """Yield the steps as they are read: what branches off before what follows."""
    for section in sections:
        for block in section.blocks:
            yield block.step
            for side in block.sides:
                yield from (link.step for link in side.links)


def _section(
    head: str, steps: Steps, lengths: Mapping[str, int], placed: set[str]
) -> tuple[Section, list[str]]:
    spine = list(_spine(head, steps, lengths, placed))
    blocks: list[Block] = []
    heads: list[str] = []
    for step, down in spine:
        sides: list[Side] = []
        for index, lead in enumerate(steps.leads[step]):
            if index == down:
                continue
            side = Side(index, _chain(index, lead.target, steps, placed) or ())
            placed.update(link.step for link in side.links)
            sides.append(side)
            if not side.links and lead.target not in placed:
                heads.append(lead.target)
        blocks.append(Block(step, tuple(sides), down))
    return Section(tuple(blocks)), heads


def _spine(
    head: str, steps: Steps, lengths: Mapping[str, int], placed: set[str]
) -> Iterator[tuple[str, int | None]]:
    step: str | None = head
    while step is not None:
        again = step in placed  # only an end is drawn again, and a section ends with it
        placed.add(step)
        down = None if again else _down(step, steps, lengths, placed)
        yield step, down
        step = None if down is None else steps.leads[step][down].target


def _down(step: str, steps: Steps, lengths: Mapping[str, int], placed: set[str]) -> int | None:
    going_on: list[int] = []
    ending: list[int] = []
    for index, lead in enumerate(steps.leads[step]):
        if _chain(index, lead.target, steps, placed):
            ending.append(index)
        elif lead.target not in placed:
            going_on.append(index)
    leads = steps.leads[step]
    return max(
        going_on or ending,
        key=lambda index: (leads[index].weight, lengths[leads[index].target], -index),
        default=None,
    )


def _chain(index: int, target: str, steps: Steps, placed: set[str]) -> tuple[Link, ...] | None:
    """Return what is drawn beside a section, or None if it goes on checking or stands elsewhere."""
    links: list[Link] = []
    while len(links) < LONGEST_CHAIN:
        if target in steps.ends:
            return (*links, Link(index, target))
        if target in placed or target in steps.checks:
            return None
        links.append(Link(index, target))
        met = placed | {link.step for link in links}
        still_open = [
            (number, lead.target)
            for number, lead in enumerate(steps.leads[target])
            if lead.target in steps.ends or lead.target not in met
        ]
        if not still_open:
            return tuple(links)
        if len(still_open) > 1:
            return None
        index, target = still_open[0]
    return None


def _lengths(steps: Steps) -> dict[str, int]:
    """Count the steps on the longest path from each step, every way back left out."""
    lengths: dict[str, int] = {}
    on_path: set[str] = set()
    for start in (steps.start, *steps.leads):
        stack = [start]
        while stack:
            step = stack[-1]
            targets = [lead.target for lead in steps.leads[step]]
            todo = [t for t in targets if t not in lengths and t not in on_path and t != step]
            if step not in lengths and todo:
                on_path.add(step)
                stack.append(todo[0])
                continue
            stack.pop()
            on_path.discard(step)
            known = [lengths[target] for target in targets if target in lengths]
            lengths.setdefault(step, 1 + max(known, default=0))
    return lengths
