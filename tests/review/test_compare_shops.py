"""A change of meaning is named once, a change of nothing not at all."""

import difflib
import random
import shutil
from collections import Counter
from pathlib import Path

import pytest

from builder.check.filled_knowledge import filled_knowledge
from builder.model.library import Library
from builder.review.compare_shops import compare_file, compare_shops
from builder.review.remark import TreeReview

from .edits import MEANING, NO_MEANING, Edit, Lines

SAMPLES = Path(__file__).parents[1] / "samples"
FILES = sorted(path.relative_to(SAMPLES).as_posix() for path in SAMPLES.glob("trees/*/*.yml"))


class Bench:
    """Two copies of the samples, one to edit."""

    def __init__(self, folder: Path) -> None:
        self.before, self.after = folder / "before", folder / "after"
        for shop in (self.before, self.after):
            shutil.copytree(SAMPLES, shop)
        self.library: Library = filled_knowledge(self.before)[0]

    def lines(self, file: str) -> Lines:
        """Return the lines of a file before the change."""
        return (self.before / file).read_text("utf-8").splitlines()

    def review(self, file: str, lines: Lines) -> TreeReview:
        """Return what is said of a file with other lines."""
        (self.after / file).write_text("\n".join(lines) + "\n", "utf-8")
        return compare_file(self.before, self.after, file, (self.library, self.library))


@pytest.fixture(scope="module")
def bench(tmp_path_factory: pytest.TempPathFactory) -> Bench:
    """Copy the samples."""
    return Bench(tmp_path_factory.mktemp("review"))


def edited(bench: Bench, edit: Edit, dice: random.Random) -> tuple[str, Lines]:
    """Edit one of the files that an edit fits."""
    while True:
        file = dice.choice(FILES)
        lines = edit(bench.lines(file), dice)
        if lines is not None:
            return file, lines


def changed_lines(old: Lines, new: Lines) -> int:
    """Return how many lines an editor marks as changed."""
    blocks = difflib.SequenceMatcher(None, old, new, autojunk=False).get_opcodes()
    return sum(max(b - a, d - c) for tag, a, b, c, d in blocks if tag != "equal")


def test_two_hundred_changes_are_named_once_each(bench: Bench) -> None:
    """At least 95 of 100 are one change of the right kind, and none is more than its lines."""
    dice, wrong, used = random.Random(7), [], Counter[str]()
    for number in range(200):
        name = sorted(MEANING)[number % len(MEANING)]
        edit, kind = MEANING[name]
        file, lines = edited(bench, edit, dice)
        used[name] += 1
        changes = bench.review(file, lines).changes
        assert changes, (name, file)
        assert len(changes) <= changed_lines(bench.lines(file), lines), (name, file, changes)
        if len(changes) != 1 or (kind and changes[0].kind != kind):
            wrong.append((name, file, changes))
    assert len(used) == len(MEANING)
    assert len(wrong) <= 10, wrong


def test_a_hundred_changes_of_nothing_are_silent(bench: Bench) -> None:
    """Comments, blank lines, quotes, and another order of keys, steps and lists."""
    dice = random.Random(11)
    for number in range(100):
        name = sorted(NO_MEANING)[number % len(NO_MEANING)]
        file, lines = edited(bench, NO_MEANING[name], dice)
        review = bench.review(file, lines)
        assert review == TreeReview((), ()), (name, file, review.changes)


def test_several_changes_are_never_more_than_their_lines(bench: Bench) -> None:
    """Five edits in one file, one after another."""
    dice = random.Random(3)
    for _ in range(20):
        file = dice.choice(FILES)
        lines = bench.lines(file)
        for name in dice.sample(sorted(MEANING), 5):
            lines = MEANING[name][0](lines, dice) or lines
        old = bench.lines(file)
        assert len(bench.review(file, lines).changes) <= changed_lines(old, lines)


def test_a_file_that_cannot_be_read_is_one_change(bench: Bench) -> None:
    """A conflict of a merge, or half a file, is no reason to stop."""
    file = FILES[0]
    for lines in (["<<<<<<< ours", *bench.lines(file)], [], ["steps: [", "a"], ["- a", "- b"]):
        (change,) = bench.review(file, lines).changes
        assert "can't be read now" in change.message


def test_unsound_trees_are_compared(bench: Bench) -> None:
    """Half of the lines are missing, and the rest is still compared."""
    dice = random.Random(5)
    for _ in range(60):
        file = dice.choice(FILES)
        lines = bench.lines(file)
        kept = [line for line in lines if dice.random() > 0.1]
        assert bench.review(file, kept).changes or kept == lines


def test_a_shop_is_the_same_as_itself(tmp_path: Path) -> None:
    """Nothing is said of files that are equal; a new and a missing tree are one change each."""
    shop = tmp_path / "shop"
    shutil.copytree(SAMPLES, shop)
    assert compare_shops(SAMPLES, shop) == {}
    (shop / "trees/horn/silent.yml").rename(shop / "trees/horn/quiet.yml")
    reviews = compare_shops(SAMPLES, shop)
    assert {id_: review.changes[0].kind for id_, review in reviews.items()} == {
        "horn/quiet": "tree added", "horn/silent": "tree removed",
    }  # fmt: skip


def test_a_procedure_is_compared_too(tmp_path: Path) -> None:
    """A word of a procedure changes what many trees do."""
    shop = tmp_path / "shop"
    shutil.copytree(SAMPLES, shop)
    file = shop / "kb/procedures/first-stop.yml"
    file.write_text(file.read_text("utf-8").replace("result: no,", "result: pulls,"), "utf-8")
    review = compare_shops(SAMPLES, shop)["procedures/first-stop"]
    assert [change.step for change in review.changes] == ["stop"]


def test_knowledge_that_changed_is_followed_into_the_trees(tmp_path: Path) -> None:
    """A limit moved in the specs moves readings in files that are as they were."""
    shop = tmp_path / "shop"
    shutil.copytree(SAMPLES, shop)
    specs = shop / "kb/specs.yml"
    text = specs.read_text("utf-8")
    specs.write_text(f"# {text}", "utf-8")
    assert compare_shops(SAMPLES, shop) == {}
    assert "13.2 to 14.8" in text
    specs.write_text(text.replace("13.2 to 14.8", "13.6 to 14.8"), "utf-8")
    review = compare_shops(SAMPLES, shop)["charging/lamp-on"]
    assert review.changes == ()
    assert any("13.4 V now leads to" in effect.message for effect in review.effects)


def test_a_computed_reading_alone_stands_for_readings_that_are_hard_to_find(tmp_path: Path) -> None:
    """A sum of 4.5 V isn't told with two readings that add up to something else."""
    shop = tmp_path / "shop"
    shutil.copytree(SAMPLES, shop)
    file = shop / "kb/procedures/network-at-module.yml"
    text = file.read_text("utf-8")
    assert "sum: 4.5 to 5.5" in text
    file.write_text(text.replace("sum: 4.5 to 5.5", "sum: 4.6 to 5.5"), "utf-8")
    effects = compare_shops(SAMPLES, shop)["procedures/network-at-module"].effects
    assert effects[0].message.startswith("`levels`: sum 4.5")
