"""What stays in memory of a tree after it was read.

In: a `Tree`. Out: its `TreeSummary`, with the handoffs to other trees; and a `TreeListing` of plain
strings, for rules that go through all trees. Whole trees are read, used and dropped.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from types import MappingProxyType
from typing import NamedTuple

from builder.model.silence import Silence
from builder.model.text import Position, Text
from builder.model.tree import Scope, Signed, Status, Symptom


class Handoff(NamedTuple):
    """A branch to another tree; ten thousand trees have a hundred thousand of them."""

    at: Position
    from_step: str
    tree: str
    step: str | None
    from_tree: str = ""
    # Steps of its tree from which a walk reaches it. Tuples, as sets of this size take 20 times the
    # memory, and a library has thousands.
    reached_from: tuple[str, ...] = ()
    # For each requirement the steps from which a walk reaches it unmet; a `!` marks a step that
    # undoes it.
    without: Mapping[str, tuple[str, ...]] = MappingProxyType({})
    gives: tuple[Text, ...] = ()  # the names of the values that it hands over


class Lookup(NamedTuple):
    """Something that a tree takes from the vehicle's file."""

    kind: str  # role (of a part's pin), number (of a connector's pin), fuse, spec, torque
    of: str  # the part, the connector, the name of the spec or the torque
    what: str = ""  # the role or number of the pin; the load of a spec


class Work(NamedTuple):
    """A check or an action that is done with hands, as it's compared with those like it."""

    words: str  # what it asks, and its lines
    tools: tuple[str, ...]
    hazards: tuple[str, ...]
    puts_back: str  # its `put_back`, `normalized`, or ""
    how_to: str
    at: Position | None = None  # in a summary


class JudgedBy(NamedTuple):
    """What a test is judged by: a spec, or the load on a part, as it's compared with its twins."""

    of: str  # the question and where it's asked, or the procedure and the part
    by: str  # the spec, or the load
    at: Position | None = None  # in a summary


class Labor(NamedTuple):
    """A fix with its hours, or a part with its price, as it's compared with those like it."""

    of: str  # the words of the fix or the name of the part, `normalized`
    low: Decimal  # hours, or money
    high: Decimal
    at: Position | None = None  # in a summary


@dataclass(frozen=True, slots=True)
class TreeSummary:
    """The parts of a tree that stay in memory."""

    id: str
    file: str
    at: Position
    title: Text
    status: Status
    system: Text
    symptom: Symptom
    applies_to: tuple[Scope, ...]
    steps: tuple[str, ...]
    handoffs: tuple[Handoff, ...]
    how_tos: frozenset[str]
    tools: frozenset[str]
    modules: frozenset[str]
    written: Signed | None
    reviewed: Signed | None
    replaced_by: Text | None
    revision: str
    silences: tuple[Silence, ...] = ()
    procedures: frozenset[str] = frozenset()  # that its steps run, or its fixes verify with
    lookups: tuple[Lookup, ...] = ()  # in the vehicle's file, each once
    spec_results: frozenset[tuple[str, str]] = frozenset()  # a spec, and a result of it with a way
    handled: frozenset[tuple[str, str]] = frozenset()  # a procedure, and a result of its check
    asks: tuple[str, ...] = ()  # the names of its questions
    led_to_by_none: tuple[str, ...] = ()  # its steps that no branch in it leads to
    work: tuple[Work, ...] = ()
    labor: tuple[Labor, ...] = ()  # of its fixes
    prices: tuple[Labor, ...] = ()  # of their parts
    minutes: tuple[Labor, ...] = ()  # of its checks and actions
    judged: tuple[JudgedBy, ...] = ()  # its measurements and tests under load


class TreeListing(NamedTuple):
    """The parts of a tree that are compared across all trees.

    It has no positions, as ten thousand trees have half a million of them. A rule that reports
    something takes the position from the summary.
    """

    id: str
    file: str
    status: Status
    steps: tuple[str, ...]
    searchable: bool  # whether it has words, lamps or codes for the search
    words: tuple[str, ...]  # the complaints, as `normalized` has them
    title: str  # likewise
    leads_to: tuple[tuple[str, str], ...]  # another tree, and the step entered or ""
    how_tos: tuple[str, ...]
    procedures: tuple[str, ...]
    replaced_by: str
    reviewed: str  # the date as written, or ""
    silences: bool
    gives: bool  # whether a handoff gives the other tree values
    work: tuple[Work, ...] = ()
    labor: tuple[Labor, ...] = ()
    prices: tuple[Labor, ...] = ()
    minutes: tuple[Labor, ...] = ()
    judged: tuple[JudgedBy, ...] = ()


def listing_of(summary: TreeSummary) -> TreeListing:
    """Return the listing of a summary."""
    symptom = summary.symptom
    return TreeListing(
        id=summary.id,
        file=summary.file,
        status=summary.status,
        steps=tuple(map(str, summary.steps)),
        searchable=bool(symptom.words or symptom.codes or symptom.lamps),
        words=tuple(map(normalized, symptom.words)),
        title=normalized(summary.title),
        leads_to=tuple(
            dict.fromkeys((handoff.tree, str(handoff.step or "")) for handoff in summary.handoffs)
        ),
        how_tos=tuple(sorted(summary.how_tos)),
        procedures=tuple(sorted(summary.procedures)),
        replaced_by=str(summary.replaced_by or ""),
        reviewed=str(summary.reviewed.date) if summary.reviewed else "",
        silences=bool(summary.silences),
        gives=any(handoff.gives for handoff in summary.handoffs),
        work=tuple(one._replace(at=None) for one in summary.work),
        labor=tuple(one._replace(at=None) for one in summary.labor),
        prices=tuple(one._replace(at=None) for one in summary.prices),
        minutes=tuple(one._replace(at=None) for one in summary.minutes),
        judged=tuple(one._replace(at=None) for one in summary.judged),
    )


def normalized(words: str) -> str:
    """Return a complaint without differences in case and spacing."""
    return " ".join(words.casefold().split())
