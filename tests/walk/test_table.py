"""The walk table: what stands in it, and that it takes what the check has proved."""

import json
from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.graph.space import Axis, Space, space_of
from builder.model.library import Library
from builder.model.ranges import INFINITY, Range
from builder.model.tree import Check, Tree
from builder.walk.follow import NO_RESULT, follow
from builder.walk.rows import Table
from builder.walk.table import walk_table

Shop = tuple[Library, list[Tree]]


def test_a_range_that_reaches_the_end_goes_on(table: Table) -> None:
    """Where a reading begins at 0, `below 13.2` has no lower cut, and 0 is not a limit."""
    below, between, above = table["steps"]["single"]["results"]
    assert below["ranges"] == {"": [["-Infinity", 0], ["13.2", 0]]}
    assert between["ranges"] == {"": [["13.2", 0], ["14.8", 1]]}
    assert above["ranges"] == {"": [["14.8", 1], ["Infinity", 1]]}


def test_over_the_range_goes_where_the_check_says(table: Table) -> None:
    """`above 5` takes OL, unless another result says OL."""
    assert table["steps"]["over"]["results"][2]["ranges"][""][1] == ["Infinity", 1]
    above, over = table["steps"]["said-over"]["results"][1:]
    assert above["ranges"] == {"": [["5", 1], ["Infinity", 0]]}
    assert over["ranges"] == {"": [["Infinity", 0], ["Infinity", 1]]}


def test_a_computed_reading_comes_with_its_unit_and_form(table: Table) -> None:
    """Millivolts by amperes are milliohms; a formula may use one above it."""
    half, bad = table["steps"]["chain"]["computed"]
    assert half == {
        "name": "half",
        "unit": "mV",
        "form": ["/", ["reading", "plus"], ["number", "2"]],
    }
    assert bad["unit"] == "mohm"


def test_a_figure_is_named_in_the_cuts(table: Table) -> None:
    """What the maker says is not known here: the cuts bear the names of what is looked up."""
    step = table["steps"]["band"]
    assert step["figure"] == ["from", "to"]
    assert step["results"][1]["ranges"] == {"": [["from", 0], ["to", 1]]}


def test_tools_stand_in_it_once_with_what_they_read(table: Table) -> None:
    """Of a tool only the kinds that the tree reads; one that reads nothing is left out."""
    assert set(table["tools"]) == {"multimeter", "clamp", "gauge", "thermometer"}
    volts = table["tools"]["multimeter"]["reads"][0]
    assert list(volts) == ["V", "-600", "600", "0.01", "0.5", "0", "0.02"]
    without = table["tools"]["gauge"]["reads"][0]
    assert list(without)[4:] == ["0", "1", "0"]  # by one step


def test_the_method_of_another_step_brings_its_tools(checks: Tree, shop: Shop) -> None:
    """A check done as another one is done with the same tool."""
    library, trees = shop
    for tree in trees:
        for id_, row in walk_table(tree, library)["steps"].items():
            step = tree.steps[id_]
            if step.same_as and not step.tools:
                assert row["tools"] == [str(one) for one in tree.steps[step.same_as].tools]


def test_the_tables_are_light(shop: Shop) -> None:
    """A table is a few kilobytes: a page with it opens as fast as one without."""
    library, trees = shop
    for tree in trees:
        text = json.dumps(walk_table(tree, library), separators=(",", ":"))
        assert len(text) < 12_000, tree.id


def test_two_trees_compute_readings_and_one_mixes_units(shop: Shop) -> None:
    """Readings worked out from others stand in whole trees; one reads in another unit."""
    library, trees = shop
    tables = [walk_table(tree, library) for tree in trees]
    assert sum(any(row["computed"] for row in one["steps"].values()) for one in tables) >= 2
    assert any(
        {"V", "mV"} <= {of["unit"] for row in one["steps"].values() for of in row["readings"]}
        for one in tables
    )


def points(space: Space) -> st.SearchStrategy[tuple[Decimal, ...]]:
    """Draw a point that the instruments can show: near a limit half the time."""
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


def told(space: Space, readings: dict[str, Decimal], formula_values: dict[str, str]) -> int | None:
    """Return the first result of the check's own space that takes the point."""
    point = readings | {name: Decimal(text) for name, text in formula_values.items() if text}
    for at, box in enumerate(space.boxes):
        sides: list[tuple[Range, Axis]] = list(zip(box, space.axes, strict=True))
        if all(axis.name not in point or side.contains(point[axis.name]) for side, axis in sides):
            return at
    return None


def computing(shop: Shop, checks: Tree) -> list[tuple[Table, str, Check]]:
    """Return every check of the shop, and of the tree of checks, with readings without phrases."""
    library, trees = shop
    found = []
    for tree in (*trees, checks):
        whole = walk_table(tree, library)
        for id_ in whole["steps"]:
            body = tree.steps[id_].body
            assert isinstance(body, Check)
            if body.readings and not any(one.one_of for one in body.readings):
                found.append(({**whole, "tools": {}}, id_, body))
    return found


@settings(max_examples=24, deadline=None)
@given(data=st.data())
def test_the_walk_takes_the_result_that_the_check_has_proved(
    shop: Shop, checks: Tree, data: Any
) -> None:
    """Every point that can be read falls into a result of each check: the one proved."""
    for whole, id_, body in computing(shop, checks):
        space = space_of(body)
        if not space or any(one.otherwise for one in body.results):
            continue
        axes = [axis for axis in space.axes if not axis.formula]
        point = data.draw(points(space), label=id_)
        readings = {axis.name: value for axis, value in zip(axes, point, strict=True)}
        typed = {
            name: "OL" if value.is_infinite() else f"{value:f}" for name, value in readings.items()
        }
        found = follow(whole, id_, typed)
        assert not found.mistakes
        assert found.state != NO_RESULT, (id_, typed)
        worked = {axis.name: found.values.get(axis.name, "") for axis in space.axes if axis.formula}
        assert found.reads_as == told(space, readings, worked)


def test_every_check_of_the_shop_is_tried(shop: Shop, checks: Tree) -> None:
    """The property above would say nothing if it found no check to try."""
    tried = computing(shop, checks)
    assert len(tried) > 30
    assert sum(bool(body.computed) for _, _, body in tried) > 5


@pytest.mark.parametrize("word", ["steps", "tools"])
def test_a_tree_without_readings_has_an_empty_table(shop: Shop, word: str) -> None:
    """A tree that measures nothing gets no form and no scripts."""
    library, trees = shop
    tree = trees[0]
    plain = {id_: one for id_, one in tree.steps.items() if not isinstance(one.body, Check)}
    assert walk_table(replace(tree, steps=plain), library)[word] == {}  # type: ignore[literal-required]
