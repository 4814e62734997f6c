"""The site engine, and all that we know about it: its settings and its run.

In: the work folder and the shop. Out: framed pages in a folder.

The engine only puts frames round pages. No hook of it is used, so that another engine that reads
the same folder can take its place. All of its settings and templates are ours: of the shop it gets
a few words of text, so that nothing in a shop's folder can run while its site is built.
"""

import logging
import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from importlib.metadata import version
from pathlib import Path
from typing import Any

import yaml
from markupsafe import escape

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
EPOCH = "1704067200"  # a fixed moment: the same files give the same bytes on any day


def versions() -> str:
    """Name what the look of a framed page depends on beside our own files."""
    return f"mkdocs {version('mkdocs')}, mkdocs-material {version('mkdocs-material')}"


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


def write_theme(work: Path) -> None:
    """Lay out the frame."""
    shutil.copytree(THEME, work / "theme")


def run(work: Path, out: Path) -> None:
    """Frame every page of the work folder that has no output in `out` yet.

    Raises RuntimeError where the engine refuses what we gave it: that is our mistake.
    """
    with _quiet_and_timeless():
        from mkdocs.commands.build import build  # heavy, and wants the environment
        from mkdocs.config import load_config
        from mkdocs.exceptions import MkDocsException

        try:
            config = load_config(str(work / "mkdocs.yml"), site_dir=str(out))
            build(config, dirty=True)
        except MkDocsException as error:  # some of these would end the whole program
            raise RuntimeError(f"the site engine stopped: {error}") from error
    for leftover in (
        "sitemap.xml",
        "sitemap.xml.gz",
    ):  # with the fixed moment as their date
        (out / leftover).unlink(missing_ok=True)
    shutil.rmtree(out / "assets" / "javascripts", ignore_errors=True)  # no page asks for them


def write_settings(work: Path, values: dict[str, Any]) -> None:
    """Write the engine's settings into the work folder."""
    text = yaml.safe_dump(values, sort_keys=True, allow_unicode=True)
    (work / "mkdocs.yml").write_text(text, "utf-8")


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
