"""Wire colors by their code."""

import pytest

from builder.trade.wire_colors import STANDARD_COLORS, WIRE_COLORS, wire_of

# IEC 60757:2021, table 1, from memory; "gray" in US spelling.
IEC_60757 = {
    "BK": "black", "BN": "brown", "RD": "red", "OG": "orange", "YE": "yellow", "GN": "green",
    "BU": "blue", "VT": "violet", "GY": "gray", "WH": "white", "PK": "pink", "GD": "gold",
    "TQ": "turquoise", "SR": "silver",
}  # fmt: skip


def test_the_codes_are_those_of_the_standard() -> None:
    """A code of IEC 60757 means the standard's color; other codes take none of these."""
    assert {code: color.name for code, color in STANDARD_COLORS.items()} == IEC_60757
    assert len(WIRE_COLORS) > len(STANDARD_COLORS)


@pytest.mark.parametrize(
    ("text", "names", "size"),
    [
        ("YE", ["yellow"], ""),
        ("RD/WH 0.8 mm2", ["red", "white"], "0.8 mm²"),
        ("WH-RD", ["white", "red"], ""),
        ("BK 18 gauge", ["black"], "18 gauge"),
    ],
)
def test_the_base_comes_before_the_stripe(text: str, names: list[str], size: str) -> None:
    """`RD/WH` is red with a white stripe, and no white wire with a red one."""
    wire = wire_of(text)
    assert wire
    assert ([color.name for color in wire.colors], wire.size) == (names, size)


@pytest.mark.parametrize("text", ["XX", "RD/XX", "red", "RD/WH/BU", "", "/WH"])
def test_a_code_that_is_not_known_has_no_color(text: str) -> None:
    """A wrong color sends the probe to a wrong wire: rather none, and the text as written."""
    assert wire_of(text) is None
