"""Which of several layouts is taken: by its sheets, its beginning, its size, its plainness."""

import pytest

from builder.chart.columns import Column, MeasuredGroup
from builder.chart.layout import LEAST_TEXT, LESS_PLAIN_GAIN, best_paper_use, plainest_of_good
from builder.chart.styles import RIGHT
from builder.chart.text_fit import Room, SheetLayout

FULL = Column((MeasuredGroup((), (), True, True, 1, 0, 0),), 1)
EMPTY = Column((), 0)
LARGE, SMALL = LEAST_TEXT, LEAST_TEXT - 1


def layout(sheets: int, begins: bool, text: float) -> SheetLayout:
    """Make a layout of two columns a sheet, the last of which may stay empty."""
    first = [FULL if begins else EMPTY, EMPTY]
    filled = (*first, *[FULL] * (2 * sheets - 3), EMPTY)[: 2 * sheets]
    return SheetLayout(RIGHT, Room(1, 1, 1), text, (1, 1), filled)


@pytest.mark.parametrize(
    ("plain", "other", "plain_wins"),
    [
        ((2, True, 20), (2, True, 20 * LESS_PLAIN_GAIN), True),
        ((2, True, 20), (2, True, 20 * LESS_PLAIN_GAIN + 0.01), False),
        ((2, True, LARGE), (2, True, LARGE + 0.01), True),
        ((2, True, SMALL), (2, True, SMALL + 0.01), False),  # small text is worth more
        ((2, True, SMALL), (2, True, SMALL), True),
        ((2, True, SMALL), (3, True, 40), True),
        ((3, True, 40), (2, False, SMALL), False),
        ((2, False, 40), (2, True, SMALL), False),
        ((2, True, SMALL), (2, False, 40), True),
    ],
)
def test_the_plainer_is_taken_unless_the_other_is_worth_it(
    plain: tuple[int, bool, float], other: tuple[int, bool, float], plain_wins: bool
) -> None:
    """Fewer sheets and a chart that begins on the first come before the size of the text."""
    one, two = layout(*plain), layout(*other)
    assert plainest_of_good([None, one, None, two]) is (one if plain_wins else two)
    assert plainest_of_good([one]) is one
    assert plainest_of_good([None]) is None


def test_the_best_use_of_the_paper_goes_by_sheets_beginning_and_size() -> None:
    """In that order; of equals the first way that was named."""
    ways = [layout(3, True, 40), layout(2, False, 40), layout(2, True, 12), layout(2, True, 13),
            layout(2, True, 13)]  # fmt: skip
    for at in range(1, 5):
        assert best_paper_use([None, *ways[:at]]) is ways[at - 1]
    assert best_paper_use(ways) is ways[3]
    assert best_paper_use([None]) is None


def test_a_sheet_that_is_half_full_is_a_sheet() -> None:
    """Three columns, two of them a sheet, take two sheets."""
    for columns, sheets in ((1, 1), (2, 1), (3, 2), (4, 2)):
        made = SheetLayout(RIGHT, Room(1, 1, 1), 10, (1, 1), (FULL,) * columns)
        assert made.sheets == sheets
