"""The bar of a box: it says which hazard, and counts what it does not name."""

from hypothesis import given
from hypothesis import strategies as st

from builder.chart.hazard_bar import hazard_bar, shortened_bar
from builder.chart.measured_word import WordLine, line_width
from builder.chart.text_block import broken_lines, text_block
from builder.model.knowledge import Signal
from builder.wording.results import NO_BREAK

NAMES = ("battery gas", "rotating parts", "supply while programming")


def said(signal: Signal, names: tuple[str, ...], room: float) -> str:
    """Return the text of a bar in a width."""
    return texts(shortened_bar(hazard_bar(signal, names), room))


def texts(line: WordLine) -> str:
    """Return the text of a line."""
    return " ".join(word.text for word in line).replace(NO_BREAK, " ")


def test_hazards_are_named_where_there_is_room() -> None:
    """A row of bars that say no more than WARNING is soon seen no more."""
    assert said(Signal.WARNING, NAMES[:2], 300) == "⚠ WARNING battery gas, rotating parts"
    assert said(Signal.NOTICE, ("wrong probe",), 300) == "NOTICE wrong probe"


def test_what_does_not_fit_is_counted() -> None:
    """Whole names first; with no room for one and the count, dots show that more follows."""
    assert said(Signal.WARNING, NAMES, 130) == "⚠ WARNING battery gas +2"
    assert said(Signal.WARNING, NAMES[2:], 110) == "⚠ WARNING supply while…"
    assert said(Signal.WARNING, NAMES, 96) == "⚠ WARNING battery gas…"


def test_a_narrow_box_names_the_hazard_under_the_signal_word() -> None:
    """`battery…` could be its gas or a short: a name is told whole where a second line does it."""
    bar = text_block([hazard_bar(Signal.WARNING, NAMES)])
    assert [texts(line) for line in broken_lines(bar, 90)] == ["⚠ WARNING", "battery gas +2"]
    assert [texts(line) for line in broken_lines(bar, 130)] == ["⚠ WARNING battery gas +2"]
    assert bar.height(90) > bar.height(130)


def test_a_bar_may_stand_further_out_than_the_words_under_it() -> None:
    """Its ground reaches the sides of the box, so that a name is told that else would not fit."""
    bar = text_block([hazard_bar(Signal.WARNING, NAMES)])
    assert [texts(line) for line in broken_lines(bar, 90)][1] == "battery gas +2"
    assert [texts(line) for line in broken_lines(bar, 90, 60)][
        1
    ] == "battery gas, rotating parts +1"


@given(
    st.lists(st.text("abcdefg ", min_size=1, max_size=30), max_size=5).map(tuple),
    st.floats(60, 300),
)
def test_a_bar_is_never_wider_than_its_box(names: tuple[str, ...], room: float) -> None:
    """Whatever hazards a shop writes, the signal word is there and nothing stands out."""
    line = shortened_bar(hazard_bar(Signal.WARNING, names), room)
    assert line_width(line) <= room + 1e-9
    assert line[0].text == f"⚠{NO_BREAK}WARNING"
