"""The results of a check, each in the form that its check asks for.

In: a check's map that has passed the schema. Out: its readings, figure and results, and a finding
for every result that does not fit: a phrase where a range is wanted, a range for a reading that the
check does not have.
"""

import re
from collections.abc import Iterable, Mapping
from decimal import Decimal
from difflib import get_close_matches

from builder.model.figures import COMPARISONS, FigureKind
from builder.model.finding import Finding
from builder.model.ranges import INFINITY, OVER, Range, between
from builder.model.text import NOWHERE, Text
from builder.model.tree import Branch, Check, Computed, Figure, Reading, Result
from builder.reader.nodes import EMPTY, Map, Node
from builder.reader.range_words import parse_range
from builder.reader.source import mistake
from builder.reader.values import (
    branch,
    map_,
    maps,
    named_texts,
    number,
    text,
    texts,
    the_text,
)

DECIMAL_COMMA = re.compile(r"\d,\d")
WHY = "whoever stands at the vehicle cannot tell whether the result is theirs"


def check_from(step: Map, notes: list[Finding]) -> Check:
    """Build a check; its mistakes are added to the notes."""
    readings = _readings(step, notes)
    computed = tuple(
        Computed(key, value)
        for key, value in (map_(step, "computed") or EMPTY).items()
        if isinstance(value, Text)
    )
    figure = _figure(step, notes)
    form = _Form(readings, frozenset(str(one.name) for one in computed), figure)
    results = (_result(node, form, notes) for node in maps(step, "results"))
    return Check(
        results=tuple(result for result in results if result),
        readings=readings,
        computed=computed,
        figure=figure,
        several=text(step, "several") is not None,
        could_not=branch(step, "could_not"),
    )


class _Form:
    """What the results of one check look like."""

    def __init__(
        self, readings: tuple[Reading, ...], computed: frozenset[str], figure: Figure | None
    ) -> None:
        self.readings: Mapping[str, Reading] = {reading.name: reading for reading in readings}
        self.names = {*self.readings, *computed}
        self.figure = figure
        self.single = self.readings.get("")


def _readings(step: Map, notes: list[Finding]) -> tuple[Reading, ...]:
    one, more = map_(step, "reading"), map_(step, "readings")
    if one and more:
        notes.append(_bad(step.key("readings"), "a check has `reading` or `readings`, not both",
                          "put all of them under `readings`, each with its name"))  # fmt: skip
    if map_(step, "computed") and not more:
        notes.append(_bad(step.key("computed"), "`computed` has no `readings` to work with",
                          "name the readings under `readings`"))  # fmt: skip
    if one:
        return (_reading("", one),)
    named = more or EMPTY
    return tuple(
        _reading(str(name), value) for name, value in named.items() if isinstance(value, Map)
    )


def _reading(name: str, node: Map) -> Reading:
    one_of = texts(node, "one_of")
    top = text(node, "to")
    low: Decimal = number(node, "from") or Decimal(0)
    high: Decimal = Decimal(len(one_of) - 1) if one_of else Decimal(0)
    if top is not None:
        high = INFINITY if top == "OL" else number(node, "to") or Decimal(0)
    return Reading(
        at=node.at,
        name=name,
        unit=text(node, "unit") or Text("", NOWHERE),
        low=low,
        high=high,
        resolution=Decimal(1) if one_of else number(node, "resolution") or None,  # type: ignore[arg-type]
        origin=text(node, "origin"),
        one_of=one_of,
    )


def _figure(step: Map, notes: list[Finding]) -> Figure | None:
    node = map_(step, "figure")
    if node is None:
        return None
    for other in ("reading", "readings", "computed"):
        if map_(step, other):
            notes.append(_bad(step.key("figure"), f"a check has `figure` or `{other}`, not both",
                              "what is held against a figure of the maker is one reading of its"
                              " own: delete one of the two, or make two checks"))  # fmt: skip
            return None
    return Figure(
        at=node.at,
        look_up=the_text(node, "look_up"),
        unit=the_text(node, "unit"),
        kind=FigureKind(str(text(node, "kind"))),
        origin=text(node, "origin"),
    )


def _result(node: Map, form: _Form, notes: list[Finding]) -> Result | None:
    value = node[Text("result")]
    leads: Branch | None = branch(node, "branch")
    assert leads is not None  # the schema requires it
    before = len(notes)
    ranges = _ranges(node, value, form, notes)
    if len(notes) > before:
        return None
    return Result(
        at=node.at,
        said=_said(node, value),
        branch=leads,
        ranges=ranges,
        otherwise=value == "otherwise" and not form.single and bool(form.readings),
        means=text(node, "means"),
        done=text(node, "done") is not None,
        with_=named_texts(node, "with"),
        weight=number(node, "weight"),
        chance=number(node, "chance"),
    )


def _said(node: Map, value: Node) -> Text:
    if isinstance(value, Text):
        return value
    if not isinstance(value, Map):
        return node.key("result")
    words = ", ".join(f"{name}: {said}" for name, said in value.items())
    return Text(words, node.key("result").at)


def _ranges(node: Map, value: Node, form: _Form, notes: list[Finding]) -> dict[str, Range]:
    if form.single:
        return _one_range(node, value, form.single, notes)
    if form.names:
        return _many_ranges(node, value, form, notes)
    if not isinstance(value, Text):
        notes.append(_bad(node.key("result"), "a range for each reading, but the check has none",
                          "name the readings under `readings`, or write a phrase"))  # fmt: skip
    elif form.figure and value not in COMPARISONS[form.figure.kind]:
        listed = ", ".join(f"`{words}`" for words in COMPARISONS[form.figure.kind])
        notes.append(_bad(value, f"`{value}` does not compare with the figure",
                          f"write one of {listed}"))  # fmt: skip
    return {}


def _one_range(node: Map, value: Node, reading: Reading, notes: list[Finding]) -> dict[str, Range]:
    if not isinstance(value, Text):
        notes.append(_bad(node.key("result"), "the check has one reading without a name",
                          "write the range alone, for example `below 13.2`"))  # fmt: skip
        return {}
    found = _range(value, reading, notes)
    return {"": found} if found else {}


def _many_ranges(node: Map, value: Node, form: _Form, notes: list[Finding]) -> dict[str, Range]:
    if value == "otherwise":
        return {}
    if not isinstance(value, Map):
        message = "the check has several readings, and this names none of them"
        notes.append(_bad(_said(node, value), message,
                          f"write `{{{_first(form.names)}: at most 0.5}}`"))  # fmt: skip
        return {}
    ranges: dict[str, Range] = {}
    for name, words in value.items():
        if name not in form.names:
            notes.append(_bad(name, f"the check has no reading `{name}`", _near(name, form.names)))
        elif isinstance(words, Text):
            found = _range(words, form.readings.get(str(name)), notes)
            if found:
                ranges[str(name)] = found
    return ranges


def _range(words: Text, reading: Reading | None, notes: list[Finding]) -> Range | None:
    if reading and reading.one_of:
        if words in reading.one_of:
            place = Decimal(reading.one_of.index(words))
            return between(place, place)
        notes.append(_bad(words, f"`{words}` is not one of the phrases of this reading",
                          _near(words, map(str, reading.one_of))))  # fmt: skip
        return None
    found = parse_range(words)
    if isinstance(found, str):
        hint = found
        if DECIMAL_COMMA.search(words):
            notes.append(_bad(words, f"`{words}` has a decimal comma", hint))
            return None
        if words == "otherwise":
            hint = "write the range that is left: one reading has no `otherwise`"
        notes.append(_bad(words, f"`{words}` is not a range of the reading", hint))
        return None
    if found == OVER and reading and not reading.to_over:
        notes.append(_bad(words, "`OL` is no reading of this check",
                          "write `to: OL` in the reading if it may be over its range"))  # fmt: skip
        return None
    return found


def _first(names: Iterable[str]) -> str:
    return min(names)


def _near(word: str, names: Iterable[str]) -> str:
    known = sorted(names)
    near = get_close_matches(word, known, n=1, cutoff=0.6)
    listed = ", ".join(f"`{name}`" for name in known)
    return f"did you mean `{near[0]}`?" if near else f"it has {listed}"


def _bad(at: Text, message: str, hint: str) -> Finding:
    return mistake("bad-value", at.at.file, message, WHY, hint, at.at)
