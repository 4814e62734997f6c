"""The files that pages load: styles, scripts, fonts, the search index.

In: the library. Out: files in the folder of the new site. Scripts are published without comments
and indents, a quarter smaller.
"""

import shutil
from collections.abc import Mapping
from pathlib import Path

from rjsmin import jsmin

from builder.cache.database import Cache, put_row, row
from builder.cache.digest import digest
from builder.find.page_data import search_script
from builder.find.search_table import search_table
from builder.model.library import Library
from builder.pages.calculators import calculator_files
from builder.pages.walk_scripts import SHOP_SCRIPT, shop_script
from builder.web import WEB

_CHART = Path(__file__).parents[1] / "chart"  # has the chart's styles and fonts
_SEARCH = "search"  # the kind of rows
_NOT_PUBLISHED = shutil.ignore_patterns("*.py", "__pycache__", "reload.js", "worker.js")


def write_assets(library: Library, cache: Cache, site: Path) -> None:
    """Write every file that isn't a page."""
    assets = site / "assets"
    shutil.copytree(WEB, assets, dirs_exist_ok=True, ignore=_NOT_PUBLISHED)
    for script in assets.glob("*.js"):
        _write(script, jsmin(script.read_text("utf-8")))
    for font in (_CHART / "faces").iterdir():
        if font.suffix in (".woff2", ".txt"):  # the fonts and their license
            shutil.copyfile(font, assets / font.name)
    styles = (
        _CHART / "chart.css",
        WEB / "site.css",
        WEB / "fields.css",
        WEB / "tables.css",
        WEB / "connectors.css",
        WEB / "walk.css",
    )
    _write(assets / "site.css", "\n".join(file.read_text("utf-8") for file in styles))
    _write(assets / "search-data.js", _search_data(library, cache))
    _write(site / SHOP_SCRIPT, shop_script(library))
    for name, text in calculator_files(library).items():
        _write(assets / name, text)


def write_files(files: Mapping[str, str], site: Path) -> None:
    """Write files whose text is ready, such as the schemas."""
    for name, text in files.items():
        _write(site / name, text)


def _search_data(library: Library, cache: Cache) -> str:
    """Return the search index; it is made again only if what is searched has changed."""
    table = search_table(library)
    # The everyday words are the same for every shop, and a set is written in any order.
    key = digest(table._replace(everyday=frozenset()))
    known, _, script = row(cache, _SEARCH, "").decode().partition("\n")
    if known != key:
        script = search_script(table)
        put_row(cache, _SEARCH, "", f"{key}\n{script}".encode())
    return script


def _write(file: Path, text: str) -> None:
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_text(text, "utf-8", newline="\n")
