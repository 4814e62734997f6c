"""A good range that was written with its unit, which only the spec has.

In: the words, and the unit of the spec. Out: what is wrong, and what to write instead: converted
where the two units are of one kind. Where they aren't, no number is offered: only the vehicle's
papers can tell it.
"""

import re
from decimal import Decimal

from builder.model.ranges import Cut, Range
from builder.reader.range_words import likely_words, parse_range, words_of
from builder.trade.quantities import Quantity, convert_quantity
from builder.trade.units import find_unit, same_kind


def unit_written_out(words: str, unit: str, of_spec: str) -> tuple[str, str]:
    """Return the message and the hint for a range in a unit; `of_spec` is "" if unknown."""
    bare = re.sub(rf"(?<=\d)\s*{re.escape(unit)}(?![a-zA-Z])", "", words.removesuffix("."))
    span = parse_range(likely_words(bare) or bare)
    if not of_spec:
        return (
            f"`{words}` isn't a range",
            f"write it without `{unit}`, in the unit that the spec has in kb/specs.yml",
        )
    message = f"`{words}` isn't in `{of_spec}`, the unit of its spec"
    if find_unit(unit) == find_unit(of_spec):
        message = f"`{words}` has a unit, and the spec has it already"
    elif not same_kind(unit, of_spec):
        return message, (
            f"`{unit}` can't be converted into `{of_spec}`: look the value up in `{of_spec}`"
        )
    if isinstance(span, Range):
        return message, f"write `{words_of(_converted(span, unit, of_spec))}`"
    return message, f"write it in `{of_spec}`, without the unit: {span}"


def _converted(span: Range, given: str, wanted: str) -> Range:
    return Range(_cut(span.low, given, wanted), _cut(span.high, given, wanted))


def _cut(cut: Cut, given: str, wanted: str) -> Cut:
    if not cut.value.is_finite():
        return cut
    value = convert_quantity(Quantity(cut.value, given), wanted).value
    return cut._replace(value=Decimal(f"{value.normalize():f}"))
