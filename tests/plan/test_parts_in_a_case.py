"""A part that is needed only in a case says in which, and its price begins at nothing."""

import pytest

from .test_estimate_options import REPAIR, amount, by_id, library


@pytest.mark.parametrize(
    ("written", "item", "total"),
    [
        # Own arithmetic: 1.5 x 140 + 4.20 x 1.08 = 214.54; with 18 more, 214.54 + 19.44 = 233.98.
        ("price: 18, only_if: it is bent", "Plug, only if it is bent", "214.54 to 233.98"),
        ("price: 12 to 18, only_if: it is bent", "Plug, only if it is bent", "214.54 to 233.98"),
        ("price: 0 to 18", "Plug, only if needed", "214.54 to 233.98"),
        ("price: 12 to 18", "Plug", "227.50 to 233.98"),
        ("price: 0.50 to 18", "Plug", "215.08 to 233.98"),  # 210 + 4.70 x 1.08, rounded up
    ],
)
def test_a_part_says_when_it_is_needed(tree, written: str, item: str, total: str) -> None:
    """The customer reads why the price is a range."""
    text = REPAIR.replace("part: plug, price: 12 to 18", f"part: Plug, {written}")
    option = by_id(tree(text), library())["fit-here"]
    assert [line.item for line in option.lines][2] == item
    assert amount(option) == total
