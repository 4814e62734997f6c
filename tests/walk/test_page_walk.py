"""The page's reducer, as published, and Python's agree: screens, refusals and records of walks.

`WALKS=10000 python -m pytest tests/walk/test_page_walk.py` runs as many walks as named.
"""

import os
from collections.abc import Iterable
from dataclasses import replace
from pathlib import Path
from random import Random
from typing import TYPE_CHECKING, Any

import pytest

from tests.walk.drilled import drilled_shop
from tests.walk.page_script import Move, opened_script, play
from tests.walk.random_walks import random_walk

if TYPE_CHECKING:
    from playwright.sync_api import Browser

WALKS = int(os.environ.get("WALKS", "100"))
AT_ONCE = 50
TESTS = Path(__file__).parents[1]


@pytest.mark.parametrize("shop", ["shop", "samples"])
def test_the_page_walks_like_python(browser: "Browser", shop: str) -> None:
    """After every event of a random walk both show the same, and both write the same record."""
    known = drilled_shop(TESTS / shop)
    trees = [*known.trees]
    with opened_script(browser, known.library, known.tables) as page:
        for first in range(0, WALKS, AT_ONCE):
            seeds = range(first, min(first + AT_ONCE, WALKS))
            walks = (
                random_walk(known.tables, trees[one % len(trees)], Random(one)) for one in seeds
            )
            play(page, moves_of(walks))


def moves_of(walks: Iterable[dict[str, Any]]) -> list[Move]:
    """Return walks as moves: each after the one before, but for the first, with the record last."""
    moves: list[Move] = []
    for walk in walks:
        for one, shown in zip(walk["tries"], walk["screens"], strict=True):
            begin = len(moves) - 1 if one is not walk["tries"][0] else -1
            moves.append(Move(begin, one["event"], one["refused"], shown))
        moves[-1] = replace(moves[-1], record=walk["record"])
    return moves
