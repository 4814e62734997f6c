"""The cache of a build is only a cache: damaged or out of reach, it costs time."""

import os
import random
import sqlite3
from collections.abc import Callable
from pathlib import Path

import pytest

from builder.cache import database
from builder.cache.database import cache_file

from .conftest import build_shop, build_with, few_trees
from .test_build_site import contents

Damage = Callable[[Path], None]


def one_bit(file: Path) -> None:
    """Flip one bit somewhere in the file."""
    raw = bytearray(file.read_bytes())
    raw[random.Random(len(raw)).randrange(len(raw))] ^= 1
    file.write_bytes(raw)


def cut(file: Path) -> None:
    """Lose the second half of a file."""
    os.truncate(file, file.stat().st_size // 2)


def zeros(file: Path) -> None:
    """Lose a part of the file, as after a crash of the machine."""
    raw = bytearray(file.read_bytes())
    middle = len(raw) // 2
    raw[middle : middle + 20_000] = bytes(20_000)
    file.write_bytes(raw)


def nonsense(file: Path) -> None:
    """Replace the file's content with something else."""
    file.write_bytes(b"x" * file.stat().st_size)


def empty(file: Path) -> None:
    """Empty the file."""
    file.write_bytes(b"")


def no_tables(file: Path) -> None:
    """Replace the file with a database of another program."""
    file.unlink()
    with sqlite3.connect(file) as connection:
        connection.execute("CREATE TABLE row (other TEXT)")
    connection.close()


def of_rows(sql: str) -> Damage:
    """Return a function that damages rows but not the file."""

    def damage(file: Path) -> None:
        with sqlite3.connect(file) as connection:
            connection.execute(sql)
        connection.close()

    return damage


DAMAGED: dict[str, Damage] = {
    "one bit": one_bit,
    "cut": cut,
    "zeros": zeros,
    "nonsense": nonsense,
    "empty": empty,
    "foreign tables": no_tables,
    "bodies changed": of_rows("UPDATE row SET content = CAST('x' AS BLOB) WHERE kind = 'body'"),
    "frames gone": of_rows("DELETE FROM row WHERE kind = 'frame'"),
    "engine's files changed": of_rows("UPDATE row SET content = NULL WHERE kind = 'engine'"),
    "rows exchanged": of_rows("UPDATE OR REPLACE row SET name = 'about' WHERE name = 'more'"),
    "pages changed": of_rows("UPDATE row SET content = CAST('[]' AS BLOB) WHERE kind = 'page'"),
    "search index changed": of_rows("UPDATE row SET content = NULL WHERE kind = 'search'"),
}


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, dict[str, bytes]]:
    """Build the tests' shop once; each test damages its cache and builds again."""
    shop = few_trees(tmp_path_factory.mktemp("cache"))
    build_shop(shop, shop.parent / "site")
    return shop, contents(shop.parent / "site")


@pytest.mark.parametrize("damage", DAMAGED.values(), ids=DAMAGED)
def test_a_damaged_cache_never_reaches_the_site(
    built: tuple[Path, dict[str, bytes]], damage: Damage
) -> None:
    """Whatever happened to the cache, the site is the same as from scratch."""
    shop, sound = built
    damage(cache_file(shop))
    build_shop(shop, shop.parent / "site")
    assert contents(shop.parent / "site") == sound


def out_of_reach(tmp_path: Path) -> Path:
    """Put a file where the cache folder would be."""
    (tmp_path / "file").write_text("", "utf-8")
    return tmp_path / "file" / "cache.sqlite"


def read_only(_: Path) -> Path:
    """Return a place where no user can create a folder, not even root."""
    return Path("/proc/baytree/cache.sqlite")


def folder(tmp_path: Path) -> Path:
    """Put a folder where the file would be."""
    (tmp_path / "cache.sqlite").mkdir()
    return tmp_path / "cache.sqlite"


@pytest.mark.parametrize("place", [out_of_reach, read_only, folder], ids=lambda f: f.__name__)
def test_a_cache_that_cannot_be_used_stops_no_build(
    shop: Path, tmp_path: Path, place: Callable[[Path], Path], monkeypatch: pytest.MonkeyPatch
) -> None:
    """The site is the same, and a note says why it took longer."""
    build_shop(shop, tmp_path / "site", cached=False)
    file = place(tmp_path)
    monkeypatch.setattr(database, "cache_file", lambda _: file)
    with database.opened(shop) as cache:
        assert len(cache.notes) == 1
        assert "can't be used" in cache.notes[0]
    build_shop(shop, tmp_path / "again")
    assert contents(tmp_path / "again") == contents(tmp_path / "site")


def test_a_user_without_a_home_can_build(shop: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Without a user folder the build works without a cache."""

    def no_home(_: str) -> Path:
        raise RuntimeError("no home")

    monkeypatch.setattr("platformdirs.user_cache_path", no_home)
    assert build_shop(shop, shop.parent / "site").pages > 0


@pytest.mark.parametrize("kilobytes", [0, 60, 400])
def test_a_full_disk_stops_no_build(shop: Path, tmp_path: Path, kilobytes: int) -> None:
    """The build goes on without the cache, whether the disk is full at once or later."""
    build_shop(shop, tmp_path / "site", cached=False)
    with database.opened(shop) as cache:
        pages = 1 + kilobytes // 4 + cache.connection.execute("PRAGMA page_count").fetchone()[0]
        cache.connection.execute(f"PRAGMA max_page_count = {pages}")
        build_with(shop, tmp_path / "again", cache)
        assert len(cache.notes) == 1
        assert "full" in cache.notes[0]
    assert contents(tmp_path / "again") == contents(tmp_path / "site")


def test_two_runs_at_once_do_no_harm(shop: Path, tmp_path: Path) -> None:
    """While another run holds the cache, a build works without it."""
    build_shop(shop, tmp_path / "site", cached=False)
    other = sqlite3.connect(cache_file(shop), isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    try:
        build_shop(shop, tmp_path / "again")
    finally:
        other.close()
    assert contents(tmp_path / "again") == contents(tmp_path / "site")


def test_an_error_elsewhere_is_no_cache_error(shop: Path, tmp_path: Path) -> None:
    """A site that can't be written is an error, not a note."""
    (tmp_path / "file").write_text("", "utf-8")
    with pytest.raises(OSError, match="file"):
        build_shop(shop, tmp_path / "file" / "site")
