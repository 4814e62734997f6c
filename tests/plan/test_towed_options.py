"""Which tows are offered, and how many: only where the car can't be driven in, and both ways."""

from decimal import Decimal

import pytest

from builder.model.ends import Drive
from builder.model.module_record import DriveBefore
from builder.model.text import Text
from builder.plan.drive_advice import DriveAdvice
from builder.plan.estimate_options import estimate_options

from .test_estimate_options import FIX, amount, library


@pytest.mark.parametrize(
    ("drive", "before_set_up", "towed_in"),
    [
        (Drive.YES, DriveBefore.YES, None),  # it drives here, and drives back
        (Drive.YES, DriveBefore.NO, "297.00"),  # home by itself, back on a truck
        (Drive.WITH_CARE, DriveBefore.YES, "297.00"),
        (Drive.NO, DriveBefore.YES, "412.00"),  # 182 + 2 x 115: home, and back
    ],
)
def test_a_tow_is_offered_where_it_helps(tree, drive: Drive, before_set_up, towed_in) -> None:
    """Own arithmetic on the worked example: 182 for the setup here, 115 for each tow."""
    known = library(drive_before_set_up=before_set_up)
    options = estimate_options(tree(FIX), "repair", known, DriveAdvice(drive))
    totals = {option.id: amount(option) for option in options if option.total}
    assert totals.get("towed-in") == towed_in
    assert ("drive-in" in totals) is (drive is not Drive.NO and before_set_up is DriveBefore.YES)


def test_both_tows_are_in_what_is_saved(tree) -> None:
    """Own arithmetic: 684.80 - 412.00; an option in the author's words has them, too."""
    own = FIX + "  options:\n    towed-in: {option: You install it, hours: 1.3, tow: yes}\n"
    for text in (FIX, own):
        options = estimate_options(tree(text), "repair", library(), DriveAdvice(Drive.NO))
        (towed,) = (one for one in options if one.id == "towed-in")
        assert [line.item for line in towed.lines][-2:] == ["Tow home", "Tow back to us"]
        assert towed.saves
        assert towed.saves.low == Decimal("272.80")


@pytest.mark.parametrize(
    ("why", "note"),
    [
        ("When the countdown ends, it won't restart.",
         "Not repaired. When the countdown ends, it won't restart."),
        ("", "Not repaired. It may get worse."),
    ],
)  # fmt: skip
def test_leaving_it_says_what_the_tree_says_of_driving(tree, why: str, note: str) -> None:
    """The reason that is given for driving is sharper than any general word."""
    advice = DriveAdvice(Drive.WITH_CARE, str(Text(why)))
    (left,) = (one for one in estimate_options(tree(FIX), "repair", library(), advice)
               if one.id == "leave")  # fmt: skip
    assert left.note == note
