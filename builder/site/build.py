"""The site, from the library and the trees to a folder that can be opened.

In: a shop, its library, a reader of single trees. Out: the site in `out`. Nothing is judged here:
whoever calls has checked first, and the old site stays whole until the new one is.
"""

import shutil
from collections.abc import Callable
from pathlib import Path
from typing import Any

import yaml

from builder.find.rows import rows
from builder.model.library import Library, Summary
from builder.model.tree import Tree
from builder.pages import addresses
from builder.pages.contents import shop_pages
from builder.pages.facts import facts_of
from builder.pages.related import related
from builder.pages.tree import tree_page
from builder.site import engine
from builder.site.publish import publish
from builder.site.work import Work, close_work, digest, drop_gone, is_fresh, open_work, put

CACHE = ".baytree_cache"
STATIC = Path(__file__).parent / "static"
CHART = Path(__file__).parents[1] / "chart"  # the chart brings its looks and its faces

TreeReader = Callable[[str], Tree]  # by id; trees are read one by one and dropped


def build_site(shop: Path, library: Library, read_tree: TreeReader, out: Path) -> None:
    """Write every page that changed, frame it, and put the new site in the old one's place."""
    own = _own_settings(shop)
    settings = engine.settings(library.shop, own)
    work = open_work(shop / CACHE, _everything(shop, settings))
    if not work.before:
        engine.write_theme(work.folder, shop / "site_config" / "overrides")
        engine.write_settings(work.folder, settings)
    _write_assets(shop, library, work)
    for page in shop_pages(library):
        put(work, page)
    nearest = related(library.trees.values())
    for id_, tree in library.trees.items():
        if tree.status != "retired":
            near = tuple(library.trees[other] for other in nearest.get(id_, ()))
            _put_tree(work, library, read_tree, tree, near)
    drop_gone(work)
    engine.run(work.folder, work.frames)
    publish(work, out)
    close_work(work)


def _put_tree(
    work: Work, library: Library, read_tree: TreeReader, of: Summary, near: tuple[Summary, ...]
) -> None:
    """Make the page of a tree, unless nothing that stands on it has changed.

    Of other trees a page shows titles alone, and whether there is such a tree.
    """
    others = sorted({over.tree for over in of.hand_overs} & library.trees.keys())
    titles = [(id_, library.trees[id_].title) for id_ in others]
    key = digest(of.revision, titles, [(tree.id, tree.title) for tree in near])
    if is_fresh(work, addresses.tree(of.id), key):
        return
    tree = read_tree(of.id)
    put(work, tree_page(tree, library, facts_of(tree, library), near), key)


def _write_assets(shop: Path, library: Library, work: Work) -> None:
    assets = work.pages / "assets"
    shutil.copytree(STATIC, assets, dirs_exist_ok=True)
    for face in (CHART / "faces").glob("*.woff2"):
        shutil.copyfile(face, assets / face.name)
    looks = (CHART / "chart.css", STATIC / "site.css")
    one = "\n".join(file.read_text("utf-8") for file in looks)  # one file, one request
    (assets / "site.css").write_text(one, "utf-8", newline="\n")
    (assets / "search-rows.js").write_text(rows(library), "utf-8", newline="\n")
    pictures = shop / "kb" / "how-to" / "pictures"
    if pictures.is_dir():
        shutil.copytree(pictures, work.pages / "how-to" / "pictures", dirs_exist_ok=True)


def _own_settings(shop: Path) -> dict[str, Any]:
    file = shop / "site_config" / "mkdocs.yml"
    return dict(yaml.safe_load(file.read_text("utf-8")) or {}) if file.is_file() else {}


def _everything(shop: Path, settings: dict[str, Any]) -> str:
    """Return a key of all that every page depends on: our code, the engine, the knowledge."""
    package = Path(__file__).parents[1]
    files = [*_files(package), *_files(shop / "kb"), *_files(shop / "site_config")]
    contents = [file.read_bytes().hex() for file in files]
    return digest(engine.versions(), sorted(settings.items()), *files, *contents)


def _files(folder: Path) -> list[Path]:
    found = (file for file in folder.rglob("*") if "__pycache__" not in file.parts)
    return sorted(file for file in found if file.is_file())
