"""What is said of a vehicle's states before a step."""

from pathlib import Path

from builder.check.unchecked_library import read_library
from builder.wording.vehicle_words import condition_texts

SAMPLES = Path(__file__).parents[1] / "samples"


def test_a_vehicle_as_it_came_in_is_not_worth_a_word() -> None:
    """A step that needs the loads as they are names only its other states."""
    library, _ = read_library(SAMPLES)
    step = library.procedures["alternator-control"].tree.steps["sense"]
    assert [need.condition for need in step.needs][:2] == ["key-off", "loads-as-is"]
    assert condition_texts(step, library)[:2] == ("key off", "alternator unplugged")
