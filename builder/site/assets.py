"""The files that pages load: styles, scripts, fonts, the search index.

In: the library. Out: files by name, and the same in the folder of a new site.
"""

from collections.abc import Callable, Mapping
from functools import cache as cached
from pathlib import Path

from builder.cache.database import Cache, put_row, row
from builder.cache.digest import digest
from builder.find.page_data import search_script
from builder.find.search_table import search_table
from builder.model.library import Library
from builder.pages.calculators import calculator_files
from builder.pages.walk_scripts import SHOP_SCRIPT, shop_script
from builder.site.short_scripts import short_scripts
from builder.web import WEB

_CHART = Path(__file__).parents[1] / "chart"  # has the chart's styles and fonts
_SEARCH = "search"  # the kind of rows
_SEARCH_FILE = "assets/search-data.js"
_NOT_PUBLISHED = ("reload.js", "worker.js")
_STYLES = (
    _CHART / "chart.css",
    WEB / "site.css",
    WEB / "fields.css",
    WEB / "tables.css",
    WEB / "connectors.css",
    WEB / "walk.css",
)
# By file: what is made from the library.
SCRIPTS: Mapping[str, Callable[[Library], str]] = {
    SHOP_SCRIPT: shop_script,
    _SEARCH_FILE: lambda library: search_script(search_table(library)),
    "assets/trade-data.js": lambda library: calculator_files(library)["trade-data.js"],
    "assets/calculator-data.js": lambda library: calculator_files(library)["calculator-data.js"],
}


@cached
def fixed_files() -> Mapping[str, bytes]:
    """Return the files that are the same in every shop."""
    published = (file for file in sorted(WEB.iterdir()) if file.name not in _NOT_PUBLISHED)
    files = {
        f"assets/{file.name}": file.read_bytes()
        for file in published
        if file.is_file() and file.suffix not in (".js", ".py")
    }
    scripts = [one for one in WEB.glob("*.js") if one.name not in _NOT_PUBLISHED]
    short = short_scripts({one.name: one.read_text("utf-8") for one in scripts})
    files |= {f"assets/{name}": text.encode() for name, text in short.items()}
    for font in (_CHART / "faces").iterdir():
        if font.suffix in (".woff2", ".txt"):  # the fonts and their license
            files[f"assets/{font.name}"] = font.read_bytes()
    styles = "\n".join(file.read_text("utf-8") for file in _STYLES)
    return files | {"assets/site.css": styles.encode()}


def write_assets(library: Library, cache: Cache, site: Path) -> None:
    """Write every file that isn't a page."""
    for name, content in fixed_files().items():
        _write(site / name, content)
    for name, script in SCRIPTS.items():
        is_search = name == _SEARCH_FILE
        text = _search_data(library, cache) if is_search else script(library)
        _write(site / name, text.encode())


def write_files(files: Mapping[str, str], site: Path) -> None:
    """Write files whose text is ready, such as the schemas."""
    for name, text in files.items():
        _write(site / name, text.encode())


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


def _write(file: Path, content: bytes) -> None:
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_bytes(content)
