"""Refusals against udsoncan (names of ISO 14229-1 annex A)."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st
from udsoncan import Response
from udsoncan.ResponseCode import ResponseCode

from builder.trade.mistake import Mistake
from builder.trade.refusal_codes import (
    CONDITIONS,
    LOCKED,
    NEXT_STEPS,
    REFUSALS,
    SECURITY,
    SUPPLY,
    WAIT,
    Refusal,
)
from builder.trade.refusals import explain_refusal, parse_refusal


def _bare(name: str) -> str:
    """A name without case and punctuation; ISO writes "exceeded", udsoncan "exceed"."""
    return re.sub(r"[^a-z]", "", name.lower()).replace("exceedednumber", "exceednumber")


def _their_names() -> dict[int, set[str]]:
    """Return udsoncan's names by number; 38 to 3A have two each, of two editions."""
    names: dict[int, set[str]] = {}
    for name, value in vars(ResponseCode).items():
        if isinstance(value, int) and value and not name.startswith("_"):
            names.setdefault(value, set()).add(_bare(name))
    return names


@pytest.mark.parametrize("number", REFUSALS)
def test_names_are_those_of_udsoncan(number):
    """Each number has the standard's names, the same but for case and punctuation."""
    one = REFUSALS[number]
    ours = {_bare(name) for name in (one.name, one.older) if name}
    assert ours == _their_names()[number]


def test_no_named_refusal_is_left_out():
    """Every number that udsoncan names has an entry of its own, 38 to 40 and 50 to 5D too."""
    assert set(REFUSALS) == set(_their_names())
    assert {*range(0x38, 0x41), *range(0x50, 0x5E)} <= set(REFUSALS)


def test_every_refusal_is_explained_in_few_words():
    """No entry repeats its name for an explanation, and each fits a line on a phone in the bay."""
    for one in REFUSALS.values():
        assert 5 <= len(one.means) <= 100
        assert _bare(one.means) != _bare(one.name)
        assert one.kind in NEXT_STEPS


@pytest.mark.parametrize(
    ("typed", "number"),
    [("generalSecurityViolation", 0x38), ("secure data transmission required", 0x38),
     ("insufficientProtection", 0x3A), ("7F 29 50", 0x50), ("ownershipVerificationFailed", 0x58)],
)  # fmt: skip
def test_a_refusal_is_found_by_its_old_and_its_new_name(typed, number):
    """Tools of both editions are understood: 38 to 3A changed their names."""
    assert parse_refusal(typed) == REFUSALS[number]


@pytest.mark.parametrize(
    ("number", "kind"),
    [(0x78, WAIT), (0x21, WAIT), (0x22, CONDITIONS), (0x83, CONDITIONS), (0x90, CONDITIONS),
     (0x8F, CONDITIONS), (0x92, SUPPLY), (0x93, SUPPLY), (0x33, SECURITY), (0x35, SECURITY),
     (0x36, LOCKED), (0x37, LOCKED), (0x24, "sequence"), (0x31, "out of range"),
     (0x7F, "not supported"), (0x72, "failed"), (0x38, SECURITY), (0x41, SECURITY),
     (0x4F, SECURITY), (0x5D, SECURITY),
     (0x8E, CONDITIONS), (0xFE, CONDITIONS), (0x95, CONDITIONS)],
)  # fmt: skip
def test_the_kind_gives_the_next_step(number, kind):
    """A tree can branch on the kind, and each kind has a next step (own grouping)."""
    found = explain_refusal(number)
    assert isinstance(found, Refusal)
    assert found.kind == kind
    assert NEXT_STEPS[found.kind]


@pytest.mark.parametrize("number", [0x00, 0x15, 0x5E, 0x80, 0xFF])
def test_numbers_without_a_group_are_recorded_as_shown(number):
    """A number that the standard keeps free is not explained away."""
    assert isinstance(explain_refusal(number), Mistake)


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
    ("typed", "words"), [("7F 27", "cut short"), ("", "no refusal"), ("FF", "record it")]
)
def test_what_is_no_refusal_gets_a_sentence(typed, words):
    """An answer without its reason, or none at all, gets a mistake in words."""
    found = parse_refusal(typed)
    assert isinstance(found, Mistake)
    assert words in found.message


@given(st.text(max_size=12))
def test_any_text_gets_an_answer(typed):
    """No typed text brings the parser down."""
    assert isinstance(parse_refusal(typed), Refusal | Mistake)
