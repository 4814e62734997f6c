"""What a computed reading is made of, once parsed.

In: filled by `grammar.parse`. Out: `Expression` and its `Node`s, plain frozen data.
"""

from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, slots=True)
class ExpressionNode:
    """A piece of an expression: a number, a reading, an operation or a call."""

    kind: str  # "number", "reading", + - * /, "negative", or the name of a function
    parts: tuple["ExpressionNode", ...]
    text: str  # as written, blanks tidied
    at: int  # where it starts in the whole text

    @property
    def constant(self) -> Fraction | None:
        """The value of a number written out, with a minus before it or not; else None."""
        if self.kind == "negative" and self.parts[0].kind == "number":
            return -Fraction(self.parts[0].text)
        return Fraction(self.text) if self.kind == "number" else None


@dataclass(frozen=True, slots=True)
class Expression:
    """A computed reading, parsed."""

    text: str
    root: ExpressionNode

    @property
    def names(self) -> tuple[str, ...]:
        """The readings it uses, in the order of the text, each once."""
        return tuple(dict.fromkeys(_names(self.root)))


def _names(node: ExpressionNode) -> list[str]:
    if node.kind == "reading":
        return [node.text]
    return [name for part in node.parts for name in _names(part)]
