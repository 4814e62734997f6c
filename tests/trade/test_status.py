"""The status byte against udsoncan, and against a module simulated by ISO 14229-1 annex D."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from udsoncan import Dtc

from builder.trade.mistake import Mistake
from builder.trade.status import (
    BITS,
    INTERMITTENT,
    PRESENT,
    STORED,
    UNTESTED,
    after_key_cycle,
    contradictions,
    parse_status,
    set_bits,
)

# udsoncan's names in the order of its own bits. Its docstrings mix up the two states of a bit (seen
# in 1.26.1), its positions are right.
THEIRS = (
    "test_failed",
    "test_failed_this_operation_cycle",
    "pending",
    "confirmed",
    "test_not_completed_since_last_clear",
    "test_failed_since_last_clear",
    "test_not_completed_this_operation_cycle",
    "warning_indicator_requested",
)


def test_all_bytes_read_as_udsoncan_reads_them():
    """Each of the 256 bytes has the same bits set."""
    for number in range(256):
        status = Dtc.Status.from_byte(number)
        theirs = [BITS[at] for at, name in enumerate(THEIRS) if getattr(status, name)]
        assert list(set_bits(number)) == theirs


@pytest.mark.parametrize(
    ("shown", "answer"),
    [
        ("2F", PRESENT),
        ("AF", PRESENT),
        ("2E", INTERMITTENT),
        ("28", STORED),
        ("20", STORED),
        ("24", STORED),
        ("00", STORED),
        ("50", UNTESTED),
        ("68", UNTESTED),
        ("69", UNTESTED),
    ],
)
def test_what_a_byte_says_after_a_key_cycle(shown, answer):
    """Worked bytes: failing now, came and went, quiet since, and not looked at yet."""
    assert after_key_cycle(parse_status(shown)) == answer


def test_a_module_that_keeps_no_test_bits_cannot_clear_anything():
    """Without the bit for "not tested" a quiet code is not yet tested; a failing one is present."""
    assert after_key_cycle(0x00, supported=0x0F) == UNTESTED
    assert after_key_cycle(0x01, supported=0x0F) == PRESENT


def _clear(_: int) -> int:
    return 0x50


def _new_cycle(status: int) -> int:
    """Bit 1 falls, bit 6 rises; bit 2 falls after a cycle that tested and never failed."""
    passed_all = not status & 0x42
    kept = status & ~(0x02 | (0x04 if passed_all else 0))
    return kept | 0x40


def _fail(status: int) -> int:
    return (status | 0x27) & ~0x50


def _pass(status: int) -> int:
    return status & ~0x51


def _confirm(status: int) -> int:
    return status | 0x88 if status & 0x04 else status


@given(st.lists(st.sampled_from([_clear, _new_cycle, _fail, _pass, _confirm]), max_size=30))
def test_no_module_that_keeps_the_rules_contradicts_itself(events):
    """Whatever fails, passes and is cleared, the byte is free of contradictions."""
    status = 0x50
    for event in events:
        status = event(status)
        assert contradictions(status) == ()


@given(st.lists(st.sampled_from([_fail, _pass]), max_size=6))
def test_the_answer_is_what_happened_since_the_key_cycle(events):
    """No test: not yet tested; last failed: present; failed once: intermittent; else stored."""
    status = _new_cycle(_clear(0))
    for event in events:
        status = event(status)
    if not events:
        expected = UNTESTED
    elif events[-1] is _fail:
        expected = PRESENT
    else:
        expected = INTERMITTENT if _fail in events else STORED
    assert after_key_cycle(status) == expected


@pytest.mark.parametrize(
    ("status", "count"), [(0x02, 2), (0x22, 1), (0x06, 1), (0x66, 1), (0x11, 2), (0x10, 1),
                          (0x58, 1), (0x54, 1), (0x70, 1), (0x52, 4), (0x2F, 0), (0x50, 0)]
)  # fmt: skip
def test_contradictions_are_counted(status, count):
    """A byte that cannot be says each thing that is wrong with it."""
    assert len(contradictions(status)) == count


def test_contradictions_of_every_byte():
    """Of all 256 bytes just those that break a rule between two bits are questioned."""
    for status in range(256):
        now, cycle, pending, confirmed, no_test, failed, no_cycle, _ = (
            bool(status >> place & 1) for place in range(8)
        )
        broken = [
            cycle and not pending,
            cycle and not failed,
            cycle and no_cycle,
            no_test and (now or cycle or pending or confirmed or failed),
            no_test and not no_cycle,
        ]
        assert len(contradictions(status)) == sum(broken)


@pytest.mark.parametrize(("typed", "byte"), [("2F", 0x2F), ("0x2f", 0x2F), (" 50 ", 0x50)])
def test_bytes_as_typed(typed, byte):
    """Two hexadecimal digits, with or without 0x."""
    assert parse_status(typed) == byte


@pytest.mark.parametrize("typed", ["", "2", "2FF", "GG", "0x"])
def test_what_is_no_byte_is_refused(typed):
    """Anything else is answered with how a byte is written."""
    assert isinstance(parse_status(typed), Mistake)
