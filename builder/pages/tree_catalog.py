"""Trees by system, warning light, DTC, occasion, module, tool and article.

In: the library. Out: `TreeCatalog`, computed once for all index pages. Retired trees are only in
the list of retired trees.
"""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from builder.graph.runs import with_inner_steps
from builder.model.library import Library
from builder.model.summary import TreeSummary
from builder.model.tree import Status, Step

TreeList = tuple[TreeSummary, ...]


@dataclass(frozen=True, slots=True)
class TreeCatalog:
    """Trees by what they are about; each list sorted by title."""

    library: Library
    trees: TreeList
    retired: TreeList
    by_system: Mapping[str, TreeList]
    by_lamp: Mapping[str, TreeList]
    by_code: Mapping[str, TreeList]  # DTCs without the failure type byte
    by_occasion: Mapping[str, TreeList]  # `during` in a tree
    by_module: Mapping[str, TreeList]
    by_tool: Mapping[str, TreeList]
    by_how_to: Mapping[str, TreeList]


def catalog_trees(library: Library) -> TreeCatalog:
    """Sort the trees into their lists."""
    ordered = sorted(library.trees.values(), key=lambda tree: (tree.title.casefold(), tree.id))
    live = tuple(tree for tree in ordered if tree.status is not Status.RETIRED)
    return TreeCatalog(
        library=library,
        trees=live,
        retired=tuple(tree for tree in ordered if tree.status is Status.RETIRED),
        by_system=_lists((str(tree.system), tree) for tree in live),
        by_lamp=_lists((str(lamp), tree) for tree in live for lamp in tree.symptom.lamps),
        by_code=_lists((two_byte_code(c), tree) for tree in live for c in tree.symptom.codes),
        by_occasion=_lists((str(what), tree) for tree in live for what in tree.symptom.during),
        by_module=_lists((str(id_), tree) for tree in live for id_ in _modules(tree)),
        by_tool=_lists((id_, tree) for tree in live for id_ in tree.tools | _tools(tree, library)),
        by_how_to=_lists(
            (id_, tree) for tree in live for id_ in tree.how_tos | _how_tos(tree, library)
        ),
    )


def _tools(tree: TreeSummary, library: Library) -> frozenset[str]:
    """Return the tools of the procedures that a tree runs."""
    return frozenset(str(tool) for step in _inner_steps(tree, library) for tool in step.tools)


def _how_tos(tree: TreeSummary, library: Library) -> frozenset[str]:
    """Return the articles of the procedures that a tree runs."""
    return frozenset(str(step.how_to) for step in _inner_steps(tree, library) if step.how_to)


def _inner_steps(tree: TreeSummary, library: Library) -> Iterator[Step]:
    run = (library.procedures[name] for name in tree.procedures if name in library.procedures)
    for step in (step for procedure in run for step in procedure.tree.steps.values()):
        yield from with_inner_steps(step, library.procedures)


def two_byte_code(code: str) -> str:
    """Return a DTC without its failure type byte."""
    return code.split("-")[0]


def _modules(tree: TreeSummary) -> set[str]:
    return set(tree.modules) | {str(id_) for id_ in tree.symptom.fitted_elsewhere}


def _lists(pairs: Iterable[tuple[str, TreeSummary]]) -> dict[str, TreeList]:
    lists: dict[str, dict[str, TreeSummary]] = defaultdict(dict)
    for key, tree in pairs:
        lists[key][tree.id] = tree
    return {key: tuple(lists[key].values()) for key in sorted(lists)}
