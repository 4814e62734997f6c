"""What techs type for short is written out where it can mean one thing only."""

import pytest

from builder.wording.bay_shorthand import written_out


@pytest.mark.parametrize(
    ("typed", "printed"),
    [
        ("Repl'd LF strut assy, clrd P0562", "Replaced left front strut assembly, cleared P0562"),
        ("repl F pads w/ hdwe", "replaced front pads with hardware"),
        ("236 F at idle, R side", "236 F at idle, R side"),  # degrees; right or rear
        ("reg cable frayed, RF/LF", "reg cable frayed, RF/LF"),
        ("batt. case swollen", "battery case swollen"),
        ("none stored", "none stored"),
    ],
)
def test_shorthand_is_written_out(typed: str, printed: str) -> None:
    """A capital stays one, and a part number stays what it is."""
    assert written_out(typed) == printed
