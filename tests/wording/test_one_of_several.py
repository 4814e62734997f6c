"""Of several things that a text names, the one that is known is left; a doubt leaves all."""

import pytest

from builder.wording.one_of_several import narrowed, narrowed_name


@pytest.mark.parametrize(
    ("text", "known", "left"),
    [
        ("A hose, duct, or cap let air in", "Replaced the intake duct", "A duct let air in"),
        ("Power or ground of the camera is bad", "bad ground", "Ground of the camera is bad"),
        ("The circuit is open or shorted", "shorted", "The circuit is shorted"),
        ("A cap, relay, or oil line leaks", "the relay", "A cap, relay, or oil line leaks"),
        ("A hose or intake is blocked", "the intakes", "An intake is blocked"),
        ("Clean or replace the ground", "Replaced it", "Replace the ground"),
    ],
)  # fmt: skip
def test_the_known_thing_is_left(text: str, known: str, left: str) -> None:
    """In a sentence that reads on; where a name of two words may be cut in half, all is left."""
    assert narrowed(text, [known]) == left


@pytest.mark.parametrize(
    ("text", "known"),
    [
        ("The circuit is open or shorted", "within spec"),  # nothing is known
        ("Pads or shoes are bad", "pads and shoes worn"),  # both are
        ("Correct the grounds, or replace the sensor", "Replaced it"),  # no two of a kind
        ("Replace the caliper or wheel cylinder, bleed", "caliper"),  # cut in half
        ("An axle is broken or out of its hub", "broken"),
    ],
)
def test_a_doubt_leaves_all(text: str, known: str) -> None:
    """A paper says rather too much than a wrong thing."""
    assert narrowed(text, [known]) == text


def test_a_part_has_its_whole_name() -> None:
    """A name is nothing but the things, so words that belong together stay so."""
    assert narrowed_name("caliper or wheel cylinder", ["a wheel cylinder"]) == "wheel cylinder"
    assert narrowed_name("caliper or wheel cylinder", ["bled"]) == "caliper or wheel cylinder"
    assert narrowed_name("alternator", ["alternator"]) == "alternator"
