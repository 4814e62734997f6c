"""Trouble codes against worked examples and udsoncan (ISO 14229-1 records)."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st
from udsoncan import Response
from udsoncan.services import ReadDTCInformation

from builder.trade.codes import (
    CODE_PATTERN,
    CODE_SYSTEMS,
    Code,
    code_bytes,
    code_from_bytes,
    code_owner,
    is_padding,
    parse_code,
)
from builder.trade.mistake import Mistake

# SAE J2012 / ISO 15031-6: two bits letter, two bits second character, three hexadecimal digits.
WORKED = {
    "P0133": "0133", "C0123": "4123", "B1234": "9234", "U0100": "C100", "U3FFF": "FFFF",
    "P0ABC": "0ABC", "P3400": "3400", "U0073": "C073", "C0031": "4031", "B0001": "8001",
    "U3000": "F000",
    "P0562-16": "056216", "P0685-13": "068513", "P0118-17": "011817", "U0100-87": "C10087",
    "U0073-88": "C07388", "U3000-55": "F00055", "C0031-2F": "40312F", "B0001-1A": "80011A",
    "P0630-00": "063000", "P1A2B-62": "1A2B62",
}  # fmt: skip


@pytest.mark.parametrize(("text", "data"), WORKED.items())
def test_worked_examples(text, data):
    """Text and bytes of a code say the same, both ways."""
    code = parse_code(text)
    assert isinstance(code, Code)
    assert code_bytes(code).hex().upper() == data
    assert code_from_bytes(bytes.fromhex(data)) == code
    assert str(code) == text


def test_all_codes_survive_the_round_trip():
    """Each of the 65 536 two-byte codes comes back from its text and from its bytes."""
    for number in range(0x10000):
        code = Code(number)
        text = str(code)
        assert parse_code(text) == code
        assert code_from_bytes(code_bytes(code)) == code
        assert re.fullmatch(CODE_PATTERN, text)


@given(
    number=st.integers(0, 0xFFFF),
    failure_type=st.integers(0, 0xFF),
    join=st.sampled_from(["-", ":", ""]),
)
def test_three_byte_codes_are_read_however_joined(number, failure_type, join):
    """A failure type may follow with a hyphen, a colon or nothing, in any letter case."""
    code = Code(number, failure_type)
    typed = str(code).replace("-", join).lower()
    assert parse_code(f" {typed} ") == code
    assert code.two_byte == Code(number)


def test_a_record_of_a_module_reads_as_udsoncan_reads_it():
    """The 24 bits of a record of ISO 14229-1 are those of udsoncan."""
    payload = bytes.fromhex("59 02 FF 01 23 45 2F C1 00 87 08")
    answer = ReadDTCInformation.interpret_response(
        Response.from_payload(payload), ReadDTCInformation.Subfunction.reportDTCByStatusMask
    )
    theirs = [dtc.id for dtc in answer.service_data.dtcs]
    ours = [code_from_bytes(payload[at : at + 3]) for at in (3, 7)]
    assert [int.from_bytes(code_bytes(code), "big") for code in ours] == theirs
    assert str(ours[1]) == "U0100-87"


@pytest.mark.parametrize(
    ("typed", "instead", "at"),
    [
        ("PO133", "P0133", 1), ("P013I", "P0131", 4), ("UOl00", "U0100", 1),
        (" PO562-16", "P0562-16", 2), ("pQ420", "P0420", 1),
    ],
)  # fmt: skip
def test_look_alikes_are_named_and_never_mended_silently(typed, instead, at):
    """O for 0 and I or l for 1 are pointed at, with the code that was probably meant."""
    found = parse_code(typed)
    assert isinstance(found, Mistake)
    assert (found.instead, found.at) == (instead, at)


@pytest.mark.parametrize(
    ("typed", "says", "at"),
    [
        ("P4123", "second character", 1),
        ("X0123", "starts with P, C, B or U", 0),
        ("P01", "too short", 0),
        ("P", "too short", 0),
        ("P4", "second character", 1),
        ("P00FG", "G is no hexadecimal digit", 4),
        ("P01G3", "no hexadecimal digit", 3),
        ("P0562-1", "no failure type", 5),
        ("P0562-1G", "-1G is no failure type", 5),
        ("P05621", "no failure type", 5),
        ("", "enter a code", 0),
        ("ß0133", "starts with", 0),
    ],
)
def test_what_is_wrong_is_said_at_its_place(typed, says, at):
    """A malformed code is answered with what is wrong in it and where."""
    found = parse_code(typed)
    assert isinstance(found, Mistake)
    assert says in found.message
    assert found.at == at


def test_a_mistake_covers_what_is_wrong():
    """The place and the length of a mistake mark just the wrong part."""
    found = parse_code(" P0562-1G")
    assert isinstance(found, Mistake)
    assert (found.at, found.length) == (6, 3)


@given(st.text(max_size=12))
def test_any_text_gets_an_answer(typed):
    """No typed text brings the parser down, and only a code is taken for one."""
    found = parse_code(typed)
    assert isinstance(found, Code | Mistake)
    if isinstance(found, Code):
        assert re.fullmatch(CODE_PATTERN, str(found))


def test_the_pattern_takes_only_the_spelling_of_files():
    """Files write capitals and a hyphen; the pattern refuses anything else."""
    assert re.fullmatch(CODE_PATTERN, "P0562-16")
    for typed in ("p0562", "P0562:16", "P056216", "P4562", "P0562 ", "P0562-1"):
        assert not re.fullmatch(CODE_PATTERN, typed)


# SAE J2012 / ISO 15031-6, from memory.
@pytest.mark.parametrize(
    ("text", "whose"),
    [
        ("P0FFF", "standard"), ("P1000", "maker"), ("P1FFF", "maker"), ("P2000", "standard"),
        ("P3000", "maker"), ("P33FF", "maker"), ("P3400", "standard"), ("P3FFF", "standard"),
        ("C0031", "standard"), ("C1000", "maker"), ("C2FFF", "maker"), ("C3000", "standard"),
        ("B0001", "standard"), ("B2000", "maker"), ("B3000", "standard"),
        ("U0100", "standard"), ("U1000", "maker"), ("U2000", "maker"), ("U3000", "standard"),
    ],
)  # fmt: skip
def test_who_gives_a_code_its_meaning(text, whose):
    """A generic code means the same on every make; a maker's code only with the make."""
    code = parse_code(text)
    assert isinstance(code, Code)
    assert code_owner(code) == whose


def test_zeros_are_padding():
    """Two zero bytes fill an answer (with or without a third) and are no code."""
    assert is_padding(Code(0))
    assert is_padding(Code(0, 0))
    assert not is_padding(Code(0, 1))
    assert not is_padding(Code(1))


def test_systems():
    """The letter names the part of the vehicle."""
    assert [parse_code(f"{letter}0001").system for letter in CODE_SYSTEMS] == list(
        CODE_SYSTEMS.values()
    )


def test_bytes_of_a_wrong_length_are_refused():
    """A code has two or three bytes."""
    assert isinstance(code_from_bytes(b"\x01"), Mistake)
    assert isinstance(code_from_bytes(bytes(4)), Mistake)
