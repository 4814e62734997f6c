"""The demo in counts: short trees, verbs first, questions, few words.

`pytest -s tests/demo/test_counts.py` prints them. Limits are those of the format; medians and the
longest are printed so that a change shows.
"""

import re
from pathlib import Path
from statistics import median

import pytest

from builder.check.filled_tree import tree_of
from builder.check.unchecked_library import read_library
from builder.model.checks import Check
from builder.model.ends import Fix
from builder.model.tree import Action, Status, Step, Tree
from builder.plan.minutes import tree_minutes

ROOT = Path(__file__).parents[2]
QUESTION = re.compile(
    r"(?:Is|Are|Does|Do|Did|Can|Has|Have|Was|Were|What|Which|Where|When|How|Who)\b.*\?$"
)
VERBS = frozenset((Path(__file__).parent / "verbs.txt").read_text(encoding="utf-8").split())


@pytest.fixture(scope="module")
def demo() -> list[Tree]:
    """Return the trees of the demo that are in use."""
    library, _ = read_library(ROOT)
    trees = (tree_of(ROOT, library, id_) for id_ in library.trees)
    return [tree for tree in trees if tree.status is not Status.RETIRED]


def work(tree: Tree) -> list[Step]:
    """Return the checks and actions of a tree."""
    return [step for step in tree.steps.values() if isinstance(step.body, Check | Action)]


def test_no_tree_is_longer_than_a_job(demo: list[Tree]) -> None:
    """A tree has at most 24 checks and actions; what is rare is a tree of its own."""
    sizes = {tree.id: len(work(tree)) for tree in demo}
    longest = max(sizes, key=lambda id_: sizes[id_])
    print(f"{len(sizes)} trees, median {median(sizes.values())} checks and actions, longest "
          f"{longest} with {sizes[longest]}")  # fmt: skip
    assert sizes[longest] <= 24


def test_no_note_is_a_lecture(demo: list[Tree]) -> None:
    """A note has at most 30 words; most steps have none."""
    notes = [len(step.note.split()) for tree in demo for step in work(tree) if step.note]
    steps = sum(len(work(tree)) for tree in demo)
    print(f"{len(notes)} notes at {steps} steps, median {median(notes)} words")
    assert max(notes) <= 30
    assert len(notes) < steps / 2


def test_every_check_asks_or_measures(demo: list[Tree]) -> None:
    """A check is a question, or starts with Measure."""
    texts = [(tree.id, step.text) for tree in demo for step in work(tree)
             if isinstance(step.body, Check)]  # fmt: skip
    odd = [one for one in texts if not (QUESTION.match(one[1]) or one[1].startswith("Measure "))]
    assert odd == []


def test_every_action_and_fix_starts_with_a_verb(demo: list[Tree]) -> None:
    """A tech reads what to do in the first word."""
    texts = [(tree.id, step.text) for tree in demo for step in tree.steps.values()
             if isinstance(step.body, Action | Fix)]  # fmt: skip
    lines = [(tree.id, line) for tree in demo for step in tree.steps.values() for line in step.do]
    odd = [one for one in (*texts, *lines) if one[1].split()[0].lower().rstrip(",") not in VERBS]
    assert odd == []


def _first_word(text: str) -> str:
    return text.split()[0].lower().rstrip(",")


def test_every_tree_takes_time(demo: list[Tree]) -> None:
    """Every tree has an estimate, printed with the longest expected."""
    expected = {tree.id: float(tree_minutes(tree).expected) for tree in demo}
    longest = max(expected, key=lambda id_: expected[id_])
    print(f"expected minutes: median {median(expected.values()):.0f}, longest {longest} with "
          f"{expected[longest]:.0f}")  # fmt: skip
    assert min(expected.values()) > 0
