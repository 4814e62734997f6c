"""Small values of the model from their nodes.

In: nodes that have passed the schema. Out: values of the model; None or an empty tuple where the
author wrote nothing.
"""

from decimal import Decimal
from enum import StrEnum
from typing import TypeVar

from builder.model.checks import Branch
from builder.model.ends import Money, Part
from builder.model.text import Number, Text
from builder.model.tree import Deed, Need, Picture, Scope, Signed
from builder.reader.nodes import EMPTY, Map, Node, Seq

Choice = TypeVar("Choice", bound=StrEnum)


def text(node: Map, name: str) -> Text | None:
    """Return a text."""
    value = node.get(name)  # type: ignore[call-overload]  # the fast way of `Map.value`
    return value if isinstance(value, Text) else None


def the_text(node: Map, name: str, default: str = "") -> Text:
    """Return a text that the schema requires, or the default."""
    return text(node, name) or Text(default, node.at)


def choice_of(kind: type[Choice], node: Map, name: str, default: Choice) -> Choice:
    """Return a word of a closed list; the default where it is missing."""
    word = text(node, name)
    return kind(str(word)) if word is not None else default


def choice_or_none(kind: type[Choice], node: Map, name: str) -> Choice | None:
    """Return a word of a closed list, or None."""
    word = text(node, name)
    return None if word is None else kind(str(word))


def conditions(node: Map) -> tuple[tuple[Text, ...], tuple[Need, ...]]:
    """Return the conditions under `when`: those in free text, and the states.

    Free text has a blank in it.
    """
    free: list[Text] = []
    needs: list[Need] = []
    for item in items(node, "when"):
        if isinstance(item, Text):
            if " " in item:
                free.append(item)
            else:
                needs.append(Need(item))
        elif isinstance(item, Map):
            needs += (Need(name, one) for name, one in item.items() if isinstance(one, Text))
    return tuple(free), tuple(needs)


def number(node: Map, name: str) -> Number | None:
    """Return a plain decimal."""
    value = text(node, name)
    return None if value is None else Number(value, value.at)


def the_number(node: Map, name: str) -> Number:
    """Return a plain decimal that the schema requires, or 0."""
    return number(node, name) or Number("0", node.at)


def texts(node: Map, name: str) -> tuple[Text, ...]:
    """Return a list of texts."""
    values = items(node, name)
    return tuple([value for value in values if isinstance(value, Text)]) if values else ()


def items(node: Map, name: str) -> Seq | tuple[Node, ...]:
    """Return the items of a list."""
    value = node.value(name)
    return value if isinstance(value, Seq) else ()


def maps(node: Map, name: str) -> tuple[Map, ...]:
    """Return the maps of a list."""
    return tuple(value for value in items(node, name) if isinstance(value, Map))


def map_(node: Map, name: str) -> Map | None:
    """Return a map."""
    value = node.value(name)
    return value if isinstance(value, Map) else None


def maps_by_name(node: Map | None) -> list[tuple[Text, Map]]:
    """Return the names of a map with the maps under them."""
    return [(key, value) for key, value in (node or EMPTY).items() if isinstance(value, Map)]


def named_texts(node: Map, name: str) -> dict[str, Text]:
    """Return a map of texts under a key."""
    return texts_by_name(map_(node, name) or EMPTY)


def texts_by_name(node: Map) -> dict[str, Text]:
    """Return the texts of a map."""
    return {str(key): value for key, value in node.items() if isinstance(value, Text)}


def named_lists(node: Map, name: str) -> dict[str, tuple[Text, ...]]:
    """Return a map of lists."""
    values = map_(node, name) or EMPTY
    return {str(key): texts(values, key) for key in values}


def branch(node: Map, name: str) -> Branch | None:
    """Return the branch under a key."""
    words = text(node, name)
    if words is None:
        return None
    if "/" in words or "#" in words:
        tree, _, step = words.partition("#")
        return Branch(words, step or None, tree)
    return Branch(words) if words in ("next", "back") else Branch(words, str(words))


def returned(node: Map) -> Branch | None:
    """Return the word that a result of a procedure returns, as a branch."""
    word = text(node, "return")
    return Branch(word, returns=True) if word is not None else None


def money(words: Text | None) -> Money | None:
    """Return an amount or a range of amounts."""
    if words is None:
        return None
    low, _, high = words.partition(" to ")
    return Money(Decimal(low), Decimal(high or low))


def parts(node: Map) -> tuple[Part, ...]:
    """Return the parts of a fix."""
    return tuple(
        Part(
            the_text(part, "part"),
            money(text(part, "price")),
            text(part, "only_if"),
            text(part, "service") == "yes",
        )
        for part in maps(node, "parts")
    )


def deeds(node: Map, name: str = "does") -> tuple[Deed, ...]:
    """Return what a step does."""
    return tuple(_deed(words) for words in texts(node, name))


def _deed(words: Text) -> Deed:
    verb, _, module = words.partition(" ")
    return Deed(words, verb, module.strip() or None)


def picture(node: Map) -> Picture | None:
    """Return the picture of a step."""
    value = map_(node, "picture")
    return Picture(the_text(value, "file"), the_text(value, "shows")) if value else None


def signed(node: Map, name: str) -> Signed | None:
    """Return a name and a date."""
    value = map_(node, name)
    return Signed(the_text(value, "by"), the_text(value, "date")) if value else None


def scopes(node: Map) -> tuple[Scope, ...]:
    """Return the vehicles that something applies to; () for any."""
    return tuple(scope(vehicle) for vehicle in maps(node, "applies_to"))


def scope(node: Map) -> Scope:
    """Return a make, a model and its years."""
    words = text(node, "years")
    years = None
    if words:
        first, _, last = words.partition("-")
        years = (int(first), int(last or first))
    return Scope(node.at, the_text(node, "make"), the_text(node, "model"), years)
