"""Computed readings: parse, compile, check the unit, evaluate, bound. The one door to them.

In: text, the units of the readings, their values or ranges. Out: an `Expression`; a unit; a
`Decimal`; a lowest and highest value; or a `Mistake`.

The compiled form is lists of text that JSON can carry, for a page's script to follow:

    ["number", "7/20"]       a whole number or a fraction n/d, in lowest terms
    ["reading", "battery"]   the value typed in, as an exact decimal
    [operation, part, ...]   one of `functions.OPERATIONS`, its parts evaluated first; of a table
                             the value, then x, y, x, y as numbers

The digits: every operation is exact on fractions (the two log tables by the whole-number steps of
`logarithms`); only the end is rounded, to 12 significant digits, half to even. A value that can't
be calculated (a division by zero, a number outside a table) is no reading at all.
"""

from collections.abc import Mapping
from decimal import Decimal
from fractions import Fraction

from builder.trade.bounds import bounds_of_form
from builder.trade.calls import wire_size
from builder.trade.exact import round_digits
from builder.trade.expression_nodes import Expression, ExpressionNode
from builder.trade.functions import FUNCTIONS, OPERATIONS, WIRE_SIZES, Compiled, constant_form
from builder.trade.grammar import parse_expression
from builder.trade.mistake import Mistake
from builder.trade.unit_algebra import unit_of_expression

__all__ = [
    "Compiled",
    "Expression",
    "bounds_of_expression",
    "compile_expression",
    "evaluate_expression",
    "parse_expression",
    "run_form",
    "unit_of_expression",
]


def compile_expression(expression: Expression) -> Compiled:
    """Turn an expression into nested lists of operations, numbers and readings."""
    return _compiled(expression.root)


def _compiled(node: ExpressionNode) -> Compiled:
    if node.constant is not None:
        return constant_form(node.constant)
    if node.kind == "reading":
        return ["reading", node.text]
    function = FUNCTIONS.get(node.kind)
    if function is None or function.recipe is None:
        return [node.kind, *(_compiled(part) for part in node.parts)]
    if function.slots[0] in WIRE_SIZES:
        return function.recipe(wire_size(node.parts[0]), *map(_compiled, node.parts[1:]))
    return function.recipe(*map(_compiled, node.parts))


def evaluate_expression(expression: Expression, values: Mapping[str, Decimal]) -> Decimal | Mistake:
    """Evaluate an expression with the readings taken, by the digit rule above."""
    value = run_form(compile_expression(expression), values)
    return value if isinstance(value, Mistake) else round_digits(value)


def run_form(form: Compiled, values: Mapping[str, Decimal]) -> Fraction | Mistake:
    """Run a compiled expression, exactly; a page's script does the same."""
    kind, *parts = form
    if kind == "number":
        return Fraction(str(parts[0]))
    if kind == "reading":
        return _value(str(parts[0]), values)
    operands = [run_form(part, values) for part in parts if isinstance(part, list)]
    exact = [operand for operand in operands if isinstance(operand, Fraction)]
    for operand in operands:
        if isinstance(operand, Mistake):
            return operand
    return OPERATIONS[str(kind)](*exact)


def _value(name: str, values: Mapping[str, Decimal]) -> Fraction | Mistake:
    if name not in values:
        return Mistake(f"the reading {name} has not been taken")
    if not values[name].is_finite():
        return Mistake(f"the reading {name} is no number: {values[name]}")
    return Fraction(values[name])


def bounds_of_expression(
    expression: Expression, ranges: Mapping[str, tuple[Decimal, Decimal]]
) -> tuple[Decimal, Decimal] | Mistake:
    """Return the lowest and highest value that ranges of readings allow; see `bounds_of_form`."""
    return bounds_of_form(compile_expression(expression), ranges)
