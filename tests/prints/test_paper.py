"""Papers and distances, against published figures."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.chart.fonts import medium
from builder.chart.spacing import SMALL, TEXT
from builder.prints.paper import (
    MARGIN,
    MILLIMETER,
    PAPERS,
    reading_words,
    reads_from,
    size_to_read,
    text_to_read,
)


@pytest.mark.parametrize(
    ("name", "millimetres"),
    [
        ("a4", (210, 297)),  # ISO 216
        ("a3", (297, 420)),  # ISO 216
        ("letter", (215.9, 279.4)),  # ANSI/ASME Y14.1 size A
        ("tabloid", (279.4, 431.8)),  # ANSI/ASME Y14.1 size B
    ],
)
def test_papers_have_the_sizes_of_their_standards(
    name: str, millimetres: tuple[float, float]
) -> None:
    """ISO 216 and ANSI/ASME Y14.1, both from memory."""
    paper = PAPERS[name]
    assert (paper.width / MILLIMETER, paper.height / MILLIMETER) == pytest.approx(millimetres)
    assert (paper.turned.width, paper.turned.height) == (paper.height, paper.width)


def test_margins_are_such_as_printers_hold() -> None:
    """A quarter of an inch is left blank by office printers (common practice, no source)."""
    assert MARGIN >= 18


def test_the_head_of_a_wall_chart_reads_from_two_metres() -> None:
    """16 minutes of arc at 2 m is a capital of 9.31 mm (NUREG-0700 rev. 2, formula 1.3.1-4)."""
    assert size_to_read(2) * medium().capital / MILLIMETER == pytest.approx(9.31, abs=0.005)


def test_at_half_a_metre_ordinary_print_reads() -> None:
    """9.2 points at 0.5 m for a capital of 0.716 em (own arithmetic from the same formula)."""
    assert size_to_read(0.5) * medium().capital / 0.716 == pytest.approx(9.2, abs=0.05)


@given(st.floats(0.3, 4))
def test_text_made_for_a_distance_reads_from_there(meters: float) -> None:
    """What the foot says is never further than the text can be read, nor 5 cm short of it."""
    assert meters - 0.05 - 1e-9 <= reads_from(size_to_read(meters)) <= meters + 1e-9


def test_the_smallest_words_decide() -> None:
    """The words beside lines are as large as those in boxes, or the boxes larger than asked."""
    assert text_to_read(1.5) * SMALL / TEXT == pytest.approx(size_to_read(1.5))


def test_the_foot_says_both_distances() -> None:
    """16 minutes of arc is the least, 20 to 22 are preferred (NUREG-0700, ISO 9241-3)."""
    assert reading_words(12.6) == "Steps read from 0.65 m, with ease from 0.5 m"
