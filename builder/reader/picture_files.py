"""The pictures of the articles, each checked before it is published.

In: `kb/how-to/pictures/`. Out: by name the bytes that a browser fetches, and the mistakes. All of
these are published, so a file that could run a script in a tech's browser is left out.
"""

import os
from functools import lru_cache
from pathlib import Path

from builder.model.finding import Finding
from builder.model.text import Position
from builder.pictures import photos
from builder.pictures.drawings import drawing_problem
from builder.pictures.problem import PictureProblem
from builder.reader.file_names import PICTURES
from builder.reader.folders import listing
from builder.reader.source import MAX_FILE_BYTES, file_problem, mistake, unreadable


def pictures(shop: Path) -> tuple[dict[str, int], list[Finding]]:
    """Return the size of every picture in bytes, by name, and what is problem with the others."""
    sizes: dict[str, int] = {}
    findings: list[Finding] = []
    for file in listing(shop, PICTURES).files:
        name = file.removeprefix(f"{PICTURES}/")
        if name.startswith(".") or "/" in name:
            continue  # left by a tool, or reported as misplaced
        if finding := _mistake(shop, shop / file):
            findings.append(finding)
        else:
            size = (shop / file).stat().st_size
            sizes[name] = (
                size if name.lower().endswith(".svg") else min(size, photos.MAX_PUBLISHED_BYTES)
            )
    return sizes, findings


def _mistake(shop: Path, path: Path) -> Finding | None:
    file, kind = path.relative_to(shop).as_posix(), path.suffix.lower()
    if kind != ".svg" and kind not in photos.PHOTO_FORMATS:
        return _unsafe(
            file,
            PictureProblem(
                f"`{path.name}` isn't a picture that a page can show", _format_hint(kind)
            ),
        )
    if unreadable_file := file_problem(
        shop, path, MAX_FILE_BYTES if kind == ".svg" else photos.MAX_PHOTO_BYTES
    ):
        return unreadable_file
    if not Path(os.path.realpath(path)).is_relative_to(Path(os.path.realpath(shop), PICTURES)):
        return mistake("link", file, f"this link leads out of {PICTURES}",
                       "it would publish a file from elsewhere, such as a closed job",
                       "put the picture itself here")  # fmt: skip
    try:
        status = path.stat()
        problem = _problem(path, (status.st_ino, status.st_size, status.st_mtime_ns))
    except OSError as error:
        return unreadable(file, error)
    return _unsafe(file, problem) if problem else None


@lru_cache(2000)  # pictures: `serve` looks again only at one that was saved
def _problem(path: Path, _saved: tuple[int, ...]) -> PictureProblem | None:
    if path.suffix.lower() == ".svg":
        return drawing_problem(path.read_bytes())
    return photos.photo_problem(path)


def _format_hint(kind: str) -> str:
    if kind in (".heic", ".heif"):
        return "save it as JPEG; phones have a camera setting for this"
    return "move it; pictures end in .svg, .png, .jpg, .webp, .avif, or .gif"


def _unsafe(file: str, wrong: PictureProblem) -> Finding:
    at = Position(file, wrong.line, wrong.column, wrong.line, wrong.column + 1)
    return mistake("unsafe-picture", at, wrong.message,
                   "pictures open in the browser of everyone in the shop",
                   wrong.hint)  # fmt: skip
