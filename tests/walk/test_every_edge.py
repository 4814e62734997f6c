"""Every edge of every tree: Python takes it, and the page's script does the same.

Here those of the smaller trees; `EDGES=demo python -m pytest -s tests/walk/test_every_edge.py`
plays those of all trees of the demo, for no vehicle and one of the shop's by turns, and prints how
many; `shop` and `samples` those of the tests.
"""

import os
from itertools import cycle
from pathlib import Path
from typing import TYPE_CHECKING

from tests.walk.drilled import drilled_shop
from tests.walk.edges import edges_of
from tests.walk.every_edge import play_edges
from tests.walk.page_script import opened_script, play

if TYPE_CHECKING:
    from playwright.sync_api import Browser

TESTS = Path(__file__).parents[1]
ASKED = os.environ.get("EDGES", "")
SHOP = {"": TESTS / "shop", "demo": TESTS.parent}.get(ASKED, TESTS / ASKED)
FEW = 100  # edges of a tree, where no shop is asked for


def test_every_edge_is_taken_by_both_alike(browser: "Browser") -> None:
    """No way to leave a step is refused; only a limit that nothing uses up may be left over."""
    known = drilled_shop(SHOP)
    vehicles = ["", *known.tables.shop["vehicles"]][:2]
    trees = [one for one in known.trees if ASKED or len(edges_of(known.tables, one)) < FEW]
    assert trees
    with opened_script(browser, known.library, known.tables) as page:
        for tree, vehicle in zip(trees, cycle(vehicles), strict=False):
            edges, played = edges_of(known.tables, tree), play_edges(known.tables, tree, vehicle)
            assert not [one for one in played.moves if one.refused]
            left = edges - played.edges
            unused = ", ".join(f"{one.inside}#{one.step}" for one in sorted(left))
            counts = f"{len(edges)} edges, {len(played.moves)} moves"
            print(f"{tree} {vehicle}: {counts}; left: {unused}")
            assert not [one for one in left if one.way != "spent"]
            play(page, played.moves)
