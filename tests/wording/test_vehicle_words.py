"""What is said of a vehicle's states before a step."""

from dataclasses import replace
from pathlib import Path

from builder.check.unchecked_library import read_library
from builder.model.text import Text
from builder.wording.vehicle_words import condition_texts, part_name

SAMPLES = Path(__file__).parents[1] / "samples"


def test_a_vehicle_as_it_came_in_is_not_worth_a_word() -> None:
    """A step that needs the loads as they are names only its other states."""
    library, _ = read_library(SAMPLES)
    step = library.procedures["alternator-control"].tree.steps["sense"]
    assert [need.condition for need in step.needs][:2] == ["key-off", "loads-as-is"]
    assert condition_texts(step, library)[:2] == ("key off", "alternator unplugged")


def test_a_part_named_by_capitals_keeps_them_in_a_sentence() -> None:
    """An ordinary word begins small, `NOx` and `A/C` don't; of `(ABS)` the letters are enough."""
    library, _ = read_library(SAMPLES)
    id_, part = next(iter(library.parts.items()))
    names = {"NOx sensor": "NOx sensor", "ABS pump": "ABS pump", "A/C hose": "A/C hose",
             "O2 sensor": "O2 sensor", "Fuel pump": "fuel pump",
             "Anti-lock brake system (ABS) module": "ABS module",
             "Body control module (BCM)": "BCM"}  # fmt: skip
    for name, inside in names.items():
        other = replace(library, parts={id_: replace(part, name=Text(name))})
        assert part_name(id_, other) == inside
