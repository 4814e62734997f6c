"""Ranges written in the words of the format.

In: `below 12.2`, `12.4 to below 12.6`, `OL`. Out: the exact `Range`, or what is wrong with it.
"""

import re
from collections.abc import Callable
from decimal import Decimal
from functools import lru_cache

from builder.model.ranges import (
    EVERYTHING,
    OVER,
    Range,
    above,
    at_least,
    at_most,
    below,
    between,
)

NUMBER = r"-?(?:0|[1-9]\d{0,11})(?:\.\d{1,9})?"
SPAN = re.compile(rf"(above )?({NUMBER}) to (below )?({NUMBER})")
ONE_SIDED: tuple[tuple[re.Pattern[str], Callable[[Decimal], Range]], ...] = (
    (re.compile(rf"below ({NUMBER})"), below),
    (re.compile(rf"above ({NUMBER})"), above),
    (re.compile(rf"at least ({NUMBER})"), at_least),
    (re.compile(rf"at most ({NUMBER})"), at_most),
    (re.compile(rf"exactly ({NUMBER})"), lambda value: between(value, value)),
)
FORMS = "`below 12.2`, `above 14.8`, `at least 5`, `at most 5`, `exactly 0`, or `12.2 to 13.2`"
COMPARISON_SYMBOLS = {"<=": "at most", ">=": "at least", "=<": "at most", "=>": "at least",
                      "<": "below", ">": "above", "≤": "at most", "≥": "at least",
                      "=": "exactly"}  # fmt: skip
OTHER_WORDS = {"no more than": "at most", "no less than": "at least", "not over": "at most",
               "maximum": "at most", "max": "at most", "minimum": "at least", "min": "at least",
               "under": "below", "less than": "below", "over": "above", "more than": "above",
               "up to": "at most", "greater than": "above"}  # fmt: skip


@lru_cache(maxsize=1024)  # the same few stand in many results, and each is read twice
def parse_range(text: str) -> Range | str:
    """Return the range, or a hint for the author: what to write instead."""
    words = " ".join(text.split())
    if words == "OL":
        return OVER
    if words == "any":
        return EVERYTHING
    if match := SPAN.fullmatch(words):
        low_open, low, high_open, high = match.groups()
        return between(
            Decimal(low), Decimal(high), low_open=bool(low_open), high_open=bool(high_open)
        )
    for form, make in ONE_SIDED:
        if match := form.fullmatch(words):
            return make(Decimal(match.group(1)))
    attempt = likely_words(words)
    if attempt:
        return f"write `{attempt}`"
    if re.search(r"\d", words):
        return f"write a range in words: {FORMS}"
    return f"write the range in numbers, and `{words}` into `means`: {FORMS}"


def likely_words(words: str) -> str | None:
    """Return the range that an author most likely means, in the words of the format."""
    attempt = words.lower()
    attempt = re.sub(r"(\d),(\d)", r"\1.\2", attempt)
    attempt = re.sub(rf"({NUMBER})\s*(?:-|–|\.\.+|…|until|and)\s*({NUMBER})", r"\1 to \2", attempt)
    for symbol, word in COMPARISON_SYMBOLS.items():
        attempt = attempt.replace(symbol, f"{word} ")
    for other, word in OTHER_WORDS.items():
        attempt = re.sub(rf"\b{other}\b", word, attempt)
    attempt = re.sub(rf"^between ({NUMBER})", r"\1", attempt)
    attempt = re.sub(rf"^({NUMBER}) ?(?:\+|and up|and above)$", r"at least \1", attempt)
    attempt = re.sub(rf"^({NUMBER}) or more$", r"at least \1", attempt)
    attempt = re.sub(rf"^({NUMBER}) or less$", r"at most \1", attempt)
    attempt = re.sub(rf"({NUMBER})\s*[a-zµΩω%°][a-zΩω°/-]*$", r"\1", " ".join(attempt.split()))
    attempt = re.sub(rf"^({NUMBER})$", r"exactly \1", attempt)
    is_range = attempt != words and isinstance(parse_range(attempt), Range)
    return attempt if is_range else None


def unit_after(words: str) -> str:
    """Return the unit behind the last number, "" where there is none."""
    match = re.search(r"\d\s*([a-zµΩω%°][a-zΩω°/-]*)$", words, re.IGNORECASE)
    return match[1] if match else ""


def words_of(span: Range) -> str:
    """Write a range in the words of the format."""
    (low, low_open), (high, high_in) = span
    if span == OVER:
        return "OL"
    if low.is_infinite():
        return "any" if high.is_infinite() else f"{'at most' if high_in else 'below'} {high:f}"
    if high.is_infinite():
        return f"{'above' if low_open else 'at least'} {low:f}"
    if low == high:
        return f"exactly {low:f}"
    return f"{'above ' if low_open else ''}{low:f} to {'' if high_in else 'below '}{high:f}"
