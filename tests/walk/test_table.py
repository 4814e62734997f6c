"""The walk table: its content, and that it gives the result that the check has proved."""

import json
from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.graph.space import Axis, Space, space_of
from builder.model.checks import Check
from builder.model.library import Library
from builder.model.ranges import INFINITY, Range
from builder.model.tree import Tree
from builder.walk.follow import OutcomeState, follow
from builder.walk.rows import WalkTable
from builder.walk.table import walk_table

Shop = tuple[Library, list[Tree]]


def test_a_range_to_the_end_has_no_limit(table: WalkTable) -> None:
    """If a reading starts at 0, `below 13.2` has no lower cut: 0 is not a limit."""
    below, between, above = table["steps"]["single"]["results"]
    assert below["ranges"] == {"": [["-Infinity", 0], ["13.2", 0]]}
    assert between["ranges"] == {"": [["13.2", 0], ["14.8", 1]]}
    assert above["ranges"] == {"": [["14.8", 1], ["Infinity", 1]]}


def test_over_the_range_goes_where_the_check_says(table: WalkTable) -> None:
    """`above 5` covers OL, unless another result is OL."""
    assert table["steps"]["over"]["results"][2]["ranges"][""][1] == ["Infinity", 1]
    above, over = table["steps"]["said-over"]["results"][1:]
    assert above["ranges"] == {"": [["5", 1], ["Infinity", 0]]}
    assert over["ranges"] == {"": [["Infinity", 0], ["Infinity", 1]]}


def test_a_computed_reading_comes_with_its_unit_and_form(table: WalkTable) -> None:
    """Millivolts divided by amperes are milliohms; a formula may use one above it."""
    half, bad = table["steps"]["chain"]["computed"]
    assert half == {
        "name": "half",
        "unit": "mV",
        "form": ["/", ["reading", "plus"], ["number", "2"]],
    }
    assert bad["unit"] == "mohm"


def test_a_spec_is_named_in_the_cuts(table: WalkTable) -> None:
    """The vehicle maker's spec isn't known here: the cuts have the names of the specs."""
    step = table["steps"]["band"]
    assert step["figure"] == ["from", "to"]
    assert step["results"][1]["ranges"] == {"": [["from", 0], ["to", 1]]}


def test_each_tool_is_in_it_once_with_its_ranges(table: WalkTable) -> None:
    """A tool has only the units that the tree reads; one with none of them is left out."""
    assert set(table["tools"]) == {"multimeter", "clamp", "gauge", "thermometer"}
    volts = table["tools"]["multimeter"]["reads"][0]
    assert list(volts) == ["V", "-600", "600", "0.01", "0.5", "0", "0.02"]
    without = table["tools"]["gauge"]["reads"][0]
    assert list(without)[4:] == ["0", "1", "0"]  # by its resolution


def test_a_step_with_the_method_of_another_has_its_tools(checks: Tree, shop: Shop) -> None:
    """A check with the same method is done with the same tool."""
    library, trees = shop
    for tree in trees:
        for id_, row in walk_table(tree, library)["steps"].items():
            step = tree.steps[id_]
            if step.same_as and not step.tools:
                assert row["tools"] == [str(tool) for tool in tree.steps[step.same_as].tools]


def test_the_tables_are_light(shop: Shop) -> None:
    """A table is at most a few kilobytes."""
    library, trees = shop
    for tree in trees:
        text = json.dumps(walk_table(tree, library), separators=(",", ":"))
        assert len(text) < 12_000, tree.id


def test_two_trees_compute_readings_and_one_mixes_units(shop: Shop) -> None:
    """Whole trees with computed readings, one of them with a second unit."""
    library, trees = shop
    tables = [walk_table(tree, library) for tree in trees]
    assert sum(any(row["computed"] for row in t["steps"].values()) for t in tables) >= 2
    assert any(
        {"V", "mV"} <= {r["unit"] for row in table["steps"].values() for r in row["readings"]}
        for table in tables
    )


def points(space: Space) -> st.SearchStrategy[tuple[Decimal, ...]]:
    """Draw a point that the instruments can show, half of them near a limit."""
    axes = [axis for axis in space.axes if not axis.formula]
    return st.tuples(*(values(axis, space) for axis in axes))


def values(axis: Axis, space: Space) -> st.SearchStrategy[Decimal]:
    """Draw a reading of an axis, in whole steps of its resolution."""
    at = space.axes.index(axis)
    step = axis.resolution or Decimal("0.01")
    low, high = axis.domain.low.value, axis.domain.high.value
    over = high.is_infinite()
    high = min(high, max(low, Decimal(0)) + step * 100_000)
    ends = {cut.value for box in space.boxes for cut in box[at] if cut.value.is_finite()}
    near = [end + step * by for end in ends for by in (-1, 0, 1)]
    near = [value for value in near if low <= value <= high and value % step == 0] or [low]
    steps = st.integers(-(-low // step).__int__(), (high // step).__int__())
    drawn = st.one_of(st.sampled_from(near), steps.map(lambda count: step * count))
    return st.one_of(drawn, st.just(INFINITY)) if over else drawn


def proved_result(
    space: Space, readings: dict[str, Decimal], formula_values: dict[str, str]
) -> int | None:
    """Return the first result in the check's own space that covers the point."""
    point = readings | {name: Decimal(text) for name, text in formula_values.items() if text}
    for at, box in enumerate(space.boxes):
        sides: list[tuple[Range, Axis]] = list(zip(box, space.axes, strict=True))
        if all(axis.name not in point or side.contains(point[axis.name]) for side, axis in sides):
            return at
    return None


def checks_to_try(shop: Shop, checks: Tree) -> list[tuple[WalkTable, str, Check]]:
    """Return every check of the shop, and of the tree of checks, with readings without phrases."""
    library, trees = shop
    to_try = []
    for tree in (*trees, checks):
        whole = walk_table(tree, library)
        for id_ in whole["steps"]:
            body = tree.steps[id_].body
            assert isinstance(body, Check)
            if body.readings and not any(reading.one_of for reading in body.readings):
                to_try.append(({**whole, "tools": {}}, id_, body))
    return to_try


@settings(max_examples=24, deadline=None)
@given(data=st.data())
def test_the_walk_gives_the_result_that_the_check_has_proved(
    shop: Shop, checks: Tree, data: Any
) -> None:
    """Every possible reading of each check gives the result that was proved."""
    for whole, id_, body in checks_to_try(shop, checks):
        space = space_of(body)
        if not space or any(result.otherwise for result in body.results):
            continue
        axes = [axis for axis in space.axes if not axis.formula]
        point = data.draw(points(space), label=id_)
        readings = {axis.name: value for axis, value in zip(axes, point, strict=True)}
        typed = {
            name: "OL" if value.is_infinite() else f"{value:f}" for name, value in readings.items()
        }
        outcome = follow(whole, id_, typed)
        assert not outcome.mistakes
        assert outcome.state != OutcomeState.NO_RESULT, (id_, typed)
        computed = {
            axis.name: outcome.values.get(axis.name, "") for axis in space.axes if axis.formula
        }
        assert outcome.reads_as == proved_result(space, readings, computed)


def test_every_check_of_the_shop_is_tried(shop: Shop, checks: Tree) -> None:
    """The property above would prove nothing without checks to try."""
    tried = checks_to_try(shop, checks)
    assert len(tried) > 30
    assert sum(bool(body.computed) for _, _, body in tried) > 5


@pytest.mark.parametrize("word", ["steps", "tools"])
def test_a_tree_without_readings_has_an_empty_table(shop: Shop, word: str) -> None:
    """A tree that measures nothing has no form and no scripts."""
    library, trees = shop
    tree = trees[0]
    plain = {id_: step for id_, step in tree.steps.items() if not isinstance(step.body, Check)}
    assert walk_table(replace(tree, steps=plain), library)[word] == {}  # type: ignore[literal-required]
