"""Values of a file as far as they mean something, in one spelling.

In: a node of a file, and the key that it stands under. Out: plain values that are equal if they
mean the same: blanks, `5` and `5.0`, the order of keys and of most lists make no difference.
"""

import re
from collections.abc import Iterable, Mapping
from decimal import Decimal

from builder.model.ranges import Range
from builder.reader.nodes import Map, Node, Seq
from builder.reader.range_words import NUMBER, parse_range, words_of
from builder.reader.step_references import NAMES_INSIDE, QUOTED_STEP, TO_STEPS

Plain = str | tuple["Plain", ...] | frozenset["Plain"] | tuple[str, "Plain"]
# What is done, tested, returned or passed in the order in which it is written.
ORDERED = frozenset({"when", "do", "enter", "undo", "verify", "returns", "lists", "changed_with"})
RANGE = re.compile(r"(below|above|at least|at most|exactly) -?\d|-?\d")
Names = Mapping[str, str]  # steps that have another name by now


def meaning_of(node: Node, key: str, names: Names) -> Plain:
    """Return the value of a node; steps that were renamed have their new name."""
    if isinstance(node, Map):
        inside = key in NAMES_INSIDE
        return frozenset(
            (names.get(name, str(name)) if inside else str(name), meaning_of(value, name, names))
            for name, value in node.items()
        )
    if isinstance(node, Seq):
        values = tuple(meaning_of(item, key, names) for item in node)
        return values if key in ORDERED else _unordered(values)
    text = plain_text(node)
    if key in TO_STEPS | NAMES_INSIDE:
        return names.get(text, text)
    return QUOTED_STEP.sub(lambda match: f"<{names.get(match[1], match[1])}", text)


def plain_text(text: str) -> str:
    """Return a text with single blanks; a number as its value, a range in its shortest words."""
    words = " ".join(text.split())
    if re.fullmatch(NUMBER, words):
        return _shortest(words)
    span = parse_range(words) if RANGE.match(words) else None
    if not isinstance(span, Range):
        return words
    return re.sub(NUMBER, lambda number: _shortest(number[0]), words_of(span))


def _shortest(number: str) -> str:
    return f"{Decimal(number).normalize():f}"


def _unordered(values: Iterable[Plain]) -> Plain:
    """Count equal items apart, so that one of two isn't lost."""
    counted: dict[Plain, int] = {}
    for value in values:
        counted[value] = counted.get(value, 0) + 1
    return frozenset((f"{counted[value]}", value) for value in counted)


def shown_value(node: Node | None) -> str:
    """Write a value in one line, as it could stand in a file."""
    if node is None:
        return ""
    if isinstance(node, Map):
        return "{" + ", ".join(f"{key}: {shown_value(value)}" for key, value in node.items()) + "}"
    if isinstance(node, Seq):
        return "[" + ", ".join(map(shown_value, node)) + "]"
    return " ".join(node.split())
