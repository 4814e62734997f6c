"""The small language of computed readings: text in, a tree of nodes out.

In: `battery - lamp`, `parallel(120, 120)`. Out: an `Expression`, or a `Mistake` with the place in
the text. It knows + - * / (also − × ÷ ·), parentheses, numbers with a decimal point, names
of readings, and the functions of `functions.py`. Nothing is ever run as a program.
"""

import re
from collections.abc import Sequence
from typing import NamedTuple

from builder.trade.calls import call_mistake
from builder.trade.expression_nodes import Expression, ExpressionNode
from builder.trade.mistake import Mistake

LONGEST_EXPRESSION = 400  # characters; a computed reading has to be readable beside its step
DEEPEST_NESTING = 20  # brackets within brackets

_TOKEN = re.compile(
    r"\s*(?:(?P<number>[0-9]+(?:\.[0-9]+)?)|(?P<name>[^\W\d]\w*(?:-\w+)*)|(?P<mark>[-+*/(),]))"
)
_OTHER_MARKS = str.maketrans("−–×÷·", "--*/*")
_RANKS = {"+": 1, "-": 1, "*": 2, "/": 2}


class _Token(NamedTuple):
    kind: str  # number, name, mark, end
    text: str
    at: int


_Parsed = tuple[ExpressionNode, int] | Mistake  # a node and the token after it


def parse_expression(text: str) -> Expression | Mistake:
    """Parse the text of a computed reading."""
    if len(text) > LONGEST_EXPRESSION:
        return Mistake(
            f"longer than {LONGEST_EXPRESSION} characters: split it into several readings"
        )
    tokens = _tokens(text.translate(_OTHER_MARKS))
    parsed = tokens if isinstance(tokens, Mistake) else _sum(tokens, 0, 1, 0)
    if isinstance(parsed, Mistake):
        return parsed
    assert not isinstance(tokens, Mistake)
    node, after = parsed
    left_over = tokens[after]
    if left_over.kind != "end":
        return _refuse(f"nothing joins {left_over.text} to what stands before it", left_over)
    return Expression(text, node)


def _tokens(text: str) -> list[_Token] | Mistake:
    tokens: list[_Token] = []
    at = 0
    while text[at:].strip():
        match = _TOKEN.match(text, at)
        if not match:
            at += len(text[at:]) - len(text[at:].lstrip())
            return Mistake(f"{text[at]} has no meaning here", at=at)
        kind = match.lastgroup or ""
        token = _Token(kind, match[kind], match.start(kind))
        at = match.end()
        run_on = _run_on(token, text[at:])
        if run_on:
            return run_on
        tokens.append(token)
    return [*tokens, _Token("end", "", len(text))]


def _run_on(token: _Token, rest: str) -> Mistake | None:
    """Refuse a number with a unit, a decimal comma, or a second point right behind it."""
    comma, tail = re.match(r",[0-9]+", rest), re.match(r"[\w.°%]+", rest)
    if token.kind != "number" or not (comma or tail):
        return None
    if comma:
        point = f"{token.text}.{comma[0][1:]}"
        message = f"for a decimal write {point}, for two figures put a blank after the comma"
        return Mistake(message, None, token.at, len(token.text) + len(comma[0]))
    whole = token.text + (tail[0] if tail else "")
    return Mistake(
        f"{whole} is no plain number: digits and a point, no unit, no power of ten",
        None,
        token.at,
        len(whole),
    )


def _refuse(message: str, token: _Token) -> Mistake:
    return Mistake(message, at=token.at, length=max(len(token.text), 1))


def _sum(tokens: Sequence[_Token], at: int, rank: int, depth: int) -> _Parsed:
    """Parse operands joined by operations of this rank or a higher one, from the left."""
    parsed = _operand(tokens, at, depth)
    while not isinstance(parsed, Mistake):
        left, after = parsed
        mark = tokens[after]
        if _RANKS.get(mark.text, 0) < rank:
            return parsed
        right = _sum(tokens, after + 1, _RANKS[mark.text] + 1, depth)
        if isinstance(right, Mistake):
            return right
        node, after = right
        text = f"{left.text} {mark.text} {node.text}"
        parsed = ExpressionNode(mark.text, (left, node), text, left.at), after
    return parsed


def _operand(tokens: Sequence[_Token], at: int, depth: int) -> _Parsed:
    token = tokens[at]
    if depth > DEEPEST_NESTING:
        return _refuse(f"more than {DEEPEST_NESTING} brackets within brackets", token)
    if token.kind == "number":
        return ExpressionNode("number", (), token.text, token.at), at + 1
    if token.kind == "name" and tokens[at + 1].text == "(":
        return _call(tokens, at, depth)
    if token.kind == "name":
        return ExpressionNode("reading", (), token.text, token.at), at + 1
    if token.text == "-":
        return _negative(tokens, at, depth)
    if token.text == "(":
        return _closed(tokens, at, _sum(tokens, at + 1, 1, depth + 1))
    where = f"before {token.text}" if token.text else "at the end"
    return _refuse(f"a reading, a number or a bracket is missing {where}", token)


def _negative(tokens: Sequence[_Token], at: int, depth: int) -> _Parsed:
    parsed = _operand(tokens, at + 1, depth + 1)
    if isinstance(parsed, Mistake):
        return parsed
    node, after = parsed
    return ExpressionNode("negative", (node,), f"-{node.text}", tokens[at].at), after


def _closed(tokens: Sequence[_Token], opened: int, parsed: _Parsed) -> _Parsed:
    """Step over the bracket that closes the one opened."""
    if isinstance(parsed, Mistake):
        return parsed
    node, after = parsed
    if tokens[after].text != ")":
        return _refuse("this bracket is never closed", tokens[opened])
    text = f"({node.text})" if node.parts else node.text
    return ExpressionNode(node.kind, node.parts, text, node.at), after + 1


def _call(tokens: Sequence[_Token], at: int, depth: int) -> _Parsed:
    """Parse the arguments of a function and judge the call."""
    name, after = tokens[at], at + 2
    parts: list[ExpressionNode] = []
    while tokens[after].text != ")" or parts:
        parsed = _sum(tokens, after, 1, depth + 1)
        if isinstance(parsed, Mistake):
            return parsed
        node, after = parsed
        parts.append(node)
        if tokens[after].text != ",":
            break
        after += 1
    if tokens[after].text != ")":
        return _refuse("this bracket is never closed", tokens[at + 1])
    text = f"{name.text}({', '.join(part.text for part in parts)})"
    call = ExpressionNode(name.text, tuple(parts), text, name.at)
    return call_mistake(call) or (call, after + 1)
