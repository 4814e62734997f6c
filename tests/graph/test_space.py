"""Gaps and overlaps: against sweeps over every reading, and against worked examples.

The worked examples are those of our notes: bands of a bus resistance (own example), closed and open
ends (arithmetic), a meter of 0.01 V (common practice, no source), four boxes of a decision table of
which two meet (shape from memory after Calvanese et al., BPM 2016; the result is arithmetic).
"""

from decimal import Decimal
from itertools import product
from random import Random

from hypothesis import given, settings
from hypothesis import strategies as st

from builder.graph.reading_coverage import overlaps, uncovered
from builder.graph.space import range_as_text, space_of, with_ends_in_order
from builder.model.checks import Branch, Check, Reading, Result
from builder.model.ranges import OVER, Box, Range, above, at_least, at_most, below, between
from builder.model.text import Number, Text
from builder.rules.shared.witnesses import example_reading, example_readings

D = Decimal
ENDS = st.integers(0, 6).map(Decimal)


@st.composite
def ranges(draw) -> Range:
    """Draw a range of any form with whole ends."""
    form = draw(st.sampled_from(["below", "above", "at most", "at least", "span"]))
    low, high = sorted((draw(ENDS), draw(ENDS)))
    match form:
        case "below":
            return below(high)
        case "above":
            return above(low)
        case "at most":
            return at_most(high)
        case "at least":
            return at_least(low)
    return between(low, high, low_open=draw(st.booleans()), high_open=draw(st.booleans()))


def boxes_of(dimensions: int):
    """Draw a few boxes over some readings."""
    return st.lists(st.tuples(*[ranges()] * dimensions), max_size=5)


def points(dimensions: int) -> list[tuple[Decimal, ...]]:
    """Return every reading in steps of a quarter, the ends and the values between them."""
    return list(product([D(n) / 4 for n in range(25)], repeat=dimensions))


def takes(box: Box, point: tuple[Decimal, ...]) -> bool:
    """Whether a point is in a box."""
    return all(side.contains(value) for side, value in zip(box, point, strict=True))


@settings(max_examples=60, deadline=None)
@given(boxes_of(2))
def test_gaps_are_what_a_sweep_over_all_readings_finds(boxes: list[Box]) -> None:
    """A reading is in a piece of the gap if and only if no box covers it."""
    domain = (between(D(0), D(6)), between(D(0), D(6)))
    pieces = uncovered(domain, boxes)
    assert pieces is not None
    for point in points(2):
        is_covered = any(takes(box, point) for box in boxes)
        assert is_covered != any(takes(piece, point) for piece in pieces)


@settings(max_examples=60, deadline=None)
@given(boxes_of(2))
def test_overlaps_are_what_a_sweep_over_all_readings_finds(boxes: list[Box]) -> None:
    """Two boxes overlap if and only if some reading is in both."""
    domain = (between(D(0), D(6)), between(D(0), D(6)))
    pairs = {(i, j) for i, j, _ in overlaps(domain, boxes)}
    assert pairs == {
        (i, j)
        for j in range(len(boxes))
        for i in range(j)
        if any(takes(boxes[i], point) and takes(boxes[j], point) for point in points(2))
    }


def test_a_large_table_is_proved_within_its_bound() -> None:
    """1,500 ranges over seven readings, cut from one box, have no gap and no overlap."""
    domain, boxes = cut_up(1500, 7)
    assert uncovered(domain, boxes) == []
    assert list(overlaps(domain, boxes)) == []


def test_the_one_gap_of_a_large_table_is_found() -> None:
    """Without one of its 1,500 ranges, the gap is inside that range."""
    domain, boxes = cut_up(1500, 7)
    pieces = uncovered(domain, boxes[1:])
    assert pieces
    for piece in pieces:
        assert all(a.intersection(b) == a for a, b in zip(piece, boxes[0], strict=True))


def cut_up(count: int, dimensions: int) -> tuple[Box, list[Box]]:
    """Cut boxes in two again and again, at pseudorandom places."""
    whole = tuple(between(D(0), D(1000), high_open=True) for _ in range(dimensions))
    boxes, seed = [whole], 1
    while len(boxes) < count:
        seed = seed * 1103515245 + 12345 & 0x7FFFFFFF
        box = boxes.pop(seed % min(len(boxes), 50))
        axis = seed // 64 % dimensions
        low, high = box[axis].low.value, box[axis].high.value
        if high - low < 2:
            boxes.append(box)
            continue
        cut = low + 1 + seed // 1024 % int(high - low - 1)
        halves = between(low, cut, high_open=True), between(cut, high, high_open=True)
        boxes += [(*box[:axis], half, *box[axis + 1 :]) for half in halves]
    return whole, boxes


def test_a_question_that_is_too_large_is_refused() -> None:
    """Hundreds of tangled boxes over many readings don't take minutes: the answer is None."""
    seeded = Random(2)
    domain = tuple(between(D(0), D(1000)) for _ in range(7))
    tangled = [
        tuple(between(*sorted(map(D, seeded.sample(range(1001), 2)))) for _ in range(7))
        for _ in range(1500)
    ]
    assert uncovered(domain, tangled) is None


def check_of(
    *bands: tuple[str, Range], low="0", high="Infinity", fine: str | None = "0.1"
) -> Check:
    """Return a check of one reading in ohm."""
    reading = Reading(
        at=Text("").at,
        name="",
        unit=Text("ohm"),
        low=D(low),
        high=D(high),
        resolution=Number(fine) if fine else None,
    )
    results = tuple(
        Result(Text("").at, Text(words), Branch(Text("x"), "x"), {"": side})
        for words, side in bands
    )
    return Check(results, (reading,))


def gaps_of(check: Check) -> list[str]:
    """Return the gaps of a check of one reading as text."""
    space = space_of(check)
    assert space
    pieces = uncovered(space.domain, space.boxes)
    assert pieces is not None
    gaps = [piece for piece in sorted(pieces) if example_reading(space, piece)]
    return [range_as_text(side, space.axes[0].domain) for (side,) in gaps]


def test_the_four_gaps_of_the_bus_bands() -> None:
    """Bands up to 5, 35 to 45, 54 to 66 and 110 to 130 ohm leave exactly four open gaps."""
    check = check_of(
        ("at most 5", at_most(D(5))),
        ("35 to 45", between(D(35), D(45))),
        ("54 to 66", between(D(54), D(66))),
        ("110 to 130", between(D(110), D(130))),
    )
    assert gaps_of(check) == [
        "above 5 to below 35",
        "above 45 to below 54",
        "above 66 to below 110",
        "above 130",
    ]


def test_bands_that_touch_leave_nothing() -> None:
    """[12.4, 12.6) and [12.6, 13] touch: no gap, no overlap."""
    first, second = between(D("12.4"), D("12.6"), high_open=True), between(D("12.6"), D(13))
    check = check_of(("", first), ("", second), low="12.4", high="13", fine=None)
    assert gaps_of(check) == []
    assert list(overlaps((between(D("12.4"), D(13)),), [(first,), (second,)])) == []


def test_two_closed_ends_share_one_point() -> None:
    """[12.4, 12.6] and [12.6, 13] overlap at the point 12.6."""
    first, second = between(D("12.4"), D("12.6")), between(D("12.6"), D(13))
    ((_, _, (shared,)),) = overlaps((between(D(12), D(13)),), [(first,), (second,)])
    assert shared == between(D("12.6"), D("12.6"))


def test_two_open_ends_leave_one_point() -> None:
    """Below 12.6 and above 12.6 leave the point 12.6."""
    check = check_of(("", below(D("12.6"))), ("", above(D("12.6"))), fine="0.01")
    assert gaps_of(check) == ["exactly 12.6"]


def test_a_meter_of_a_hundredth_shows_no_gap_between_its_steps() -> None:
    """At most 12.59 and at least 12.60 leave nothing that a meter of 0.01 V can show."""
    bands = (("", at_most(D("12.59"))), ("", at_least(D("12.60"))))
    assert gaps_of(check_of(*bands, fine="0.01")) == []
    assert gaps_of(check_of(*bands, fine="0.001")) == ["above 12.59 to below 12.60"]


def test_only_two_of_the_four_boxes_meet() -> None:
    """Of A, B, C and D only A and C overlap, in [500, 1000] by [500, 1000]."""
    boxes = [
        (between(D(0), D(1000)), between(D(0), D(1000))),
        (between(D(250), D(750)), between(D(4000), D(5000))),
        (between(D(500), D(1500)), between(D(500), D(3000))),
        (between(D(2000), D(2500)), between(D(0), D(2000))),
    ]
    domain = (between(D(0), D(5000)), between(D(0), D(5000)))
    assert list(overlaps(domain, boxes)) == [
        (0, 2, (between(D(500), D(1000)), between(D(500), D(1000))))
    ]


def test_above_covers_ol_unless_a_result_is_ol() -> None:
    """`above 66` covers OL; next to a result `OL` it doesn't."""
    good = ("at most 66", at_most(D(66)))
    assert gaps_of(check_of(good, ("above 66", above(D(66))))) == []
    assert gaps_of(check_of(good, ("above 66", above(D(66))), ("OL", OVER))) == []
    assert gaps_of(check_of(good, ("66 to 500", between(D(66), D(500), low_open=True)))) == [
        "above 500"
    ]


@given(ranges())
def test_a_range_as_text_reads_back_the_same(side: Range) -> None:
    """An author can copy the range of a hint into the file."""
    from builder.reader.range_words import parse_range

    if not side.empty:
        read = parse_range(range_as_text(side))
        assert isinstance(read, Range)
        assert read == side


@given(ENDS, ENDS, st.booleans(), st.booleans())
def test_a_reversed_range_is_turned_around(
    low: Decimal, high: Decimal, low_open: bool, high_open: bool
) -> None:
    """`14 to 13` counts as `13 to 14`, each end as open as written."""
    if low < high:
        written = between(high, low, low_open=high_open, high_open=low_open)
        assert with_ends_in_order(written) == between(
            low, high, low_open=low_open, high_open=high_open
        )


def test_at_most_five_examples_are_given() -> None:
    """A table with many gaps gets five examples."""
    check = check_of(*((f"exactly {n}", between(D(n), D(n))) for n in range(20)))
    space = space_of(check)
    assert space
    pieces = uncovered(space.domain, space.boxes)
    assert pieces is not None
    assert len(pieces) == 20
    assert len(example_readings(space, sorted(pieces))) == 5
