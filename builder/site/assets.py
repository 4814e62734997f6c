"""The files that pages ask for: styles, scripts, faces, the index of the search, drawings.

In: the shop and its library. Out: files in the work folder, where the engine finds them.
"""

import shutil
from collections.abc import Mapping
from pathlib import Path

from builder.find.page_data import search_script
from builder.find.search_table import search_table
from builder.model.library import Library
from builder.pages.bench import data_files

STATIC = Path(__file__).parent / "static"
CHART = Path(__file__).parents[1] / "chart"  # the chart brings its looks and its faces
PICTURES = Path("how-to") / "pictures"


def write_assets(shop: Path, library: Library, pages: Path) -> None:
    """Lay out every file that is not a page."""
    assets = pages / "assets"
    shutil.copytree(STATIC, assets, dirs_exist_ok=True)
    for face in (CHART / "faces").iterdir():
        if face.suffix in (".woff2", ".txt"):  # the faces, and the licence under which they are
            shutil.copyfile(face, assets / face.name)
    looks = (CHART / "chart.css", STATIC / "site.css", STATIC / "fields.css", STATIC / "tables.css")
    _write(assets / "site.css", "\n".join(file.read_text("utf-8") for file in looks))
    _write(assets / "search-data.js", search_script(search_table(library)))
    for name, text in data_files(library).items():
        _write(assets / name, text)
    shutil.rmtree(pages / PICTURES, ignore_errors=True)
    for name in library.pictures:
        (pages / PICTURES).mkdir(parents=True, exist_ok=True)
        shutil.copyfile(shop / "kb" / PICTURES / name, pages / PICTURES / name)


def write_files(files: Mapping[str, str], pages: Path) -> None:
    """Write files that are handed over as they are to be, such as the schemas."""
    for name, text in files.items():
        _write(pages / name, text)


def _write(file: Path, text: str) -> None:
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_text(text, "utf-8", newline="\n")
