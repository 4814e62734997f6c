"""What is shipped to the page."""

import json
from dataclasses import replace

from builder.find.rows import rows, table
from builder.model.library import Library


def test_the_script_is_one_assignment(demo: Library) -> None:
    """The rows are a script with one value, so that they load from a folder too."""
    text = rows(demo)
    name, value = text.removesuffix(";\n").split(" = ", 1)
    assert name == "globalThis.baytreeRows"
    assert set(json.loads(value)) == set(table(demo)._fields)


def test_the_same_library_gives_the_same_bytes(demo: Library) -> None:
    """Nothing in the rows depends on the order of reading."""
    turned = dict(reversed(demo.trees.items()))
    assert rows(demo) == rows(replace(demo, trees=turned))


def test_retired_trees_and_the_text_of_steps_stay_out(demo: Library) -> None:
    """Retired trees leave the search; notes and steps never enter it."""
    retired = [id_ for id_, tree in demo.trees.items() if tree.status == "retired"]
    text = rows(demo)
    assert retired
    assert not [id_ for id_ in retired if f'"{id_}"' in text]
    assert len(text) < 600 * len(demo.trees) + 200 * (
        len(demo.words) + len(demo.same_words) + len(demo.codes)
    )
