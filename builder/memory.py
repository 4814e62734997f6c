"""What the last check found out about each tree, so that the next need not find it out again.

In: the files of a shop. Out: an `Entry` for each tree's file, from the last check where the file is
as it was. What is in the file rests on the file alone; its findings rest on more, see `grounds`.

The memory lies in the user's own cache folder and not in the shop: a change to the shop that is
still to be checked must not bring along what the check is to find. It may be deleted at any time.
It is written by `pickle` and read back by a reader that makes nothing but values of the model.
"""

import hashlib
import io
import os
import pickle
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field
from functools import partial
from pathlib import Path
from typing import Any, NamedTuple
from zlib import crc32

import platformdirs

from builder.model import finding, silence, summary, text, tree
from builder.model.finding import Finding
from builder.model.library import Trees
from builder.model.summary import Gist, Summary, gist_of
from builder.reader.source import LARGEST

NO_FILE = b"\xff"  # no file of text holds this
PARTS = 16  # files of the memory; of these only those are written in which something changed
Findings = tuple[Finding, ...]


class Entry(NamedTuple):
    """What is known of a tree's file; as bytes what few ask for, so that it is seldom made."""

    file: str  # hash of its content
    gist: Gist | None = None  # None where nothing could be made of the file
    summary: bytes = b""
    mistakes: bytes = b""  # of its text
    shape: str = ""  # hash of what other trees' findings may rest on
    findings: bytes = b""  # of the rules
    judged: str = ""  # hash of all that the findings rest on; "" while that is not known


MADE = (
    *(Entry, Gist, finding.Finding, finding.Related, finding.Severity),
    *(summary.Summary, summary.HandOver, silence.Silence),
    *(text.Text, text.Number, text.Position),
    *(tree.Scope, tree.Signed, tree.Symptom),
)
BY_NAME = {(one.__module__, one.__qualname__): one for one in MADE}


@dataclass(frozen=True, slots=True)
class Memory:
    """An open memory: by the name of each file what was known, and what is."""

    shop: Path
    ours: str  # hash of our own code: what another version has found out counts for nothing
    before: Mapping[str, Entry]
    now: dict[str, Entry] = field(default_factory=dict)


def cache_of(shop: Path) -> Path:
    """Return the folder in which everything is kept that can be made again from a shop."""
    return platformdirs.user_cache_path("baytree") / hashed(shop.resolve())


def opened(shop: Path) -> Memory:
    """Open the memory of a shop to read in it."""
    ours = hashed(*(code.read_bytes() for code in sorted(Path(__file__).parent.rglob("*.py"))))
    parts = [_read(_file(shop, part), ours) for part in range(PARTS)]
    return Memory(shop, ours, {file: entry for part in parts for file, entry in part.items()})


@contextmanager
def remembered(shop: Path) -> Iterator[Memory]:
    """Open the memory of a shop, and write it at the end."""
    memory = opened(shop)
    yield memory
    both = zip(_parted(memory.before), _parted(memory.now), strict=True)
    for part, (before, now) in enumerate(both):
        if now != before:
            _write(_file(shop, part), memory.ours, now)


def _file(shop: Path, part: int) -> Path:
    return cache_of(shop) / "checked" / str(part)


def recalled(memory: Memory, file: str) -> Entry | None:
    """Return what is known of a tree's file, if it is as it was."""
    entry = memory.before.get(file)
    return entry if entry and entry.file == hashed(raw_content(memory.shop / file)) else None


def raw_content(file: Path) -> bytes:
    """Return what a file holds, and no more of it than is read; a sign of its own where no file is.

    A file that cannot be read may become an empty one: the two must not be taken for each other.
    """
    try:
        if not file.is_file():
            return NO_FILE
        with file.open("rb") as opened:
            return opened.read(LARGEST + 1)
    except OSError:
        return NO_FILE


def entry(raw: bytes, of: Summary | None, mistakes: Findings, findings: Findings) -> Entry:
    """Make an entry of the raw content of a file and of what was found out about it."""
    return Entry(
        file=hashed(raw),
        gist=gist_of(of) if of else None,
        summary=pickle.dumps(of, 5),
        mistakes=_kept(mistakes),
        shape=_shape(of) if of else "",
        findings=_kept(findings),
    )


def keep(memory: Memory, of: Gist, grounds: str, found: Findings) -> None:
    """Remember the findings of a tree, and what they rest on."""
    memory.now[of.file] = memory.now[of.file]._replace(judged=grounds, findings=_kept(found))


def trees(memory: Memory) -> Trees:
    """Return the trees as the memory has them."""
    gists = [entry.gist for entry in memory.now.values() if entry.gist]
    return Trees({gist.id: gist for gist in gists}, partial(_summary, memory.now))


def _summary(entries: Mapping[str, Entry], of: Gist) -> Summary:
    made: Summary = _made(entries[of.file].summary)
    return made


def mistakes(entry: Entry) -> Findings:
    """Return the mistakes of a file's text."""
    return _made(entry.mistakes) if entry.mistakes else ()


def findings(entry: Entry) -> Findings:
    """Return what the rules found in a tree."""
    return _made(entry.findings) if entry.findings else ()


def contents(*folders: Path) -> str:
    """Hash every file of folders, piece by piece; of what cannot be read, its name."""
    return hashed(*(part for folder in folders for part in _parts(folder)))


def _parts(folder: Path) -> Iterator[object]:
    for inside, folders, names in os.walk(folder):
        folders[:] = sorted(name for name in folders if name != "__pycache__")
        for name in sorted(names):
            file = Path(inside, name)
            yield file
            yield _content(file)


def _content(file: Path) -> str:
    try:
        if not file.is_file():
            return ""
        with file.open("rb") as opened:
            return hashlib.file_digest(opened, "sha256").hexdigest()
    except OSError:
        return ""


def hashed(*parts: object) -> str:
    """Hash bytes, or how other values are written."""
    found = hashlib.sha256()
    for part in parts:
        found.update(part if isinstance(part, bytes) else str(part).encode(errors="surrogatepass"))
        found.update(b"\0")
    return found.hexdigest()[:20]


def _shape(of: Summary) -> str:
    """Hash what other trees' findings may rest on, without what they never look at."""
    overs = [
        (*over.at, over.from_step, over.tree, over.step, sorted(over.reached_from),
         sorted((name, sorted(steps)) for name, steps in over.without.items()))
        for over in of.hand_overs
    ]  # fmt: skip
    return hashed(of.id, of.file, of.title, of.status, of.symptom, of.steps, of.replaced_by, overs)


class _Reader(pickle.Unpickler):
    """Makes values of the model and nothing else: a tampered file can run nothing."""

    def find_class(self, module: str, name: str) -> Any:
        """Return a class of the model by its name."""
        if made := BY_NAME.get((module, name)):
            return made
        raise pickle.UnpicklingError(f"{module}.{name} is no value of the model")


def _made(content: bytes) -> Any:
    return _Reader(io.BytesIO(content)).load()


def _kept(findings: Findings) -> bytes:
    return pickle.dumps(findings, 5) if findings else b""  # mostly there is none


def _parted(entries: Mapping[str, Entry]) -> list[dict[str, Entry]]:
    """Share the entries out by the names of their files."""
    parts: list[dict[str, Entry]] = [{} for _ in range(PARTS)]
    for file, entry in entries.items():
        parts[crc32(file.encode(errors="surrogatepass")) % PARTS][file] = entry
    return parts


def _read(file: Path, ours: str) -> Mapping[str, Entry]:
    """Read what an equal tool has written; nothing where it is damaged: it is only a memory."""
    try:
        written_by, hash_, content = file.read_bytes().split(b"\n", 2)
        if written_by.decode() != ours or hash_.decode() != hashed(content):
            return {}
        entries: Mapping[str, Entry] = _made(content)
    except Exception:
        return {}
    return entries


def _write(file: Path, ours: str, entries: Mapping[str, Entry]) -> None:
    """Replace the file whole: a check that is killed leaves the old memory."""
    file.parent.mkdir(parents=True, exist_ok=True)
    new = file.with_name(f"{file.name}.{os.getpid()}")
    content = pickle.dumps(entries, 5)
    new.write_bytes(b"\n".join((ours.encode(), hashed(content).encode(), content)))
    new.replace(file)
