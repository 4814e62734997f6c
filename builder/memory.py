"""What the last check found out about each tree, so that the next need not find it out again.

In: the files of a shop. Out: summaries and findings, from the last check where nothing on which
they rest has changed, else made anew. A tree's summary rests on its file alone; its findings rest
on its file, the knowledge, the day, and on the trees from which a walk can come to it or go on.

The memory lies in the user's own cache folder and not in the shop: a change to the shop that is
still to be checked must not bring along what the check is to find. It may be deleted at any time.
It is written by `pickle` and read back by a reader that makes nothing but values of the model.
"""

import hashlib
import io
import os
import pickle
from collections.abc import Iterable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, NamedTuple

import platformdirs

from builder.model import finding, library, silence, text, tree
from builder.model.finding import Finding
from builder.model.library import Library, Summary

MADE = (
    *(finding.Finding, finding.Related, finding.Severity),
    *(library.Summary, library.HandOver, silence.Silence),
    *(text.Text, text.Number, text.Position),
    *(tree.Scope, tree.Signed, tree.Symptom),
)
BY_NAME = {(one.__module__, one.__qualname__): one for one in MADE}
Findings = tuple[Finding, ...]


class Entry(NamedTuple):
    """What is known of one file: values as bytes, so that only those asked for are made."""

    file: str  # hash of its content
    summary: bytes  # `Summary | None` and the mistakes of its text
    shape: str  # hash of what other trees' findings may rest on
    judged: str = ""  # hash of all that its findings rest on
    findings: bytes = b""


@dataclass(frozen=True, slots=True)
class Memory:
    """An open memory; `now` grows while trees are asked for."""

    shop: Path
    before: Mapping[str, Entry]
    now: dict[str, Entry] = field(default_factory=dict)


def cache_of(shop: Path) -> Path:
    """Return the folder in which everything is kept that can be made again from a shop."""
    return platformdirs.user_cache_path("baytree") / _hash(shop.resolve())


@contextmanager
def remembered(shop: Path) -> Iterator[Memory]:
    """Open the memory of a shop, and write it at the end."""
    file = cache_of(shop) / "memory"
    ours = _hash(*(code.read_bytes() for code in sorted(Path(__file__).parent.rglob("*.py"))))
    memory = Memory(shop, _read(file, ours))
    yield memory
    if memory.now != memory.before:
        entries = {name: tuple(entry) for name, entry in memory.now.items()}
        _write(file, pickle.dumps((ours, entries), 5))


def recalled(memory: Memory, path: Path) -> tuple[Summary | None, Findings] | None:
    """Return the summary of a tree's file and the mistakes of its text, if it is as it was."""
    name = path.relative_to(memory.shop).as_posix()
    entry = memory.before.get(name)
    if not entry or entry.file != _hash(path.read_bytes()):
        return None
    kept: tuple[Summary | None, Findings] | None = _made(entry.summary)
    if kept:
        memory.now[name] = entry
    return kept


def note(memory: Memory, path: Path, found: tuple[Summary | None, Findings]) -> None:
    """Remember the summary of a tree's file and the mistakes of its text."""
    name = path.relative_to(memory.shop).as_posix()
    shape = _shape(found[0]) if found[0] else ""
    memory.now[name] = Entry(_hash(path.read_bytes()), pickle.dumps(found, 5), shape)


def findings(memory: Memory, of: Summary, grounds: str) -> Findings | None:
    """Return the findings of a tree, if what they rest on is as it was; else None."""
    entry = memory.now[of.file]
    if entry.judged != grounds:
        return None
    found: Findings | None = _made(entry.findings) if entry.findings else ()
    return found


def keep(memory: Memory, of: Summary, grounds: str, found: Findings) -> None:
    """Remember the findings of a tree, and what they rest on."""
    entry = memory.now[of.file]
    kept = pickle.dumps(found, 5) if found else b""  # mostly there is none
    memory.now[of.file] = entry._replace(judged=grounds, findings=kept)


def contents(*folders: Path) -> str:
    """Hash every file of folders."""
    files = sorted(file for folder in folders for file in folder.rglob("*") if file.is_file())
    return _hash(*(part for file in files for part in (file, file.read_bytes())))


def grounds(
    memory: Memory, library: Library, led_into: Iterable[str], *more: object
) -> dict[str, str]:
    """Return for each tree a hash of all that its findings rest on beside its own file.

    That is the knowledge and whatever else is given; for the trees that others lead into, also
    every tree from which a walk can come to them, however far away.
    """
    common = _hash(*more)
    found = dict.fromkeys(library.trees, common)
    callers = {id_: {over.from_tree for over in overs} for id_, overs in library.callers.items()}
    for id_ in led_into:
        before: set[str] = set()
        waiting = [id_]
        while waiting:
            new = callers.get(waiting.pop(), set()) - before
            before |= new
            waiting += new
        shapes = [memory.now[library.trees[one].file].shape for one in sorted(before | {id_})]
        found[id_] = _hash(common, *shapes)
    return found


def _shape(of: Summary) -> str:
    """Hash what other trees' findings may rest on, without what they never look at."""
    overs = [
        (*over.at, over.from_step, over.tree, over.step, sorted(over.reached_from),
         sorted((name, sorted(steps)) for name, steps in over.without.items()))
        for over in of.hand_overs
    ]  # fmt: skip
    return _hash(of.id, of.file, of.title, of.status, of.symptom, of.steps, of.replaced_by, overs)


class _Reader(pickle.Unpickler):
    """Makes values of the model and nothing else: a tampered file can run nothing."""

    def find_class(self, module: str, name: str) -> Any:
        """Return a class of the model by its name."""
        if made := BY_NAME.get((module, name)):
            return made
        raise pickle.UnpicklingError(f"{module}.{name} is no value of the model")


def _made(content: bytes) -> Any:
    """Make the values again; None where the memory is damaged: it is only a memory."""
    try:
        return _Reader(io.BytesIO(content)).load()
    except Exception:
        return None


def _read(file: Path, ours: str) -> dict[str, Entry]:
    made_by, entries = (_made(file.read_bytes()) if file.is_file() else None) or ("", {})
    return {name: Entry(*entry) for name, entry in entries.items()} if made_by == ours else {}


def _write(file: Path, content: bytes) -> None:
    """Replace the file whole: a check that is killed leaves the old memory."""
    file.parent.mkdir(parents=True, exist_ok=True)
    new = file.with_name(f"{file.name}.{os.getpid()}")
    new.write_bytes(content)
    new.replace(file)


def _hash(*parts: object) -> str:
    found = hashlib.sha256()
    for part in parts:
        found.update(part if isinstance(part, bytes) else str(part).encode())
        found.update(b"\0")
    return found.hexdigest()[:20]
