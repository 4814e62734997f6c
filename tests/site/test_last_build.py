"""The work folder is only a cache: damaged, full or out of reach, it costs time, nothing else."""

import errno
import os
import random
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from builder.site import work

from .conftest import REPO, build_shop
from .test_build import contents

Damage = Callable[[Path], None]


def one_bit(file: Path) -> None:
    """Flip one bit in the middle of a file."""
    raw = bytearray(file.read_bytes())
    raw[len(raw) // 2] ^= 1
    file.write_bytes(raw)


def cut(file: Path) -> None:
    """Lose the second half of a file."""
    os.truncate(file, file.stat().st_size // 2)


def another(file: Path) -> None:
    """Let something else stand in the file, of the same length and with the same date."""
    before = file.stat()
    file.write_bytes(b"x" * before.st_size)
    os.utime(file, ns=(before.st_atime_ns, before.st_mtime_ns))


DAMAGED: tuple[tuple[str, Damage], ...] = (
    ("pages", one_bit),
    ("bodies", one_bit),
    ("bodies", another),
    ("bodies", Path.unlink),
    ("frames", cut),
    ("frames", another),
    ("theme", Path.unlink),
    ("mkdocs.yml", one_bit),
    ("kept.json", one_bit),
    ("kept.json", cut),
)


@pytest.fixture(scope="module")
def shop_and_site(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, dict[str, bytes]]:
    """Build the test shop once; each test damages its cache and mends it by building again."""
    shop = Path(shutil.copytree(REPO / "tests" / "shop", tmp_path_factory.mktemp("kept") / "shop"))
    build_shop(shop, shop.parent / "site")
    return shop, contents(shop.parent / "site")


@pytest.mark.parametrize(
    ("part", "damage"), DAMAGED, ids=(f"{part}-{damage.__name__}" for part, damage in DAMAGED)
)
def test_a_damaged_file_never_comes_into_the_site(
    shop_and_site: tuple[Path, dict[str, bytes]], part: str, damage: Damage
) -> None:
    """A damaged kept file is noticed, and the site comes out as from nothing."""
    shop, sound = shop_and_site
    site, place = shop.parent / "site", shop.parent / "cache" / part
    files = [place] if place.is_file() else [file for file in place.rglob("*") if file.is_file()]
    damage(random.Random(part).choice(sorted(files)))
    assert build_shop(shop, site).notes == ()
    assert contents(site) == sound


def out_of_reach(tmp_path: Path) -> Path:
    """A file stands where the cache folder would be."""
    (tmp_path / "file").write_text("", "utf-8")
    return tmp_path / "file" / "cache"


def read_only(_: Path) -> Path:
    """Nobody can make a folder here, not even the superuser."""
    return Path("/proc/baytree/cache")


def nowhere(_: Path) -> Path:
    """What comes of `~/.cache` for a user without a home."""
    return Path("~/.cache/baytree")


@pytest.mark.parametrize("place", [out_of_reach, read_only, nowhere], ids=lambda f: f.__name__)
def test_a_cache_that_cannot_be_used_stops_no_build(
    shop: Path, tmp_path: Path, place: Callable[[Path], Path], monkeypatch: pytest.MonkeyPatch
) -> None:
    """The site is the same, one note says why it took longer, and nothing is left lying about."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr("tempfile.tempdir", str(tmp_path / "temporary"))
    (tmp_path / "temporary").mkdir()
    build_shop(shop, tmp_path / "site")
    cache = place(tmp_path)
    (note,) = build_shop(shop, tmp_path / "again", cache=cache).notes
    assert str(cache) in note
    assert "can't be used" in note
    assert contents(tmp_path / "again") == contents(tmp_path / "site")
    assert not list((tmp_path / "temporary").iterdir())
    assert not (tmp_path / "~").exists()


@pytest.mark.parametrize("nth", [0, 40])
def test_a_disk_that_fills_up_stops_no_build(
    shop: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, nth: int
) -> None:
    """Full at the first page or in the middle: the rest of the work is done elsewhere."""
    build_shop(shop, tmp_path / "site", cache="first")
    write, turn = work._write, iter(range(10**9))

    def full(file: Path, content: bytes) -> None:
        if file.is_relative_to(tmp_path / "cache") and next(turn) >= nth:
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
        write(file, content)

    monkeypatch.setattr(work, "_write", full)
    (note,) = build_shop(shop, tmp_path / "again").notes
    assert "No space left" in note
    assert contents(tmp_path / "again") == contents(tmp_path / "site")


def test_trouble_elsewhere_is_not_taken_for_the_cache(shop: Path, tmp_path: Path) -> None:
    """A site that can't be written is an error and no note."""
    (tmp_path / "file").write_text("", "utf-8")
    with pytest.raises(OSError, match="file"):
        build_shop(shop, tmp_path / "file" / "site")
