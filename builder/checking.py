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

from builder import memory
from builder.examining import Examined, examine_all
from builder.memory import Findings, Memory
from builder.model.finding import Severity
from builder.model.library import Library, Summary
from builder.model.tree import Tree
from builder.reader.library import read_knowledge
from builder.reader.trees import read_tree, tree_files
from builder.rules.judge import judge, judge_library, stands_alone


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
        examined = _examined(kept, knowledge, today)
        trees = {one.summary.id: one.summary for one in examined if one.summary}
        more = tuple(mistake for one in examined for mistake in one.mistakes)
        library = replace(knowledge, trees=trees, whole=not more)
        led_into = [id_ for id_, one in trees.items() if not stands_alone(one, library)]
        contents = memory.contents(shop / "kb", shop / "site_config")
        grounds = memory.grounds(kept, library, led_into, today, contents)
        common = (*mistakes, *more, *judge_library(library, today))
        check = Check(shop, today, library, kept, grounds, common)
        for one in examined:
            if one.summary and one.alone is not None and stands_alone(one.summary, library):
                _keep(check, one.summary, one.alone)
        yield check


def _examined(kept: Memory, knowledge: Library, today: date) -> list[Examined]:
    files = tree_files(kept.shop)
    known = {path: memory.recalled(kept, path) for path in files}
    new = [path for path, found in known.items() if found is None]
    fresh = dict(zip(new, examine_all(kept.shop, new, knowledge, today), strict=True))
    for path, one in fresh.items():
        memory.note(kept, path, (one.summary, one.mistakes))
    return [fresh[path] if found is None else Examined(*found) for path, found in known.items()]


def findings(check: Check) -> Findings:
    """Judge every tree that has not been judged, and return everything that was found."""
    for of in check.library.trees.values():
        if of.id not in check.judged:
            grounds = check.grounds[of.id]
            known = memory.findings(check.memory, of, grounds)
            check.judged[of.id] = _read(check, of)[1] if known is None else known
    return (*check.common, *(one for found in check.judged.values() for one in found))


def sound_tree(check: Check, id_: str) -> Tree | None:
    """Read a tree and judge it on the way; None if an error was found in it."""
    tree, found = _read(check, check.library.trees[id_])
    return None if any(one.severity is Severity.ERROR for one in found) else tree


def _read(check: Check, of: Summary) -> tuple[Tree, Findings]:
    tree, mistakes = read_tree(check.shop, check.shop / of.file)
    if tree is None:
        raise FileNotFoundError(f"{of.file} was changed while it was being checked")
    found = judge(tree, check.library, check.today)
    _keep(check, of, found)
    return tree, (*mistakes, *found)


def _keep(check: Check, of: Summary, found: Findings) -> None:
    memory.keep(check.memory, of, check.grounds[of.id], found)
    check.judged[of.id] = found
