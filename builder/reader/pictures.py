"""The pictures of the articles: which there are, and that no page is among them.

In: `kb/how-to/pictures/`. Out: their sizes by name, and the mistakes. All that lies there is
published as it is, so what could run a script in a reader's browser is left out.
"""

import re
from pathlib import Path

from builder.model.finding import Finding
from builder.model.text import Position
from builder.reader.source import at_index, mistake

TYPES = frozenset({".svg", ".png", ".jpg", ".jpeg", ".webp", ".avif", ".gif"})
# A drawing opened by itself is a page: these run a script in it, or fetch something from elsewhere.
ACTIVE = re.compile(
    r"<\s*(?:\w+:)?(?:script|foreignObject|iframe)\b|<!ENTITY|javascript:"
    r"|<[^<>]*\son[a-z]+\s*=|<[^<>]*(?:href|src)\s*=\s*[\"']\s*(?!#|data:image/)[^\"']",
    re.IGNORECASE,
)


def pictures(shop: Path) -> tuple[dict[str, int], list[Finding]]:
    """Return the bytes of every picture by its name, and what is wrong with the others."""
    sizes: dict[str, int] = {}
    findings: list[Finding] = []
    for path in sorted((shop / "kb/how-to/pictures").glob("[!.]*")):
        if path.is_dir() and not path.is_symlink():
            continue
        if found := _mistake(shop, path):
            findings.append(found)
        else:
            sizes[path.name] = path.stat().st_size
    return sizes, findings


def _mistake(shop: Path, path: Path) -> Finding | None:
    file = path.relative_to(shop).as_posix()
    folder = shop.resolve() / "kb/how-to/pictures"
    if not path.is_file() or not path.resolve().is_relative_to(folder):
        return mistake("link", file, "this is a link to nothing, or out of kb/how-to/pictures",
                       "a file from elsewhere, such as a closed job, would be published as it is",
                       "put the picture itself here")  # fmt: skip
    if path.suffix.lower() not in TYPES:
        return _unsafe(file, f"`{path.name}` is no picture", "put it elsewhere; pictures end in "
                       ".svg, .png, .jpg, .webp, .avif or .gif")  # fmt: skip
    if path.suffix.lower() == ".svg":
        text = path.read_text("utf-8-sig", "replace")
        if found := ACTIVE.search(text):
            words = " ".join(found.group().split())[:60]
            message = f"this drawing runs a script or fetches something: `{words}`"
            hint = "save it as a plain drawing, without scripts and with all of it in this file"
            return _unsafe(file, message, hint, at_index(file, text, found.start(), len(words)))
    return None


def _unsafe(file: str, message: str, hint: str, at: Position | None = None) -> Finding:
    return mistake("unsafe-picture", file, message,
                   "it is published as it is, and could run in a reader's browser",
                   hint, at)  # fmt: skip
