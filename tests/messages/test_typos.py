"""What the check says about common slips, word for word: the messages are the product.

Each file under `typos/` holds a file of the tests' shop, the right lines, the lines as typed, all
that `baytree check` then says, and the lines that `baytree check --fix` writes, if it writes any.
To write the last parts again after a change of words, run this file as a script,
`python tests/messages/test_typos.py`, and read the difference.

The first line is a tree (`horn/silent`) or a file (`kb/modules/radio.yml`). What follows it says
what else goes wrong: `moved to FILE`, `copied to FILE`, `new` for a tree fresh from the template.
A file that the shop doesn't have holds only the lines as typed. Without right lines the typed
ones stand at the top.
"""

import re
import shutil
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import date
from pathlib import Path
from typing import NamedTuple

import pytest

from builder.authoring.corrections import correcting
from builder.authoring.new_tree import filled_template
from builder.cache.database import Cache, temporary
from builder.check.filled_knowledge import Knowledge, known_knowledge
from builder.check.verdict import Verdict, verdict_of
from builder.reader.source import Source
from builder.reader.trees import tree_from
from builder.report.as_text import findings_as_text
from builder.rules.shared.judge import judge

HERE = Path(__file__).parent
SHOP = HERE.parent / "shop"
TYPOS = sorted((HERE / "typos").glob("*.txt"))
TODAY = date(2026, 10, 1)
HEAD = re.compile(r"(\S+)(?: (moved to|copied to|new))?(?: (.+))?")
PARTS = re.compile(r"(.*)\n--- right\n(.*?)\n--- typed\n(.*?)\n--- report\n(.*)", re.DOTALL)
FIXED = "\n--- fixed\n"


class Sound(NamedTuple):
    """The shop without a slip, as the last check knows it: only what is spoiled is judged anew."""

    knowledge: Knowledge
    cache: Cache


@contextmanager
def checked_shop() -> Iterator[Sound]:
    """Check the sound shop once."""
    with temporary() as cache:
        knowledge = known_knowledge(SHOP)
        verdict_of(knowledge, cache, TODAY)
        yield Sound(knowledge, cache)


@pytest.fixture(scope="module")
def sound() -> Iterator[Sound]:
    """Check the sound shop once for all slips."""
    with checked_shop() as checked:
        yield checked


def parts(path: Path) -> tuple[str, str, str, str]:
    """Split a file into its tree, the right lines, the typed ones, and what follows from them."""
    match = PARTS.fullmatch(path.read_text(encoding="utf-8"))
    assert match, path.name
    return match[1], match[2], match[3], match[4]


def report_of(path: Path, folder: Path, sound: Sound) -> str:
    """Return what the check says about the slip in a copy of the shop, and what a fix writes."""
    head, right, typed, _ = parts(path)
    shop = folder / "shop"
    shutil.copytree(SHOP, shop, dirs_exist_ok=True)
    file = _file_of(head, shop)
    text = file.read_text(encoding="utf-8")
    assert right in text, f"{path.name}: the right lines are no longer in the file"
    spoiled = text.replace(right, typed, 1)
    file.write_text(spoiled, encoding="utf-8")
    verdict = verdict_of(known_knowledge(shop, sound.knowledge), sound.cache, TODAY)

    def lines(name: str) -> list[str]:
        read = shop / name
        return read.read_text(encoding="utf-8").split("\n") if read.is_file() else []

    trees = len(verdict.library.trees)
    report = findings_as_text(verdict.findings, lines, trees, drafts=verdict.drafts)
    name = file.relative_to(shop).as_posix()
    fixed = lines_of_a_fix(name, spoiled, verdict) if name.startswith("trees/") else []
    return report + (FIXED + "".join(f"{line}\n" for line in fixed) if fixed else "")


def lines_of_a_fix(file: str, text: str, verdict: Verdict) -> list[str]:
    """Return the lines that a fix of a tree writes."""
    run = correcting(file, text, [one for one in verdict.findings if one.at.file == file])
    try:
        tried = next(run)
        while True:
            tree, mistakes = tree_from(Source(file, tried, ""))
            tried = run.send((*mistakes, *(judge(tree, verdict.library) if tree else ())))
    except StopIteration as end:
        return [one.now for one in end.value.corrections]


def _file_of(head: str, shop: Path) -> Path:
    """Return the file to spoil, moved, copied or created as the first line says."""
    match = HEAD.fullmatch(head)
    assert match, head
    name, how, other = match.groups()
    file = shop / (name if "." in name else f"trees/{name}.yml")
    target = shop / other if other else file
    target.parent.mkdir(parents=True, exist_ok=True)
    match how:
        case "moved to":
            file.rename(target)
        case "copied to":
            shutil.copy(file, target)
        case "new":
            target.write_text(filled_template(name, TODAY), encoding="utf-8")
        case _ if not file.exists():
            file.touch()
    return target


@pytest.mark.parametrize("path", TYPOS, ids=lambda path: path.stem)
def test_a_slip_is_reported_in_these_words(path: Path, tmp_path: Path, sound: Sound) -> None:
    """The place, what is wrong, why it matters, what to write, and what a fix writes itself."""
    assert report_of(path, tmp_path, sound) == parts(path)[3]


if __name__ == "__main__":
    import tempfile

    for typo in TYPOS:
        with tempfile.TemporaryDirectory() as folder, checked_shop() as sound_shop:
            report = report_of(typo, Path(folder), sound_shop)
        head = typo.read_text(encoding="utf-8").split("--- report\n")[0]
        typo.write_text(f"{head}--- report\n{report}", encoding="utf-8")
    sys.exit(0)
