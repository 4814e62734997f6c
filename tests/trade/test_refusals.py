"""Refusals against udsoncan (names of ISO 14229-1 annex A)."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st
from udsoncan import Response
from udsoncan.ResponseCode import ResponseCode

from builder.trade.mistake import Mistake
from builder.trade.refusals import (
    CONDITIONS,
    LOCKED,
    NEXT_STEP,
    REFUSALS,
    SECURITY,
    SUPPLY,
    WAIT,
    Refusal,
    parse_refusal,
    refusal,
)


def _bare(name: str) -> str:
    """A name without case and punctuation; ISO writes "exceeded", udsoncan "exceed"."""
    return re.sub(r"[^a-z]", "", name.lower()).replace("exceedednumber", "exceednumber")


def _their_names() -> dict[int, str]:
    return {
        value: name
        for name, value in vars(ResponseCode).items()
        if isinstance(value, int) and not name.startswith("_")
    }


@pytest.mark.parametrize("number", REFUSALS)
def test_names_are_those_of_udsoncan(number):
    """Each number has the standard's name, spelled alike but for case and punctuation."""
    assert _bare(REFUSALS[number].name) == _bare(_their_names()[number])


def test_no_named_refusal_is_left_out():
    """What udsoncan names is either in our list or in the group of access and certificates.

    38 to 3A are left to the group: they have two names each, an older and a newer.
    """
    theirs = {number for number in _their_names() if number}
    missing = {number for number in theirs if number not in REFUSALS}
    assert all(refusal(number).kind == SECURITY for number in missing)
    assert min(missing) >= 0x38
    assert max(missing) <= 0x5D


@pytest.mark.parametrize(
    ("number", "kind"),
    [(0x78, WAIT), (0x21, WAIT), (0x22, CONDITIONS), (0x83, CONDITIONS), (0x90, CONDITIONS),
     (0x8F, CONDITIONS), (0x92, SUPPLY), (0x93, SUPPLY), (0x33, SECURITY), (0x35, SECURITY),
     (0x36, LOCKED), (0x37, LOCKED), (0x24, "sequence"), (0x31, "out of range"),
     (0x7F, "not supported"), (0x72, "failed"), (0x38, SECURITY), (0x5D, SECURITY),
     (0x8E, CONDITIONS), (0xFE, CONDITIONS), (0x95, CONDITIONS)],
)  # fmt: skip
def test_the_kind_says_what_to_do(number, kind):
    """A tree can branch on the kind, and each kind has a next step (own grouping)."""
    found = refusal(number)
    assert isinstance(found, Refusal)
    assert found.kind == kind
    assert NEXT_STEP[found.kind]


@pytest.mark.parametrize("number", [0x00, 0x15, 0x5E, 0x80, 0xFF])
def test_numbers_of_no_group_are_written_down_as_shown(number):
    """A number that the standard keeps free is not explained away."""
    assert isinstance(refusal(number), Mistake)


@pytest.mark.parametrize("payload", ["7F 27 35", "7F 31 78", "7F 2E 33", "7F 34 70", "7F 27 37"])
def test_answers_read_as_udsoncan_reads_them(payload):
    """The third byte of a negative response is its reason."""
    theirs = Response.from_payload(bytes.fromhex(payload)).code_name
    ours = parse_refusal(payload)
    assert isinstance(ours, Refusal)
    assert _bare(ours.name) == _bare(theirs)


@pytest.mark.parametrize("typed", ["22", "0x22", "conditions not correct", "conditionsNotCorrect"])
def test_a_refusal_is_known_however_it_is_shown(typed):
    """Number or name, the same refusal."""
    assert parse_refusal(typed) == REFUSALS[0x22]


@pytest.mark.parametrize(
    ("typed", "says"), [("7F 27", "cut short"), ("", "no refusal"), ("FF", "write it down")]
)
def test_what_is_no_refusal_is_said(typed, says):
    """An answer without its reason, or none at all, is answered in words."""
    found = parse_refusal(typed)
    assert isinstance(found, Mistake)
    assert says in found.message


@given(st.text(max_size=12))
def test_any_text_gets_an_answer(typed):
    """No typed text brings the parser down."""
    assert isinstance(parse_refusal(typed), Refusal | Mistake)
