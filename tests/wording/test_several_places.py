"""A repair of one of several like parts says which, or leaves a line for it."""

import pytest

from builder.wording.several_places import at_place, has_several_places


@pytest.mark.parametrize(
    ("repair", "parts", "is_open"),
    [
        ("Replace the caliper, bleed the brakes", ["caliper"], True),
        ("Replace the sensor, teach its ID", ["tire pressure sensor"], True),
        ("Replace both hoses of the axle", ["pair of hoses"], False),
        ("Replace the left rear caliper", [], False),
        ("Balance the wheels", [], False),
        ("Replace the alternator", ["alternator"], False),
        ("Replace the blend door actuator", [], True),
        ("Clear the drains", [], True),
        ("Turn off the window lock", [], False),
    ],
)
def test_which_of_several_is_asked(repair: str, parts: list[str], is_open: bool) -> None:
    """By what is done and the parts."""
    assert has_several_places(repair, parts) is is_open


def test_a_check_of_each_part_names_the_one_it_was() -> None:
    """By the first text with a side; without one it stays as asked."""
    asked = "Does water in each corner run out?"
    known = ("drain", "Clear the right front drain")
    assert at_place(asked, known) == "Does water in the right front corner run out?"
    assert at_place(asked, ("cylinder 3",)) == asked
