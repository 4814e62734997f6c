"""What a tree takes from the vehicle's file, so that the vehicle's page can say it."""

from pathlib import Path

import pytest

from builder.check.unchecked_library import read_library
from builder.model.library import Library
from builder.model.summary import Lookup

SAMPLES = Path(__file__).parents[1] / "samples"


@pytest.fixture(scope="module")
def library() -> Library:
    """Read the samples."""
    return read_library(SAMPLES)[0]


def test_the_steps_and_their_procedures_are_asked(library: Library) -> None:
    """A pin that only a procedure asks for counts, for the part that the step hands over."""
    lookups = library.trees["steering/assist-lamp-after-module-swap"].lookups
    assert Lookup("role", "eps-module", "power") in lookups
    assert Lookup("fuse", "eps-module") in lookups
    assert Lookup("torque", "steering-shaft-bolt") in lookups
    assert Lookup("spec", "ground-drop", "9 A") in lookups
    assert len(set(lookups)) == len(lookups)


def test_what_is_asked_at_the_vehicle_counts_with_each_answer(library: Library) -> None:
    """A tree about whichever module is silent asks for the power pin of every one of them."""
    asked = library.trees["network/module-silent"].lookups
    parts = {one.of for one in asked if one.kind == "role" and one.what == "power"}
    assert {"abs-module", "eps-module"} <= parts
    assert not any(part.startswith("<") for part in parts)
