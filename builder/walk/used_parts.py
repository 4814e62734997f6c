"""The parts that a tech typed for the papers, and the lines of an estimate that they fill.

In: `brake pads, part number BP-4, $70.00; hardware kit, $12.00`, the parts of an option. Out:
`PartUsed`s, each with the line whose part it is. A name fills a line only if it is surely that part
(`AGM battery` of `battery`, never `battery cable`), or if the tech said what it is used instead of.
"""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal

from builder.plan.prices import PriceLine

_PIECE = re.compile(
    r"(.+?[$€£] ?\d[\d,]*(?:\.\d\d?)?(?: each)?)(?:,? and |, |$)(?!instead|in place)"
)
_PRICE = re.compile(r"[$€£] ?(?P<amount>\d[\d,]*(?:\.\d\d?)?)(?P<each> each)?")
# Refrigerants, oils, fluids, tires: `R-134A`, `5W-30`, `DOT-4`, `195/65R15` are no part numbers.
_KIND = r"R-?\d|\d+W-?\d|DOT|SAE|API|GL-\d|\d{3}/\d\d"
_NUMBER = re.compile(
    r"\b(?i:part number|number|part no\.?|no\.|p/?n|#) ?#?:? ?(?P<number>[\w./-]*\d[\w./-]*)|"
    rf"(?<=[ ,])(?P<bare>(?!{_KIND})(?=[A-Z./-]*\d)(?=[\d./-]*[A-Z])[A-Z\d][A-Z\d./-]{{3,}}(?!\w))"
)
_INSTEAD = re.compile(r",? *\b(?:instead of|in place of) (?:the )?(?P<what>.+)")
_OWNER = re.compile(r"\b(?:pair|set|kit) of |\(.*?\)|^\d+x? |\b(?:a|an|the|new|one|two|both) ")
_TAIL = re.compile(r" (?:with|for|of|from|at|in) .*| (?:assembly|assy|kit|set|unit)$")


@dataclass(frozen=True, slots=True)
class PartUsed:
    """A part that was used; "" and None are what wasn't typed."""

    name: str
    number: str
    price: Decimal | None  # None too where it can't be told what it is the price of
    instead_of: str
    more: str = ""  # what else was typed of it, as it was typed


@dataclass(frozen=True, slots=True)
class FilledLine:
    """A part of an estimate, with what was used for it."""

    line: PriceLine
    used: tuple[PartUsed, ...]

    @property
    def price(self) -> Decimal | None:
        """What it came to; None where that isn't known."""
        prices = [one.price for one in self.used if one.price is not None]
        if self.used and len(prices) == len(self.used):
            return sum(prices, Decimal(0))
        amount = self.line.amount
        is_fixed = amount is not None and amount.low == amount.high
        return amount.low if amount and is_fixed else None


def parts_used(own: str) -> tuple[PartUsed, ...]:
    """Take apart what was typed: parts end at a semicolon, or at the price of each."""
    return tuple(_used(piece) for text in own.split(";") for piece in _pieces(text.strip()))


def filled_lines(
    parts: Sequence[PriceLine], used: Sequence[PartUsed]
) -> tuple[tuple[FilledLine, ...], tuple[PartUsed, ...]]:
    """Return each line with what fills it, and the parts that fill none."""
    lines = tuple(
        FilledLine(line, tuple(one for one in used if _fills(one, line.name))) for line in parts
    )
    placed = [one for line in lines for one in line.used]
    return lines, tuple(one for one in used if one not in placed)


def _pieces(text: str) -> Iterator[str]:
    found = [match[1] for match in _PIECE.finditer(text)]
    rest = _PIECE.sub("", text).strip(" ,")
    yield from (one for one in (*found, rest) if one)


def _used(piece: str) -> PartUsed:
    instead = _INSTEAD.search(piece)
    words = piece[: instead.start()] + piece[instead.end() :] if instead else piece
    prices, number = [*_PRICE.finditer(words)], _NUMBER.search(words)
    is_plain = len(prices) == 1 and not prices[0]["each"] and not re.match(r"\d", words)
    known = [match for match in (*(prices[:1] if is_plain else ()), number) if match]
    starts = [match.start() for match in (*prices[:1], number) if match]
    name = words[: min(starts, default=None)].partition(",")[0]
    return PartUsed(
        name=name.strip(" :"),
        number=(number["number"] or number["bare"]) if number else "",
        price=Decimal(prices[0]["amount"].replace(",", "")) if is_plain else None,
        instead_of=_PRICE.sub("", instead["what"]).strip(" ,") if instead else "",
        more=_rest_of(words, len(name), known),
    )


def _rest_of(words: str, start: int, known: Sequence[re.Match[str]]) -> str:
    """Return what stands behind the name of a part, beside its number and its price."""
    at, rest = start, []
    for match in sorted(known, key=lambda one: one.start()):
        rest.append(words[at : match.start()])
        at = match.end()
    pieces = (one.strip(" ,:.") for one in (*rest, words[at:]))
    return ", ".join(one for one in pieces if one and one not in ("and", "at", "for"))


def _fills(used: PartUsed, part: str) -> bool:
    things = [part, *re.split(r", and |, | and ", part)]
    name = used.instead_of or used.name
    return any(_is_same(name, thing) for thing in things)


def _is_same(one: str, other: str) -> bool:
    """Whether two names end in the same word, and one of them only says more than the other."""
    words, others = _words(one), _words(other)
    if not words or not others or words[-1] != others[-1]:
        return False
    return set(words) <= set(others) or set(others) <= set(words)


def _words(name: str) -> list[str]:
    plain = _TAIL.sub("", _OWNER.sub("", name.casefold().strip()))
    words = re.findall(r"[a-z0-9/]+", plain)
    return [one.removesuffix("s") for one in words if not re.search(r"\d", one)]  # H7 is a size
