"""A tree as everything behind the check gets it."""

from datetime import date
from pathlib import Path

import pytest

from builder.cache.database import temporary
from builder.check.filled_knowledge import known_knowledge
from builder.check.filled_tree import kept_tree_of, saved_tree_of, tree_of
from builder.check.unchecked_library import read_library
from builder.check.verdict import verdict_of
from builder.model.library import Library, NotThereError
from builder.reader.source import Source, read_source

SHOP = Path(__file__).parents[1] / "shop"
TREE = "charging/battery-lamp"


@pytest.fixture(scope="module")
def library() -> Library:
    """Read the tests' shop."""
    return read_library(SHOP)[0]


def test_a_tree_is_the_same_from_its_file_and_from_its_text(library: Library) -> None:
    """And what is changed at the vehicle before each of its steps is in it."""
    source = read_source(SHOP, SHOP / library.listings[TREE].file)
    assert isinstance(source, Source)
    tree = tree_of(SHOP, library, TREE)
    assert tree == saved_tree_of({source.file: source}, library, TREE)
    assert any(step.changeover for step in tree.steps.values())


def test_a_build_reads_no_tree_that_its_check_has_read(library: Library, tmp_path: Path) -> None:
    """What the check read is kept, and asked for it needs no file."""
    with temporary() as cache:
        assert verdict_of(known_knowledge(SHOP), cache, date(2026, 11, 1)).packed == {}
    with temporary() as cache:
        verdict = verdict_of(known_knowledge(SHOP), cache, date(2026, 11, 1), keep=True)
        later = verdict_of(known_knowledge(SHOP), cache, date(2026, 11, 1), keep=True)
    assert later.packed == {}, "the second check has read nothing"
    for id_ in library.listings:
        assert kept_tree_of(tmp_path, verdict.packed, library, id_) == tree_of(SHOP, library, id_)


def test_a_procedure_has_its_tree_by_its_name(library: Library) -> None:
    """Pages and prints ask for it as for any tree."""
    assert tree_of(SHOP, library, "procedures/first-stop").is_procedure


def test_a_tree_that_is_not_there_is_named(library: Library) -> None:
    """Whether the library never had it, or its text is gone by now."""
    with pytest.raises(NotThereError, match="charging/nowhere"):
        tree_of(SHOP, library, "charging/nowhere")
    with pytest.raises(NotThereError, match=TREE):
        saved_tree_of({}, library, TREE)
