"""The tables that a walk follows, in Python and in the page's script: lists and maps for JSON.

In: rows filled in by `compile_tree` and `compile_shop`. Out: read by the reducer (`reduce`,
`screen`, `record`) and by the page's script, which do nothing but follow them. What stands in a row
is in `tree_rows`, `shop_rows` and, for readings, `rows`.

A key that would be empty is left out. Minutes and numbers of readings are exact decimals as text;
counts are whole numbers. Texts may hold placeholders, `<module>`: `graph/runs.py` fills them in.

A `Target`, where a walk goes, is one text: `belt` is a step beside this one, `charging/overcharge`
or `charging/overcharge#pulley` another tree, `back`, `next`, and in a procedure `return: good`.
`""` is nowhere: the person to call.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from builder.model.conditions import Conditions
from builder.walk.shop_rows import ShopTable
from builder.walk.tree_rows import TreeTable

PROCEDURES = "procedures/"


@dataclass(frozen=True, slots=True, repr=False)
class WalkTables:
    """All that a walk may come to: the shop, and trees by ID, each loaded when it is needed."""

    shop: ShopTable
    trees: Mapping[str, TreeTable]
    conditions: Conditions  # of the shop, for the planner of states

    def __getitem__(self, inside: str) -> TreeTable:
        """Return a tree, or a procedure as `procedures/<name>`. Raises KeyError."""
        name = inside.removeprefix(PROCEDURES)
        return self.trees[inside] if name == inside else self.shop["procedures"][name]
