"""Silencing comments, and the line that each counts for."""

from builder.reader.silences import silences_in

TEXT = """\
steps:
  # silence: slang because it is printed there
  # and a second line of reasons

  battery:
    check: Dead battery  # silence: abbreviation because everybody knows
    note: nothing here  # silence: slang
"""


def test_a_comment_counts_for_its_line_or_for_the_next_that_is_none() -> None:
    """On a line of its own it counts for what follows, else for its own line."""
    found = silences_in("trees/a/b.yml", TEXT)
    assert [(one.rule, one.line, one.reason) for one in found] == [
        ("slang", 5, "it is printed there"),
        ("abbreviation", 6, "everybody knows"),
        ("slang", 7, ""),
    ]
    assert found[1].at[1:3] == (6, 26)


def test_a_file_without_one_has_none() -> None:
    """Most files are done with one look."""
    assert silences_in("trees/a/b.yml", "steps:\n  # a comment\n") == ()
