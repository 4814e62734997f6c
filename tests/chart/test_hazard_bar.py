"""The bar of a box names every hazard: in words, or the others by their signs."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.chart.fonts import bold
from builder.chart.hazard_bar import MARK, hazard_bar, mark_width
from builder.chart.hazard_marks import HazardMark
from builder.chart.measured_word import WordLine
from builder.chart.spacing import SMALL
from builder.chart.text_block import broken_lines, text_block
from builder.model.knowledge import Signal
from builder.wording.results import NO_BREAK

NAMES = ("battery gas", "rotating parts", "supply while programming")
MARKS = (HazardMark("burst"), HazardMark("gear", "a"), HazardMark("gear", "b"))


def texts(line: WordLine) -> str:
    """Return the text of a line."""
    return " ".join(word.text for word in line).replace(NO_BREAK, " ").strip()


def test_every_hazard_is_named() -> None:
    """A row of bars that say no more than WARNING is soon seen no more."""
    said = texts(hazard_bar(Signal.WARNING, NAMES))
    assert said == "⚠ WARNING battery gas; rotating parts; supply while programming"
    assert texts(hazard_bar(Signal.NOTICE, ("wrong probe",))) == "NOTICE wrong probe"


def test_with_a_key_the_gravest_is_in_words_and_every_other_has_its_sign() -> None:
    """None is hidden behind a count."""
    bar = hazard_bar(Signal.WARNING, NAMES, MARKS)
    assert texts(bar) == "⚠ WARNING battery gas a b"
    assert [word.tone for word in bar if word.tone.startswith(MARK)] == [
        "mark gear a",
        "mark gear b",
    ]
    assert bar[-1].width == mark_width(SMALL) + bold().width("b", SMALL)


@pytest.mark.parametrize("room", [60, 90, 130])
def test_a_narrow_box_has_more_lines_and_the_same_words(room: float) -> None:
    """`battery...` could be its gas or a short: nothing is cut."""
    bar = text_block([hazard_bar(Signal.WARNING, NAMES, MARKS)])
    said = " ".join(texts(line) for line in broken_lines(bar, room))
    assert said == "⚠ WARNING battery gas a b"


@given(st.lists(st.text("abcdefg ", min_size=1, max_size=30), max_size=5).map(tuple))
def test_the_signal_word_comes_first(names: tuple[str, ...]) -> None:
    """Whatever hazards a shop writes."""
    assert hazard_bar(Signal.WARNING, names)[0].text == f"⚠{NO_BREAK}WARNING"
