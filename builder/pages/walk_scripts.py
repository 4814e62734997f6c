"""What the walk on a tree's page follows, as scripts: a page opened from a folder can load no data.

In: the library, a tree, its analysis. Out: the text of `walks/shop.js` and of `walks/<tree>.js`.
Each adds to `baytreeTables`; a walk that goes on in another tree loads that tree's script.
"""

import json
from typing import Any

from builder.model.ends import StopKind
from builder.model.library import Library
from builder.model.tree import Tree
from builder.pages import addresses
from builder.pages.analysis import TreeAnalysis
from builder.plan.minutes import RemainingMinutes
from builder.trade.wire_colors import WIRE_COLORS
from builder.walk.compile_shop import shop_table
from builder.walk.compile_tree import tree_table
from builder.walk.practice import faults_of
from builder.walk.tree_rows import TreeTable
from builder.wording.labels import STOP_LABELS
from builder.wording.sentences import module_name
from builder.wording.value_text import duration_text

SHOP_SCRIPT = "walks/shop.js"
WALK_SCRIPTS = (
    "trade-data.js", "exact.js", "dom.js", "walk-vehicle.js", "walk-changes.js", "walk-told.js",
    "walk-specs.js", "walk-targets.js", "walk-answers.js", "walk-unfit.js", "walk-reduce.js",
    "walk-record.js", "jobs-store.js", "walk-parts.js", "walk-words.js", "walk-step.js",
    "walk-check.js", "walk-job.js", "walk-fit.js", "walk-draw.js", "walk.js",
)  # fmt: skip


def walk_path(id_: str) -> str:
    """Return the script of a tree."""
    return f"walks/{id_}.js"


def shop_script(library: Library) -> str:
    """Write what all trees share, and the names that the screen shows."""
    names = {
        "shop": str(library.shop.name),
        "tools": {id_: str(one.name) for id_, one in library.tools.items()},
        "how_tos": {
            id_: [str(one.title), f"{addresses.how_to_path(id_)}.html"]
            for id_, one in library.how_tos.items()
        },
        "stops": {str(kind): STOP_LABELS[kind] for kind in StopKind},
        "colors": WIRE_COLORS,
    }
    return (
        "globalThis.baytreeTables = "
        + _json({"shop": shop_table(library), "names": names, "trees": {}, "more": {}})
        + ";\n"
    )


def tree_script(tree: Tree, library: Library, analysis: TreeAnalysis) -> str:
    """Write the table of a tree, the minutes left from each step on, and titles it leads to."""
    left = {step: _left(one) for step, one in analysis.minutes.steps.items() if round(one.longest)}
    table = tree_table(tree, library)
    named = (answer for one in tree.asks for answer in one.one_of)
    more = {
        "left": left,
        "titles": _titles(table, library),
        "weights": _weights(tree),
        "names": {str(answer): module_name(answer, library) for answer in named},
    }
    key = json.dumps(tree.id)
    lines = (f"trees[{key}] = {_json(table)};", f"more[{key}] = {_json(more)};")
    return "".join(f"baytreeTables.{line}\n" for line in lines)


def _left(minutes: RemainingMinutes) -> str:
    """Write the range of minutes left from a step on; work and waiting apart."""
    low, high, wait = map(duration_text, (minutes.shortest, minutes.longest, minutes.wait))
    work = high if low == high else f"{low} to {high}"
    return f"{work} + {wait} waiting" if round(minutes.wait) else f"{work} left"


def _weights(tree: Tree) -> dict[str, float]:
    """Return the ends that can be the hidden fault of a practice: the fixes, or else the stops."""
    return {id_: float(weight) for id_, weight in faults_of(tree).items()}


def _titles(table: TreeTable, library: Library) -> dict[str, str]:
    """Return the titles of the trees that a step leads to."""
    steps = table["steps"].values()
    targets: list[object] = [one["to"] for step in steps for one in step.get("results", ())]
    targets += [
        step.get(key, "")
        for step in steps
        for key in ("then", "spent", "cannot_test", "still_there")
    ]
    ids = sorted({str(target).partition("#")[0] for target in targets if "/" in str(target)})
    return {id_: str(library.trees[id_].title) for id_ in ids if id_ in library.trees}


def _json(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))
