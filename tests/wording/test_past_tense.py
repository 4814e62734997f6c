"""What was to be done, as what was done."""

import pytest

from builder.wording.past_tense import past_tense


@pytest.mark.parametrize(
    ("text", "done"),
    [
        ("Replace the belt and tensioner", "Replaced the belt and tensioner"),
        ("Prop the gate, replace its motor", "Propped the gate, replaced its motor"),
        ("Free and grease the slide pins", "Freed and greased the slide pins"),
        ("Clean or repair the ground", "Cleaned or repaired the ground"),
        ("Program, configure, and initialize it", "Programmed, configured, and initialized it"),
        ("Replace the worn part, then align", "Replaced the worn part, then aligned"),
        ("Find and repair the leak, fill it", "Found and repaired the leak, filled it"),
        ("Repair the power, ground, or motor wire", "Repaired the power, ground, or motor wire"),
        ("Wait for the part", "Done: Wait for the part"),
    ],
)
def test_only_verbs_are_put_into_the_past(text: str, done: str) -> None:
    """Parts stay as they are; a text whose verb nobody listed isn't guessed at."""
    assert past_tense(text) == done
