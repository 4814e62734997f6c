"""`baytree words` explains a word, and offers the nearest where there is none."""

import pytest

from builder.commands.main import main


def test_it_explains_a_word_in_each_meaning(capsys: pytest.CaptureFixture[str]) -> None:
    """What it means, what it may be, an example, and where it may stand."""
    assert main(["words", "kind"]) == 0
    out = capsys.readouterr().out
    assert "one of:   foreman, not-found, not-this-tree, customer, unsafe" in out
    assert "default:  foreman" in out
    assert "where:    a stop" in out
    assert "where:    `figure` in a check (required)" in out


def test_it_lists_every_word_under_the_smallest_tree(capsys: pytest.CaptureFixture[str]) -> None:
    """Whoever asks for no word reads the tree first."""
    assert main(["words"]) == 0
    out = capsys.readouterr().out
    assert out.index("title: Horn does not work") < out.index("Any step")


@pytest.mark.parametrize(("typed", "meant"), [("hazrds", "hazards"), ("at-most", "at_most")])
def test_the_nearest_word_is_offered(
    typed: str, meant: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """A misspelled word costs no second look into a list."""
    assert main(["words", typed]) == 2
    assert f"`{meant}`" in capsys.readouterr().err
