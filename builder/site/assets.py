"""The files that pages ask for: styles, scripts, faces, the index of the search.

In: the library. Out: files in the folder of the new site.
"""

import shutil
from collections.abc import Mapping
from pathlib import Path

from builder.find.page_data import search_script
from builder.find.search_table import search_table
from builder.model.library import Library
from builder.pages.calculators import calculator_files
from builder.web import WEB

CHART = Path(__file__).parents[1] / "chart"  # the chart brings its looks and its faces
NOT_FOR_PAGES = shutil.ignore_patterns("*.py", "__pycache__", "reload.js")


def write_assets(library: Library, site: Path) -> None:
    """Write every file that is not a page."""
    assets = site / "assets"
    shutil.copytree(WEB, assets, dirs_exist_ok=True, ignore=NOT_FOR_PAGES)
    for face in (CHART / "faces").iterdir():
        if face.suffix in (".woff2", ".txt"):  # the faces, and the licence under which they are
            shutil.copyfile(face, assets / face.name)
    looks = (CHART / "chart.css", WEB / "site.css", WEB / "fields.css", WEB / "tables.css")
    _write(assets / "site.css", "\n".join(file.read_text("utf-8") for file in looks))
    _write(assets / "search-data.js", search_script(search_table(library)))
    for name, text in calculator_files(library).items():
        _write(assets / name, text)


def write_files(files: Mapping[str, str], site: Path) -> None:
    """Write files that are handed over as they are to be, such as the schemas."""
    for name, text in files.items():
        _write(site / name, text)


def _write(file: Path, text: str) -> None:
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_text(text, "utf-8", newline="\n")
