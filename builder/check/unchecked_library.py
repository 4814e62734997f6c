"""The whole library of a shop, read without a cache and without checking it.

In: a shop's folder. Out: the `Library` and the mistakes in all its files.
"""

from dataclasses import replace
from pathlib import Path

from builder.check.filled_knowledge import filled_knowledge
from builder.graph.runs import with_runs
from builder.graph.summaries import summary_of
from builder.model.finding import Finding
from builder.model.library import Library
from builder.model.summary import TreeSummary
from builder.reader.trees import read_tree, tree_files


def read_library(shop: Path) -> tuple[Library, tuple[Finding, ...]]:
    """Read the knowledge and summarize every tree; `known_library` reads only what changed."""
    library, findings = filled_knowledge(shop)
    all_findings = list(findings)
    trees: dict[str, TreeSummary] = {}
    for path in tree_files(shop):
        tree, mistakes = read_tree(shop, path)
        all_findings += mistakes
        if tree:
            trees[tree.id] = summary_of(with_runs(tree, library.procedures), library.procedures)
    return replace(library, trees=trees), tuple(all_findings)
