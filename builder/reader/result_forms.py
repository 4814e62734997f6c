"""The results of a check, each in the form that its check needs.

In: the map of a check that has passed the schema. Out: its readings, figure and results, and a
finding for every result that doesn't fit: a phrase in place of a range, a range for a reading that
the check doesn't have.
"""

import re
from collections.abc import Iterable, Iterator, Mapping
from decimal import Decimal
from difflib import get_close_matches

from builder.model.checks import Check, Computed, Figure, Reading, Result
from builder.model.figures import COMPARISONS, SPEC_WORDS, FigureKind
from builder.model.finding import Finding
from builder.model.ranges import INFINITY, OVER, Range, between
from builder.model.text import NOWHERE, Position, Text
from builder.reader.nodes import EMPTY, Map, Node
from builder.reader.range_neighbors import fitting_words
from builder.reader.range_words import parse_range
from builder.reader.source import mistake
from builder.reader.values import (
    branch,
    map_,
    maps,
    named_texts,
    number,
    returned,
    text,
    texts,
    the_text,
)

DECIMAL_COMMA = re.compile(r"\d,\d")
WHY = "the tech can't tell whether this result matches"


def check_from(step: Map, findings: list[Finding]) -> Check:
    """Build a check; its mistakes are added to `findings`."""
    readings = _readings(step, findings)
    computed = tuple(
        Computed(key, value)
        for key, value in (map_(step, "computed") or EMPTY).items()
        if isinstance(value, Text)
    )
    figure = _figure(step, findings)
    form = _Form(readings, frozenset(str(reading.name) for reading in computed), figure)
    if form.single and not form.single.one_of and not form.single.spec:
        typed = [words for node in maps(step, "results") if (words := text(node, "result"))]
        form.instead = fitting_words([*typed, *(map_(step, "results") or EMPTY)], form.single)
    return Check(
        results=tuple(_results(step, form, findings)),
        readings=readings,
        computed=computed,
        figure=figure,
        several=text(step, "several") is not None,
        cannot_test=branch(step, "cannot_test"),
        by=text(step, "by"),
        with_=named_texts(step, "with"),
    )


def _results(step: Map, form: "_Form", findings: list[Finding]) -> Iterator[Result]:
    """Yield the results, from a list or from a map of branches."""
    for node in maps(step, "results"):
        if result := _result(node, form, findings):
            yield result
    for words, target in (map_(step, "results") or EMPTY).items():
        node = Map({Text("result", words.at): words, Text("branch", target.at): target})
        node.at = words.at
        if result := _result(node, form, findings):
            yield result


class _Form:
    """The form that the results of one check must have."""

    def __init__(
        self, readings: tuple[Reading, ...], computed: frozenset[str], figure: Figure | None
    ) -> None:
        self.readings: Mapping[str, Reading] = {reading.name: reading for reading in readings}
        self.names = {*self.readings, *computed}
        self.figure = figure
        self.single = self.readings.get("")
        self.has_specs = any(reading.spec for reading in readings)
        self.instead: Mapping[str, str] = {}  # by typed words, those that fit beside the others


def _readings(step: Map, findings: list[Finding]) -> tuple[Reading, ...]:
    single, several = map_(step, "reading"), map_(step, "readings")
    if single and several:
        message = "a check takes `reading` or `readings`, not both"
        findings.append(_bad(step.key("readings"), message,
                             "put all of them under `readings`, each with a name"))  # fmt: skip
    if map_(step, "computed") and not several:
        findings.append(_bad(step.key("computed"), "`computed` has no `readings` to calculate from",
                          "put the readings under `readings`, each with a name"))  # fmt: skip
    if spec := text(step, "spec"):
        if single or several:
            other = "reading" if single else "readings"
            findings.append(_bad(step.key("spec"), f"a check takes `spec` or `{other}`, not both",
                                 "put `spec` under the reading it belongs to"))  # fmt: skip
        return (_spec_reading("", spec.at, spec),)
    if single:
        return (_reading("", single),)
    return tuple(
        _reading(str(name), value)
        for name, value in (several or EMPTY).items()
        if isinstance(value, Map)
    )


def _spec_reading(name: str, at: Position, spec: Text) -> Reading:
    """Return a reading of which nothing but its spec is known: its unit and span come later."""
    return Reading(at, name, Text("", NOWHERE), Decimal(0), Decimal(0), spec=spec)


def _reading(name: str, node: Map) -> Reading:
    if spec := text(node, "spec"):
        return _spec_reading(name, node.at, spec)
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


def _figure(step: Map, findings: list[Finding]) -> Figure | None:
    node = map_(step, "figure")
    if node is None:
        return None
    for other in ("reading", "readings", "computed"):
        if map_(step, other):
            message = f"a check takes `figure` or `{other}`, not both"
            findings.append(_bad(step.key("figure"), message,
                                 "delete one of them, or split this into two checks"))  # fmt: skip
            return None
    return Figure(
        at=node.at,
        look_up=the_text(node, "look_up"),
        unit=the_text(node, "unit"),
        kind=FigureKind(str(text(node, "kind"))),
        origin=text(node, "origin"),
    )


def _result(node: Map, form: _Form, findings: list[Finding]) -> Result | None:
    value = node[Text("result")]
    exit_ = branch(node, "branch") or returned(node)
    assert exit_ is not None  # the schema requires one of them
    before = len(findings)
    ranges = _ranges(node, value, form, findings)
    compares = _compares(value, form)
    if len(findings) > before:
        return None
    return Result(
        at=node.at,
        text=_result_text(node, value),
        branch=exit_,
        ranges=ranges,
        compares=compares,
        otherwise=value == "otherwise" and not form.single and bool(form.readings),
        means=text(node, "means"),
        done=text(node, "done") is not None,
        with_=named_texts(node, "with"),
        weight=number(node, "weight"),
        chance=number(node, "chance"),
    )


def _result_text(node: Map, value: Node) -> Text:
    if isinstance(value, Text):
        return value
    if not isinstance(value, Map):
        return node.key("result")
    text_ = ", ".join(f"{name}: {words}" for name, words in value.items())
    return Text(text_, node.key("result").at)


def _ranges(node: Map, value: Node, form: _Form, findings: list[Finding]) -> dict[str, Range]:
    if form.single:
        return _one_range(node, value, form, findings)
    if form.names:
        return _many_ranges(node, value, form, findings)
    if not isinstance(value, Text):
        message = "this has a range for each reading, but the check has no readings"
        findings.append(_bad(node.key("result"), message,
                             "add them under `readings`, or write a phrase"))  # fmt: skip
    elif form.figure and value not in COMPARISONS[form.figure.kind]:
        listed = ", ".join(f"`{words}`" for words in COMPARISONS[form.figure.kind])
        findings.append(_bad(value, f"`{value}` doesn't compare a reading with the spec",
                          f"use one of {listed}"))  # fmt: skip
    return {}


def _one_range(node: Map, value: Node, form: _Form, findings: list[Finding]) -> dict[str, Range]:
    if not isinstance(value, Text):
        findings.append(_bad(node.key("result"), "the check has one reading, and it has no name",
                          "write just the range, such as `below 13.2`"))  # fmt: skip
        return {}
    span = _range(value, form.single, findings, form.instead.get(str(value)))
    return {"": span} if span else {}


def _many_ranges(node: Map, value: Node, form: _Form, findings: list[Finding]) -> dict[str, Range]:
    if value == "otherwise":
        return {}
    if not isinstance(value, Map):
        message = "the check has several readings, and this result names none"
        findings.append(_bad(_result_text(node, value), message,
                          f"write `{{{_first(form.names)}: at most 0.5}}`"))  # fmt: skip
        return {}
    ranges: dict[str, Range] = {}
    for name, words in value.items():
        if name not in form.names:
            findings.append(
                _bad(name, f"the check has no reading `{name}`", _near(name, form.names))
            )
        elif isinstance(words, Text):
            span = _range(words, form.readings.get(str(name)), findings)
            if span:
                ranges[str(name)] = span
    return ranges


def _compares(value: Node, form: _Form) -> dict[str, Text]:
    """Return how readings compare with their spec, by reading."""
    if not form.has_specs:
        return {}
    words = value if isinstance(value, Map) else Map({Text(""): value})
    return {
        str(name): one
        for name, one in words.items()
        if isinstance(one, Text) and name in form.readings and form.readings[str(name)].spec
        and one in SPEC_WORDS
    }  # fmt: skip


def _range(
    words: Text, reading: Reading | None, findings: list[Finding], instead: str | None = None
) -> Range | None:
    if reading and reading.spec:
        if words not in SPEC_WORDS:
            listed = ", ".join(f"`{word}`" for word in SPEC_WORDS)
            findings.append(_bad(words, f"`{words}` doesn't compare a reading with its spec",
                                 f"use one of {listed}"))  # fmt: skip
        return None
    if reading and reading.one_of:
        if words in reading.one_of:
            place = Decimal(reading.one_of.index(words))
            return between(place, place)
        findings.append(_bad(words, f"`{words}` isn't a phrase of this reading",
                          _near(words, map(str, reading.one_of))))  # fmt: skip
        return None
    span = parse_range(words)
    if isinstance(span, str):
        hint = f"write `{instead}`" if instead else span
        if DECIMAL_COMMA.search(words):
            findings.append(_bad(words, f"`{words}` has a decimal comma", hint))
            return None
        if words == "otherwise":
            rest = f"write the range that is left, `{instead}`" if instead else (
                "write the range that is left")  # fmt: skip
            hint = f"{rest}: with one reading there is no `otherwise`"
        findings.append(_bad(words, f"`{words}` isn't a range", hint))
        return None
    if span == OVER and reading and not reading.to_over:
        findings.append(_bad(words, "this check can't read `OL`",
                          "write `to: OL` in the reading if the meter can show it"))  # fmt: skip
        return None
    return span


def _first(names: Iterable[str]) -> str:
    return min(names)


def _near(word: str, names: Iterable[str]) -> str:
    known = sorted(names)
    near = get_close_matches(word, known, n=1, cutoff=0.6)
    listed = ", ".join(f"`{name}`" for name in known)
    return f"did you mean `{near[0]}`?" if near else f"use one of {listed}"


def _bad(at: Text, message: str, hint: str) -> Finding:
    return mistake("bad-value", at.at, message, WHY, hint)
