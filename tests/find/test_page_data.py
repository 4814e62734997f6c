"""What is shipped to the page."""

import json
from dataclasses import replace

from builder.find.page_data import search_data, search_script
from builder.find.search_table import search_table
from builder.model.library import Library


def test_the_script_is_one_assignment(demo: Library) -> None:
    """The index is a script with one value, so that it loads from a folder too."""
    text = search_script(search_table(demo))
    name, value = text.removesuffix(";\n").split(" = ", 1)
    assert name == "globalThis.baytreeSearchData"
    assert json.loads(value).keys() == search_data(search_table(demo)).keys()


def test_the_same_library_gives_the_same_bytes(demo: Library) -> None:
    """Nothing in the script depends on the order of reading."""
    turned = dict(reversed(demo.trees.items()))
    again = search_table(replace(demo, trees=turned))
    assert search_script(search_table(demo)) == search_script(again)


def test_retired_trees_and_the_text_of_steps_stay_out(demo: Library) -> None:
    """Retired trees leave the search; notes and steps never enter it."""
    retired = [id_ for id_, tree in demo.trees.items() if tree.status == "retired"]
    text = search_script(search_table(demo))
    assert retired
    assert not [id_ for id_ in retired if f'"{id_}"' in text]
    assert len(text) < 600 * len(demo.trees) + 200 * (
        len(demo.words) + len(demo.same_words) + len(demo.codes)
    )
