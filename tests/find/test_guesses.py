"""What is told is kept apart from what is only blamed."""

import pytest

from builder.find.guesses import LEAST_TOLD, LONGEST_GUESS, without_guesses

TOLD = "shakes over 50 mph"  # just enough to go by
LONG = "probably a tire out of round again"


@pytest.mark.parametrize(
    ("asked", "told"),
    [
        (f"{TOLD}, bad tire?", f"{TOLD},"),
        (f"must be the alternator. {TOLD}", TOLD),
        ("shakes at speed, bad tire?", ""),  # too little beside the guess
        (f"{TOLD}, worse when cold", ""),  # nobody blames anything
        (f"{TOLD}, tire?", f"{TOLD},"),  # short, and asked
        (f"{TOLD}, {LONG} today", ""),  # longer than a guess
        (f"{TOLD}, {LONG}", f"{TOLD},"),
        ("reads 12.4 volts at idle, weak battery?", "reads 12.4 volts at idle,"),
    ],
)
def test_a_guess_is_set_aside_if_enough_is_told(asked: str, told: str) -> None:
    """A part that blames something counts only where nothing else says what happens."""
    assert without_guesses(asked) == told


def test_the_cases_stand_at_the_limits() -> None:
    """One word more or less and they would go the other way."""
    assert len(TOLD.split()) == LEAST_TOLD
    assert len(LONG.split()) == LONGEST_GUESS
