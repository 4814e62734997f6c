"""The files that pages load: styles, scripts, fonts, the search index.

In: the library. Out: files in the folder of the new site.
"""

import shutil
from collections.abc import Mapping
from pathlib import Path

from builder.find.page_data import search_script
from builder.find.search_table import search_table
from builder.model.library import Library
from builder.pages.calculators import calculator_files
from builder.pages.walk_scripts import SHOP_SCRIPT, shop_script
from builder.web import WEB

_CHART = Path(__file__).parents[1] / "chart"  # has the chart's styles and fonts
_NOT_PUBLISHED = shutil.ignore_patterns("*.py", "__pycache__", "reload.js", "worker.js")


def write_assets(library: Library, site: Path) -> None:
    """Write every file that isn't a page."""
    assets = site / "assets"
    shutil.copytree(WEB, assets, dirs_exist_ok=True, ignore=_NOT_PUBLISHED)
    for font in (_CHART / "faces").iterdir():
        if font.suffix in (".woff2", ".txt"):  # the fonts and their license
            shutil.copyfile(font, assets / font.name)
    styles = (
        _CHART / "chart.css",
        WEB / "site.css",
        WEB / "fields.css",
        WEB / "tables.css",
        WEB / "walk.css",
    )
    _write(assets / "site.css", "\n".join(file.read_text("utf-8") for file in styles))
    _write(assets / "search-data.js", search_script(search_table(library)))
    _write(site / SHOP_SCRIPT, shop_script(library))
    for name, text in calculator_files(library).items():
        _write(assets / name, text)


def write_files(files: Mapping[str, str], site: Path) -> None:
    """Write files whose text is ready, such as the schemas."""
    for name, text in files.items():
        _write(site / name, text)


def _write(file: Path, text: str) -> None:
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_text(text, "utf-8", newline="\n")
