"""An author's own words in the form that the format has, where only that form is missing.

In: a value or a map as written, and the schema that it doesn't fit. Out: the text to write instead,
or None where only the author knows.
"""

import re
from typing import Any

from builder.model.text import Text
from builder.reader.explaining_validator import explaining_validator
from builder.reader.nodes import Map, Node
from builder.reader.other_results import results_with_arrows
from builder.reader.put_right import listed, put_right

Schema = dict[str, Any]
PLAIN = re.compile(r"[^\[\]{}:,#&*!|>'\"%@`\s-][^\[\]{}:,#'\"]*")  # needs no quotes anywhere
PAIR = re.compile(r"([\w-]+) ?(?:,|:|=>?|->|→) ?([^,:=>]+)")


def right_text(title: str, name: str, value: Text, schema: Schema) -> str | None:
    """Return the author's own value in a form that fits; None where there is none."""
    right = put_right(title, name, value) or (
        results_with_arrows(value) if name == "results" else None
    )
    right = right or _as_record(value, schema) or _as_pairs(value, schema)
    if right is None and "array" in types_of(schema) and title.startswith("a list"):
        items = [item.strip() for item in re.split(r"[,;]", value) if item.strip()]
        return listed(value) if fits(items, schema) else None
    if right is None or right.startswith(("[", "{")):
        return right
    return right if fits(right, schema) else None


def _as_record(value: str, schema: Schema) -> str | None:
    """Return `Horn` as `{name: Horn}`, where the record needs no other key."""
    needed = schema.get("required", [])
    if types_of(schema) != ["object"] or len(needed) != 1 or not PLAIN.fullmatch(value):
        return None
    return f"{{{needed[0]}: {value}}}" if fits(value, schema["properties"][needed[0]]) else None


def _as_pairs(value: str, schema: Schema) -> str | None:
    """Return `feed, good` as `[{feed: good}]`, where each item is a name and one value.

    Of a name alone only the author knows the value.
    """
    item = schema.get("items", {})
    match = PAIR.fullmatch(value)
    if item.get("maxProperties") == 1 and re.fullmatch(r"[\w-]+", value):
        return f"[{{{value}: ...}}]"
    if not match or item.get("maxProperties") != 1:
        return None
    return f"[{{{match[1]}: {match[2]}}}]"


def with_its_keys(owner: Node, schema: Schema) -> str | None:
    """Return `{battery: 145}` as `{part: battery, price: 145}`; None if it can be anything else."""
    needed = schema.get("required", [])
    if not isinstance(owner, Map) or len(owner) != 1 or len(needed) != 1:
        return None
    ((key, value),) = owner.items()
    others = {name: part for name, part in schema["properties"].items() if name != needed[0]}
    taking = [name for name, part in others.items() if fits(value, part)]
    if key in schema["properties"] or not isinstance(value, Text) or len(taking) != 1:
        return None
    return f"{{{needed[0]}: {key}, {taking[0]}: {value}}}"


def swapped_date(value: Node, owner: Node, schema: Schema) -> str | None:
    """Return two entries with their values exchanged, where the other one holds the date."""
    for key, other in owner.items() if isinstance(owner, Map) else ():
        if isinstance(other, Text) and fits(other, schema) and other is not value:
            return f"{key}: {value}, date: {other}"
    return None


def fits(value: object, schema: Schema) -> bool:
    """Whether a value is what a schema wants."""
    return explaining_validator(schema).is_valid(value)


def types_of(schema: Schema) -> list[str]:
    """Return the types that a schema allows; none where it says so in another way."""
    kinds = schema.get("type", [])
    return kinds if isinstance(kinds, list) else [kinds]
