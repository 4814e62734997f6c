"""Work spread over processes: the same results in the same order, as they come."""

from itertools import count, islice

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.cores import spread
from builder.cores.progress import counted
from builder.cores.spread import on_all_cores


def squared(number: int) -> int:
    """Square a number, but refuse 13."""
    if number == 13:
        raise ValueError("13 is refused")
    return number * number


@given(st.lists(st.integers(14, 99), max_size=40), st.integers(1, 9))
def test_one_core_gives_every_result_in_order(items: list[int], portion: int) -> None:
    """However many items there are and however they are handed out."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(spread, "usable_cores", lambda: 1)
        assert list(on_all_cores(squared, items, portion)) == [squared(one) for one in items]


@pytest.mark.parametrize("portion", [1, 3, 50])
@pytest.mark.parametrize("items", [0, 1, 2, 3, 20])
def test_many_cores_give_the_same(
    items: int, portion: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    """With few items, with fewer than processes, with a last portion that is not full."""
    monkeypatch.setattr(spread, "usable_cores", lambda: 4)
    found = list(on_all_cores(squared, range(20, 20 + items), portion))
    assert found == [squared(one) for one in range(20, 20 + items)]


def test_items_are_taken_as_they_are_needed(monkeypatch: pytest.MonkeyPatch) -> None:
    """A shop of any size fits the memory: of endless items the first results come all the same."""
    monkeypatch.setattr(spread, "usable_cores", lambda: 2)
    results = on_all_cores(squared, count(20))
    assert list(islice(results, 5)) == [400, 441, 484, 529, 576]
    results.close()  # type: ignore[attr-defined]


@pytest.mark.parametrize("cores", [1, 2])
def test_an_error_is_raised_in_its_turn(cores: int, monkeypatch: pytest.MonkeyPatch) -> None:
    """What came before it is there; nobody waits for what comes after."""
    monkeypatch.setattr(spread, "usable_cores", lambda: cores)
    results = on_all_cores(squared, [10, 11, 12, 13, *range(14, 400)])
    assert [next(results) for _ in range(3)] == [100, 121, 144]
    with pytest.raises(ValueError, match="13 is refused"):
        next(results)


def test_progress_is_told_before_the_first_and_after_each() -> None:
    """A bar is there from the start, and ends full."""
    told: list[tuple[str, int, int]] = []
    results = counted(map(squared, (2, 3)), lambda *how: told.append(how), "Squaring", 2)
    assert list(results) == [4, 9]
    assert told == [("Squaring", 0, 2), ("Squaring", 1, 2), ("Squaring", 2, 2)]
