"""The pictures of the articles: which there are, and that no page is among them.

In: `kb/how-to/pictures/`. Out: how many bytes of each a reader has to fetch, by name, and the
mistakes. All that is named here is published, so what could run a script in a reader's browser is
left out.
"""

import os
from pathlib import Path

from builder.model.finding import Finding
from builder.model.text import Position
from builder.pictures import photos
from builder.pictures.drawings import unfit_drawing
from builder.pictures.unfit import Unfit
from builder.reader.astray import PICTURES
from builder.reader.folders import listing
from builder.reader.source import LARGEST, mistake, unfit, unreadable


def pictures(shop: Path) -> tuple[dict[str, int], list[Finding]]:
    """Return the bytes of every picture by its name, and what is wrong with the others."""
    sizes: dict[str, int] = {}
    findings: list[Finding] = []
    for file in listing(shop, PICTURES).files:
        name = file.removeprefix(f"{PICTURES}/")
        if name.startswith(".") or "/" in name:
            continue  # the first are of tools, the others are told as lying astray
        if told := _mistake(shop, shop / file):
            findings.append(told)
        else:
            size = (shop / file).stat().st_size
            sizes[name] = size if name.lower().endswith(".svg") else min(size, photos.PUBLISHED)
    return sizes, findings


def _mistake(shop: Path, path: Path) -> Finding | None:
    file, kind = path.relative_to(shop).as_posix(), path.suffix.lower()
    if kind != ".svg" and kind not in photos.KINDS:
        return _unsafe(file, Unfit(f"`{path.name}` is no picture that is shown", _other(kind)))
    if wrong_file := unfit(shop, path, LARGEST if kind == ".svg" else photos.LARGEST):
        return wrong_file
    if not Path(os.path.realpath(path)).is_relative_to(Path(os.path.realpath(shop), PICTURES)):
        return mistake("link", file, f"this is a link out of {PICTURES}",
                       "a file from elsewhere, such as a closed job, would be published as it is",
                       "put the picture itself here")  # fmt: skip
    try:
        wrong = unfit_drawing(path.read_bytes()) if kind == ".svg" else photos.unfit_photo(path)
    except OSError as error:
        return unreadable(file, error)
    return _unsafe(file, wrong) if wrong else None


def _other(kind: str) -> str:
    if kind in (".heic", ".heif"):
        return "save it as JPEG; the camera's settings offer to do so with every photo"
    return "put it elsewhere; pictures end in .svg, .png, .jpg, .webp, .avif or .gif"


def _unsafe(file: str, wrong: Unfit) -> Finding:
    at = Position(file, wrong.line, wrong.column, wrong.line, wrong.column + 1)
    return mistake("unsafe-picture", file, wrong.message,
                   "what is published here opens in the browser of everyone in the shop",
                   wrong.hint, at)  # fmt: skip
