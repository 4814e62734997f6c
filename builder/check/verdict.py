"""The verdict of a shop: its library and all findings, as one finished value.

In: a shop's folder and a date. Out: a `Verdict`. Each tree is read once and judged once, and only
if it is new, or if something that its findings depend on has changed since the last check.
"""

import re
from collections import defaultdict
from collections.abc import Iterable, Iterator
from contextlib import suppress
from dataclasses import dataclass, field, replace
from datetime import date
from functools import partial
from itertools import chain
from pathlib import Path

from builder.cache.database import Cache, row
from builder.check.dependencies import knowledge_digest, neighbor_digests
from builder.check.everyday_words import everyday_words
from builder.check.examine import PendingTree, examine_all, judge_all, unchecked_record
from builder.check.filled_knowledge import HashOf, Knowledge, filled_knowledge, known_knowledge
from builder.check.known_records import (
    Records,
    known_records,
    run_hashes,
    store_records,
    unchanged_record,
)
from builder.check.named_files import is_in, name_in_shop
from builder.check.packed_trees import PackedTrees
from builder.check.renamed_entries import renamed_entries
from builder.check.serialization import from_bytes
from builder.check.tree_record import SUMMARY, TreeRecord
from builder.check.waiting import (
    doubtful_entries,
    in_kinds_followed,
    misnamed_trees,
    rests_on,
    waits,
)
from builder.cores.progress import Progress, no_progress
from builder.model.finding import Finding, Severity
from builder.model.library import Library, Trees
from builder.model.summary import TreeListing, TreeSummary
from builder.model.text import Position
from builder.model.tree import Status
from builder.reader.trees import tree_id, tree_names
from builder.rules.shared.judge import is_independent, judge_library, without_what_follows

INTO_A_STEP = re.compile(rb"\b([a-z0-9-]+/[a-z0-9/-]+)#")  # a handoff into the middle of a tree


@dataclass(frozen=True, slots=True)
class Verdict:
    """The result of a check."""

    library: Library
    findings: tuple[Finding, ...]  # by file, line and column, each once
    waiting: tuple[Finding, ...] = ()  # may only follow from a mistake in `kb/` that is among those
    elsewhere: int = 0  # findings that are left out, as they are about none of the files asked for
    packed: PackedTrees = field(default_factory=dict, compare=False)  # those read, if kept

    @property
    def errors(self) -> int:
        """How many findings stop a build."""
        return sum(finding.severity is Severity.ERROR for finding in self.findings)

    @property
    def drafts(self) -> frozenset[str]:
        """The files of the drafts, where the findings of the rules are only warnings."""
        trees = self.library.listings.values()
        return frozenset(tree.file for tree in trees if tree.status is Status.DRAFT)


def check(
    shop: Path,
    cache: Cache,
    today: date,
    files: Iterable[Path] = (),
    progress: Progress = no_progress,
) -> Verdict:
    """Judge every tree and the shop as a whole; with files or folders, return only their findings.

    A finding elsewhere that points at one of them is theirs too: a closed job is judged in the tree
    that it went through. The results are stored in the cache. Raises FileNotFoundError where one of
    the files doesn't exist or isn't in the shop, or a folder has nothing to check.
    """
    names = {name_in_shop(shop, path) for path in files}
    verdict = verdict_of(known_knowledge(shop), cache, today, progress)
    if not names:
        return verdict
    chosen = tuple(one for one in verdict.findings if any(is_in(at.file, names) for at in _of(one)))
    return replace(verdict, findings=chosen, elsewhere=len(verdict.findings) - len(chosen))


def _of(finding: Finding) -> Iterator[Position]:
    """Yield every place that a finding points at."""
    yield finding.at
    yield from (one.at for one in finding.related)


def verdict_of(
    knowledge: Knowledge,
    cache: Cache,
    today: date,
    progress: Progress = no_progress,
    keep: bool = False,
) -> Verdict:
    """Judge every tree and the shop as a whole; the knowledge has been read already.

    With `keep` the trees that had to be read come with the verdict, so that a build needn't read
    them again.
    """
    shop, before = knowledge.shop, known_records(cache)
    trees, packed = _examined(before, knowledge, progress, keep)
    misnamed = misnamed_trees(knowledge.mistakes)
    library = _library(shop, knowledge.library, trees, cache, misnamed)
    trees = _judged(shop, library, knowledge.hash_of, trees, packed)
    of_library = judge_library(library, today, knowledge.of_procedures)
    sure = [*knowledge.mistakes, *chain.from_iterable(tree.mistakes for tree in trees.values())]
    doubtful = doubtful_entries(shop, (*sure, *in_kinds_followed(of_library)))
    waiting: list[Finding] = []
    by_file = defaultdict(list)
    for one in of_library:
        by_file[one.at.file].append(one)
    for file, tree in trees.items():
        first = without_what_follows(tree.findings, (*tree.mistakes, *by_file[file]))
        (waiting if rests_on(tree.used, doubtful) else sure).extend(first)
    for one in of_library:
        (waiting if waits(one, knowledge.mistakes, doubtful) else sure).append(one)
    causes, caused = everyday_words(sure, library)
    used = {entry for tree in trees.values() for entry in tree.used}
    renamed, old_names = renamed_entries(sure, library, used)
    causes, caused = [*causes, *renamed], [*caused, *old_names]
    echoes = set(caused)
    sure = [*causes, *(one for one in sure if one not in echoes)] if echoes else sure
    store_records(cache, before, trees)
    full = replace(library, entry_numbers=_entry_numbers(trees))
    kept = packed if keep else {}
    return Verdict(full, in_order(sure), in_order((*waiting, *caused)), packed=kept)


def known_library(shop: Path, cache: Cache) -> Library:
    """Return the library without judging it; trees in the cache aren't read again."""
    before, knowledge = known_records(cache), filled_knowledge(shop)[0]
    cached = partial(unchanged_record, shop, before, run_hashes(knowledge_digest(knowledge)))
    trees = {
        file: cached(file) or unchecked_record(shop, knowledge, file) for file in tree_names(shop)
    }
    library = _library(shop, knowledge, trees, cache)
    return replace(library, entry_numbers=_entry_numbers(trees))


def _entry_numbers(trees: Records) -> dict[str, int]:
    """Return the known numbers of steps by `tree#step`."""
    return {f"{tree.listing.id}#{step}": number for tree in trees.values() if tree.listing
            for step, number in tree.numbers}  # fmt: skip


def in_order(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Sort findings by file, line and column, without duplicates."""
    return tuple(sorted(dict.fromkeys(findings), key=lambda f: (*f.at[:3], f.rule, f.message)))


def _examined(
    before: Records, knowledge: Knowledge, progress: Progress, keep: bool
) -> tuple[dict[str, TreeRecord], PackedTrees]:
    """Return the record of every tree, and the packed trees, kept or still to be judged."""
    shop = knowledge.shop
    runs = run_hashes(knowledge.hash_of)
    known = {file: unchanged_record(shop, before, runs, file) for file in tree_names(shop)}
    new = [file for file, record in known.items() if record is None]
    led_into = _led_into(shop, new, known.values())
    read = examine_all(knowledge, new, led_into, progress, keep)
    examined = dict(zip(new, read, strict=True))
    now = {}
    for file, record in known.items():
        if record is None:
            record = examined[file].record
            record = replace(record, runs=runs(record))
            if examined[file].is_judged:
                record = replace(record, inputs=knowledge.hash_of(record.used))
        now[file] = record
    return now, {file: one.packed for file, one in examined.items() if one.packed}


def _led_into(shop: Path, new: Iterable[str], known: Iterable[TreeRecord | None]) -> frozenset[str]:
    """Return the trees that others may lead into at a step in the middle.

    New files are searched as plain text before they are read, so this may name a tree too many.
    """
    listings = (record.listing for record in known if record and record.listing)
    trees = {tree for listing in listings for tree, step in listing.leads_to if step}
    for file in new:
        if (shop / file).is_file() and b"#" in (raw := (shop / file).read_bytes()):
            trees |= {id_.decode() for id_ in INTO_A_STEP.findall(raw)}
    return frozenset(trees)


def _library(
    shop: Path,
    knowledge: Library,
    trees: Records,
    cache: Cache,
    misnamed: frozenset[str] = frozenset(),
) -> Library:
    listings = {tree.listing.id: tree.listing for tree in trees.values() if tree.listing}
    complete = not any(tree.mistakes for tree in trees.values())
    unread = frozenset(tree_id(file) for file, tree in trees.items() if not tree.listing)
    summary = partial(_summary, shop, knowledge, trees, cache)
    return replace(
        knowledge, trees=Trees(listings, summary), complete=complete, unread_trees=unread | misnamed
    )


def _summary(
    shop: Path, knowledge: Library, trees: Records, cache: Cache, listing: TreeListing
) -> TreeSummary:
    content = trees[listing.file].summary or row(cache, SUMMARY, listing.file)
    with suppress(Exception):  # the row may be damaged or deleted by now
        return from_bytes(content, TreeSummary)
    return from_bytes(unchecked_record(shop, knowledge, listing.file).summary, TreeSummary)


def _judged(
    shop: Path,
    library: Library,
    hash_of: HashOf,
    trees: dict[str, TreeRecord],
    packed: PackedTrees,
) -> dict[str, TreeRecord]:
    """Judge every tree whose findings are unknown or depend on something that has changed."""
    listings = library.listings
    led_into = {id_ for id_, listing in listings.items() if not is_independent(listing, library)}
    shapes = {tree.listing.id: tree.shape for tree in trees.values() if tree.listing}
    neighbors = neighbor_digests(library, shapes, led_into)

    def inputs(record: TreeRecord) -> str:
        beside = neighbors.get(record.listing.id, "") if record.listing else ""
        return hash_of(record.used) + beside

    pending = [
        PendingTree(file, record, packed.get(file, b""))
        for file, record in trees.items()
        if record.listing and record.inputs != inputs(record)
    ]
    judged = dict(trees)
    for tree, record in zip(pending, judge_all(shop, pending, library), strict=True):
        judged[tree.file] = replace(record, inputs=inputs(record))
    return judged
