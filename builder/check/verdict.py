"""A check of a shop that reads and judges each tree at most once, and only if it must.

In: a shop's folder and the day. Out: the library, and the findings of all its files. What the last
check found out is taken from the memory; a tree that is read for another reason (to make its page)
is judged on the way.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field, replace
from datetime import date
from pathlib import Path

from builder.check import memory
from builder.check.dependencies import grounds
from builder.check.examine import examine_all, judge_all, judged, unjudged
from builder.check.memory import Findings, Memory
from builder.model.finding import Severity
from builder.model.library import Library
from builder.model.summary import Gist
from builder.model.tree import Tree
from builder.reader.library import read_knowledge
from builder.reader.trees import tree_names
from builder.rules.shared.judge import judge_library, stands_alone


@dataclass(frozen=True, slots=True)
class Check:
    """A check under way; `judged` grows tree by tree."""

    shop: Path
    today: date
    library: Library
    memory: Memory
    grounds: dict[str, str]  # of each tree: a hash of what its findings rest on
    common: Findings  # mistakes of text, and what concerns the shop as a whole
    judged: dict[str, Findings] = field(default_factory=dict)


@contextmanager
def checking(shop: Path, today: date) -> Iterator[Check]:
    """Begin a check: all is read, and judged as far as it is new and stands alone."""
    with memory.remembered(shop) as kept:
        knowledge, mistakes = read_knowledge(shop)
        new = _examine(kept, knowledge, today)
        entries = kept.now.values()
        more = tuple(one for entry in entries for one in memory.mistakes(entry))
        library = replace(knowledge, trees=memory.trees(kept), whole=not more)
        common = (*mistakes, *more, *judge_library(library, today))
        check = Check(shop, today, library, kept, _grounds(kept, library, today), common)
        for gist in (kept.now[file].gist for file in new):
            if gist and stands_alone(gist, library):
                _keep(check, gist, memory.findings(kept.now[gist.file]))
        yield check


def _examine(kept: Memory, knowledge: Library, today: date) -> list[str]:
    """Fill the memory; return the files of which nothing was known."""
    known = {file: memory.recalled(kept, file) for file in tree_names(kept.shop)}
    new = [file for file, entry in known.items() if entry is None]
    fresh = dict(zip(new, examine_all(kept.shop, new, knowledge, today), strict=True))
    kept.now.update((file, entry or fresh[file]) for file, entry in known.items())
    return new


def _grounds(kept: Memory, library: Library, today: date) -> dict[str, str]:
    common = memory.hashed(today, memory.contents(kept.shop / "kb", kept.shop / "site_config"))
    gists = library.gists.values()
    led_into = {gist.id for gist in gists if not stands_alone(gist, library)}
    shapes = {gist.id: kept.now[gist.file].shape for gist in gists}
    return grounds(library, shapes, led_into, common)


def known_library(shop: Path) -> Library:
    """Return the library, judged or not; a tree that the last check knows is not read again."""
    knowledge, _ = read_knowledge(shop)
    kept = memory.opened(shop)
    for file in tree_names(shop):
        kept.now[file] = memory.recalled(kept, file) or unjudged(shop, file)
    return replace(knowledge, trees=memory.trees(kept))


def findings(check: Check) -> Findings:
    """Judge every tree that has not been judged, and return everything that was found."""
    waiting: list[Gist] = []
    for of in check.library.gists.values():
        entry = check.memory.now[of.file]
        if of.id not in check.judged and entry.judged == check.grounds[of.id]:
            check.judged[of.id] = memory.findings(entry)
        elif of.id not in check.judged:
            waiting.append(of)
    found = judge_all(check.shop, [of.file for of in waiting], check.library, check.today)
    for of, of_tree in zip(waiting, found, strict=True):
        _keep(check, of, of_tree)
    return (*check.common, *(one for found in check.judged.values() for one in found))


def sound_tree(check: Check, id_: str) -> Tree | None:
    """Read a tree and judge it on the way; None if an error was found in it."""
    of = check.library.gists[id_]
    tree, mistakes, found = judged(check.shop, check.library, check.today, of.file)
    _keep(check, of, found)
    return None if any(one.severity is Severity.ERROR for one in (*mistakes, *found)) else tree


def _keep(check: Check, of: Gist, found: Findings) -> None:
    memory.keep(check.memory, of, check.grounds[of.id], found)
    check.judged[of.id] = found
