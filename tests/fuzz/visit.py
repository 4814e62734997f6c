"""Every command on a shop of which a few files were changed.

In: a shop and the paths that were changed. Out: the troubles. What an unchanged tree's own minutes
and sheets are is known; so these two are asked of changed trees, and of one more.
"""

from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager, suppress
from functools import cache, lru_cache, partial
from pathlib import Path
from unittest.mock import patch

from guard import Trouble, watch

from builder.cache.database import opened
from builder.check import examine, filled_knowledge, filled_tree, verdict
from builder.commands import main as command_line
from builder.model.finding import Finding
from builder.model.tree import Tree
from builder.reader import knowledge_files, procedure_files, yaml_text
from builder.reader.nodes import Node
from builder.reader.source import Source
from builder.reader.trees import read_tree, tree_id, tree_names
from builder.walk.table import walk_table

QUICK = ("check", "find", "walk", "drill", "minutes", "draft")
SLOW = ("build", "print")
DAY = "2026-10-01"
Command = tuple[str, Callable[[], int]]


def visited(
    shop: Path, touched: tuple[Path, ...], names: tuple[str, ...], begin: Callable[[str], None]
) -> Iterator[Trouble]:
    """Run commands one after the other, tell each at its beginning, and yield what went wrong."""
    with _reading_once():
        for name in names:
            for run in _runs(shop, touched, name):
                begin(name)
                if trouble := watch(name, run):
                    yield trouble


def _runs(shop: Path, touched: tuple[Path, ...], name: str) -> Iterator[Callable[[], int]]:
    if name == "walk":
        yield lambda: _walk(shop, touched)
    elif name == "draft":
        cases = sorted((shop / "kb" / "cases").glob("*.yml"))
        changed = [one for one in cases if _is_below(one.relative_to(shop).as_posix(), touched)]
        for case in changed or cases[-1:]:
            yield partial(_draft, shop, case)
    elif name in ("drill", "minutes", "print"):
        for id_ in _trees(shop, touched):
            yield _command(shop, name, id_)
    else:
        yield _command(shop, name, "")


def _command(shop: Path, name: str, id_: str) -> Callable[[], int]:
    beside = shop.parent
    arguments = {
        "check": ["check", "--today", DAY],
        "find": ["find", "horn", "quiet", "B1000"],
        "drill": ["drill", "--auto", "--seed", "1", "--", id_],
        "minutes": ["minutes", "--", id_],
        "build": ["build", "--no-prints", "--today", DAY, "--out", str(beside / "site")],
        "print": ["print", "--out", str(beside / "prints"), "--", id_],
    }[name]
    return lambda: command_line.main(["--shop", str(shop), *arguments])


def _trees(shop: Path, touched: tuple[Path, ...]) -> list[str]:
    """Return the IDs of changed trees, and of one that isn't."""
    names = tree_names(shop)
    changed = [name for name in names if _is_below(name, touched)]
    return [tree_id(name) for name in (*changed, *[one for one in names if one not in changed][:1])]


def _is_below(name: str, paths: tuple[Path, ...]) -> bool:
    return any(Path(name).is_relative_to(path) for path in paths)


def _draft(shop: Path, case: Path) -> int:
    """Draft a tree from a closed job, whose own tree may have changed; then take it away."""
    file = f"kb/cases/{case.name}"
    try:
        return command_line.main(
            ["--shop", str(shop), "new", "tree", "horn/drafted-here", "--from-record", file]
        )
    finally:
        with suppress(FileNotFoundError, NotADirectoryError):
            (shop / "trees/horn/drafted-here.yml").unlink()


def _walk(shop: Path, touched: tuple[Path, ...]) -> int:
    """Make the table of changed trees, or of every tree where the knowledge was changed."""
    with opened(shop) as rows:
        library = verdict.known_library(shop, rows)
    everything = any(path.parts[0] != "trees" for path in touched)
    for id_, listed in library.listings.items():
        if everything or _is_below(listed.file, touched):
            walk_table(filled_tree.tree_of(shop, library, id_), library)
    return 0


@contextmanager
def _reading_once() -> Iterator[None]:
    """Read the same text once: nothing changes between the commands, little between mutants."""
    with ExitStack() as stack:
        for module, name, read in (
            (command_line, "parser", _parser),
            (filled_knowledge, "read_knowledge", cache(filled_knowledge.read_knowledge)),
            (examine, "read_tree", _tree),
            (filled_tree, "tree_from", _tree_from_source),
            (knowledge_files, "read_yaml", _yaml),
            (procedure_files, "read_yaml", _yaml),
        ):
            stack.enter_context(patch.object(module, name, read))
        yield


_parser = cache(command_line.parser)
_tree_from_source = lru_cache(maxsize=50)(filled_tree.tree_from)


def _tree(
    shop: Path, path: Path, raw: bytes | None = None
) -> tuple[Tree | None, tuple[Finding, ...]]:
    if path.is_symlink() or not path.is_file():
        return read_tree(shop, path)
    return _tree_from(shop, path, path.read_bytes() if raw is None else raw)


@lru_cache(maxsize=50)
def _tree_from(shop: Path, path: Path, content: bytes) -> tuple[Tree | None, tuple[Finding, ...]]:
    return read_tree(shop, path, content)


def _yaml(source: Source) -> tuple[Node | None, list[Finding]]:
    root, findings = _yaml_from(source)
    return root, [*findings]


_yaml_from = lru_cache(maxsize=100)(yaml_text.read_yaml)
