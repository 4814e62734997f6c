"""What a walk asks for before its step can be shown: questions of the tree, lists, specs.

In: the tables, a state. Out: what is missing, as the screen lists it.
"""

from collections.abc import Iterator
from typing import NotRequired, TypedDict

from builder.trade.exact import round_digits
from builder.trade.mistake import Mistake
from builder.trade.quantities import Quantity, typed_quantity
from builder.trade.units import convert
from builder.walk.events import Value
from builder.walk.job_state import JobState, Refused
from builder.walk.list_items import items_of
from builder.walk.read_codes import DTC, answers_of_codes, answers_read
from builder.walk.spec_ranges import good_of_spec, good_ranges, spec_names
from builder.walk.told import row_of
from builder.walk.tree_rows import AskRow, WalkStepRow
from builder.walk.walk_tables import WalkTables
from builder.walk.where import unknown_places, words_of_place

OTHER = "other"  # a choice that stands for what the shop has no entry for


class FillRow(TypedDict):
    """Something to fill in: `one_of` are the choices, [] for free text; `list`: several.

    Of a spec `limits` are what to look up, in its unit: `from`, `to` or both. Of a question `codes`
    are DTCs with the answers that they stand for, `offered` the answers of those read so far.
    """

    name: str
    ask: str
    one_of: list[str]
    list: NotRequired[bool]
    limits: NotRequired[list[str]]
    unit: NotRequired[str]
    codes: NotRequired[dict[str, str]]
    offered: NotRequired[list[str]]


def asks_at(tables: WalkTables, state: JobState) -> list[FillRow]:
    """Return what is still to be filled in; [] once the step can be shown."""
    if not state.frames or (state.end and state.end.kind != "fix"):
        return []
    frame = state.frames[-1]
    row = row_of(tables, frame)
    asks = tables[frame.inside].get("asks", {})
    rows = [_question(state, name, one) for name, one in asks.items() if name not in frame.filled]
    if rows:
        return rows
    if "each" in row and items_of(tables, state, row) is None:
        rows.append({"name": row["each"][1], "ask": row["each"][1], "one_of": [], "list": True})
    rows += _specs(tables, state, row)
    places = unknown_places(tables, state, row)
    return rows + [
        {"name": name, "ask": words_of_place(tables, name), "one_of": []} for name in places
    ]


def _question(state: JobState, name: str, ask: AskRow) -> FillRow:
    row: FillRow = {"name": name, "ask": ask["ask"] or name, "one_of": ask["one_of"]}
    codes = ask.get("codes", {})
    if codes:
        row["codes"] = codes
    if offered := answers_read(codes, state):
        row["offered"] = offered
    return row


def _specs(tables: WalkTables, state: JobState, row: WalkStepRow) -> Iterator[FillRow]:
    known = good_ranges(tables, state, row)
    for reading, name in spec_names(state, row).items():
        limits = good_of_spec(tables, state, name).get("look_up", [])
        spec = tables.shop["specs"].get(name)
        if reading not in known and limits and spec:
            yield {
                "name": f"spec {name}",
                "ask": spec["text"],
                "one_of": [],
                "list": len(limits) > 1,
                "limits": limits,
                "unit": spec["unit"],
            }


def unanswered(tables: WalkTables, state: JobState) -> str:
    """Return the names of what is still to be filled in; "" for nothing."""
    return ", ".join(row["name"] for row in asks_at(tables, state))


def checked(ask: FillRow, value: Value) -> Value | Refused:
    """Return a value as it's kept, or why it isn't one that was asked for."""
    name, is_list = ask["name"], ask.get("list", False)
    if isinstance(value, str) == is_list:
        return Refused(f"`{name}` is {'a list' if is_list else 'one value'}")
    if "limits" in ask:
        return _limits(ask, (value,) if isinstance(value, str) else value)
    if value and isinstance(value, str) and ask["one_of"] and value not in ask["one_of"]:
        answers = answers_of_codes(ask.get("codes", {}), value)
        if len(answers) == 1:
            return answers[0]
        if answers:
            return Refused(f"those DTCs stand for {' and '.join(answers)}: choose one")
        if OTHER in ask["one_of"] and not DTC.search(value.upper()):
            return value  # by its own name
        return Refused(f"`{value}` isn't one of: {', '.join(ask['one_of'])}")
    return value or Refused(f"`{name}` is empty")


def _limits(ask: FillRow, typed: tuple[str, ...]) -> Value | Refused:
    """Return the limits of a spec in its unit, as exact decimals."""
    names, unit = ask["limits"], ask["unit"]
    if len(typed) != len(names):
        return Refused(f"{ask['ask']} needs: {', '.join(names)}")
    limits = []
    for text in typed:
        quantity = typed_quantity(text, unit)
        if not isinstance(quantity, Quantity):
            message = quantity.message if isinstance(quantity, Mistake) else "no number"
            return Refused(f"{ask['ask']}: {message}")
        limits.append(round_digits(convert(quantity.value, quantity.unit, unit)))
    if limits != sorted(limits):
        return Refused(f"{ask['ask']}: the highest is below the lowest")
    digits = tuple(f"{limit:f}" for limit in limits)
    return digits if ask.get("list") else digits[0]
