"""Which result follows from what was typed: the table of cases, and what must hold always."""

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
from builder.walk.follow import DECIDED, follow
from builder.walk.follow import TOO_CLOSE as TOO_CLOSE_HERE
from builder.walk.rows import Table

CASES: list[dict[str, Any]] = json.loads(
    (Path(__file__).parent / "cases" / "follow.json").read_text("utf-8")
)


def named(case: dict[str, Any]) -> str:
    """Name a case by its step and what is typed."""
    return f"{case['step']} {' '.join(f'{name}={text}' for name, text in case['typed'].items())}"


@pytest.mark.parametrize("case", CASES, ids=map(named, CASES))
def test_an_outcome_is_what_the_table_says(table: Table, case: dict[str, Any]) -> None:
    """State, results, figures to the last digit, possible errors, mistakes: as in the table."""
    found = json.loads(json.dumps(asdict(follow(table, case["step"], case["typed"]))))
    assert found == {name: case[name] for name in found}


def test_every_state_and_every_step_is_in_the_table(table: Table) -> None:
    """The table of cases leaves out no kind of check and no answer but one that a sound check
    cannot give."""
    assert {case["step"] for case in CASES} == set(table["steps"])
    states = {case["state"] for case in CASES}
    assert states == {
        "nothing typed", "more to be typed", "typed wrongly", "decided", "too close to say",
    }  # fmt: skip


def test_a_result_that_is_missing_is_said(table: Table) -> None:
    """Where a tree was published with a gap, nothing is made up."""
    step = {**table["steps"]["single"], "results": table["steps"]["single"]["results"][:1]}
    found = follow({**table, "steps": {"gap": step}}, "gap", {"": "14"})  # type: ignore[typeddict-item]
    assert (found.state, found.fits, found.reads_as) == ("no result", (), None)


@settings(max_examples=200)
@given(st.decimals("0", "20", places=2))
def test_too_close_is_what_the_guard_band_says(table: Table, reading: Decimal) -> None:
    """A single reading is sure where `instruments.judge` is, for each of its limits."""
    accuracy = parse_accuracy("0.5 % + 0.02")
    assert not isinstance(accuracy, Mistake)
    meter = Instrument("V", Decimal(-600), Decimal(600), Decimal("0.01"), accuracy)
    sides = [side_of_limit(meter, reading, Decimal(limit)) for limit in ("13.2", "14.8")]
    found = follow(table, "single", {"": f"{reading:f}"})
    if TOO_CLOSE_TO_CALL in sides:
        assert found.state == TOO_CLOSE_HERE
    else:
        wanted = {(BELOW, BELOW): 0, (ABOVE, BELOW): 1, (ABOVE, ABOVE): 2}
        assert (found.state, found.fits) == (DECIDED, (wanted[sides[0], sides[1]],))


@settings(max_examples=200, deadline=None)
@given(
    st.sampled_from(["drop", "chain", "several", "bridge"]),
    st.lists(st.decimals("-1", "1", places=3), min_size=2, max_size=2),
    st.lists(st.decimals("0", "1", places=3), min_size=2, max_size=2),
)
def test_what_is_decided_stays_so_within_the_error(
    table: Table, step: str, moved: list[Decimal], where: list[Decimal]
) -> None:
    """Whatever the true values are within what the tools may be off by, the way is the same."""
    row = table["steps"][step]
    lows, highs = ([Decimal(one[end]) for one in row["readings"]] for end in ("low", "high"))
    typed = {
        one["name"]: f"{round_digits(low + (high - low) * share, 4):f}"
        for one, low, high, share in zip(row["readings"], lows, highs, where, strict=True)
    }
    found = follow(table, step, typed)
    if found.state != DECIDED:
        return
    truth = {}
    for one, low, high, by in zip(row["readings"], lows, highs, moved, strict=True):
        error = Decimal(found.errors.get(one["name"], ("", "0"))[1])
        value = Decimal(found.values[one["name"]]) + error * by
        truth[one["name"]] = f"{min(max(value, low), high):f}"
    exact = follow({**table, "tools": {}}, step, truth)
    assert row["results"][exact.fits[0]]["to"] == row["results"][found.fits[0]]["to"]


@pytest.mark.parametrize(
    ("typed", "same"), [("350 mV", "0.35"), ("13,4", "13.4"), ("13.4V", "13.4")]
)
def test_another_unit_or_mark_is_the_same_reading(table: Table, typed: str, same: str) -> None:
    """350 mV is 0.35 V, and a decimal comma is a decimal point."""
    assert follow(table, "single", {"": typed}).values == follow(table, "single", {"": same}).values
