"""Files as they are read for a check."""

from pathlib import Path

from builder.check.examine import content_of
from builder.reader.source import MAX_FILE_BYTES


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
