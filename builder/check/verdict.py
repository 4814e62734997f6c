"""The verdict of a shop: what is in it, and all that is wrong with it, as one finished value.

In: a shop's folder and a date. Out: a `Verdict`. Each tree is read once and judged once, and only
if the last check does not know it, or something that its findings depend on has changed.
"""

import os
import re
from collections.abc import Iterable, Mapping
from contextlib import suppress
from dataclasses import dataclass, replace
from datetime import date
from functools import partial
from itertools import chain
from pathlib import Path

from builder.cache.database import Cache, drop_row, put_row, row, rows, transaction
from builder.check.dependencies import knowledge_digest, neighbor_digests
from builder.check.examine import Waiting, content_of, examine_all, judge_all, unjudged
from builder.check.kept import (
    FINDINGS,
    HEAD,
    SUMMARY,
    KeptTree,
    findings_of,
    kept_in,
    mistakes_of,
    rows_of,
)
from builder.check.pickled import from_bytes
from builder.cores.progress import Progress, no_progress
from builder.model.finding import Finding, Severity
from builder.model.library import Library, Trees
from builder.model.summary import Summary, TreeListing
from builder.reader.shop_files import read_knowledge
from builder.reader.trees import tree_names
from builder.rules.shared.judge import is_independent, judge_library

INTO_A_STEP = re.compile(rb"\b([a-z0-9-]+/[a-z0-9/-]+)#")  # a handoff into the middle of a tree
Kept = Mapping[str, KeptTree]  # by the name of the file


@dataclass(frozen=True, slots=True)
class Verdict:
    """What a check found."""

    library: Library
    findings: tuple[Finding, ...]  # by file, line and column, each once

    @property
    def errors(self) -> int:
        """How many findings stop a build."""
        return sum(finding.severity is Severity.ERROR for finding in self.findings)


def check(
    shop: Path,
    cache: Cache,
    today: date,
    files: Iterable[Path] = (),
    progress: Progress = no_progress,
) -> Verdict:
    """Judge every tree and the shop as a whole; with files, keep what concerns those.

    What is found out is kept in the cache. Raises FileNotFoundError where one of the files doesn't
    exist or isn't in the shop.
    """
    wanted = {_name_in_shop(shop, path) for path in files}
    knowledge, mistakes = read_knowledge(shop)
    before = _known(cache)
    trees, packed = _examined(shop, before, knowledge, progress)
    library = _library(shop, knowledge, trees, cache)
    trees = _judged(shop, library, trees, packed)
    of_trees = [(*mistakes_of(one), *findings_of(one)) for one in trees.values()]
    findings = chain(mistakes, *of_trees, judge_library(library, today))
    _keep(cache, before, trees)
    kept = (one for one in findings if not wanted or one.at.file in wanted)
    return Verdict(replace(library, entries=_entries(trees)), in_order(kept))


def _name_in_shop(shop: Path, path: Path) -> str:
    """Return the name of a file as findings have it, with all links followed."""
    # Not Path.resolve: before Python 3.13 that raises RuntimeError on a link to itself.
    file = Path(os.path.realpath(path))
    if not file.exists():
        raise FileNotFoundError(f"{path} doesn't exist, or is a link to nothing")
    if not file.is_relative_to(shop):
        raise FileNotFoundError(f"{path} isn't in the shop {shop}")
    return file.relative_to(shop).as_posix()


def known_library(shop: Path, cache: Cache) -> Library:
    """Return the library, judged or not; a tree that the last check knows is not read again."""
    before = _known(cache)
    trees = {
        file: _recalled(shop, before, file) or unjudged(shop, file) for file in tree_names(shop)
    }
    library = _library(shop, read_knowledge(shop)[0], trees, cache)
    return replace(library, entries=_entries(trees))


def _entries(trees: Kept) -> dict[str, int]:
    """Return the numbers that are known of steps, by `tree#step`."""
    return {f"{one.listing.id}#{step}": number for one in trees.values() if one.listing
            for step, number in one.numbers}  # fmt: skip


def in_order(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Sort findings as a reader goes through the files; the same one is kept once."""
    return tuple(
        sorted(dict.fromkeys(findings), key=lambda one: (*one.at[:3], one.rule, one.message))
    )


def _known(cache: Cache) -> Kept:
    """Return what the last check has kept; what can't be made sense of counts for nothing."""
    heads, findings = dict(rows(cache, HEAD)), dict(rows(cache, FINDINGS))
    known = {}
    for file in heads.keys() & findings.keys():
        with suppress(Exception):  # it is only a cache, whoever wrote it
            known[file] = kept_in(heads[file], findings[file])
    return known


def _recalled(shop: Path, before: Kept, file: str) -> KeptTree | None:
    """Return what is known of a file, if it is as it was."""
    kept = before.get(file)
    return kept if kept and kept.content == content_of(shop / file) else None


def _examined(
    shop: Path, before: Kept, knowledge: Library, progress: Progress
) -> tuple[dict[str, KeptTree], dict[str, bytes]]:
    """Return every tree's file as it is known now, and packed the new trees still to be judged."""
    known = {file: _recalled(shop, before, file) for file in tree_names(shop)}
    new = [file for file, kept in known.items() if kept is None]
    led_into = _led_into(shop, new, known.values())
    examined = dict(zip(new, examine_all(shop, new, knowledge, led_into, progress), strict=True))
    alone = knowledge_digest(knowledge)
    now = {}
    for file, kept in known.items():
        if kept is None:
            one = examined[file]
            kept = one.kept if one.waiting else replace(one.kept, inputs=alone(one.kept.used))
        now[file] = kept
    return now, {file: one.waiting for file, one in examined.items() if one.waiting}


def _led_into(shop: Path, new: Iterable[str], known: Iterable[KeptTree | None]) -> frozenset[str]:
    """Return the trees that others may lead into the middle of.

    New files are looked through as plain text, before they are read: rather one tree too many.
    """
    listings = (kept.listing for kept in known if kept and kept.listing)
    found = {tree for listing in listings for tree, step in listing.leads_to if step}
    for file in new:
        if (shop / file).is_file():
            found |= {id_.decode() for id_ in INTO_A_STEP.findall((shop / file).read_bytes())}
    return frozenset(found)


def _library(shop: Path, knowledge: Library, trees: Kept, cache: Cache) -> Library:
    listings = {one.listing.id: one.listing for one in trees.values() if one.listing}
    whole = not any(mistakes_of(one) for one in trees.values())
    summary = partial(_summary, shop, trees, cache)
    return replace(knowledge, trees=Trees(listings, summary), whole=whole)


def _summary(shop: Path, trees: Kept, cache: Cache, listing: TreeListing) -> Summary:
    content = trees[listing.file].summary or row(cache, SUMMARY, listing.file)
    with suppress(Exception):  # it may have been damaged or deleted meanwhile
        return from_bytes(content, Summary)
    return from_bytes(unjudged(shop, listing.file).summary, Summary)


def _judged(
    shop: Path, library: Library, trees: dict[str, KeptTree], packed: Mapping[str, bytes]
) -> dict[str, KeptTree]:
    """Judge every tree whose findings are unknown or depend on something that has changed."""
    listings = library.listings
    led_into = {id_ for id_, listing in listings.items() if not is_independent(listing, library)}
    shapes = {one.listing.id: one.shape for one in trees.values() if one.listing}
    neighbors = neighbor_digests(library, shapes, led_into)
    knowledge = knowledge_digest(library)

    def inputs(kept: KeptTree) -> str:
        beside = neighbors.get(kept.listing.id, "") if kept.listing else ""
        return knowledge(kept.used) + beside

    waiting = [
        Waiting(file, kept, packed.get(file, b""))
        for file, kept in trees.items()
        if kept.listing and (file in packed or kept.inputs != inputs(kept))
    ]
    judged = dict(trees)
    for one, kept in zip(waiting, judge_all(shop, waiting, library), strict=True):
        judged[one.file] = replace(kept, inputs=inputs(kept))
    return judged


def _keep(cache: Cache, before: Kept, now: Kept) -> None:
    with transaction(cache):
        for file, kept in now.items():
            if before.get(file) != kept:
                for kind, content in rows_of(kept):
                    put_row(cache, kind, file, content)
        for file in before.keys() - now.keys():
            for kind in (HEAD, SUMMARY, FINDINGS):
                drop_row(cache, kind, file)
