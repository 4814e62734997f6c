"""A small sound shop, and the findings of a case in it.

A case is the text of a file, or of several under lines such as `# kb/tools.yml`. A text that begins
with `steps:`, or is steps alone, gets a head; the ends `repair` and `all-good` are added where they
are named and missing. The findings are those in the files of the case.
"""

import re
import shutil
from collections.abc import Callable, Mapping
from datetime import date
from pathlib import Path
from textwrap import indent

import pytest

from builder.check.unchecked_library import read_library
from builder.model.finding import Finding
from builder.reader.trees import read_tree, tree_files
from builder.rules.shared.judge import judge, judge_library

SHOP = Path(__file__).parent / "shop"
TODAY = date(2026, 10, 1)
FILE = re.compile(r"^# ((?:trees|kb|site_config)/\S+)\n", re.MULTILINE)
KEYS = re.compile(  # with which a tree begins
    r"(?:\s*#.*\n)*(?:format|status|system|drive|symptom|asks|lists|steps|applies_to)\b"
)
HEAD = """\
format: 2
title: A case of the tests, {slug}
status: ready
system: {system}
symptom: {{words: [it shows as {slug}]}}
written: {{by: R. Osei, date: 2026-03-02}}
reviewed: {{by: M. Lind, date: 2026-09-01}}
drive: with care
why: It may get worse.
"""
ENDS = {
    "repair": """\
  repair:
    fix: Repair it
    cause: It is worn
    weight: 1
    verify: [the check passes]
""",
    "all-good": """\
  all-good:
    stop: No fault found today
    kind: not-found
""",
}
Judged = Callable[[Mapping[str, str]], list[Finding]]


def files_of(text: str) -> dict[str, str]:
    """Split the text of a case into its files, each a whole file."""
    parts = FILE.split(text)
    if re.sub(r"(?m)^#.*$", "", parts[0]).strip():
        return {"trees/charging/case.yml": whole(parts[0], "charging", "case")}
    files = {}
    for name, part in zip(parts[1::2], parts[2::2], strict=True):
        system, slug = name.split("/")[-2:]
        is_tree = name.startswith("trees/")
        files[name] = whole(part, system, slug.removesuffix(".yml")) if is_tree else part
    return files


def whole(text: str, system: str, slug: str) -> str:
    """Complete steps to a tree."""
    if "\ntitle:" not in f"\n{text}":
        if not KEYS.match(text):
            text = "steps:\n" + indent(text, "  ")
        head = HEAD.format(system=system, slug=slug).splitlines(keepends=True)
        own = {line.split(":")[0] for line in text.splitlines()}
        text = "".join(line for line in head if line.split(":")[0] not in own) + text
    for name, end in ENDS.items():
        named = re.search(rf": {name}\b", text)
        if named and f"\n  {name}:" not in text:
            text = text.rstrip("\n") + "\n" + end
    return text


@pytest.fixture
def judged(tmp_path: Path) -> Judged:
    """Return a function that judges files in a copy of the small shop."""

    def findings(files: Mapping[str, str]) -> list[Finding]:
        shop = tmp_path / "shop"
        shutil.copytree(SHOP, shop, dirs_exist_ok=True)
        for name, text in files.items():
            (shop / name).parent.mkdir(parents=True, exist_ok=True)
            (shop / name).write_text(text, encoding="utf-8")
        return [finding for finding in of_shop(shop) if finding.at.file in files]

    return findings


def of_shop(shop: Path) -> list[Finding]:
    """Judge every tree of a shop and the shop as a whole."""
    library, text_errors = read_library(shop)
    findings = [*text_errors, *judge_library(library, TODAY)]
    for path in tree_files(shop):
        tree, _ = read_tree(shop, path)
        if tree:
            findings += judge(tree, library)
    return findings
