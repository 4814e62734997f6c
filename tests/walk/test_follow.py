"""Which result the readings give: the table of cases, and properties of every reading."""

import json
from dataclasses import asdict
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.trade.exact import round_digits
from builder.trade.instruments import (
    ABOVE,
    BELOW,
    TOO_CLOSE_TO_CALL,
    Instrument,
    parse_accuracy,
    side_of_limit,
)
from builder.trade.mistake import Mistake
from builder.walk.follow import OutcomeState, follow
from builder.walk.rows import WalkTable

CASES: list[dict[str, Any]] = json.loads(
    (Path(__file__).parent / "cases" / "follow.json").read_text("utf-8")
)


def case_name(case: dict[str, Any]) -> str:
    """Name a case by its step and the typed text."""
    return f"{case['step']} {' '.join(f'{name}={text}' for name, text in case['typed'].items())}"


@pytest.mark.parametrize("case", CASES, ids=map(case_name, CASES))
def test_an_outcome_is_what_the_table_says(table: WalkTable, case: dict[str, Any]) -> None:
    """State, results, values to the last digit, possible errors, messages: as in the table."""
    outcome = json.loads(json.dumps(asdict(follow(table, case["step"], case["typed"]))))
    assert outcome == {name: case[name] for name in outcome}


def test_every_state_and_every_step_is_in_the_table(table: WalkTable) -> None:
    """The cases cover every kind of check, and every state that a valid check can give."""
    assert {case["step"] for case in CASES} == set(table["steps"])
    states = {case["state"] for case in CASES}
    assert states == set(OutcomeState) - {OutcomeState.NO_RESULT}


def test_a_gap_gives_no_result(table: WalkTable) -> None:
    """If a tree was published with a gap, no result is made up."""
    step = {**table["steps"]["single"], "results": table["steps"]["single"]["results"][:1]}
    outcome = follow({**table, "steps": {"gap": step}}, "gap", {"": "14"})  # type: ignore[typeddict-item]
    assert (outcome.state, outcome.fits, outcome.reads_as) == (OutcomeState.NO_RESULT, (), None)


@settings(max_examples=200)
@given(st.decimals("0", "20", places=2))
def test_too_close_is_what_the_guard_band_says(table: WalkTable, reading: Decimal) -> None:
    """A single reading is decided if it is clear of each limit by `instruments.side_of_limit`."""
    accuracy = parse_accuracy("0.5 % + 0.02")
    assert not isinstance(accuracy, Mistake)
    meter = Instrument("V", Decimal(-600), Decimal(600), Decimal("0.01"), accuracy)
    sides = [side_of_limit(meter, reading, Decimal(limit)) for limit in ("13.2", "14.8")]
    outcome = follow(table, "single", {"": f"{reading:f}"})
    if TOO_CLOSE_TO_CALL in sides:
        assert outcome.state == OutcomeState.TOO_CLOSE
    else:
        expected = {(BELOW, BELOW): 0, (ABOVE, BELOW): 1, (ABOVE, ABOVE): 2}
        assert (outcome.state, outcome.fits) == (
            OutcomeState.DECIDED,
            (expected[sides[0], sides[1]],),
        )


@settings(max_examples=200, deadline=None)
@given(
    st.sampled_from(["drop", "chain", "several", "bridge"]),
    st.lists(st.decimals("-1", "1", places=3), min_size=2, max_size=2),
    st.lists(st.decimals("0", "1", places=3), min_size=2, max_size=2),
)
def test_a_decision_holds_within_the_error(
    table: WalkTable, step: str, offsets: list[Decimal], places: list[Decimal]
) -> None:
    """For any true values within the tools' errors, the target is the same."""
    row = table["steps"][step]
    readings = row["readings"]
    lows, highs = ([Decimal(reading[end]) for reading in readings] for end in ("low", "high"))
    typed = {
        reading["name"]: f"{round_digits(low + (high - low) * share, 4):f}"
        for reading, low, high, share in zip(readings, lows, highs, places, strict=True)
    }
    outcome = follow(table, step, typed)
    if outcome.state != OutcomeState.DECIDED:
        return
    truth = {}
    for reading, low, high, offset in zip(readings, lows, highs, offsets, strict=True):
        error = Decimal(outcome.errors.get(reading["name"], ("", "0"))[1])
        value = Decimal(outcome.values[reading["name"]]) + error * offset
        truth[reading["name"]] = f"{min(max(value, low), high):f}"
    exact = follow({**table, "tools": {}}, step, truth)
    assert row["results"][exact.fits[0]]["to"] == row["results"][outcome.fits[0]]["to"]


@pytest.mark.parametrize(
    ("typed", "same"), [("350 mV", "0.35"), ("13,4", "13.4"), ("13.4V", "13.4")]
)
def test_another_unit_or_mark_is_the_same_reading(table: WalkTable, typed: str, same: str) -> None:
    """350 mV is 0.35 V, and a decimal comma is a decimal point."""
    assert follow(table, "single", {"": typed}).values == follow(table, "single", {"": same}).values
