"""Tests stand on shops of their own: the demo can be rewritten and no other test has to follow.

A plain look at the text of every file under `tests/`. Tests of the demo stand in `tests/demo/`,
benchmarks may measure it.
"""

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from builder.reader.schemas import FILE_KINDS, schema

TESTS = Path(__file__).parent
ROOT = TESTS.parent
MAY_READ_IT = ("demo", "bench")
OWN_SHOPS = ("shop", "samples")
# The folder of a test file, and the folders above it that a line goes up to.
ABOVE = re.compile(
    r"(?:Path\(__file__\)(?:\.resolve\(\))?|\b(HERE|TESTS))((?:\.parent\b|\.parents\[\d\])+)"
    r"(?: / \"(\w+)\")?"
)
# Ids of trees that may be named although the demo has a tree of that name, each with its reason.
EXAMPLES = {
    "charging/lamp-on": "the example of `new`, of its messages and of the pages of rules",
}
# Files that may go up to the root of the repository, each with what they want there.
AT_THE_ROOT = {
    "site/test_contract.py": "walks the demo too, on demand",
    "report/test_workflow.py": "reads the workflow, the hook and the README",
    "test_installed.py": "builds the wheel",
    "test_own_shop.py": "lists the ids of the demo",
    "trade/mutate_numbers.py": "runs the tests of a changed room from there",
}


def files(*suffixes: str) -> Iterator[Path]:
    """Yield every file of these kinds that is no test of the demo and no benchmark."""
    for path in sorted(TESTS.rglob("*")):
        if path.suffix in suffixes and path.relative_to(TESTS).parts[0] not in MAY_READ_IT:
            yield path


def trees_in(*folders: Path) -> set[str]:
    """Return the ids of the trees that stand below some folders."""
    found = (path for folder in folders for path in folder.glob("*/*.yml"))
    return {f"{path.parent.name}/{path.stem}" for path in found}


def named(ids: set[str], path: Path) -> list[str]:
    """Return the ids that a file names, each once."""
    look = re.compile(rf"(?<![\w-])(?:{'|'.join(sorted(ids))})(?![\w-])")
    return sorted(set(look.findall(path.read_text("utf-8", "replace"))))


def taken_from_the_root(path: Path) -> set[str]:
    """Return what a file takes from the root of the repository; "" is the root itself."""
    found = set()
    for here, above, then in ABOVE.findall(path.read_text("utf-8")):
        place = path.parent if here else path
        for number in re.findall(r"\.parents\[(\d)\]|\.parent\b", above):
            place = place.parents[int(number or 0)]
        if place == ROOT:
            found.add(then)
    return found


def words_of(part: Any) -> Iterator[str]:
    """Yield every key that a schema knows, wherever it stands."""
    if isinstance(part, dict):
        if isinstance(keys := part.get("properties"), dict):
            yield from keys
        part = list(part.values())
    if isinstance(part, list):
        yield from (word for one in part for word in words_of(one))


# Words of a closed job that `baytree cases add` writes; tests/commands files such jobs.
FILED = {"asked", "fix_in", "id", "in", "stated", "walked"}


def test_the_shop_uses_every_word_of_the_format() -> None:
    """A word that is added to the format is added to a shop of the tests, where they meet it."""
    files = [path for shop in OWN_SHOPS for path in (TESTS / shop).rglob("*.*")]
    texts = (path.read_text("utf-8") for path in files if path.suffix in (".yml", ".md"))
    written = "\n".join(texts)
    words = {word for kind in FILE_KINDS for word in words_of(schema(kind))}
    missing = {word for word in words if not re.search(rf'(?<![\w-]){word}"?:', written)}
    assert missing - FILED == set()


def test_no_tree_of_the_demo_is_named() -> None:
    """Who renames a tree of the demo breaks no test outside tests/demo."""
    own = trees_in(*(TESTS / shop / "trees" for shop in (*OWN_SHOPS, "rules/shop")))
    ids = trees_in(ROOT / "trees") - own - EXAMPLES.keys()
    naming = {
        path.relative_to(TESTS).as_posix(): there
        for path in files(".py", ".yml", ".md", ".json", ".txt", ".html")
        if (there := named(ids, path))
    }
    assert naming == {}, "name a tree of tests/shop instead, or move the test to tests/demo"
    assert named(ids, TESTS / "demo" / "queries.yml"), "the look sees no tree where there are many"


def test_no_file_of_the_demo_is_read() -> None:
    """From the root of the repository tests take the builder and their own folder, nothing else."""
    reading = {
        place: sorted(there)
        for path in files(".py")
        if (place := path.relative_to(TESTS).as_posix()) not in AT_THE_ROOT
        and (there := taken_from_the_root(path) - {"builder", "tests"})
    }
    assert reading == {}, "read tests/shop instead, or move the test to tests/demo"
    assert taken_from_the_root(TESTS / "demo" / "conftest.py") == {""}, "the look sees no reading"
