"""Printing many trees: each is read once where it is printed, and never again."""

import pickle
import re
import sys
from collections import Counter
from collections.abc import Callable
from datetime import date
from functools import partial
from pathlib import Path
from typing import Any

import pytest

from builder.cache.database import opened
from builder.check import filled_tree, verdict
from builder.check.filled_tree import tree_of
from builder.check.verdict import check, known_library
from builder.commands.main import main
from builder.cores import spread
from builder.model.library import NotThereError, self_contained
from builder.prints.print_jobs import print_trees, tree_ids
from builder.prints.sheets import PrintRequest
from builder.reader import trees as reader

sys.path.insert(0, str(Path(__file__).parents[1] / "bench"))

from generate import shop as write_shop

TODAY = date(2026, 10, 1)
TREES = 8
LISTING = "the folder itself"
LED_INTO = re.compile(r"branch: (battery/\S+)$", re.MULTILINE)


@pytest.fixture(scope="module")
def shop(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Generate a shop, some of its trees entered at their last step."""
    folder = tmp_path_factory.mktemp("shop")
    write_shop(folder, TREES, seed=1)
    for file in (folder / "trees").rglob("*.yml"):
        text = file.read_text("utf-8")
        for id_ in LED_INTO.findall(text):
            steps = (folder / "trees" / f"{id_}.yml").read_text("utf-8").partition("\nsteps:")[2]
            last = re.findall(r"^  (\S+):", steps, re.MULTILINE)[-1]
            text = text.replace(f"branch: {id_}\n", f"branch: {id_}#{last}\n")
        file.write_text(text, "utf-8")
    return folder


@pytest.fixture
def reads(monkeypatch: pytest.MonkeyPatch) -> Counter[str]:
    """Count how often each tree is read and how often the folder is listed, all in this process."""
    found: Counter[str] = Counter()
    monkeypatch.setattr(spread, "usable_cores", lambda: 1)

    def spied(real: Callable[..., Any], name: Callable[..., str]) -> Callable[..., Any]:
        def spy(*arguments: Any) -> Any:
            found[name(*arguments)] += 1
            return real(*arguments)

        return spy

    read = spied(
        reader.read_source, lambda shop, path, *_: path.relative_to(shop / "trees").as_posix()
    )
    monkeypatch.setattr(reader, "read_source", read)
    monkeypatch.setattr(filled_tree, "read_source", read)
    monkeypatch.setattr(reader, "tree_names", spied(reader.tree_names, lambda _shop: LISTING))
    monkeypatch.setattr(verdict, "tree_names", reader.tree_names)
    return found


def print_to(shop: Path, out: Path, *what: str) -> None:
    """Run the command."""
    assert main(["--shop", str(shop), "print", *what, "--sheet", "bench", "--out", str(out)]) == 0


def test_after_a_check_a_tree_is_read_where_it_is_printed(
    shop: Path, tmp_path: Path, reads: Counter[str]
) -> None:
    """One tree or all of them: no other is read for a title or for the number of a step."""
    with opened(shop) as cache:
        ids = [str(id_) for id_ in check(shop, cache, TODAY).library.trees]
    reads.clear()
    print_to(shop, tmp_path, ids[3])
    assert reads == {f"{ids[3]}.yml": 1, LISTING: 1}
    reads.clear()
    print_to(shop, tmp_path, "--all")
    assert reads == {f"{id_}.yml": 1 for id_ in ids} | {LISTING: 1}
    assert len(list(tmp_path.rglob("*.pdf"))) == TREES + 1, "and the procedure"


def test_without_a_check_each_tree_is_read_once_beside_it(
    shop: Path, tmp_path: Path, reads: Counter[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Titles and numbers are then found in one round through the trees."""
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    ids = [file.removesuffix(".yml") for file in map(str, files_of(shop))]
    print_to(shop, tmp_path, ids[3])
    assert reads == Counter({f"{id_}.yml": 1 for id_ in ids} | {LISTING: 1}) + Counter(
        {f"{ids[3]}.yml": 1}
    )
    reads.clear()
    print_to(shop, tmp_path, "--all")
    assert reads == {f"{id_}.yml": 2 for id_ in ids} | {LISTING: 1}


def files_of(shop: Path) -> list[str]:
    """Return the files of all trees, by their place in `trees/`."""
    return sorted(f.relative_to(shop / "trees").as_posix() for f in (shop / "trees").rglob("*.yml"))


def test_every_core_prints_the_same(shop: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Files, their order and their bytes do not depend on how many processes make them."""
    with opened(shop) as cache:
        library = self_contained(known_library(shop, cache))
    wanted = PrintRequest(trees=tuple(sorted(library.trees)[:4]), sheet="bench")
    found = []
    for cores in (1, 3):
        monkeypatch.setattr(spread, "usable_cores", lambda cores=cores: cores)
        ids = tree_ids(wanted, library)
        found.append(list(print_trees(ids, wanted, library, partial(tree_of, shop, library))))
    assert len(found[0]) == 4
    assert found[0] == found[1]


def test_what_is_handed_to_a_process_can_be_pickled(shop: Path) -> None:
    """Not every system can fork: there a library travels, and nothing in it is open."""
    with opened(shop) as cache:
        library = self_contained(known_library(shop, cache))
    there = pickle.loads(pickle.dumps(partial(tree_of, shop, library)))
    assert there.args[1].trees == dict(library.trees)


def test_what_is_not_there_is_said_before_anything_is_printed(shop: Path, tmp_path: Path) -> None:
    """A slip in the second name does not leave the first printed."""
    with opened(shop) as cache:
        library = known_library(shop, cache)
    with pytest.raises(NotThereError, match="no tree `horn/none`"):
        tree_ids(PrintRequest(trees=(next(iter(library.trees)), "horn/none")), library)
    with pytest.raises(NotThereError, match="no system `horns`"):
        tree_ids(PrintRequest(system="horns"), library)
