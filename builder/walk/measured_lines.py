"""A check of a walk in one line, for the trade and for a customer.

In: a `MeasuredCheck`. Out: text: what was read with its limit, or a plain statement of what was
seen.
"""

import re
from collections.abc import Iterator
from dataclasses import replace

from builder.walk.measured import MeasuredCheck, MeasuredValue
from builder.wording.finding_text import finding_label, finding_text
from builder.wording.sentences import capitalized

_OF_CUSTOMER = re.compile(r"^When does it\b|\bthe customer (?!prove)|\bevery week\b")
OUT = "OUT OF LIMITS"
CIRCLE_ONE = "circle one"  # on paper, where nobody said which of several things it was
ONE_OF = "one of these"  # the same where it decides nothing
_SPEC_RESULTS = {
    "below spec": "below its limits",
    "within spec": "within its limits",
    "above spec": "above its limits",
    "none": "nothing there",
}


def check_line(check: MeasuredCheck) -> str:
    """Write a check in one line, as a customer reads it; what was told stands apart from it."""
    values = [
        _named(value) + (f" (should be {value.limit})" if value.limit else "")
        for value in check.values
    ]
    return _line(check, values) + (f"; that means: {check.means}" if check.means else "")


def evidence_line(check: MeasuredCheck) -> str:
    """Write a check for the trade: readings, limits, and a mark where one is out of them."""
    values = [
        _named(value)
        + (f", limit {value.limit}" if value.limit else "")
        + (f" [{OUT}]" if value.is_out else "")
        for value in check.values
    ]
    notes = {
        "stated, not measured": check.stated,
        _told_by(check): check.told and not check.stated,
        "close to the limit for this instrument": check.too_close,
        "proved earlier in this job": check.earlier,
    }
    return _line(check, values, check.means, *(note for note, holds in notes.items() if holds))


def _told_by(check: MeasuredCheck) -> str:
    """Say who tells: of when it happens nobody but the customer does."""
    return "customer states" if _OF_CUSTOMER.search(check.asked) else "told or looked up"


def evidence_lines(check: MeasuredCheck) -> Iterator[str]:
    """Yield the line of a check, what its procedure read, and what decided it."""
    yield evidence_line(check)
    yield from run_lines(check)


def run_lines(check: MeasuredCheck) -> Iterator[str]:
    """Yield what the procedure of a check read, and what decided it.

    What a result means there is a lead for the next check, and no finding of its own.
    """
    for at, inner in enumerate(check.inner, 1):
        if inner.values or at == len(check.inner):
            yield f"By test: {evidence_line(replace(inner, means=''))}"


def _line(check: MeasuredCheck, values: list[str], *notes: str) -> str:
    more = "".join(f" ({note})" for note in notes if note)
    item = f"{capitalized(check.item)}: " if check.item else ""
    noted = "".join(f"; {name}: {text}" for name, text in check.wrote)
    noted += f"; {check.seen}" if check.seen and values else ""
    return f"{item}{_measured(check, values) if values else _seen(check)}{noted}{more}"


def _measured(check: MeasuredCheck, values: list[str]) -> str:
    words = "; ".join(values)
    if not any(value.limit for value in check.values):
        words += _after_values(_SPEC_RESULTS.get(check.result, check.result), check)
    return f"{finding_label(check.asked)}: {words}"


def _after_values(result: str, check: MeasuredCheck) -> str:
    """Write a result behind its readings: a range with the unit, so that none takes it for a limit.

    `1080 A, which is above 300 A`.
    """
    if not result[-1:].isdigit():
        return f"; {result}"
    if len(check.values) > 1:
        return ""  # of several readings the ranges are no limits, and nobody else reads them
    unit = check.values[0].text.partition(" ")[2]
    result = re.sub(r"^(above|below) (\S+) to \S+$", r"\1 \2", result)  # as far as a meter reads
    return f", which is {'in ' if result[0].isdigit() else ''}{result} {unit}".rstrip()


def _seen(check: MeasuredCheck) -> str:
    """State what was seen, in the tech's own words where there are any."""
    if check.seen and check.parts:
        return finding_text(check.asked, check.seen)
    is_of_spec = check.result.endswith(" spec")
    answer = _SPEC_RESULTS[check.result] if is_of_spec else check.result
    finding = finding_text(check.asked, answer)
    if check.seen:
        own = [one for one in check.seen.split(", ") if one.casefold() not in finding.casefold()]
        return f"{finding}: {', '.join(own)}" if own else finding
    which = CIRCLE_ONE if check.asks_which else ONE_OF
    is_open = check.parts and (check.asks_which or not check.told)
    return f"{finding} ({which})" if is_open else finding


def _named(value: MeasuredValue) -> str:
    return f"{capitalized(value.name)} {value.text}".strip()
