"""Reads and judges trees, on all cores.

In: files of a shop, and its knowledge. Out: a `TreeRecord` of each, judged where that needs no
other tree; the others are packed until all are read, and so are all where a build follows. A tree
is read once, and dropped before the next.
"""

from collections.abc import Collection, Sequence
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path

from builder.cache.digest import digest
from builder.check.dependencies import Used, observed
from builder.check.filled_knowledge import Knowledge
from builder.check.packed_trees import pack_tree, unpack_tree
from builder.check.tree_record import TreeRecord, new_record, with_findings
from builder.cores.progress import Progress, counted
from builder.cores.spread import on_all_cores
from builder.graph.runs import with_runs
from builder.graph.summaries import summary_of
from builder.model.finding import Severity
from builder.model.library import Library
from builder.model.tree import Tree
from builder.plan.numbering import numbering
from builder.reader.source import MAX_FILE_BYTES
from builder.reader.trees import read_tree, tree_id
from builder.rules.shared.judge import judge

PORTION = 8  # trees that a process gets at a time


@dataclass(frozen=True, slots=True)
class ExaminedFile:
    """The record of a file, and its packed tree where that is wanted or still to be judged."""

    record: TreeRecord
    is_judged: bool = True
    packed: bytes = b""


@dataclass(frozen=True, slots=True)
class Examination:
    """What every file is examined with."""

    shop: Path
    knowledge: Library  # that notes in `used` what the rules look up
    used: Used
    led_into: Collection[str]  # trees that others may lead into at a step in the middle
    keep: bool  # whether all trees are packed


@dataclass(frozen=True, slots=True)
class PendingTree:
    """A tree to judge together with the others: packed, or b"" if it must be read again."""

    file: str
    record: TreeRecord
    packed: bytes = b""


def content_of(file: Path) -> str:
    """Hash a file's content, up to the bytes that are read; "" where no file can be read.

    So a file that can't be read differs from an empty one.
    """
    raw = _bytes_of(file)
    return "" if raw is None else digest(raw)


def _bytes_of(file: Path) -> bytes | None:
    try:
        if not file.is_file():
            return None
        with file.open("rb") as stream:
            return stream.read(MAX_FILE_BYTES + 1)
    except OSError:
        return None


def examine_all(
    knowledge: Knowledge,
    files: Sequence[str],
    led_into: Collection[str],
    progress: Progress,
    keep: bool,
) -> Sequence[ExaminedFile]:
    """Read files without a record, and judge those that no other tree leads into."""
    used: Used = set()
    library = observed(knowledge.library, used)
    what = Examination(knowledge.shop, library, used, led_into, keep)
    examined = on_all_cores(partial(_examined, what), files, PORTION)
    return tuple(counted(examined, progress, "Checking trees", len(files)))


def judge_all(shop: Path, pending: Sequence[PendingTree], library: Library) -> Sequence[TreeRecord]:
    """Judge trees together with their library, in their order."""
    used: Used = set()
    work = partial(_judged_beside, shop, observed(library, used), used)
    return tuple(on_all_cores(work, pending, PORTION))


def unchecked_record(shop: Path, knowledge: Library, file: str) -> TreeRecord:
    """Read one tree without judging it.

    All its steps are numbered, as it isn't known yet which of them other trees lead into.
    """
    tree, record = _read(shop, knowledge, file)
    return replace(record, numbers=tuple(numbering(tree).items())) if tree else record


def _examined(what: Examination, file: str) -> ExaminedFile:
    tree, record = _read(what.shop, what.knowledge, file)
    if tree is None or record.listing is None:
        return ExaminedFile(record)
    if tree_id(file) in what.led_into or not record.listing.searchable:
        return ExaminedFile(record, is_judged=False, packed=pack_tree(tree))
    packed = pack_tree(tree) if what.keep else b""
    return ExaminedFile(_judged(tree, record, what.knowledge, what.used), packed=packed)


def _judged_beside(shop: Path, library: Library, used: Used, pending: PendingTree) -> TreeRecord:
    if pending.packed:
        return _judged(unpack_tree(pending.packed), pending.record, library, used)
    tree = read_tree(shop, shop / pending.file)[0]
    if tree is None or content_of(shop / pending.file) != pending.record.content:
        raise FileNotFoundError(f"{pending.file} was changed while it was being checked")
    return _judged(with_runs(tree, library.procedures), pending.record, library, used)


def _read(shop: Path, knowledge: Library, file: str) -> tuple[Tree | None, TreeRecord]:
    raw = _bytes_of(shop / file)  # once: what is hashed is what is judged, also while it is saved
    tree, mistakes = read_tree(shop, shop / file, raw)
    tree = with_runs(tree, knowledge.procedures) if tree else None
    summary = summary_of(tree, knowledge.procedures) if tree else None
    return tree, new_record("" if raw is None else digest(raw), summary, mistakes)


def _judged(tree: Tree, record: TreeRecord, library: Library, used: Used) -> TreeRecord:
    used.clear()
    findings = judge(tree, library)
    errors = any(finding.severity is Severity.ERROR for finding in findings)
    entered = {step for _, step in library.callers.get(tree.id, ()) if step}
    numbers = numbering(tree) if entered and not errors and not tree.broken else {}
    numbers = {step: number for step, number in numbers.items() if step in entered}
    return with_findings(record, findings, used, numbers)
