"""The trees and procedures of a shop before and after a change.

In: two folders of a shop. Out: a `TreeReview` for each tree or procedure whose file is different
and means something else. A procedure's ID is `procedures/` and its name.
"""

from collections.abc import Mapping
from pathlib import Path

from builder.check.filled_knowledge import filled_knowledge
from builder.graph.runs import procedure_named, with_runs
from builder.graph.spec_readings import with_specs
from builder.model.finding import Finding
from builder.model.library import Library
from builder.model.tree import Tree
from builder.reader.nodes import Map
from builder.reader.source import read_source
from builder.reader.trees import tree_from, tree_names
from builder.reader.yaml_text import read_yaml
from builder.review.chart_marks import NOT_REACHED, chart_marks
from builder.review.lost_steps import steps_out_of_reach
from builder.review.plain_tree import plain_tree
from builder.review.plain_values import meaning_of
from builder.review.remark import Remark, TreeReview
from builder.review.step_matches import match_steps
from builder.review.tree_changes import tree_changes
from builder.review.tree_effects import REVIEW_OLDER, tree_effects

_NO_NAMES: dict[str, str] = {}
PROCEDURES = "kb/procedures"


def compare_shops(before: Path, after: Path) -> Mapping[str, TreeReview]:
    """Return what was changed, by the ID of the tree."""
    libraries = filled_knowledge(before)[0], filled_knowledge(after)[0]
    knowledge_differs = _knowledge_differs(before, after)
    reviews = {}
    for file in sorted({*_files(before), *_files(after)}):
        review = compare_file(before, after, file, libraries)
        if knowledge_differs and not review.changes:
            review = _by_knowledge(before / file, after / file, (before, after), libraries)
        if review.changes or review.effects:
            reviews[_id(file)] = review
    return reviews


def _knowledge_differs(before: Path, after: Path) -> bool:
    """Whether a file of the knowledge means something else; every tree is compared then."""
    shops = before, after
    names = {path.relative_to(shop) for shop in shops for path in (shop / "kb").rglob("*.y*ml")}
    for name in sorted(names):
        was, now = before / name, after / name
        if not (was.is_file() and now.is_file()):
            return True
        if was.read_bytes() != now.read_bytes():
            roots = _root(before, was), _root(after, now)
            meanings = [meaning_of(root, "", _NO_NAMES) if root else None for root in roots]
            if None in meanings or meanings[0] != meanings[1]:
                return True
    return False


def _by_knowledge(
    was: Path, now: Path, shops: tuple[Path, Path], libraries: tuple[Library, Library]
) -> TreeReview:
    """Return what follows for a tree whose own file says the same as before."""
    old, new = _tree(shops[0], was, libraries[0]), _tree(shops[1], now, libraries[1])
    if old is None or new is None:
        return TreeReview((), ())
    effects = tuple(tree_effects(old, new, *libraries, {name: name for name in new.steps}))
    return TreeReview((), effects if any(one.kind != REVIEW_OLDER for one in effects) else ())


def _files(shop: Path) -> list[str]:
    procedures = sorted((shop / PROCEDURES).glob("*.y*ml"))
    return [*tree_names(shop), *(path.relative_to(shop).as_posix() for path in procedures)]


def _id(file: str) -> str:
    return file.removeprefix("trees/").removeprefix("kb/").rsplit(".", 1)[0]


def compare_file(
    before: Path, after: Path, file: str, libraries: tuple[Library, Library]
) -> TreeReview:
    """Return what was changed in one file of a tree or a procedure, named from the shop."""
    was, now = (shop / file for shop in (before, after))
    kind = "procedure" if file.startswith(PROCEDURES) else "tree"
    if not now.is_file():
        return _whole(f"{kind} removed", f"the whole {kind} is gone")
    if not was.is_file():
        return _whole(f"{kind} added", f"the whole {kind} is new")
    if was.read_bytes() == now.read_bytes():
        return TreeReview((), ())
    old, new = _root(before, was), _root(after, now)
    if old is None or new is None:
        return _unreadable(old, new)
    system = file.split("/")[1]
    plain = plain_tree(new, _NO_NAMES, system)
    names = match_steps(plain_tree(old, _NO_NAMES, system), plain)
    renamed = {now: was for was, now in names.items() if was != now}
    plain_before = plain_tree(old, names, system)
    changes = tuple(tree_changes(plain_before, plain, renamed))
    marks = chart_marks(plain_before, plain, changes)
    trees = _tree(before, was, libraries[0]), _tree(after, now, libraries[1])
    if not changes or not trees[0] or not trees[1]:
        return TreeReview(changes, (), marks)
    effects = tuple(tree_effects(trees[0], trees[1], *libraries, names))
    lost = dict.fromkeys(steps_out_of_reach(trees[0], trees[1], names), NOT_REACHED)
    return TreeReview(changes, effects, {**marks, **lost})


def _whole(kind: str, message: str) -> TreeReview:
    return TreeReview((Remark(kind, "", message),), ())


def _unreadable(old: Map | None, new: Map | None) -> TreeReview:
    if old is None and new is None:
        return _whole("text changed", "the file can't be read, before or now")
    which = "now" if new is None else "before"
    return _whole("text changed", f"the file can't be read {which}: everything may have changed")


def _root(shop: Path, path: Path) -> Map | None:
    source = read_source(shop, path)
    root = None if isinstance(source, Finding) else read_yaml(source)[0]
    return root if isinstance(root, Map) and root else None


def _tree(shop: Path, path: Path, library: Library) -> Tree | None:
    """Return a tree or a procedure as the check sees it."""
    procedure = procedure_named(library, _id(path.relative_to(shop).as_posix()))
    source = read_source(shop, path)
    tree = None if isinstance(source, Finding) else tree_from(source)[0]
    tree = procedure.tree if procedure else tree
    return with_runs(with_specs(tree, library.specs), library.procedures) if tree else None
