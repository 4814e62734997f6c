"""Each command as one short pipeline; read this first.

In: a shop's folder and what the command line asked for. Out: values for `cli` to print, or files
written by the last room of the pipeline.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.model.shop import Shop
from builder.reader.library import read_library
from builder.reader.trees import read_tree, tree_files
from builder.rules.judge import judge, judge_library


@dataclass(frozen=True, slots=True)
class Checked:
    """What a check found."""

    library: Library
    findings: tuple[Finding, ...]  # by file, line and column
    trees: int

    @property
    def errors(self) -> int:
        """How many findings stop a build."""
        return sum(finding.severity is Severity.ERROR for finding in self.findings)

    @property
    def warnings(self) -> int:
        """How many findings do not."""
        return len(self.findings) - self.errors


def check(shop: Path, files: Iterable[Path], today: date) -> Checked:
    """Judge every tree and the shop as a whole; with files, keep what concerns those."""
    library, findings = read_library(shop)
    findings += judge_library(library, today)
    for path in tree_files(shop):
        tree, _ = read_tree(shop, path)
        if tree:
            findings += judge(tree, library, today)
    wanted = {path.resolve().relative_to(shop.resolve()).as_posix() for path in files}
    kept = [one for one in findings if not wanted or one.at.file in wanted]
    return Checked(library, in_order(kept), len(library.trees))


def in_order(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Sort findings as a reader goes through the files; the same one is kept once."""
    return tuple(
        sorted(dict.fromkeys(findings), key=lambda one: (*one.at[:3], one.rule, one.message))
    )


__all__ = ["Checked", "Shop", "check", "in_order", "read_tree", "tree_files"]
