"""What a fix makes of slips in sound trees.

`--hypothesis-profile search` draws other trees and slips; run it after a change of a hint.
"""

from functools import cache
from itertools import islice
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.authoring.corrections import correcting
from builder.authoring.hidden_findings import FORMAT_RULES, YAML_RULES
from builder.check.unchecked_library import read_library
from builder.model.correction import CorrectedFile
from builder.model.finding import Finding
from builder.model.library import Library
from builder.reader.source import Source
from builder.reader.trees import tree_files, tree_from
from builder.rules.catalog import MODULES
from builder.rules.shared.judge import judge
from tests.authoring.slips import LIKELY, SURE, places
from tests.rules.mutators import MUTATORS
from tests.rules.mutators.sound import Sound

SHOPS = (Path(__file__).parents[1] / "shop", Path(__file__).parents[1] / "samples")
COMMENTS = ("", "# ask M. Lind: 12 V, or less?", "", "      # key: value")
SLIPS = {**SURE, **LIKELY}
A_TREE = 1  # mutant of each kind


@cache
def library_of(shop: Path) -> Library:
    """Return the library of a shop."""
    return read_library(shop)[0]


@cache
def sound_trees() -> tuple[tuple[Path, str, str], ...]:
    """Return shop, file and text of every tree in which nothing is found."""
    trees = ((shop, path.relative_to(shop).as_posix(), path.read_text("utf-8"))
             for shop in SHOPS for path in tree_files(shop))  # fmt: skip
    return tuple(one for one in trees if not findings_in(*one))


def findings_in(shop: Path, file: str, text: str) -> list[Finding]:
    """Return the findings of a tree alone."""
    tree, mistakes = tree_from(Source(file, text.removeprefix("\ufeff"), ""))
    return [*mistakes, *(judge(tree, library_of(shop)) if tree else ())]


def fixed(shop: Path, file: str, text: str) -> CorrectedFile:
    """Return the tree as a fix makes it."""
    run = correcting(file, text, findings_in(shop, file, text))
    try:
        tried = next(run)
        while True:
            tried = run.send(findings_in(shop, file, tried))
    except StopIteration as end:
        corrected: CorrectedFile = end.value
        return corrected


@st.composite
def slipped_trees(draw: st.DrawFn) -> tuple[Path, str, str, str, bool]:
    """Draw a sound tree with comments and blank lines, and the same with one to four slips."""
    shop, file, text = draw(st.sampled_from(sound_trees()))
    lines = text.rstrip("\n").split("\n")
    heads = [at for at, line in enumerate(lines) if at and line[:3].strip() and line.endswith(":")]
    for at in sorted(draw(st.sets(st.sampled_from(heads), max_size=3)), reverse=True):
        lines.insert(at, draw(st.sampled_from(COMMENTS)))
    typed = list(lines)
    names = draw(st.lists(st.sampled_from(sorted(SLIPS)), min_size=1, max_size=4))
    free = set(range(len(lines)))
    for name in names:
        if spots := sorted(free & {*places(lines, SLIPS[name])}):
            at = draw(st.sampled_from(spots))
            typed[at] = SLIPS[name](lines[at]) or ""
            free -= {at}
    end = draw(st.sampled_from(("\n", "\r\n")))
    last = draw(st.sampled_from((end, "")))
    mark = draw(st.sampled_from(("", "\ufeff")))
    before, slipped = (mark + end.join(one) + last for one in (lines, typed))
    return shop, file, before, slipped, all(name in SURE for name in names)


@settings(max_examples=25)
@given(slipped_trees())
def test_slips_are_put_back_as_they_were(drawn: tuple[Path, str, str, str, bool]) -> None:
    """Each line is as before the slip, or as typed; so are comments, blank lines and line ends."""
    shop, file, before, slipped, sure = drawn
    corrected = fixed(shop, file, slipped)
    after = corrected.after
    lines = zip(before.split("\n"), slipped.split("\n"), after.split("\n"), strict=True)
    assert all(new in (old, slip) for old, slip, new in lines)
    assert after == before or not sure
    assert (after == slipped) is (not corrected.corrections)
    if after != before:
        assert findings_in(shop, file, after)


@pytest.mark.parametrize("rule", ["malformed-code", "unknown-key"])
def test_a_mistake_with_one_answer_is_undone(rule: str) -> None:
    """The tree is as it was before it was spoiled."""
    for shop, sound, text in mutants(rule):
        assert fixed(shop, sound.tree.file, text).after == sound.text


@pytest.mark.parametrize(
    "rule",
    ["branch-to-nowhere", "reading-gap", "reading-overlap"],
)
def test_a_mistake_that_only_the_author_can_answer_is_left(rule: str) -> None:
    """No name is guessed, no limit moved by more than a step of the meter: the file stays."""
    for shop, sound, text in mutants(rule):
        assert fixed(shop, sound.tree.file, text).after == text


LEFT_AS_TYPED = [
    ("    minutes: 6", "    minutes: 6set-up:"),
    ("    minutes: 6", "    minutes: 30 s"),
    ("    minutes: 6", "    minutes: about 6"),
    ("to: 16,", "to: 500 mV,"),
    ("result: at least 11.5", "result: at least 11500 mV"),
    ("unit: V", "unit: mVolts"),
    ("lamps: [washer level]", "lamps: [washer]"),
    ("price: 120 to 160", "price: €120"),
    ("branch: wiring", "branch: wir{used: wiring"),
]


@pytest.mark.parametrize(("right", "typed"), LEFT_AS_TYPED)
def test_no_word_is_lost_and_no_unit_guessed(right: str, typed: str) -> None:
    """Where a part of what the author wrote would go, or its size would change, it stays."""
    file = "trees/wipers/stop-halfway.yml"
    text = (SHOPS[0] / file).read_text("utf-8").replace(right, typed, 1)
    assert typed in text
    assert findings_in(SHOPS[0], file, text)
    assert typed in fixed(SHOPS[0], file, text).after


def mutants(rule: str) -> list[tuple[Path, Sound, str]]:
    """Return trees of the first shop, which the mutators know, spoiled by that of a rule."""
    made = []
    for shop, file, text in (one for one in sound_trees() if one[0] == SHOPS[0]):
        tree, _ = tree_from(Source(file, text, ""))
        assert tree
        sound = Sound(tree, text, library_of(shop))
        made += [(shop, sound, one.text) for one in islice(MUTATORS[rule](sound), A_TREE)]
    assert len(made) > 2
    return made


def test_what_hides_what_names_rules_of_the_reader() -> None:
    """The stages of a fix name rules that there are, all of the reader."""
    prefix = "found_by_reader."
    names = {name.removeprefix(prefix).replace("_", "-") for name in MODULES if prefix in name}
    assert names >= YAML_RULES | FORMAT_RULES
