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
        (
            "R&R RF whl brg, then R&R hub",
            "Removed and replaced right front wheel bearing, then removed and replaced hub",
        ),
        (
            "grd eyelet of trlr socket, hi side line",
            "ground eyelet of trailer socket, high side line",
        ),
        ("Strg light, chgd 26 oz w/ dye", "Steering light, charged 26 oz with dye"),
        ("chgd oil, Hi-Z, lo-beam relay", "chgd oil, Hi-Z, lo-beam relay"),  # changed or charged
    ],
)
def test_shorthand_is_written_out(typed: str, printed: str) -> None:
    """A capital stays one, and a part number stays what it is."""
    assert written_out(typed) == printed
