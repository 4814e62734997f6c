"""Every mutant of every demo tree is caught, by its rule, on its line."""

from dataclasses import replace
from itertools import islice
from pathlib import Path

import pytest

from builder.model.summary import summary_of
from builder.reader.library import read_library
from builder.reader.source import Source
from builder.reader.trees import tree_files, tree_from
from builder.rules import judge, judge_library
from builder.rules.all import PER_TREE

from .conftest import TODAY
from .mutators import MUTATORS, Mutant, Sound

ROOT = Path(__file__).parents[2]
A_TREE = 2  # mutants of each kind: enough to meet every shape, few enough to wait for


@pytest.fixture(scope="module")
def demo() -> list[Sound]:
    """Return the demo trees that are in use."""
    library, _ = read_library(ROOT)
    found = []
    for path in tree_files(ROOT):
        source = Source(path.relative_to(ROOT).as_posix(), path.read_text("utf-8"), "")
        tree, _ = tree_from(source)
        if tree and tree.status == "ready" and not tree.broken:
            found.append(Sound(tree, source.text, library))
    return found


def caught(sound: Sound, mutant: Mutant, rule: str) -> bool:
    """Whether a finding of the rule stands on one of the lines of the fault."""
    tree, findings = tree_from(Source(sound.tree.file, mutant.text, ""))
    found = [*findings]
    if tree:
        trees = {**sound.library.trees, tree.id: summary_of(tree)}
        library = replace(sound.library, trees=trees)
        beside = rule not in {one.RULE.name for one in PER_TREE}
        found += judge_library(library, TODAY) if beside else judge(tree, library, TODAY)
    return any(one.rule == rule and one.at.line in mutant.lines for one in found)


def spread(sound: Sound, rule: str) -> list[Mutant]:
    """Return a few mutants from all over a tree."""
    mutants = list(MUTATORS[rule](sound))
    step = max(1, len(mutants) // A_TREE)
    return list(islice(mutants[::step], A_TREE))


@pytest.mark.parametrize("rule", MUTATORS)
def test_every_mutant_is_caught_on_its_line(rule: str, demo: list[Sound]) -> None:
    """What an author can do wrong in a good tree does not get through."""
    mutants = [(sound, mutant) for sound in demo for mutant in spread(sound, rule)]
    missed = [
        (sound.tree.id, sorted(mutant.lines))
        for sound, mutant in mutants
        if not caught(sound, mutant, rule)
    ]
    assert missed == []
    assert mutants, "no demo tree can be broken this way"


def test_no_demo_tree_has_a_finding_to_begin_with(demo: list[Sound]) -> None:
    """A mutant is caught for what was changed, not for what was wrong before."""
    for sound in demo:
        assert judge(sound.tree, sound.library, TODAY) == (), sound.tree.id
