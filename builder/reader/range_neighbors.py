"""What to write for a range that can't be read, so that it fits the ranges beside it.

In: the results of one check as typed, and its reading. Out: for each that isn't a range, the words
to write instead: `0-50` beside `50-300` becomes `0 to below 50`, since 50 belongs to one of them.
"""

import re
from decimal import Decimal
from functools import lru_cache

from builder.model.checks import Reading
from builder.model.ranges import Cut, Range
from builder.reader.range_words import likely_words, parse_range, words_of

OTHERWISE = "otherwise"
# Only the number or the unit is wrong then: `at most 0,2` stays `at most`.
SAYS_ITS_END = re.compile("at most|at least|above|below|exactly|[<>]=|=[<>]|[≤≥]", re.IGNORECASE)


@lru_cache(maxsize=1)  # each unreadable result of a check asks for the same
def fitting_words(typed: tuple[str, ...], reading: Reading) -> dict[str, str]:
    """Return by the typed words what to write instead."""
    ranges: dict[str, Range] = {}
    unread: set[str] = set()
    for words in map(str, typed):
        span = parse_range(words)
        if isinstance(span, str) and (likely := likely_words(words)):
            span = parse_range(likely)
            if not SAYS_ITS_END.search(words):
                unread.add(words)
        if isinstance(span, Range):
            ranges[words] = span
    fitting = {words: words_of(_fitted(words, ranges, unread, reading)) for words in unread}
    if OTHERWISE in typed and (rest := _left_over(list(ranges.values()), reading)):
        fitting[OTHERWISE] = words_of(rest)
    return fitting


def _fitted(words: str, ranges: dict[str, Range], unread: set[str], reading: Reading) -> Range:
    low, high = span = ranges[words]
    above = min((one for one in ranges.items() if span.low < one[1].low), key=_start, default=None)
    below = max((one for one in ranges.items() if one[1].low < span.low), key=_start, default=None)
    if above:
        high = _meeting(high, above[1].low, above[0] in unread, reading)
    if below and below[0] not in unread and below[1].high.value == low.value:
        low = below[1].high
    elif below and below[1].high == (low.value, False):
        low = Cut(low.value, False)
    return Range(low, high)


def _start(named: tuple[str, Range]) -> Cut:
    return named[1].low


def _meeting(high: Cut, above: Cut, both_unread: bool, reading: Reading) -> Cut:
    """Return the upper end of a range that meets the one above it, without a gap between."""
    if high.value == above.value:
        return Cut(above.value, False) if both_unread else above
    step = reading.resolution or Decimal(0)
    gap = above.value - high.value
    last_digit = Decimal(1).scaleb(_exponent(above.value))
    is_counted_on = 0 < gap <= last_digit and high.after  # 0-50 beside 51-100
    return Cut(above.value, above.after) if is_counted_on and gap > step else high


def _exponent(value: Decimal) -> int:
    exponent = value.as_tuple().exponent
    return exponent if isinstance(exponent, int) else 0


def _left_over(ranges: list[Range], reading: Reading) -> Range | None:
    """Return what is left of a reading by the other results, if that is one piece."""
    domain = Range(Cut(reading.low, False), Cut(reading.high, True))
    covered = sorted(span.intersection(domain) for span in ranges)
    pieces, start = [], domain.low
    for span in covered:
        if start < span.low:
            pieces.append(Range(start, span.low))
        start = max(start, span.high)
    if start < domain.high:
        pieces.append(Range(start, domain.high))
    return pieces[0] if len(pieces) == 1 else None
