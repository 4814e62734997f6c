"""Vehicle numbers against 49 CFR 565.15, a published example, and the libraries vin and vininfo."""

import pytest
import vin as vin_library
import vininfo
from hypothesis import given
from hypothesis import strategies as st

from builder.trade.mistake import Mistake
from builder.trade.vin import (
    Vin,
    check_digit,
    model_years,
    parse_vin,
)

CHARACTERS = "0123456789ABCDEFGHJKLMNPRSTUVWXYZ"
PUBLISHED = "1M8GDM9AXKP042788"  # the widely published worked example: sum 351, remainder 10, X

# Invented: no region gives numbers that start with 0 (ISO 3780, from memory).
INVENTED = [
    "0ZZAB1C07A0000001",
    "0ZZAB1C09A0000002",
    "0ZZAB12A4A0000001",
    "0ZZABCDE6S0123456",
    "0ZZAB1DE0S0123456",
    "0ZZAB13E9S0123456",
    "0ZZXX1XX310000001",
    "0ZZRP5RP5T0099999",
]


@pytest.mark.parametrize(
    "text", [PUBLISHED, "11111111111111111", "99999999999999999", "00000000000000000", *INVENTED]
)
def test_worked_examples_have_the_right_check_digit(text):
    """The published example and the sums that anyone can do in the head come out right."""
    assert check_digit(text) == text[8]


@given(st.text(CHARACTERS, min_size=17, max_size=17))
def test_check_digit_agrees_with_the_library_vin(text):
    """An independent implementation gives the same character for any VIN."""
    assert check_digit(text) == vin_library.VIN.calculate_check_digit(text)


@given(st.text(CHARACTERS, min_size=13, max_size=13))
def test_check_digit_agrees_with_the_library_vininfo(rest):
    """A second one finds our digit right (its own view of years and makers is switched off)."""
    text = f"0ZZA{rest}"
    text = f"{text[:8]}{check_digit(text)}{text[9:]}"
    assert vininfo.Vin(text).verify_checksum(check_year=False)


# 49 CFR 565.15(d)(1), table VII (number of the table from memory).
@pytest.mark.parametrize(
    ("code", "early"),
    [("A", 1980), ("H", 1987), ("J", 1988), ("N", 1992), ("P", 1993), ("R", 1994), ("S", 1995),
     ("T", 1996), ("V", 1997), ("W", 1998), ("X", 1999), ("Y", 2000), ("1", 2001), ("9", 2009)],
)  # fmt: skip
def test_model_year_by_position_seven(code, early):
    """Of a light vehicle a digit in position 7 means the first thirty years, a letter the next."""
    digit, letter = f"0ZZAB13E9{code}0123456", f"0ZZAB1DE9{code}0123456"
    assert model_years(Vin(digit), light=True) == (early,)
    assert model_years(Vin(letter), light=True) == (early + 30,)


def test_the_year_of_a_heavy_vehicle_stays_open():
    """Above 4536 kg position 7 says nothing: the bus of the example is of 1989 or 2019."""
    assert model_years(Vin(PUBLISHED)) == (1989, 2019)
    assert model_years(Vin(PUBLISHED), light=False) == (1989, 2019)
    assert model_years(Vin(PUBLISHED), light=True) == (1989,)


@pytest.mark.parametrize("code", "UZ0")
def test_three_characters_are_no_year(code):
    """U, Z and 0 occur in numbers but never as a year: a doubt, no refusal."""
    text = f"0ZZAB13E0{code}0123456"
    number = parse_vin(f"{text[:8]}{check_digit(text)}{text[9:]}")
    assert isinstance(number, Vin)
    assert number.doubts == (f"{code} in position 10 is no model year",)
    assert model_years(number) == ()


@pytest.mark.parametrize("text", INVENTED)
def test_a_sound_number_has_no_doubts(text):
    """A right check digit and a year leave nothing to look at twice."""
    assert parse_vin(text) == Vin(text)


def test_numbers_are_taken_as_people_type_them():
    """Small letters, blanks and hyphens are taken."""
    assert parse_vin(" 1m8g dm9a-xkp042788 ") == Vin(PUBLISHED)


def test_a_wrong_digit_is_a_doubt_outside_its_market():
    """The check digit is a rule of 49 CFR 565: elsewhere a wrong one is worth a look, no more."""
    typed = PUBLISHED.replace("AXK", "A1K")
    number = parse_vin(typed)
    assert isinstance(number, Vin)
    assert number.doubts == (
        "check digit in position 9 is 1, calculated X: check your entry, or non-US",
    )
    refused = parse_vin(typed, must_check=True)
    assert isinstance(refused, Mistake)
    assert refused.at == 8


@pytest.mark.parametrize(
    ("typed", "words", "instead", "at"),
    [
        ("1M8GDM9AXKPO42788", "position 12 is the letter O", PUBLISHED, 11),
        ("IM8GDM9AXKPQ42788", "position 1 is the letter I", PUBLISHED, 0),
        ("1M8GDM9AXKP04278", "17 characters; you entered 16", None, 0),
        ("1M8GDM9AXKP0427888", "17 characters; you entered 18", None, 0),
        ("1M8GDM9AXKP04278$", "$ in position 17", None, 16),
        ("", "17 characters", None, 0),
    ],
)
def test_a_mistake_names_its_place_and_the_likely_vin(typed, words, instead, at):
    """Length and forbidden letters are named with their position, and the likely character."""
    found = parse_vin(typed)
    assert isinstance(found, Mistake)
    assert words in found.message
    assert (found.instead, found.at) == (instead, at)


def test_what_the_check_digit_cannot_catch():
    """39 of 544 single wrong characters and one swap of neighbors pass in the published example."""
    wrong = [
        f"{PUBLISHED[:at]}{one}{PUBLISHED[at + 1 :]}"
        for at in range(17)
        for one in CHARACTERS
        if one != PUBLISHED[at]
    ]
    assert len(wrong) == 544
    assert sum(check_digit(text) == text[8] for text in wrong) == 39
    swapped = [
        f"{PUBLISHED[:at]}{PUBLISHED[at + 1]}{PUBLISHED[at]}{PUBLISHED[at + 2 :]}"
        for at in range(16)
        if PUBLISHED[at] != PUBLISHED[at + 1]
    ]
    assert sum(check_digit(text) == text[8] for text in swapped) == 1


@given(st.text(max_size=20))
def test_any_text_gets_an_answer(typed):
    """No typed text brings the parser down."""
    assert isinstance(parse_vin(typed), Vin | Mistake)
