"""What is shipped to the page."""

import json
from dataclasses import replace

from builder.find.page_data import search_data, search_script
from builder.find.page_rules import page_rules
from builder.find.search_table import search_table
from builder.model.library import Library
from builder.model.text import Text

READ = ("trees", "vehicles", "systems", "lamps", "codes", "how_tos", "words", "same_words")


def test_the_script_is_one_assignment(shop: Library) -> None:
    """The index is a script with one value, so that it loads from a folder too."""
    text = search_script(search_table(shop))
    name, value = text.removesuffix(";\n").split(" = ", 1)
    assert name == "globalThis.baytreeSearchData"
    assert json.loads(value).keys() == search_data(search_table(shop)).keys()


def test_the_same_library_gives_the_same_bytes(shop: Library) -> None:
    """Nothing in the script depends on the order of reading, nor on that of a set."""
    turned = {name: dict(reversed(getattr(shop, name).items())) for name in READ}
    table, again = search_table(shop), search_table(replace(shop, **turned))
    assert search_script(table) == search_script(again)
    one = next(iter(shop.vehicles.values()))
    models = {name: replace(one, scope=replace(one.scope, model=Text(name))) for name in "cfaedb"}
    found = search_table(replace(shop, trees={}, vehicles=models)).vehicles
    assert [row.model for row in found] == list("abcdef")


def test_a_vehicle_is_sent_with_its_years(shop: Library) -> None:
    """Two zeros stand for any year."""
    one = next(iter(shop.vehicles.values()))
    scopes = [replace(one.scope, model=Text("a"), years=(2017, 2022)),
              replace(one.scope, model=Text("b"), years=None)]  # fmt: skip
    vehicles = {str(scope.model): replace(one, scope=scope) for scope in scopes}
    found = search_table(replace(shop, trees={}, vehicles=vehicles)).vehicles
    assert [(row.model, row.first, row.last) for row in found] == [("a", 2017, 2022), ("b", 0, 0)]


def test_a_list_of_words_is_sent_in_order() -> None:
    """However it was gathered, the page of the same shop has the same bytes."""
    rules = page_rules(iter(["worse", "again", "good"]))
    assert rules["everyday"] == "again good worse"
    for name in ("stopWords", "negations", "ordinary"):
        assert rules[name].split() == sorted(rules[name].split())


def test_words_in_no_tree_are_sent_in_order(shop: Library) -> None:
    """They come from a set, which has another order each time the command runs."""
    words = search_data(search_table(shop))["otherWords"].split()
    assert words == sorted(words)
    assert words


def test_retired_trees_and_the_text_of_steps_stay_out(shop: Library) -> None:
    """Retired trees leave the search; notes and steps never enter it."""
    retired = [id_ for id_, tree in shop.trees.items() if tree.status == "retired"]
    text = search_script(search_table(shop))
    assert retired
    assert not [id_ for id_ in retired if f'"{id_}"' in text]
    fixed = len(search_script(search_table(Library(shop.shop))))  # word lists and patterns
    assert len(text) - fixed < 600 * len(shop.trees) + 200 * (
        len(shop.words) + len(shop.same_words) + len(shop.codes)
    )


def test_a_tree_is_sent_with_the_name_of_its_system(shop: Library) -> None:
    """The first of the systems has a name like all others."""
    table = search_table(shop)
    data = search_data(table)
    sent = [data["contexts"][row[2]][0] for row in data["trees"]]
    assert sent == [table.systems[tree.system].name for tree in table.trees]
    assert min(tree.system for tree in table.trees) == 0
