"""The steps of a shop's trees as their authors wrote them, to copy from.

In: a shop, the place of a step. Out: a `SourceStep`, or None where there is no such step any more
or it can't be read. A place comes from a file of anywhere: only trees of the shop are opened.
"""

from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import Any

from builder.model.checks import Check
from builder.model.finding import Finding
from builder.model.tree import Step, Tree
from builder.reader.nodes import EMPTY, Map, Node, Seq
from builder.reader.source import read_source
from builder.reader.trees import tree_from, tree_id, tree_names
from builder.reader.values import map_
from builder.reader.yaml_text import read_yaml

SHARED = ("do", "at", "how_to", "tools", "minutes", "wait")  # what `same_as` takes over


@dataclass(frozen=True, slots=True)
class SourceStep:
    """A step of a tree: as the model has it, and as it is written, in plain values."""

    tree: Tree
    step: Step
    written: dict[str, Any]

    @property
    def results(self) -> tuple[str, ...]:
        """The words of its results, in their order; () where it is no check."""
        body = self.step.body
        return tuple(str(one.text) for one in body.results) if isinstance(body, Check) else ()


class SourceTrees:
    """The trees of a shop, each read when it is first asked for."""

    def __init__(self, shop: Path) -> None:
        """Take the folder of the shop."""
        self.shop = shop
        self._read: dict[str, tuple[Tree, Map] | None] = {}

    @cached_property
    def files(self) -> dict[str, str]:
        """The files of the trees by ID."""
        return {tree_id(name): name for name in tree_names(self.shop)}

    def tree(self, id_: str) -> Tree | None:
        """Return a tree."""
        known = self._tree(id_)
        return known[0] if known else None

    def step(self, id_: str, name: str) -> SourceStep | None:
        """Return a step of a tree."""
        known = self._tree(id_)
        if known is None or name not in known[0].steps or name in known[0].broken:
            return None
        tree, nodes = known
        node = map_(nodes, name) or EMPTY
        written: dict[str, Any] = {str(key): _plain(value) for key, value in node.items()}
        method = map_(nodes, str(written.pop("same_as", ""))) or EMPTY
        borrowed = {key: _plain(value) for key, value in method.items() if key in SHARED}
        return SourceStep(tree, tree.steps[name], {**written, **(borrowed | written)})

    def _tree(self, id_: str) -> tuple[Tree, Map] | None:
        if id_ not in self._read:
            self._read[id_] = self._from_file(id_)
        return self._read[id_]

    def _from_file(self, id_: str) -> tuple[Tree, Map] | None:
        if id_ not in self.files:
            return None
        source = read_source(self.shop, self.shop / self.files[id_])
        if isinstance(source, Finding):
            return None
        tree, _ = tree_from(source)
        root, _ = read_yaml(source)
        if tree is None or not isinstance(root, Map):
            return None
        return tree, map_(root, "steps") or EMPTY


def _plain(node: Node) -> Any:
    if isinstance(node, Map):
        return {str(key): _plain(value) for key, value in node.items()}
    return [_plain(one) for one in node] if isinstance(node, Seq) else str(node)
