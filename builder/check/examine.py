"""Trees read and judged, on as many cores as there are.

In: files of a shop and what is known beside them. Out: a `KeptTree` of each, judged where that
needs no other tree; the others wait, packed, until all are read. A tree is read once, and dropped
before the next.
"""

import pickle
import zlib
from collections.abc import Collection, Sequence
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path

from builder.cache.digest import digest
from builder.check.dependencies import Used, observed
from builder.check.kept import KeptTree, judged_tree, kept_tree
from builder.cores.progress import Progress, counted
from builder.cores.spread import on_all_cores
from builder.graph.summaries import summary_of
from builder.model.finding import Severity
from builder.model.library import Library
from builder.model.tree import Tree
from builder.plan.numbering import numbering
from builder.reader.source import LARGEST
from builder.reader.trees import read_tree, tree_id
from builder.rules.shared.judge import judge

TRIES = 5  # at a file that is being saved while it is read
PORTION = 8  # trees handed to a process at a time


@dataclass(frozen=True, slots=True)
class Examined:
    """A file that was read, and its tree where that still has to be judged."""

    kept: KeptTree
    waiting: bytes = b""


@dataclass(frozen=True, slots=True)
class Waiting:
    """A tree to be judged beside the others: packed, or b"" if it must be read again."""

    file: str
    kept: KeptTree
    packed: bytes = b""


def content_of(file: Path) -> str:
    """Hash what a file holds, and no more of it than is read; "" where no file can be read.

    A file that can't be read may become an empty one: the two must not be taken for each other.
    """
    try:
        if not file.is_file():
            return ""
        with file.open("rb") as stream:
            return digest(stream.read(LARGEST + 1))
    except OSError:
        return ""


def examine_all(
    shop: Path,
    files: Sequence[str],
    knowledge: Library,
    led_into: Collection[str],
    progress: Progress,
) -> Sequence[Examined]:
    """Read files of which nothing is known, and judge those that no other tree leads into."""
    used: Used = set()
    work = partial(_examined, shop, observed(knowledge, used), used, led_into)
    examined = on_all_cores(work, files, PORTION)
    return tuple(counted(examined, progress, "Checking trees", len(files)))


def judge_all(shop: Path, waiting: Sequence[Waiting], library: Library) -> Sequence[KeptTree]:
    """Judge trees beside their library, in their order."""
    used: Used = set()
    work = partial(_judged_beside, shop, observed(library, used), used)
    return tuple(on_all_cores(work, waiting, PORTION))


def unjudged(shop: Path, file: str) -> KeptTree:
    """Read one tree and keep what stands in it; nothing is said of its soundness.

    Its steps are numbered, as it is not known yet which of them other trees lead into.
    """
    tree, kept = _read(shop, file)
    return replace(kept, numbers=tuple(numbering(tree).items())) if tree else kept


def _examined(
    shop: Path, knowledge: Library, used: Used, led_into: Collection[str], file: str
) -> Examined:
    tree, kept = _read(shop, file)
    if tree is None or kept.listing is None:
        return Examined(kept)
    if tree_id(file) in led_into or not kept.listing.searchable:
        return Examined(kept, zlib.compress(pickle.dumps(tree, 5), 1))
    return Examined(_judged(tree, kept, knowledge, used))


def _judged_beside(shop: Path, library: Library, used: Used, one: Waiting) -> KeptTree:
    # Packed by the same run in memory, never in a file: so it may be unpacked as it is.
    if one.packed:
        return _judged(pickle.loads(zlib.decompress(one.packed)), one.kept, library, used)
    tree = read_tree(shop, shop / one.file)[0]
    if tree is None or content_of(shop / one.file) != one.kept.content:
        raise _changed(one.file)
    return _judged(tree, one.kept, library, used)


def _read(shop: Path, file: str) -> tuple[Tree | None, KeptTree]:
    for _ in range(TRIES):
        content = content_of(shop / file)
        tree, mistakes = read_tree(shop, shop / file)
        if content_of(shop / file) == content:
            return tree, kept_tree(content, summary_of(tree) if tree else None, mistakes)
    raise _changed(file)


def _changed(file: str) -> OSError:
    return FileNotFoundError(f"{file} was changed while it was being checked")


def _judged(tree: Tree, kept: KeptTree, library: Library, used: Used) -> KeptTree:
    used.clear()
    findings = judge(tree, library)
    sound = not any(one.severity is Severity.ERROR for one in findings) and not tree.broken
    entered = {step for _, step in library.callers.get(tree.id, ()) if step}
    numbers = numbering(tree) if sound and entered else {}
    numbers = {step: number for step, number in numbers.items() if step in entered}
    return judged_tree(kept, findings, used, numbers)
