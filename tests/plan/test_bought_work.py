"""Bought work is no part, so tax on parts leaves it out; an option in doubt says what is owed."""

from dataclasses import replace

import pytest

from builder.prints.customer_prices import advice_words, condition_words

from .test_estimate_options import REPAIR, SHOP, amount, by_id, library

CLEANED = """
  options:
    cleaned:
      option: Cleaned
      hours: 3.2
      parts: [{part: cleaning, price: 330, service: yes}, {part: gaskets, price: 20}]
      only_if: the filter isn't cracked
"""


@pytest.mark.parametrize(
    ("base", "total"),
    [
        # Own arithmetic: 3.2 x 140 + 330 + 20 = 798.00; 8% of 20 is 1.60, of all of it 63.84.
        ("parts", "799.60"),
        ("all", "861.84"),
        ("none", "798.00"),
    ],
)
def test_tax_on_parts_leaves_out_a_service(tree, base: str, total: str) -> None:
    """Where everything is taxed it is, too."""
    known = replace(library(), shop=replace(SHOP, tax_base=base))
    assert amount(by_id(tree(REPAIR + CLEANED), known)["cleaned"]) == total


def test_what_is_owed_if_it_can_t_be_done_is_said(tree) -> None:
    """The work alone: 3.2 x 140 = 448.00; neither the cleaning nor its gaskets."""
    option = by_id(tree(REPAIR + CLEANED), library())["cleaned"]
    words = condition_words(option, SHOP)
    assert words.startswith("Only if the filter isn't cracked, which shows once we begin.")
    assert "at most $448.00 is owed for the work" in words


def test_the_advice_is_told_from_the_lowest_price(tree) -> None:
    """What is done here is advised; another full repair may cost less, and one line says both."""
    options = by_id(tree(REPAIR + CLEANED), library())
    every, here, other = [*options.values()], options["fit-here"], options["cleaned"]
    assert advice_words(every, here, SHOP).startswith("Our advice, at the lowest price: We repair")
    both = advice_words(every, other, SHOP)
    assert both.startswith("Our advice: We repair it, ")
    assert both.endswith("Lowest price for a full repair: Cleaned, $799.60.")
