"""Results as a reader sees them: every limit with its unit."""

from dataclasses import replace

import pytest

from builder.model.checks import Check
from builder.model.text import Text
from builder.model.tree import Tree
from builder.wording.results import NO_BREAK, result_words, tied


def said(tree: Tree, step: str) -> list[str]:
    """Return the words of a check's results."""
    check = tree.steps[step].body
    assert isinstance(check, Check)
    return [result_words(check, result).replace(NO_BREAK, "_") for result in check.results]


def test_a_reading_has_its_unit(small: Tree) -> None:
    """A limit without its unit is read wrong from three meters away."""
    assert said(small, "rest") == ["below 12.2_V", "12.2 to 13.2_V", "above 13.2_V"]


def test_over_the_range_has_no_unit(small: Tree) -> None:
    """OL is what the instrument shows, and no number of ohms; ohms are shown by their sign."""
    assert said(small, "fuse") == ["1_Ω or less", "above 1_Ω", "OL"]


def test_a_computed_reading_has_the_unit_it_is_worked_out_in(small: Tree) -> None:
    """The sum of two voltages is a voltage."""
    assert said(small, "sides") == ["sum: 0.7_V or less", "sum: above 0.7_V"]


ENDS = [
    ("0 to below 12.2", "below 12.2 V"),
    ("0 to 12.2", "12.2 V or less"),
    ("at most 12.2", "12.2 V or less"),
    ("13.2 to 16", "13.2 V or more"),
    ("above 13.2 to 16", "above 13.2 to 16 V"),
    ("-1 to below 12.2", "-1 to below 12.2 V"),
    ("0 to 16", "0 to 16 V"),
]


@pytest.mark.parametrize(("written", "read"), ENDS)
def test_the_ends_of_the_instrument_are_not_said(small: Tree, written: str, read: str) -> None:
    """Of an instrument from 0 to 16 V, `0 to 12.2` is `12.2 or less`; other ends stay."""
    check = small.steps["rest"].body
    assert isinstance(check, Check)
    result = replace(check.results[0], text=Text(written))
    assert result_words(check, result).replace(NO_BREAK, " ") == read


@pytest.mark.parametrize(
    ("text", "held"),
    [
        ("idle for 5 min", "idle for 5_min"),
        ("from 12.2 V to 5 V", "from 12.2_V to 5_V"),
        ("at 20 km/h or more", "at 20_km/h or more"),
        ("step 3 Very long", "step 3 Very long"),
        ("F4 A side", "F4 A side"),
    ],
)
def test_a_number_and_its_unit_stay_on_one_line(text: str, held: str) -> None:
    """Only what is a unit is tied to the number before it."""
    assert tied(text).replace(NO_BREAK, "_") == held
