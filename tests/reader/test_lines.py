"""A finding is at the line and column that an editor shows."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.model.finding import Finding
from builder.reader.silences import silences_in
from builder.reader.source import Source, decode
from builder.reader.trees import tree_from

from .conftest import SHOP

SOUND = (SHOP / "trees/horn/silent.yml").read_text("utf-8")
TITLE = next(line for line in SOUND.split("\n") if line.startswith("title: "))
NOT_COUNTED = ["\u2028", "\u2029", "\x85", "\r"]  # YAML 1.1 ends a line at each; editors do not


def of(text: str) -> tuple[Finding, ...]:
    """Return the findings of a tree's text."""
    source = decode("trees/horn/silent.yml", text.encode("utf-8", "surrogatepass"))
    return (source,) if isinstance(source, Finding) else tree_from(source)[1]


@pytest.mark.parametrize("end", NOT_COUNTED, ids=ascii)
def test_a_line_end_that_editors_do_not_count_shifts_nothing(end: str) -> None:
    """It is reported at its place, and the mistake below it on its own line."""
    slip = SOUND.replace("    stop:", "    stopp:")
    title = SOUND.split("\n").index(TITLE) + 1
    shifted = slip.replace("title: ", f"title: a{end}b ", 1)
    places = [(one.rule, one.at.line) for one in of(shifted)]
    assert places == [("encoding", title), *((one.rule, one.at.line) for one in of(slip))]
    assert of(shifted)[0].at.column == len("title: a") + 1


def test_windows_line_ends_are_counted_once() -> None:
    """A file from Windows has the findings of the same file from elsewhere."""
    slip = SOUND.replace("    stop:", "    stopp:")
    assert of(slip.replace("\n", "\r\n")) == of(slip)


@pytest.mark.parametrize("end", NOT_COUNTED, ids=ascii)
def test_a_silence_counts_for_the_line_that_an_editor_shows(end: str) -> None:
    """The comment below such a line end silences its own line and no other."""
    [silence] = silences_in("a.yml", f"a: x{end}y\nb: c  # silence: slang because they say so\n")
    assert (silence.at.line, silence.line) == (2, 2)


OPEN = ["a: {", "a: {\n", "a: {b: \n", "a: [x,\n\n", "a: {b: [c, {\n", "? [", "- [\n# x\n", "{",
        "a: 'x\n", 'a: "x\n\n', "a: |", "x: {? \n"]  # fmt: skip


@pytest.mark.parametrize("text", OPEN, ids=repr)
def test_what_is_left_open_is_reported_where_it_opens(text: str) -> None:
    """The finding is at the last bracket or quote that opens, and never past the end."""
    [finding] = of(text)
    assert text.split("\n")[finding.at.line - 1][finding.at.column - 1] in "{['\"|"


def test_a_bracket_that_was_never_opened_is_reported() -> None:
    """It is not taken for one that is left open."""
    [finding] = of("a: ]\n")
    assert (finding.at.line, finding.at.column) == (1, 4)
    assert "never opened" in finding.message


UNSEEN = ["\u2028", "\x85", "\r\n", "\ufeff", "\x7f"]
PIECES = st.sampled_from(
    [*SOUND.splitlines(keepends=True), *"{[]},:-#'\"|>&*!?\t\r\n ", "a: ", "- ", *UNSEEN]
)


@settings(max_examples=300, deadline=None)
@given(st.lists(PIECES, max_size=30).map("".join))
def test_every_finding_is_on_a_line_of_the_file(text: str) -> None:
    """Whatever the text, there is such a line, and the column is on it or right behind it."""
    lines = text.replace("\r\n", "\n").split("\n")
    for finding in of(text):
        assert 1 <= finding.at.line <= len(lines)
        assert 1 <= finding.at.column <= len(lines[finding.at.line - 1]) + 1


@pytest.mark.parametrize("character", ["\x7f", "\x9f", "\ufffe", "\uffff"], ids=ascii)
def test_what_yaml_does_not_allow_is_reported_at_its_place(character: str) -> None:
    """YAML 1.1, section 4.1.1: these are not printable."""
    source = decode("trees/a/b.yml", f"a: b\nc: d{character}\n".encode())
    assert isinstance(source, Finding)
    assert (source.at.line, source.at.column) == (2, 5)


def test_a_source_is_text_alone() -> None:
    """A byte order mark isn't part of the first line."""
    source = decode("trees/a/b.yml", b"\xef\xbb\xbfa: b")
    assert isinstance(source, Source)
    assert source.text == "a: b"
