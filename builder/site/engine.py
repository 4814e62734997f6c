"""The site engine, and all that we know about it: its settings and its run.

In: pages as Markdown, and the shop. Out: framed pages.

The engine only puts frames round pages. No hook of it is used, so that another engine that reads
the same folder can take its place. All of its settings and templates are ours: of the shop it gets
a few words of text, so that nothing in a shop's folder can run while its site is built.
"""

import logging
import os
import shutil
import tempfile
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from importlib.metadata import version
from pathlib import Path
from typing import Any

import yaml
from markupsafe import escape

from builder.cache.digest import digest, file_digest, files_in
from builder.model.shop import Shop

THEME = Path(__file__).parent / "theme"


# Only what lies in the folder of the site may be loaded, and no script that stands in a page runs.
POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; "
    "font-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'self'; object-src 'none'"
)
ENTRIES = (  # name, address, folder in which the entry counts as the current one
    ("Systems", "systems/index.html", "systems/"),
    ("Lamps", "lamps/index.html", "lamps/"),
    ("Codes", "codes/index.html", "codes/"),
    ("How-to", "how-to/index.html", "how-to/"),
    ("Set-up", "modules/index.html", "modules/"),
    ("More", "more.html", "more"),
)
# Of the engine's own files no page asks for these; the first two have a date in them.
UNUSED = ("sitemap.xml", "assets/javascripts/")
EPOCH = "1704067200"  # a fixed moment: the same files give the same bytes on any day


def key(settings: dict[str, Any]) -> str:
    """Hash what the frame of a page depends on, beside the page's own head."""
    versions = f"mkdocs {version('mkdocs')}, mkdocs-material {version('mkdocs-material')}"
    theme = [file_digest(file) for file in files_in(THEME)]
    return digest(versions, sorted(settings.items()), *theme)


def settings(shop: Shop) -> dict[str, Any]:
    """Return the engine's settings; text of the shop is escaped, for the templates do not."""
    return {
        "site_name": str(escape(shop.name)),
        "site_url": str(shop.site_address) or None,
        "site_author": str(escape(shop.site.author)),
        "copyright": str(escape(shop.site.copyright)),
        "docs_dir": "pages",
        "use_directory_urls": False,
        "plugins": [],  # the search is our own
        "nav": [{"Home": "index.md"}],  # index pages lead on: a long nav grows with the square
        "markdown_extensions": [],
        "validation": {"omitted_files": "ignore", "not_found": "ignore"},
        "theme": {"name": "material", "language": "en", "custom_dir": "theme", "font": False},
        "extra": {
            "generator": False,
            "policy": POLICY,
            "entries": [{"name": n, "href": h, "under": u} for n, h, u in ENTRIES],
        },
    }


def frames(pages: Mapping[str, str], settings: dict[str, Any]) -> Iterator[tuple[str, bytes]]:
    """Frame pages; yields every file of the engine by its name, the pages among them.

    `pages` are Markdown by path; without any the engine is not even started. Raises RuntimeError
    where the engine refuses what we gave it: that is our mistake.
    """
    if not pages:
        return
    with tempfile.TemporaryDirectory(prefix="baytree-") as folder:
        lay_out(Path(folder), pages, settings)
        _run(Path(folder))
        site = Path(folder) / "site"
        for file in files_in(site):
            if not file.relative_to(site).as_posix().startswith(UNUSED):
                yield file.relative_to(site).as_posix(), file.read_bytes()


def lay_out(folder: Path, pages: Mapping[str, str], settings: dict[str, Any]) -> None:
    """Write what the engine reads: its settings, the frame, the pages."""
    text = yaml.safe_dump(settings, sort_keys=True, allow_unicode=True)
    (folder / "mkdocs.yml").write_text(text, "utf-8")
    shutil.copytree(THEME, folder / "theme")
    for path, page in pages.items():
        file = folder / "pages" / f"{path}.md"
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(page, "utf-8", newline="\n")


def _run(folder: Path) -> None:
    with _quiet_and_timeless():
        from mkdocs.commands.build import build  # heavy, and wants the environment
        from mkdocs.config import load_config
        from mkdocs.exceptions import MkDocsException

        try:
            build(load_config(str(folder / "mkdocs.yml"), site_dir=str(folder / "site")))
        except MkDocsException as error:  # some of these would end the whole program
            raise RuntimeError(f"the site engine stopped: {error}") from error


@contextmanager
def _quiet_and_timeless() -> Iterator[None]:
    kept = dict(os.environ)
    log = logging.getLogger("mkdocs")
    level = log.level
    os.environ |= {"SOURCE_DATE_EPOCH": EPOCH, "NO_MKDOCS_2_WARNING": "1"}
    log.setLevel(logging.ERROR)
    try:
        yield
    finally:
        log.setLevel(level)
        os.environ.clear()
        os.environ.update(kept)
