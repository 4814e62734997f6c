"""A check of a walk in one line, for the trade and for a customer.

In: a `MeasuredCheck`. Out: text: what was read with its limit, or a plain statement of what was
seen.
"""

from builder.walk.measured import MeasuredCheck, MeasuredValue
from builder.wording.finding_text import finding_text, finding_label
from builder.wording.sentences import capitalized

OUT = "OUT OF LIMITS"
_SPEC_RESULTS = {
    "below spec": "below its limits",
    "within spec": "within its limits",
    "above spec": "above its limits",
    "none": "nothing there",
}


def check_line(check: MeasuredCheck) -> str:
    """Write a check in one line, as a customer reads it."""
    values = [
        _named(value) + (f" (should be {value.limit})" if value.limit else "")
        for value in check.values
    ]
    told = "as told to us, not measured here" if check.stated else ""
    return _line(check, values, check.means, told)


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
        "close to the limit for this instrument": check.too_close,
        "proved earlier in this job": check.earlier,
    }
    return _line(check, values, check.means, *(note for note, holds in notes.items() if holds))


def _line(check: MeasuredCheck, values: list[str], *notes: str) -> str:
    more = "".join(f" ({note})" for note in notes if note)
    item = f"{capitalized(check.item)}: " if check.item else ""
    return f"{item}{_measured(check, values) if values else _seen(check)}{more}"


def _measured(check: MeasuredCheck, values: list[str]) -> str:
    is_told = any(value.limit for value in check.values)
    result = _SPEC_RESULTS.get(check.result, check.result)
    range_ = f"range {result}" if result[-1:].isdigit() else result
    words = "; ".join([*values, *([] if is_told else [range_])])
    return f"{finding_label(check.asked)}: {words}"


def _seen(check: MeasuredCheck) -> str:
    """State what was seen, in the tech's own words where there are any."""
    if check.seen in check.parts:
        return finding_text(check.asked, check.seen)
    finding = finding_text(check.asked, _SPEC_RESULTS.get(check.result, check.result))
    return f"{finding}: {check.seen}" if check.seen else finding


def _named(value: MeasuredValue) -> str:
    return f"{capitalized(value.name)} {value.text}".strip()
