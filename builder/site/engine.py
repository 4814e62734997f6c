"""The site engine: its settings and its run. No other module knows which engine it is.

In: pages as Markdown, and the shop. Out: framed pages.

The engine only frames pages. No hook of it is used, so another engine that reads the same folder
can replace it. All settings and templates are this program's. The engine gets only a few texts from
the shop, so nothing in a shop's folder can run during a build.
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
# Pages load only files of the site itself, and no script inside a page runs.
POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; "
    "font-src 'self'; connect-src 'self'; frame-src 'self'; base-uri 'none'; "
    "form-action 'self'; object-src 'none'"
)
HEADER_LINKS = (  # name, address, folder whose pages mark the link as the current one
    ("Systems", "systems/index.html", "systems/"),
    ("Warning lights", "lamps/index.html", "lamps/"),
    ("DTCs", "codes/index.html", "codes/"),
    ("How-to", "how-to/index.html", "how-to/"),
    ("Module setup", "modules/index.html", "modules/"),
    ("More", "more.html", "more"),
)
WIDE_ONLY = "modules/index.html"  # on a phone it is under More
# Files of the engine that no page loads; the sitemaps have a date in them.
_UNUSED = ("sitemap.xml", "assets/javascripts/")
_BUILD_TIME = "1704067200"  # fixed: the same files give the same bytes on any day


def engine_key(settings: dict[str, Any]) -> str:
    """Hash what every frame depends on."""
    versions = f"mkdocs {version('mkdocs')}, mkdocs-material {version('mkdocs-material')}"
    theme = [file_digest(file) for file in files_in(THEME)]
    return digest(versions, sorted(settings.items()), *theme)


def engine_settings(shop: Shop) -> dict[str, Any]:
    """Return the engine's settings; text of the shop is escaped, because the templates don't."""
    return {
        "site_name": str(escape(shop.name)),
        "site_url": str(shop.site_address) or None,
        "site_author": str(escape(shop.site.author)),
        "copyright": str(escape(shop.site.copyright)),
        "docs_dir": "pages",
        "use_directory_urls": False,
        "plugins": [],  # the search is this program's own
        "nav": [
            {"Home": "index.md"}
        ],  # index pages link the rest: time grows with the square of nav
        "markdown_extensions": [],
        "validation": {"omitted_files": "ignore", "not_found": "ignore"},
        "theme": {"name": "material", "language": "en", "custom_dir": "theme", "font": False},
        "extra": {
            "generator": False,
            "policy": POLICY,
            "entries": [
                {"name": n, "href": h, "under": u, "wide": h == WIDE_ONLY}
                for n, h, u in HEADER_LINKS
            ],
        },
    }


def frame_pages(pages: Mapping[str, str], settings: dict[str, Any]) -> Iterator[tuple[str, bytes]]:
    """Frame pages; yield every file of the engine with its name, framed pages among them.

    `pages` are Markdown by path; without any the engine isn't started. Raises RuntimeError where
    the engine rejects its input, which is a bug in this program.
    """
    if not pages:
        return
    with tempfile.TemporaryDirectory(prefix="baytree-") as folder:
        write_engine_folder(Path(folder), pages, settings)
        _run(Path(folder))
        site = Path(folder) / "site"
        for file in files_in(site):
            if not file.relative_to(site).as_posix().startswith(_UNUSED):
                yield file.relative_to(site).as_posix(), file.read_bytes()


def write_engine_folder(folder: Path, pages: Mapping[str, str], settings: dict[str, Any]) -> None:
    """Write what the engine reads: settings, theme, pages."""
    text = yaml.safe_dump(settings, sort_keys=True, allow_unicode=True)
    (folder / "mkdocs.yml").write_text(text, "utf-8")
    shutil.copytree(THEME, folder / "theme")
    for path, page in pages.items():
        file = folder / "pages" / f"{path}.md"
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(page, "utf-8", newline="\n")


def _run(folder: Path) -> None:
    with _quiet_at_fixed_time():
        from mkdocs.commands.build import build  # slow to import, and reads the environment
        from mkdocs.config import load_config
        from mkdocs.exceptions import MkDocsException

        try:
            build(load_config(str(folder / "mkdocs.yml"), site_dir=str(folder / "site")))
        except MkDocsException as error:  # some of these would exit the program
            raise RuntimeError(f"the site engine stopped: {error}") from error


@contextmanager
def _quiet_at_fixed_time() -> Iterator[None]:
    """Set what the engine reads; other variables stay, since other threads may read them now."""
    wanted = {"SOURCE_DATE_EPOCH": _BUILD_TIME, "NO_MKDOCS_2_WARNING": "1"}
    before = {name: os.environ.get(name) for name in wanted}
    log = logging.getLogger("mkdocs")
    level = log.level
    os.environ |= wanted
    log.setLevel(logging.ERROR)
    try:
        yield
    finally:
        log.setLevel(level)
        for name, value in before.items():
            os.environ.pop(name)
            if value is not None:
                os.environ[name] = value
