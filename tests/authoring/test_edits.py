"""Edits are made at their place and nowhere else, in any kind of file."""

import pytest

from builder.authoring.edits import apart, edited, line_after, span_in
from builder.model.finding import Edit, edit_in_line


def made(text: str, *edits: Edit) -> str:
    """Return the text with the edits."""
    return edited(text, apart(span for one in edits if (span := span_in(text, one))))


@pytest.mark.parametrize(
    ("text", "edit", "after"),
    [
        ("a: old # why\n", edit_in_line("", 1, 4, "old", "new"), "a: new # why\n"),
        ("a: 1\r\nb: 2", edit_in_line("", 2, 4, "2", "3"), "a: 1\r\nb: 3"),
        ("\ufeffa: 1\n", edit_in_line("", 1, 1, "a", "b"), "\ufeffb: 1\n"),
        ("a: b: 1\r\n", edit_in_line("", 1, 3, " ", "\n  "), "a:\r\n  b: 1\r\n"),
        ("a: [1\n", edit_in_line("", 1, 6, "", "]"), "a: [1]\n"),
        ("a: 'old'\n", edit_in_line("", 1, 4, "'old'", "new"), "a: new\n"),
    ],
)
def test_an_edit_changes_its_place_alone(text: str, edit: Edit, after: str) -> None:
    """Line ends, a byte order mark and what stands beside it stay."""
    assert made(text, edit) == after


@pytest.mark.parametrize(("new", "after"), [("new", "a: 'new'"), ("it's", "a: 'old'")])
def test_a_value_keeps_its_quotes(new: str, after: str) -> None:
    """The position of a value has its quotes in it, the words haven't; a quote in them is left."""
    at = edit_in_line("", 1, 4, "'old'", "").at
    assert made("a: 'old'", Edit(at, "old", new)) == after


def test_an_edit_of_another_text_is_left_out() -> None:
    """Where the old words aren't there, in no line, or fold over two, nothing is changed."""
    text = "a: b\nc: d\n"
    folded = edit_in_line("", 1, 4, "b", "").at._replace(end_line=2)
    others = edit_in_line("", 1, 4, "x", "y"), edit_in_line("", 9, 1, "a", "y")
    for edit in (*others, Edit(folded, "b", "y")):
        assert made(text, edit) == text


def test_edits_that_touch_are_not_made_together() -> None:
    """The first is made; the other one waits for the file to be read again."""
    edits = (edit_in_line("", 1, 1, "ab", "x"), edit_in_line("", 1, 3, "c", "y"),
             edit_in_line("", 1, 6, "f", "z"))  # fmt: skip
    assert made("abcdef", *edits) == "xcdez"


def test_lines_below_a_new_line_move_down() -> None:
    """A correction is told with the number that its line has at the end."""
    span = span_in("a: b: 1\nc: 2\n", edit_in_line("", 1, 3, " ", "\n  "))
    assert span
    assert [line_after(line, [span]) for line in (1, 2)] == [2, 3]
