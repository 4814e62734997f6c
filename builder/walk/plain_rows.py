"""Values of the model as rows for JSON.

In: texts, numbers, maps. Out: plain lists and maps, without what is empty.
"""

from collections.abc import Iterable, Mapping
from decimal import Decimal

Row = dict[str, object]


def without_empty(row: Mapping[str, object]) -> Row:
    """Leave out what is empty; `False` and "" too."""
    return {key: value for key, value in row.items() if value not in (None, "", False, [], {}, ())}


def plain_texts(items: Iterable[str]) -> list[str]:
    """Return texts without their positions."""
    return [*map(str, items)]


def minutes_as_text(minutes: Decimal | None) -> str:
    """Return a number of minutes as an exact decimal; "" for none."""
    return f"{minutes:f}" if minutes else ""
