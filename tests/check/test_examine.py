"""Files as they are read for a check."""

import shutil
from pathlib import Path

import pytest

from builder.check.examine import PendingTree, content_of, judge_all, unchecked_record
from builder.check.filled_knowledge import filled_knowledge
from builder.reader.source import MAX_FILE_BYTES

SHOP = Path(__file__).parents[1] / "shop"


def test_a_file_that_has_grown_too_large_is_another_file(tmp_path: Path) -> None:
    """Its last permitted byte counts, and so does the first that is one too many."""
    file = tmp_path / "tree.yml"
    contents = []
    most = MAX_FILE_BYTES
    for text in (b"#" * most, b"#" * (most - 1) + b"\n", b"#" * (most + 1)):
        file.write_bytes(text)
        contents.append(content_of(file))
    assert len(set(contents)) == 3


def test_a_file_that_is_not_there_is_no_empty_file(tmp_path: Path) -> None:
    """A file that can't be read may become an empty one: then it is read again."""
    (tmp_path / "empty.yml").write_bytes(b"")
    (tmp_path / "folder.yml").mkdir()
    assert content_of(tmp_path / "empty.yml")
    assert content_of(tmp_path / "gone.yml") == content_of(tmp_path / "folder.yml") == ""


def test_a_tree_that_changes_while_it_is_checked_is_not_judged(tmp_path: Path) -> None:
    """What would be said of it is about another text than the one that was read."""
    shop = Path(shutil.copytree(SHOP, tmp_path / "shop"))
    library, _ = filled_knowledge(shop)
    name = "trees/horn/silent.yml"
    pending = [PendingTree(name, unchecked_record(shop, library, name))]
    assert [record.content for record in judge_all(shop, pending, library)]
    (shop / name).write_text((shop / name).read_text("utf-8") + "# more\n", "utf-8")
    with pytest.raises(FileNotFoundError, match="was changed while"):
        judge_all(shop, pending, library)
