"""Generated shops: what a benchmark measures is as authors write it, and the same every time."""

import subprocess
import sys
from datetime import date
from pathlib import Path

import pytest

from builder.check.unchecked_library import read_library
from builder.reader.trees import read_tree, tree_files
from builder.rules.shared.judge import judge, judge_library

TODAY = date(2026, 10, 1)
TREES = 60


def generate(folder: Path, seed: int) -> dict[str, bytes]:
    """Run the generator as a benchmark does; return its files."""
    script = Path(__file__).parent / "generate.py"
    arguments = [str(folder), "--trees", str(TREES), "--seed", str(seed)]
    subprocess.run([sys.executable, str(script), *arguments], check=True)
    files = (path for path in folder.rglob("*") if path.is_file())
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in files}


@pytest.fixture(scope="module")
def shop(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Generate a shop once for all tests."""
    folder = tmp_path_factory.mktemp("shop")
    generate(folder, seed=1)
    return folder


def test_every_generated_tree_is_sound(shop: Path) -> None:
    """Not one finding of any rule, not even a warning."""
    library, findings = read_library(shop)
    found = [*findings, *judge_library(library, TODAY)]
    for path in tree_files(shop):
        tree, _ = read_tree(shop, path)
        assert tree is not None
        found += judge(tree, library)
    assert found == []
    assert len(library.trees) == TREES


def test_generated_trees_are_like_real_ones(shop: Path) -> None:
    """Small and large ones, with all that makes work: handoffs, ways back, limits, cautions."""
    made = [read_tree(shop, path)[0] for path in tree_files(shop)]
    steps = [step for tree in made if tree for step in tree.steps.values()]
    sizes = sorted(len(tree.steps) for tree in made if tree)
    assert sizes[0] >= 5
    assert sizes[-1] <= 80
    assert sizes[TREES // 4] < 30 < 50 < sizes[-TREES // 4]
    assert all(len(set(tree.symptom.words)) == 8 for tree in made if tree)
    assert {step.kind for step in steps} == {"check", "action", "fix", "stop"}
    with_states = [
        tree for tree in made if tree and any(step.needs for step in tree.steps.values())
    ]
    assert len(with_states) == TREES // 3
    assert all(tree.steps["battery"].body.by == "battery-proof" for tree in with_states)
    for word in ("hazards", "note", "wait", "at_most", "spent", "how_to"):
        assert sum(bool(getattr(step, word)) for step in steps) >= 10, word
    results = [r for step in steps if step.kind == "check" for r in step.body.results]
    assert sum(result.branch.tree is not None for result in results) >= 10
    assert sum(len(result.ranges) == 1 for result in results) >= 100
    assert sum(len(result.ranges) == 2 for result in results) >= 10


def test_a_seed_gives_the_same_shop_again_and_another_gives_another(
    shop: Path, tmp_path: Path
) -> None:
    """A figure measured today can be measured again on the same files."""
    first = {path.relative_to(shop).as_posix(): path.read_bytes()
             for path in shop.rglob("*") if path.is_file()}  # fmt: skip
    assert generate(tmp_path / "again", seed=1) == first
    assert generate(tmp_path / "other", seed=2).keys() != first.keys()
