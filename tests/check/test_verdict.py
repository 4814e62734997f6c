"""The memory of a check: it saves work and never changes what is found."""

import pickle
import random
import shutil
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from builder.cache.database import cache_file, opened, put_row, rows, transaction
from builder.check.unjudged_library import read_library
from builder.check.verdict import check, known_library
from builder.model.finding import Finding

TODAY = date(2026, 11, 1)
SHOP = Path(__file__).parents[1] / "shop"
# Edits that an author makes, sound and unsound; each is made to some tree or file of the shop.
EDITS = (
    ("trees/*/*.yml", "title: ", "title: Another "),
    ("trees/*/*.yml", "status: ready", "status: draft"),
    ("trees/*/*.yml", "    minutes: ", "    note: Look twice.\n    minutes: "),
    ("trees/*/*.yml", "branch: ", "branch: nowhere-"),
    ("trees/*/*.yml", "does: [check-supply]", "does: [clear-codes]"),
    ("trees/*/*.yml", "  words:\n", "  words:\n    - yet another way to say it\n"),
    ("trees/*/*.yml", "branch: network/", "branch: nowhere/"),
    ("trees/*/*.yml", "format: 1\n", "format: 1\n# a line more\n"),
    ("kb/tools.yml", "multimeter:", "meter:"),
    ("kb/hazards.yml", "signal: WARNING", "signal: NOTICE"),
)


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """Copy the tests' shop, whose trees hand over to each other."""
    return Path(shutil.copytree(SHOP, tmp_path / "shop"))


def findings_of(shop: Path) -> tuple[Finding, ...]:
    """Check a shop."""
    with opened(shop) as cache:
        verdict = check(shop, cache, TODAY)
    assert cache.notes == []
    return verdict.findings


def test_a_check_with_a_memory_finds_what_one_without_finds(shop: Path) -> None:
    """After any edit the findings are those of a first check, to the line and the word."""
    choose, edited = random.Random(7), set()
    findings_of(shop)
    for number in range(24):
        pattern, old, new = EDITS[number % len(EDITS)]
        files = [file for file in sorted(shop.glob(pattern)) if old in file.read_text("utf-8")]
        if files:
            edited.add(old)
            file = choose.choice(files)
            file.write_text(file.read_text("utf-8").replace(old, new, 1), "utf-8")
        remembered = findings_of(shop)
        cache_file(shop).unlink()
        assert remembered == findings_of(shop), f"after {old!r} became {new!r}"
    assert edited == {old for _, old, _ in EDITS}


def test_a_library_by_the_memory_is_the_library(shop: Path) -> None:
    """Who prints or searches after an edit has the trees as they are now."""
    findings_of(shop)
    file = shop / "trees/charging/battery-lamp.yml"
    file.write_text(file.read_text("utf-8").replace("title: ", "title: Another ", 1), "utf-8")
    read = read_library(shop)[0]
    with opened(shop) as cache:
        known = known_library(shop, cache)
        assert dict(known.trees) == dict(read.trees)
    assert replace(known, trees={}, entries={}) == replace(read, trees={})
    assert (known.listings, known.callers) == (read.listings, read.callers)


def test_what_has_not_changed_is_not_read_again(
    shop: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A second check reads no tree."""
    findings_of(shop)
    read: list[str] = []
    monkeypatch.setattr("builder.check.examine.read_tree", lambda _, path: read.append(path.name))
    findings_of(shop)
    assert read == []


def test_a_shop_cannot_bring_its_own_memory(shop: Path) -> None:
    """What a change brings along cannot speak for itself: the memory is not in the shop."""
    assert not cache_file(shop).resolve().is_relative_to(shop.resolve())
    assert cache_file(shop) != cache_file(shop.parent)


class Trap:
    """A value that runs something when it is read back carelessly."""

    def __reduce__(self) -> tuple[object, tuple[str]]:
        """Touch a file."""
        return Path.touch, (Path("trap-has-run"),)  # type: ignore[return-value]


def test_a_tampered_cache_runs_nothing(shop: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Rows are read back by a reader that makes values of the model and nothing else."""
    monkeypatch.chdir(shop)
    before = findings_of(shop)
    for content in (pickle.dumps(Trap()), b"", b"nonsense", pickle.dumps({"a": 1}), b"[1, 2]"):
        for kind in ("tree", "summary", "findings"):
            with opened(shop) as cache, transaction(cache):
                for name, _ in list(rows(cache, kind)):
                    put_row(cache, kind, name, content)
            assert findings_of(shop) == before
    assert not (shop / "trap-has-run").exists()
