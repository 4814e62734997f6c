"""Whether a call is valid: a known function, enough arguments, a usable table.

In: the node of a call. Out: a `Mistake` at its place, or None. Units are checked in `unit_algebra`,
since they need the readings of the tree.
"""

from collections.abc import Collection
from difflib import get_close_matches

from builder.trade.expression_nodes import ExpressionNode
from builder.trade.functions import FUNCTIONS, WIRE_SIZES, Function, row_pairs
from builder.trade.mistake import Mistake
from builder.trade.sensors import rows_mistake


def call_mistake(call: ExpressionNode) -> Mistake | None:
    """Say what is wrong with a call, if anything is."""
    function = FUNCTIONS.get(call.kind)
    if function is None:
        return _unknown(call)
    counted = _count_mistake(function, call)
    if counted or not call.parts:
        return counted
    if function.slots[-1] == "rows":
        return _table_mistake(call)
    if function.slots[0] in WIRE_SIZES:
        return _size_mistake(call, WIRE_SIZES[function.slots[0]].keys())
    return None


def _unknown(call: ExpressionNode) -> Mistake:
    near = get_close_matches(call.kind, FUNCTIONS, n=1)
    known = f"did you mean {near[0]}" if near else f"there are {', '.join(FUNCTIONS)}"
    message = f"there is no function {call.kind}; {known}"
    return Mistake(message, near[0] if near else None, call.at, len(call.kind))


def _count_mistake(function: Function, call: ExpressionNode) -> Mistake | None:
    given, most = len(call.parts), len(function.slots)
    unlimited = function.repeats or function.slots[-1] == "rows"
    if function.needed <= given and (unlimited or given <= most):
        return None
    wanted = f"at least {function.needed}" if unlimited else str(function.needed)
    if not unlimited and most > function.needed:
        wanted = f"{function.needed} to {most}"
    figures = "figure" if wanted == "1" else "figures"
    message = f"{function.name} takes {wanted} {figures}, here are {given}"
    return Mistake(message, at=call.at, length=len(call.text))


def _table_mistake(call: ExpressionNode) -> Mistake | None:
    figures = [part.constant for part in call.parts[1:]]
    written = [figure for figure in figures if figure is not None]
    if len(written) < len(figures) or len(figures) % 2:
        message = f"after its first figure {call.kind} takes pairs of written numbers: x, y, x, y"
        return Mistake(message, at=call.at, length=len(call.text))
    name = call.kind
    logarithmic, back = name.startswith("log"), name.endswith("back")
    wrong = rows_mistake(row_pairs(written), logarithmic=logarithmic, back=back)
    return wrong and Mistake(wrong.message, at=call.at, length=len(call.text))


def wire_size(node: ExpressionNode) -> str:
    """The wire size that a node names; 1/0 is a size and no division."""
    return node.text.replace(" ", "")


def _size_mistake(call: ExpressionNode, sizes: Collection[str]) -> Mistake | None:
    first = call.parts[0]
    if wire_size(first) in sizes:
        return None
    message = f"{first.text} is no wire size that {call.kind} knows: {', '.join(sizes)}"
    return Mistake(message, at=first.at, length=len(first.text))
