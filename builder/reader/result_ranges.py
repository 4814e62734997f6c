"""The ranges of a result, each in the form that its check needs.

In: the map of a result, and the `ResultForm` of its check. Out: a range or a comparison for each
reading, and a finding for what doesn't fit: a phrase in place of a range, a range for a reading
that the check doesn't have.
"""

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from decimal import Decimal
from difflib import get_close_matches

from builder.model.checks import Figure, Reading
from builder.model.figures import COMPARISONS, SPEC_WORDS
from builder.model.finding import Finding, edit_of, with_edit
from builder.model.ranges import OVER, Range, between
from builder.model.text import Text
from builder.model.typing_slip import edit_of_slip
from builder.reader.nodes import Map, Node
from builder.reader.other_words import ANSWERS, SPEC_RESULTS
from builder.reader.range_words import likely_words, parse_range, unit_after
from builder.reader.reading_forms import misfit

DECIMAL_COMMA = re.compile(r"\d,\d")


@dataclass(frozen=True, slots=True)
class ResultForm:
    """The form that the results of one check must have."""

    readings: Mapping[str, Reading]  # by name
    names: frozenset[str]  # of the readings, and of what is computed from them
    figure: Figure | None
    has_specs: bool  # whether any reading is compared with a spec: few checks have one
    instead: Callable[[], Mapping[str, str]]  # by typed words, those that fit beside the others

    @property
    def single(self) -> Reading | None:
        """The one reading without a name."""
        return self.readings.get("")


def ranges_of(
    node: Map, value: Node, form: ResultForm, findings: list[Finding]
) -> dict[str, Range]:
    """Return the range of each reading; mistakes are added to `findings`."""
    if form.single:
        return _one_range(node, value, form, findings)
    if form.names:
        return _many_ranges(node, value, form, findings)
    if not isinstance(value, Text):
        message = "this has a range for each reading, but the check has no readings"
        findings.append(misfit(node.key("result"), message,
                               "add them under `readings`, or write a phrase"))  # fmt: skip
    elif form.figure and value not in COMPARISONS[form.figure.kind]:
        listed = ", ".join(f"`{words}`" for words in COMPARISONS[form.figure.kind])
        findings.append(misfit(value, f"`{value}` doesn't compare a reading with the spec",
                               f"use one of {listed}"))  # fmt: skip
    elif not form.figure and (right := _answer(value)):
        finding = misfit(
            value, f"`{value}` isn't how an answer is written here", f"write `{right}`"
        )
        findings.append(with_edit(finding, edit_of(value, right)))
    return {}


def _answer(words: Text) -> str | None:
    """Return `yes` or `no` as the format has it, where it is written in another way."""
    folded = words.lower()
    right = folded if folded in ("yes", "no") else ANSWERS.get(folded)
    return right if right != words else None


def _one_range(
    node: Map, value: Node, form: ResultForm, findings: list[Finding]
) -> dict[str, Range]:
    if not isinstance(value, Text):
        message = "the check has one reading, and it has no name"
        findings.append(misfit(node.key("result"), message,
                               "write just the range, such as `below 13.2`"))  # fmt: skip
        return {}
    span = _range(value, form.single, findings, form.instead)
    return {"": span} if span else {}


def _many_ranges(
    node: Map, value: Node, form: ResultForm, findings: list[Finding]
) -> dict[str, Range]:
    if value == "otherwise":
        return {}
    if not isinstance(value, Map):
        message = "the check has several readings, and this result names none"
        findings.append(misfit(result_text(node, value), message,
                               f"write `{{{min(form.names)}: at most 0.5}}`"))  # fmt: skip
        return {}
    ranges: dict[str, Range] = {}
    for name, words in value.items():
        if name not in form.names:
            finding = misfit(name, f"the check has no reading `{name}`", _near(name, form.names))
            findings.append(with_edit(finding, edit_of_slip(name, form.names - {*value})))
        elif isinstance(words, Text):
            span = _range(words, form.readings.get(str(name)), findings)
            if span:
                ranges[str(name)] = span
    return ranges


def compares_of(value: Node, form: ResultForm) -> dict[str, Text]:
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
    words: Text,
    reading: Reading | None,
    findings: list[Finding],
    fitting: Callable[[], Mapping[str, str]] = dict,
) -> Range | None:
    if reading and reading.spec:
        if words not in SPEC_WORDS:
            listed = ", ".join(f"`{word}`" for word in SPEC_WORDS)
            likely = SPEC_RESULTS.get(words.lower())
            hint = f"write `{likely}`" if likely else f"use one of {listed}"
            findings.append(
                misfit(words, f"`{words}` doesn't compare a reading with its spec", hint)
            )
        return None
    if reading and reading.one_of:
        if words in reading.one_of:
            place = Decimal(reading.one_of.index(words))
            return between(place, place)
        finding = misfit(words, f"`{words}` isn't a phrase of this reading",
                         _near(words, map(str, reading.one_of)))  # fmt: skip
        findings.append(with_edit(finding, edit_of_slip(words, reading.one_of)))
        return None
    span = parse_range(words)
    if isinstance(span, str):
        instead = fitting().get(str(words))
        right = instead or likely_words(words)
        is_sure = right and unit_after(words) in ("", reading and reading.unit)
        edit = edit_of(words, right) if right and is_sure else None
        findings.append(with_edit(_no_range(words, span, instead), edit))
        return None
    if span == OVER and reading and not reading.to_over:
        hint = "write `to: OL` in the reading if the meter can show it"
        findings.append(misfit(words, "this check can't read `OL`", hint))
        return None
    return span


def _no_range(words: Text, likely: str, instead: str | None) -> Finding:
    hint = f"write `{instead}`" if instead else likely
    if DECIMAL_COMMA.search(words):
        return misfit(words, f"`{words}` has a decimal comma", hint)
    if words == "otherwise":
        rest = f", `{instead}`" if instead else ""
        hint = f"write the range that is left{rest}: with one reading there is no `otherwise`"
    return misfit(words, f"`{words}` isn't a range", hint)


def _near(word: str, names: Iterable[str]) -> str:
    known = sorted(names)
    near = get_close_matches(word, known, n=1, cutoff=0.6)
    listed = ", ".join(f"`{name}`" for name in known)
    return f"did you mean `{near[0]}`?" if near else f"use one of {listed}"


def result_text(node: Map, value: Node) -> Text:
    """Return the result as the author reads it: ranges of several readings on one line."""
    if isinstance(value, Text):
        return value
    if not isinstance(value, Map):
        return node.key("result")
    text_ = ", ".join(f"{name}: {words}" for name, words in value.items())
    return Text(text_, node.key("result").at)
