"""Edits made in the text of a file, from its end to its start; all else stays as it is.

In: a text as in the file, and edits with their positions. Out: the text with the edits, and on
which lines they are then. An edit whose old text isn't there is left out: the file has changed.
"""

import re
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from builder.model.finding import Edit


class Span(NamedTuple):
    """A part of a text, and what is written instead."""

    start: int
    end: int
    new: str
    line: int  # counts from 1


def span_in(text: str, edit: Edit) -> Span | None:
    """Return the part of the text that an edit changes; None where it isn't what the edit says."""
    first = len(text) - len(text.removeprefix("\ufeff"))  # a byte order mark has no column
    lines = [first, *(match.end() for match in re.finditer("\n", text))]
    at = edit.at
    if at.line != at.end_line or not 0 < at.line <= len(lines):
        return None
    start, end = (lines[at.line - 1] + column - 1 for column in (at.column, at.end_column))
    there = text[start:end]
    new = edit.new.replace("\n", "\r\n") if "\r\n" in text else edit.new
    if there == edit.old:
        return Span(start, end, new, at.line)
    quote = there[:1]
    is_quoted = quote in ("'", '"') and there == f"{quote}{edit.old}{quote}"
    if is_quoted and not {quote, "\\"} & {*edit.new}:
        return Span(start + 1, end - 1, new, at.line)
    return None


def apart(spans: Iterable[Span]) -> list[Span]:
    """Return the spans that don't touch the one before them, in the order of the text."""
    kept: list[Span] = []
    for span in sorted(spans):
        if not kept or span.start > kept[-1].end:
            kept.append(span)
    return kept


def edited(text: str, spans: Sequence[Span]) -> str:
    """Return the text with the new words in the spans, which are apart."""
    for start, end, new, _ in sorted(spans, reverse=True):
        text = text[:start] + new + text[end:]
    return text


def line_after(line: int, spans: Iterable[Span]) -> int:
    """Return the number that a line has after the edits; one that was cut in two, of its end."""
    return line + sum(span.new.count("\n") for span in spans if span.line <= line)
