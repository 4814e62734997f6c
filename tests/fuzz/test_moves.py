"""Every way to move a file leaves a trace, and is undone."""

import random
import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parent))  # as `run.py` finds its own modules

from moves import MOVES
from shop_copy import copy_of, differences, restore

SHOP = Path(__file__).parents[1] / "shop"


@pytest.mark.parametrize("move", dict.fromkeys(MOVES), ids=lambda move: move.__name__)
def test_a_moved_file_is_restored(move: object, tmp_path: Path) -> None:
    """Whatever was renamed, linked or deleted, the next mutant begins with the same shop."""
    copy = copy_of(SHOP, tmp_path / "shop")
    changed = 0
    for number in range(60):
        chance = random.Random(number)
        touched = move(copy.place, chance.choice(sorted(copy.files)), chance)  # type: ignore[operator]
        changed += bool(differences(copy))
        restore(copy, touched)
        assert not differences(copy)
    assert changed > 30
