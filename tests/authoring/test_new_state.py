"""A state of the shop's own is added to those it has, and nothing else changes."""

from pathlib import Path

from builder.authoring.new_entry import new_entry
from builder.authoring.new_shop import new_shop
from builder.authoring.not_written import NotWritten
from builder.check.unchecked_library import read_library
from tests.authoring.test_new_entry import TODAY


def test_it_is_added_below_the_others(tmp_path: Path) -> None:
    """Every line that was there stays, and the walk has words for the new one."""
    new_shop(tmp_path)
    before = (tmp_path / "kb/conditions.yml").read_bytes()
    path = new_entry(tmp_path, "state", "rear-seat-down", TODAY)
    assert isinstance(path, Path)
    assert path.read_bytes().startswith(before)
    states = read_library(tmp_path)[0].conditions
    assert states["rear-seat-down"].text == "rear seat down"


def test_one_that_is_there_is_left_alone(tmp_path: Path) -> None:
    """A second one of a name would be a finding at once."""
    new_shop(tmp_path)
    assert isinstance(new_entry(tmp_path, "state", "key-on", TODAY), NotWritten)


def test_a_shop_without_states_gets_its_first(tmp_path: Path) -> None:
    """The file is written, and can be read."""
    (tmp_path / "trees").mkdir()
    new_entry(tmp_path, "state", "rear-seat-down", TODAY)
    assert [*read_library(tmp_path)[0].conditions] == ["rear-seat-down"]
