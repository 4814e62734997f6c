"""The failure type byte against the numbers of public lists (official text: SAE J2012-DA)."""

import pytest

from builder.trade.failure_types import FAILURE_CATEGORIES, SETUP_STEP_MISSING, failure_type_byte

# Numbers seen in two public lists and public source code; 67 in part, 71 from memory.
LISTED = """
    00 01 02 03 04 05 06 07 08 09
    11 12 13 14 15 16 17 18 19 1A 1B 1C 1D 1E 1F
    21 22 23 24 29 2F 31 36 37 38
    41 42 44 45 46 47 48 49 4A 4B
    51 52 53 54 55 56 61 62 64 67
    71 72 73 81 82 83 87 88 92 94 95 99
"""

# Opposites stand at their places: the first word of the pair at the first number.
WORDS = {
    "11": "ground", "12": "battery", "13": "open", "14": "ground or open", "15": "positive or open",
    "16": "voltage too low", "17": "voltage too high", "18": "current too low",
    "19": "current too high", "1A": "resistance too low", "1B": "resistance too high",
    "21": "too small", "22": "too large", "23": "stuck low", "24": "stuck high",
    "36": "too low", "37": "too high", "4A": "wrong module", "51": "not programmed",
    "54": "calibration", "55": "not configured", "72": "open", "73": "closed",
    "87": "message missing", "88": "bus off",
}  # fmt: skip


def test_just_the_listed_numbers_have_words():
    """A number has words when, and only when, a public list names it."""
    with_words = [f"{number:02X}" for number in range(256) if failure_type_byte(number).words]
    assert with_words == LISTED.split()


@pytest.mark.parametrize(("number", "words"), WORDS.items())
def test_words_stand_at_their_numbers(number, words):
    """High is not low and open is not shorted: the words sit at the number of the standard."""
    assert words in str(failure_type_byte(int(number, 16)).words)


def test_the_high_half_is_the_category():
    """01 names the group 1x, 09 the group 9x, 0x00 is general; the rest is reserved."""
    for group in range(1, 10):
        names = {failure_type_byte(group << 4 | low).category for low in range(16)}
        assert names == {FAILURE_CATEGORIES[group]} == {failure_type_byte(group).category}
    assert failure_type_byte(0x00).category == "general"
    assert failure_type_byte(0x16).category == "electrical"
    assert failure_type_byte(0x87).category == "network message"
    assert failure_type_byte(0x0A).category == failure_type_byte(0xA0).category == "reserved"


def test_a_missing_setup_step_is_named():
    """51 asks for programming, 54 for initialization, 55 and 56 for configuration (own mapping)."""
    assert SETUP_STEP_MISSING == {
        0x51: "programming",
        0x54: "initialization",
        0x55: "configuration",
        0x56: "configuration",
    }
