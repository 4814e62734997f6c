"""The pictures of the articles as they are published: drawings as they are, photos made small.

In: the shop, the names of its pictures, a folder for photos made before. Out: files among the
pages, and a finding for each that turns out to be damaged. A photo is made small once.
"""

import hashlib
import shutil
from collections.abc import Iterable, Iterator
from pathlib import Path

import PIL

from builder.model.finding import Finding, Severity
from builder.model.text import Position
from builder.pictures.photos import published
from builder.pictures.unfit import Unfit

PICTURES = Path("how-to") / "pictures"


def write_pictures(
    shop: Path, names: Iterable[str], pages: Path, cache: Path
) -> tuple[Finding, ...]:
    """Lay out every picture; photos that no picture needs any more are forgotten."""
    shutil.rmtree(pages / PICTURES, ignore_errors=True)
    (pages / PICTURES).mkdir(parents=True)
    cache.mkdir(parents=True, exist_ok=True)
    used: set[Path] = set()
    findings = tuple(_written(shop / "kb", names, pages, cache, used))
    for old in set(cache.iterdir()) - used:
        old.unlink()
    return findings


def _written(
    kb: Path, names: Iterable[str], pages: Path, cache: Path, used: set[Path]
) -> Iterator[Finding]:
    for name in names:
        original = kb / PICTURES / name
        if name.lower().endswith(".svg"):
            shutil.copyfile(original, pages / PICTURES / name)
            continue
        small = cache / _key(original)
        used.add(small)
        if not small.exists():
            made = published(original)
            if isinstance(made, Unfit):
                yield _finding(name, made)
                continue
            small.write_bytes(made)
        shutil.copyfile(small, pages / PICTURES / name)


def _key(photo: Path) -> str:
    """Name a photo by its content and by what makes it small."""
    with photo.open("rb") as file:
        found = hashlib.file_digest(file, "sha256")
    found.update(f"{PIL.__version__} {photo.suffix.lower()}".encode())
    return found.hexdigest()


def _finding(name: str, wrong: Unfit) -> Finding:
    at = Position(f"kb/{(PICTURES / name).as_posix()}", 1, 1, 1, 2)
    return Finding("unsafe-picture", Severity.ERROR, at, wrong.message,
                   "the page would show nothing in its place", wrong.hint)  # fmt: skip
