"""The preview after a save: byte for byte what a full build gives."""

import hashlib
import json
import re
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

import builder
from builder.commands.saved_shop import SavedShop
from builder.site.preview import Preview
from builder.site.watch import file_times

from .conftest import few_trees

PATHS = [str(Path(builder.__file__).parents[1])]  # where subprocesses find our code
# A full build in a process of its own, which remembers nothing.
BUILD = """
import sys
from pathlib import Path
sys.path[:0] = {paths!r}
from tests.site.conftest import build_shop
build_shop(Path({shop!r}), Path({out!r}), cached=False)
"""
# These list the other files for a day without a network; a preview has its server.
NOT_SERVED = {"baytree-files.json", "worker.js", "assets/offline-data.js"}
SILENT = "trees/horn/silent.yml"


def replaced(pattern: str, words: str) -> Callable[[str], str]:
    """Return an edit of the first match in a text."""
    return lambda text: re.sub(pattern, lambda match: match[1] + words, text, count=1)


EDITS: tuple[tuple[str, Callable[[str], str]], ...] = (
    (SILENT, replaced(r"(?m)^( +check: ).*$", "Is the horn fuse good at both ends?")),
    (SILENT, replaced(r"(?m)^(title: ).*$", "Horn is weak")),
    (SILENT, lambda text: text.replace("minutes:", "minutse:", 1)),  # broken, and put right:
    (SILENT, lambda text: text.replace("minutse:", "minutes:", 1)),
    ("kb/tools.yml", replaced(r"(?m)^( +name: ).*$", "Meter of the shop")),
    ("kb/hazards.yml", replaced(r"(?m)^( +hazard: ).*$", "A new danger")),
    ("kb/glossary.yml", replaced(r"(?m)^( +means: ).*$", "another meaning")),
    ("kb/procedures/first-stop.yml", replaced(r"(?m)^(title: ).*$", "Stop once")),
    ("kb/how-to/voltage-drop.md", lambda text: f"{text}\nOne more line.\n"),
    ("kb/how-to/pictures/probes.svg", lambda text: text.replace("<svg ", "<svg  ", 1)),
    ("site_config/mkdocs.yml", lambda _: "copyright: Osei and Lind\n"),
)


def digests(preview: Preview) -> dict[str, str]:
    """Return the SHA-256 of every file that is served."""
    return {name: hashlib.sha256(preview.file(name) or b"").hexdigest() for name in preview.names()}


def full_build(shop: Path) -> dict[str, str]:
    """Return the SHA-256 of every file of a full build."""
    out = shop.parent / "full"
    script = BUILD.format(paths=PATHS, shop=str(shop), out=str(out))
    subprocess.run([sys.executable, "-c", script], check=True, timeout=240)
    files: dict[str, str] = json.loads((out / "baytree-files.json").read_text("utf-8"))["files"]
    return files


def test_after_many_saves_the_preview_is_a_full_build(tmp_path: Path) -> None:
    """Whatever is left of the states before: every file is as in a build from scratch."""
    shop = few_trees(tmp_path)
    saved = SavedShop(shop)
    before = digests(saved.check(file_times(shop)).preview)
    for name, edit in EDITS:
        file = shop / name
        text = file.read_text("utf-8") if file.exists() else ""
        assert edit(text) != text, name
        file.write_text(edit(text), "utf-8")
        preview = saved.check(file_times(shop)).preview
        for page in ("trees/horn/silent.html", "index.html", "tools.html", "walks/shop.js"):
            assert preview.file(page), page
    (shop / SILENT).rename(shop / "trees" / "horn" / "weak.yml")
    now = digests(saved.check(file_times(shop)).preview)
    built = full_build(shop)
    assert now.keys() - {"findings.html"} == built.keys() - NOT_SERVED
    assert {name for name in built.keys() - NOT_SERVED if built[name] != now[name]} == set()
    assert len([name for name in now if before.get(name) != now[name]]) > 10


def test_a_page_is_of_one_state_of_the_shop(shop: Path) -> None:
    """What is asked for after another save is still of the files that were checked."""
    saved = SavedShop(shop)
    preview = saved.check(file_times(shop)).preview
    (shop / SILENT).write_text("gone", "utf-8")
    assert b"Horn is silent" in (preview.file("trees/horn/silent.html") or b"")
    later = saved.check(file_times(shop)).preview
    assert b"Horn is silent" in (later.file("trees/horn/silent.html") or b"")
    assert b"has errors" in (later.file("trees/horn/silent.html") or b"")


def test_a_save_of_a_tree_reads_no_knowledge(shop: Path) -> None:
    """The knowledge is read again only after a save in `kb/`, or where a file came or went."""
    saved = SavedShop(shop)
    saved.check(file_times(shop))
    first = saved._knowledge
    (shop / SILENT).write_text((shop / SILENT).read_text("utf-8") + "# saved\n", "utf-8")
    saved.check(file_times(shop))
    assert saved._knowledge is first
    (shop / "trees" / "horn" / "copy of silent.yml").write_text("title: Horn\n", "utf-8")
    assert "looks like a copy" in saved.check(file_times(shop)).report


def test_a_tree_saved_unnoticed_is_never_shown_half(shop: Path) -> None:
    """A save within one tick of the disk's clock: the check says so, the next one has the text."""
    saved, file = SavedShop(shop), shop / SILENT
    files = file_times(shop)
    saved.check(files)
    file.write_text(file.read_text("utf-8").replace("Horn is silent", "Horn is SILENT"), "utf-8")
    with pytest.raises(OSError, match="was changed while it was being checked"):
        saved.check(files)
    page = saved.check(files).preview.file("trees/horn/silent.html")
    assert b"Horn is SILENT" in (page or b"")
