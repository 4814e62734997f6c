"""The unit of a computed reading, or what is wrong with the units that it mixes.

In: an expression and the unit of each reading. Out: the unit's symbol ("" for a plain number), or a
`Mistake` at the place. A number written out takes whatever unit it is added to or compared with.
Nothing is converted silently: readings in V and mV must be brought to one unit by the author.
"""

from collections.abc import Mapping
from difflib import get_close_matches
from fractions import Fraction

from builder.trade.expression_nodes import Expression, ExpressionNode
from builder.trade.functions import FUNCTIONS, WIRE_SIZES, Function
from builder.trade.mistake import Mistake
from builder.trade.units import UNITS, find_unit

_ANY = "any"  # the unit of a number written out
_PLAIN = ""  # the unit of one reading divided by another of its kind

# One kind times another gives a third; read backwards for division.
_PRODUCTS: tuple[tuple[str, str, str], ...] = (
    ("current", "resistance", "voltage"),
    ("voltage", "current", "power"),
    ("current", "time", "charge"),
    ("voltage", "charge", "energy"),
    ("power", "time", "energy"),
    ("speed", "time", "distance"),
    ("time", "frequency", _PLAIN),
)
_DIFFERENCES = {"°C": "K", "°F": "degF diff"}


def unit_of_expression(expression: Expression, units: Mapping[str, str]) -> str | Mistake:
    """Return the unit of an expression from the units of the readings that it names."""
    operands = _unit(expression.root, units)
    return _PLAIN if operands == _ANY else operands


def _unit(node: ExpressionNode, units: Mapping[str, str]) -> str | Mistake:
    if node.kind == "number":
        return _ANY
    if node.kind == "reading":
        return _reading(node, units)
    function = FUNCTIONS.get(node.kind)
    sized = function is not None and function.slots[0] in WIRE_SIZES
    parts = node.parts[1:] if sized else node.parts
    operands: list[str] = []
    for part in parts:
        one = _unit(part, units)
        if isinstance(one, Mistake):
            return one
        operands.append(one)
    if function is not None:
        return _call(node, function, parts, operands)
    return _operation(node, operands)


def _reading(node: ExpressionNode, units: Mapping[str, str]) -> str | Mistake:
    if node.text in units:
        known = find_unit(units[node.text])
        return known.symbol if known else _wrong(node, f"{units[node.text]} is no unit in use")
    pieces = node.text.split("-")
    if len(pieces) > 1 and all(piece in units or piece.isdecimal() for piece in pieces):
        apart = " - ".join(pieces)
        message = f"no reading is called {node.text}; to subtract, write {apart}"
        return Mistake(message, apart, node.at, len(node.text))
    near = get_close_matches(node.text, units, n=1)
    hint = f"did you mean {near[0]}" if near else f"there are {', '.join(units) or 'none'}"
    message = f"no reading is called {node.text}; {hint}"
    return Mistake(message, near[0] if near else None, node.at, len(node.text))


def _operation(node: ExpressionNode, operands: list[str]) -> str | Mistake:
    if node.kind == "negative":
        message = "a temperature has no negative; subtract it from another"
        return operands[0] if operands[0] not in _DIFFERENCES else _wrong(node, message)
    one, other = operands
    if node.kind in "+-":
        return _sum(node, one, other)
    if one in _DIFFERENCES or other in _DIFFERENCES:
        return _wrong(node, "a temperature cannot be multiplied or divided, only its difference")
    return _product(node, one, other) if node.kind == "*" else _quotient(node, one, other)


def _sum(node: ExpressionNode, one: str, other: str) -> str | Mistake:
    """Add or subtract; two temperatures give a difference, a difference shifts a temperature."""
    if one in _DIFFERENCES and other in (_ANY, _DIFFERENCES[one]):
        return one
    if node.kind == "+" and other in _DIFFERENCES and one in (_ANY, _DIFFERENCES[other]):
        return other
    if node.kind == "-" and other in _DIFFERENCES and one in (_ANY, other):
        return _DIFFERENCES[other]
    if one == other and one in _DIFFERENCES:
        return _wrong(node, "two temperatures cannot be added; their difference can be taken")
    shared = _shared([one, other])
    if shared is None:
        return _wrong(node, f"{_shown(one)} and {_shown(other)} cannot be added or subtracted")
    return shared


def _shared(operands: list[str]) -> str | None:
    """Return the one unit of several operands; a plain number takes that of the others."""
    named = {one for one in operands if one != _ANY}
    return named.pop() if len(named) == 1 else (None if named else _ANY)


def _product(node: ExpressionNode, one: str, other: str) -> str | Mistake:
    if _ANY in (one, other) or _PLAIN in (one, other):
        return _stronger(one, other)
    first, second = UNITS[one], UNITS[other]
    for left, right, result in _PRODUCTS:
        if {first.kind, second.kind} == {left, right}:
            return _named(node, result, first.factor * second.factor)
    return _wrong(node, f"{one} times {other} is nothing that a shop measures")


def _quotient(node: ExpressionNode, one: str, other: str) -> str | Mistake:
    if one == other:
        return _ANY if one == _ANY else _PLAIN
    if other in (_ANY, _PLAIN):
        return _stronger(one, other)
    second = UNITS[other]
    kind, factor = (UNITS[one].kind, UNITS[one].factor) if one in UNITS else (_PLAIN, Fraction(1))
    if kind == second.kind:
        return _wrong(node, f"{one} and {other}: bring both to one unit first")
    for left, right, result in _PRODUCTS:
        if result == kind and second.kind in (left, right):
            rest = right if second.kind == left else left
            return _named(node, rest, factor / second.factor)
    return _wrong(node, f"{_shown(one)} divided by {other} is nothing that a shop measures")


def _stronger(one: str, other: str) -> str:
    """Of a unit and a number the unit; of two numbers the plain one."""
    units = [unit for unit in (one, other) if unit not in (_ANY, _PLAIN)]
    return units[0] if units else (_PLAIN if _PLAIN in (one, other) else _ANY)


def _named(node: ExpressionNode, kind: str, factor: Fraction) -> str | Mistake:
    """Find the unit of a kind that has just this factor."""
    if kind == _PLAIN and factor == 1:
        return _PLAIN
    for one in UNITS.values():
        if one.kind == kind and one.factor == factor:
            return one.symbol
    return _wrong(
        node, f"no unit in use fits {node.text}; give its readings in larger or base units"
    )


def _call(
    node: ExpressionNode, function: Function, parts: tuple[ExpressionNode, ...], operands: list[str]
) -> str | Mistake:
    slots = [slot for slot in function.slots if slot not in WIRE_SIZES]
    filled = [(slots[min(at, len(slots) - 1)], one) for at, one in enumerate(operands)]
    for (slot, one), part in zip(filled, parts, strict=True):
        wrong = _slot_mistake(function, slot, one)
        if wrong:
            return Mistake(wrong, at=part.at, length=len(part.text))
    groups: dict[str, str] = {}
    for slot in dict.fromkeys(slots):
        shared = _shared([one for place, one in filled if place == slot])
        if shared is None and slot != "rows":
            given = " and ".join(dict.fromkeys(_shown(one) for one in operands if one != _ANY))
            return _wrong(node, f"{function.name} needs its figures in one unit, not in {given}")
        groups[slot] = shared or _ANY
    return _given(function, groups)


def _slot_mistake(function: Function, slot: str, one: str) -> str | None:
    if one == _ANY or slot in ("<any>", "rows"):
        return None
    kind = f"<{UNITS[one].kind}>" if one in UNITS else ""
    return (
        None
        if slot in (one, kind)
        else f"{function.name} wants {slot.strip('<>')} here, not {_shown(one)}"
    )


def _given(function: Function, groups: Mapping[str, str]) -> str:
    """The unit that a call gives; numbers alone give the base unit of the kind."""
    if function.gives == "<difference>":
        return _DIFFERENCES.get(groups["<any>"], groups["<any>"])
    if not function.gives.startswith("<"):
        return function.gives or _ANY
    operands = groups[function.gives]
    if operands != _ANY or function.gives == "<any>":
        return operands
    kind = function.gives[1:-1]
    return next(one.symbol for one in UNITS.values() if one.kind == kind and one.factor == 1)


def _wrong(node: ExpressionNode, message: str) -> Mistake:
    return Mistake(message, at=node.at, length=len(node.text))


def _shown(symbol: str) -> str:
    return {_ANY: "a number", _PLAIN: "a plain number"}.get(symbol, symbol)
