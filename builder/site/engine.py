"""The site engine, and all that we know about it: its settings and its run.

In: the work folder and the shop's own `site_config/mkdocs.yml`. Out: framed pages in a folder.

The engine only puts frames round pages. No hook of it is used, so that another engine that reads
the same folder can take its place.
"""

import logging
import os
import shutil
from collections.abc import Iterator, Mapping
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


def settings(shop: Shop, own: Mapping[str, Any]) -> dict[str, Any]:
    """Lay what the build relies on over the shop's own settings of the engine."""
    theme: dict[str, Any] = {"name": "material", "language": "en"} | dict(own.get("theme") or {})
    theme |= {"custom_dir": "theme", "font": False}
    return dict(own) | {
        "site_name": str(escape(shop.name)),
        "site_url": str(shop.site_address) or None,
        "docs_dir": "pages",
        "use_directory_urls": False,
        "plugins": [],  # the search is our own
        "nav": [{"Home": "index.md"}],  # index pages lead on: a long nav grows with the square
        "markdown_extensions": [],
        "validation": {"omitted_files": "ignore", "not_found": "ignore"},
        "theme": theme,
        "extra": dict(own.get("extra") or {})
        | {
            "generator": False,
            "policy": POLICY,
            "entries": [{"name": n, "href": h, "under": u} for n, h, u in ENTRIES],
        },
    }


def write_theme(work: Path, shop_files: Path) -> None:
    """Lay out the frame, and over it the files of the same name that the shop has of its own."""
    shutil.copytree(THEME, work / "theme")
    if shop_files.is_dir():
        shutil.copytree(shop_files, work / "theme", dirs_exist_ok=True)


def run(work: Path, out: Path) -> None:
    """Frame every page of the work folder that has no output in `out` yet.

    Raises `mkdocs.exceptions.MkDocsException` where the engine refuses the shop's settings.
    """
    with _quiet_and_timeless():
        from mkdocs.commands.build import build  # heavy, and wants the environment
        from mkdocs.config import load_config

        config = load_config(str(work / "mkdocs.yml"), site_dir=str(out))
        build(config, dirty=True)
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
