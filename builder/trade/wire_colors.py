"""Wire colors by their code, as wiring diagrams write them.

In: `RD/WH 0.8 mm2`. Out: the colors by name and shade, base first, and the size.

The codes of two letters are those of IEC 60757, from memory; the others are common practice, no
source. The shades are ours: they show which color is meant, not how a wire looks.
"""

import re
from collections.abc import Mapping
from typing import NamedTuple


class WireColor(NamedTuple):
    """A color of a wire's insulation."""

    name: str
    shade: str  # as CSS has it


class Wire(NamedTuple):
    """A wire as a diagram has it: base color, then that of its stripe if it has one."""

    colors: tuple[WireColor, ...]
    code: str  # as written: RD/WH
    size: str  # with its unit; "" where none is given


STANDARD_COLORS: Mapping[str, WireColor] = {
    "BK": WireColor("black", "#1b1b1b"),
    "BN": WireColor("brown", "#7a4a21"),
    "RD": WireColor("red", "#d3202a"),
    "OG": WireColor("orange", "#f07d12"),
    "YE": WireColor("yellow", "#f6d21f"),
    "GN": WireColor("green", "#1f8a3c"),
    "BU": WireColor("blue", "#1f5fc4"),
    "VT": WireColor("violet", "#7b3fa0"),
    "GY": WireColor("gray", "#8f9499"),
    "WH": WireColor("white", "#ffffff"),
    "PK": WireColor("pink", "#f3a0b8"),
    "GD": WireColor("gold", "#c9a227"),
    "TQ": WireColor("turquoise", "#25b5b0"),
    "SR": WireColor("silver", "#c6cbd0"),
}
OTHER_COLORS: Mapping[str, WireColor] = {
    "PU": WireColor("purple", "#7b3fa0"),
    "TN": WireColor("tan", "#c9a77c"),
    "BG": WireColor("beige", "#e3d3b0"),
    "LB": WireColor("light blue", "#7db7ec"),
    "DB": WireColor("dark blue", "#15357a"),
    "LG": WireColor("light green", "#86cf6d"),
    "DG": WireColor("dark green", "#0e5a2b"),
    "CL": WireColor("clear", "#eef3f3"),
}
WIRE_COLORS: Mapping[str, WireColor] = {**STANDARD_COLORS, **OTHER_COLORS}
_WRITTEN = re.compile(r"(?P<base>[A-Z]{2})(?:[/-](?P<stripe>[A-Z]{2}))?(?: (?P<size>\S.*))?")


def in_our_codes(text: str) -> str | None:
    """Return a wire with the codes of the list for other short forms: `BLK/WHT` is `BK/WH`.

    None where it has such codes already, or where a word isn't short for just one color.
    """
    colors, blank, size = text.strip().partition(" ")
    codes = [_code_of(word) for word in re.split("[/-]", colors)]
    if wire_of(text) or not all(codes) or len(codes) > 2 or not re.match(r"\d|$", size):
        return None
    return "/".join(filter(None, codes)) + blank + size


def colors_like(text: str) -> tuple[str, ...]:
    """Return the codes that a wire's first word that isn't one may stand for: `YL` for `YE`.

    Empty where it begins with a code, or where there are other words.
    """
    match = re.fullmatch(r"([A-Za-z]+)(?:[/-][A-Za-z]+)?(?: \d.*)?", text.strip())
    return () if not match or match[1] in WIRE_COLORS else tuple(_codes_short_for(match[1]))


def _code_of(word: str) -> str | None:
    if word in WIRE_COLORS:
        return word
    codes = _codes_short_for(word)
    return codes[0] if len(codes) == 1 and len(word) > 2 else None


def _codes_short_for(word: str) -> list[str]:
    """Return the codes of the colors whose name has these letters in this order."""
    letters = ".*".join(map(re.escape, word.lower()))
    return [code for code, color in WIRE_COLORS.items()
            if re.match(letters, color.name.replace(" ", ""))]  # fmt: skip


def wire_of(text: str) -> Wire | None:
    """Return a wire as its diagram has it; None where it names no color of the list."""
    match = _WRITTEN.fullmatch(text.strip())
    codes = [code for code in (match["base"], match["stripe"]) if code] if match else []
    if not match or not all(code in WIRE_COLORS for code in codes):
        return None
    size = (match["size"] or "").replace("mm2", "mm²")
    return Wire(tuple(WIRE_COLORS[code] for code in codes), "/".join(codes), size)
