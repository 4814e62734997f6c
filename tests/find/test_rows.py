"""What is shipped to the page."""

import json
from dataclasses import replace

from builder.find.rows import rows, table
from builder.model.library import Library


def test_the_script_is_one_assignment(shop: Library) -> None:
    """The rows are a script with one value, so that they load from a folder too."""
    text = rows(shop)
    name, value = text.removesuffix(";\n").split(" = ", 1)
    assert name == "globalThis.baytreeRows"
    assert set(json.loads(value)) == set(table(shop)._fields)


def test_the_same_library_gives_the_same_bytes(shop: Library) -> None:
    """Nothing in the rows depends on the order of reading."""
    turned = dict(reversed(shop.trees.items()))
    assert rows(shop) == rows(replace(shop, trees=turned))


def test_retired_trees_and_the_text_of_steps_stay_out(shop: Library) -> None:
    """Retired trees leave the search; notes and steps never enter it."""
    retired = [id_ for id_, tree in shop.trees.items() if tree.status == "retired"]
    text = rows(shop)
    assert retired
    assert not [id_ for id_ in retired if f'"{id_}"' in text]
    assert len(text) < 600 * len(shop.trees) + 200 * (
        len(shop.words) + len(shop.same_words) + len(shop.codes)
    )
