"""Which trees belong to which system, lamp, code and so on.

In: the library. Out: `Catalogue`, worked out once for all index pages. Retired trees are in none of
its lists but their own.
"""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from builder.model.library import Library
from builder.model.summary import Summary
from builder.model.tree import Scope, Status

Trees = tuple[Summary, ...]


@dataclass(frozen=True, slots=True)
class Catalogue:
    """Trees by what they are about; each list sorted by title."""

    library: Library
    trees: Trees
    retired: Trees
    by_system: Mapping[str, Trees]
    by_lamp: Mapping[str, Trees]
    by_code: Mapping[str, Trees]  # two-byte form
    by_during: Mapping[str, Trees]
    by_module: Mapping[str, Trees]
    by_tool: Mapping[str, Trees]
    by_how_to: Mapping[str, Trees]


def catalogue_of(library: Library) -> Catalogue:
    """Sort the trees into their lists."""
    ordered = sorted(library.trees.values(), key=lambda tree: (tree.title.casefold(), tree.id))
    live = tuple(tree for tree in ordered if tree.status is not Status.RETIRED)
    return Catalogue(
        library=library,
        trees=live,
        retired=tuple(tree for tree in ordered if tree.status is Status.RETIRED),
        by_system=_lists((str(tree.system), tree) for tree in live),
        by_lamp=_lists((str(lamp), tree) for tree in live for lamp in tree.symptom.lamps),
        by_code=_lists((short_code(c), tree) for tree in live for c in tree.symptom.codes),
        by_during=_lists((str(what), tree) for tree in live for what in tree.symptom.during),
        by_module=_lists((str(id_), tree) for tree in live for id_ in _modules(tree)),
        by_tool=_lists((id_, tree) for tree in live for id_ in tree.tools),
        by_how_to=_lists((id_, tree) for tree in live for id_ in tree.how_tos),
    )


def short_code(code: str) -> str:
    """Return a code without its failure type."""
    return code.split("-")[0]


def fits(tree: Summary, vehicle: Scope) -> bool:
    """Whether a tree is about a vehicle by name; trees for any vehicle are listed apart."""
    return any(meet(scope, vehicle) for scope in tree.applies_to)


def meet(one: Scope, other: Scope) -> bool:
    """Whether two scopes share a vehicle."""
    if (one.make, one.model) != (other.make, other.model):
        return False
    if not one.years or not other.years:
        return True
    return one.years[0] <= other.years[1] and other.years[0] <= one.years[1]


def _modules(tree: Summary) -> set[str]:
    return set(tree.modules) | {str(id_) for id_ in tree.symptom.fitted_elsewhere}


def _lists(pairs: Iterable[tuple[str, Summary]]) -> dict[str, Trees]:
    found: dict[str, dict[str, Summary]] = defaultdict(dict)
    for key, tree in pairs:
        found[key][tree.id] = tree
    return {key: tuple(found[key].values()) for key in sorted(found)}
