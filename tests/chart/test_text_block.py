"""Words broken into lines: what was counted is what is set."""

from hypothesis import given
from hypothesis import strategies as st

from builder.chart.flow import Edge, Node
from builder.chart.fonts import LEADING
from builder.chart.measured_word import line_width, measured_words
from builder.chart.spacing import LONGEST_WORD, SMALL, TEXT
from builder.chart.text_block import box_text, broken_lines, label_text
from builder.model.knowledge import Signal
from builder.wording.results import NO_BREAK

TEXTS = st.text(st.sampled_from("abcdefgW-/. 0123456789Ω"), max_size=120)


def node(text: str, **more: object) -> Node:
    """Make a box of words."""
    return Node("n", "check", text, "12", **more)  # type: ignore[arg-type]


@given(TEXTS, st.floats(LONGEST_WORD, 400))
def test_no_line_is_wider_than_its_room(text: str, room: float) -> None:
    """Whatever an author writes, no line stands out of a box of the least width or more."""
    for line in broken_lines(box_text(node(text)), room):
        assert line_width(line) <= room + 1e-6


@given(TEXTS, st.floats(LONGEST_WORD, 400))
def test_the_height_is_that_of_the_lines(text: str, room: float) -> None:
    """The search counts lines, the drawing sets them: both find the same."""
    words = label_text(Edge("a", "b", text))
    assert abs(words.height(room) - len(broken_lines(words, room)) * LEADING * SMALL) < 1e-9


def test_a_line_may_fill_its_room() -> None:
    """No line is broken, and none counted, for words that just have the room."""
    words = label_text(Edge("a", "b", "m WWW i"))
    _, wide, last = words.paragraphs[0]
    room = wide.width + (last.space + last.width)
    lines = [[word.text for word in line] for line in broken_lines(words, room)]
    assert lines == [["m"], ["WWW", "i"]]
    assert words.height(room) == 2 * LEADING * SMALL


@given(TEXTS)
def test_no_character_is_lost(text: str) -> None:
    """A word too long for any box is broken, and nothing of it dropped."""
    lines = broken_lines(box_text(node(text)), LONGEST_WORD)
    set_ = "".join(word.text for line in lines for word in line)
    assert set_ == "12" + text.replace(" ", "")


def test_a_long_word_is_broken_after_a_hyphen_or_slash() -> None:
    """Where a word has a natural place to break, it is broken there."""
    pieces = measured_words("alternator-to-battery/junction-box-cable", TEXT)
    assert len(pieces) > 1
    assert all(piece.text[-1] in "-/" for piece in pieces[:-1])


def test_what_is_left_of_a_long_word_stays_whole() -> None:
    """A hyphen in a piece that fits is no reason to break it."""
    pieces = [piece.text for piece in measured_words("W" * 12 + "-left-over", TEXT)]
    assert len(pieces) > 1
    assert pieces[-1] == "-left-over"


def test_a_no_break_space_holds_words_together() -> None:
    """A value is never split from its unit."""
    assert [word.text for word in measured_words(f"below 12.2{NO_BREAK}V", TEXT)] == [
        "below",
        f"12.2{NO_BREAK}V",
    ]


def test_a_signal_word_comes_first_and_notice_has_no_warning_sign() -> None:
    """The safety alert symbol is for injury only (ANSI Z535.4)."""
    warned = box_text(node("Pull the belt", caution=Signal.WARNING))
    noticed = box_text(node("Pull the plug", caution=Signal.NOTICE))
    assert [word.text for word in warned.paragraphs[0]] == [f"⚠{NO_BREAK}WARNING"]
    assert [word.text for word in noticed.paragraphs[0]] == ["NOTICE"]
