"""Signs of hazards: each its own, drawn in its field."""

import cmath
from dataclasses import replace
from itertools import combinations, pairwise

import pytest
from faults import cross
from goldens import looks_as_it_did

from builder.chart.hazard_marks import (
    HIGH,
    PICTURES,
    WIDE,
    WORDS,
    hazard_marks,
    hazards_of_needs,
    mark_polygons,
    picture_of,
)
from builder.model.knowledge import Hazard, Signal
from builder.model.library import Library
from builder.model.text import Text
from builder.model.tree import Tree


def hazard(words: str, signal: Signal = Signal.WARNING) -> Hazard:
    """Make a hazard by its words."""
    text = Text(words)
    return Hazard(Text(words.lower().replace(" ", "-")), signal, text, text, text)


@pytest.mark.parametrize(
    ("words", "picture"),
    [
        ("Battery gas explodes at a spark", "burst"),
        ("Orange cables carry over 60 V DC at high voltage", "bolt"),
        ("Hot coolant is under pressure", "heat"),
        ("Fuel lines stay pressurized", "jet"),
        ("Something bites", "general"),
    ],
)
def test_the_picture_goes_by_the_words(words: str, picture: str) -> None:
    """What no picture fits has the general sign."""
    assert picture_of(hazard(words)) == picture


def test_the_signs_look_as_they_did() -> None:
    """Every picture, side by side."""
    drawn = ""
    for at, picture in enumerate(PICTURES):
        for fill, polygon in mark_polygons(picture):
            points = " ".join(f"{round(30 * at + x, 2)},{round(y, 2)}" for x, y in polygon)
            color = "black" if fill == "ink" else "gold"
            drawn += f'<polygon fill="{color}" points="{points}"/>'
    looks_as_it_did(f'<svg viewBox="0 0 {30 * len(PICTURES)} 21">{drawn}</svg>', "signs")


def test_a_notice_is_no_triangle() -> None:
    """The triangle is for injury only (ISO 7010 and ANSI Z535.4, from memory)."""
    assert picture_of(hazard("Hot glue", Signal.NOTICE)) == "notice"


def test_no_two_hazards_have_one_sign(library: Library) -> None:
    """Where two have one picture, letters tell them apart; one alone needs none."""
    every = [*library.hazards.values()]
    every += [replace(one, id=Text(f"{one.id}-again")) for one in every[:3]]
    marks = hazard_marks(every)
    assert len(set(marks.values())) == len(every)
    assert hazard_marks(every[:1])[every[0].id].letter == ""


def test_the_hazards_of_a_state_are_those_of_each_step_that_needs_it(
    trees: tuple[Tree, ...], library: Library
) -> None:
    """An engine that runs may pull a hand in at any of them; a key that is off harms nobody."""
    needing = [step for tree in trees for step in tree.steps.values() if step.needs]
    found = {
        str(step.needs[0].condition): [str(one.id) for one in hazards_of_needs(step, library)]
        for step in needing
    }
    assert found["engine-running"] == ["rotating-parts", "exhaust-gas", "moving-vehicle"]
    assert found["key-off"] == []


@pytest.mark.parametrize("picture", [*(name for name, _ in WORDS), "general", "notice"])
def test_every_picture_is_drawn_inside_its_field(picture: str) -> None:
    """No sign reaches into the words beside it."""
    assert picture in PICTURES
    for fill, polygon in mark_polygons(picture):
        assert fill in ("ink", "ground")
        for x, y in polygon:
            assert -0.01 <= x <= WIDE + 0.01
            assert -0.01 <= y <= HIGH + 0.01


@pytest.mark.parametrize("picture", PICTURES)
def test_no_outline_of_a_sign_crosses_itself(picture: str) -> None:
    """Filled, one that does has a hole or a spike."""
    for _, polygon in mark_polygons(picture):
        edges = list(pairwise([*polygon, polygon[0]]))
        assert not [pair for pair in combinations(edges, 2) if cross(*pair)]


def test_the_teeth_of_a_gear_are_alike() -> None:
    """Turned by one of its eight teeth, it looks the same."""
    (gear,) = PICTURES["gear"]
    points = [complex(x - 12, y - 14) for x, y in gear]
    turned = [point * cmath.exp(1j * cmath.pi / 4) for point in points]
    assert turned[:-4] == pytest.approx(points[4:])
    assert turned[-4:] == pytest.approx(points[:4])
