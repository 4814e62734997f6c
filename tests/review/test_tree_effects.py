"""What follows from a change is told with a value, a step, or minutes."""

from collections.abc import Callable
from pathlib import Path

import pytest

from builder.authoring.new_shop import new_shop
from builder.review.compare_shops import compare_shops
from builder.review.moved_readings import KIND
from builder.review.remark import TreeReview

FILE = "trees/charging/light-on.yml"
Review = Callable[..., TreeReview]


@pytest.fixture
def review(tmp_path: Path) -> Review:
    """Return what is said of the example tree with some texts replaced."""

    def of(*pairs: tuple[str, str], file: str = FILE) -> TreeReview:
        folder = tmp_path / str(len(list(tmp_path.iterdir())))
        before, after = folder / "before", folder / "after"
        for shop in (before, after):
            new_shop(shop, with_examples=True)
        text = (after / file).read_text("utf-8")
        for old, new in pairs:
            assert old in text
            text = text.replace(old, new)
        (after / file).write_text(text, "utf-8")
        (one,) = compare_shops(before, after).values()
        return one

    return of


def effects(review: TreeReview) -> dict[str, str]:
    """Return the messages of the effects by kind."""
    return {effect.kind: effect.message for effect in review.effects}


def test_a_reading_that_leads_elsewhere_has_a_witness(review: Review) -> None:
    """A limit moved from 13.2 to 13.6 V: a tech who reads 13.4 V now goes to the belt."""
    one = review(("below 13.2", "below 13.6"), ("13.2 to 14.8, means", "13.6 to 14.8, means"))
    assert [change.kind for change in one.changes] == ["limit changed", "limit changed"]
    message = effects(one)["reading leads elsewhere"]
    assert message == "`running`: 13.4 V now leads to `belt`, before to `not-now`"


def test_a_gap_is_told_with_a_value_in_it(review: Review) -> None:
    """The upper limit alone moved down: 14.6 V has no result."""
    one = review(("13.2 to 14.8, means", "13.2 to 14.4, means"))
    message = effects(one)["reading without result"]
    assert message == "`running`: 14.6 V has no result now, before it led to `not-now`"


def test_of_several_results_that_fit_the_first_counts(review: Review) -> None:
    """A result behind those that take all readings moves none; as the first one it moves two."""
    wide = "      - {result: at least 14, branch: belt}\n"
    last = ("branch: ask}\n  belt:", f"branch: ask}}\n{wide}    several: first fits\n  belt:")
    assert KIND not in effects(review(last))
    first = ("      - {result: below 13.2", f"{wide}      - {{result: below 13.2")
    moved = [one.message for one in review(first).effects if one.kind == KIND]
    assert [message.split(" now ")[1] for message in moved] == [
        "leads to `belt`, before to `not-now`", "leads to `belt`, before to `ask`",
    ]  # fmt: skip


def test_a_branch_to_nowhere_takes_no_caution_away(review: Review) -> None:
    """The graph guesses where it was meant to lead; a guess is no path that a tech walks."""
    one = review(("unsafe: ask}", "unsafe: belt-fixed}"))
    assert "caution lost" not in effects(one)


def test_a_fix_out_of_reach_is_told(review: Review) -> None:
    """Both results of the belt lead to the foreman."""
    one = review(("{yes: ask, no: belt-fix}", "{yes: ask, no: ask}"))
    assert effects(one)["fix out of reach"] == "no path leads to the fix `belt-fix` any more"


def test_the_minutes_are_told_before_and_after(review: Review) -> None:
    """Every walk measures the voltage, or ends before it."""
    one = review(("minutes: 4", "minutes: 40"))
    assert "→" in effects(one)["expected minutes changed"]
    assert [(change.kind, change.step) for change in one.changes] == [
        ("minutes changed", "running")
    ]


def test_a_caution_that_no_longer_comes_before_a_step_is_told(review: Review) -> None:
    """A caution of a state counts, and so does one that a procedure shows first."""
    one = review(("[engine-running, loads-on]", "[key-on, loads-on]"))
    lost = effects(one)["caution lost"]
    assert lost == "the caution `rotating-parts` no longer comes before `running`"
    for early in ("rotating-parts", "battery-gas"):
        assert "caution lost" not in effects(review((f"    hazards: [{early}]\n", "")))


def test_a_step_with_another_name_changes_nothing_else(review: Review) -> None:
    """Wherever it was named, the new name is no change of its own."""
    one = review(("running", "voltage"), ("engine-voltage", "engine-running"))
    assert [(change.kind, change.step) for change in one.changes] == [("step renamed", "voltage")]
    assert one.effects == ()


def test_a_review_that_is_older_is_told(tmp_path: Path) -> None:
    """Who reads the sheet trusts a review of something else."""
    shops = tmp_path / "before", tmp_path / "after"
    signed = "status: ready\nreviewed: {by: M. Lind, date: 2026-09-14}\ntitle: Horn"
    for shop in shops:
        new_shop(shop, with_examples=True)
        file = shop / "trees/body/horn.yml"
        file.write_text(file.read_text("utf-8").replace("title: Horn", signed), "utf-8")
    file.write_text(file.read_text("utf-8").replace("minutes: 3", "minutes: 4"), "utf-8")
    older = effects(compare_shops(*shops)["body/horn"])["review is older"]
    assert older == "reviewed by M. Lind on 2026-09-14, before this change"
    newer = file.read_text("utf-8").replace("2026-09-14", "2026-10-01")
    file.write_text(newer, "utf-8")
    assert "review is older" not in effects(compare_shops(*shops)["body/horn"])
