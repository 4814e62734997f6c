"""What a fix makes of slips in sound trees."""

from functools import cache
from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st

from builder.authoring.corrections import correcting
from builder.check.unchecked_library import read_library
from builder.model.correction import CorrectedFile
from builder.model.finding import Finding
from builder.model.library import Library
from builder.reader.source import Source
from builder.reader.trees import tree_files, tree_from
from builder.rules.shared.judge import judge
from tests.authoring.slips import LIKELY, SURE, places

SHOPS = (Path(__file__).parents[1] / "shop", Path(__file__).parents[1] / "samples")
COMMENTS = ("", "# ask M. Lind: 12 V, or less?", "", "  # key: value")
SLIPS = {**SURE, **LIKELY}


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
        return end.value


@st.composite
def slipped_trees(draw: st.DrawFn) -> tuple[Path, str, str, str, bool]:
    """Draw a sound tree with comments and blank lines, and the same with one to four slips."""
    shop, file, text = draw(st.sampled_from(sound_trees()))
    lines = text.rstrip("\n").split("\n")
    for at in sorted(draw(st.sets(st.sampled_from(range(len(lines))), max_size=3)), reverse=True):
        if not lines[at - 1].lstrip().startswith("note") and lines[at].lstrip()[:1] != "-":
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
    texts = (mark + end.join(one) + last for one in (lines, typed))
    return shop, file, *texts, all(name in SURE for name in names)


@settings(max_examples=60)
@given(slipped_trees())
def test_a_fix_puts_slips_back_as_they_were(drawn: tuple[Path, str, str, str, bool]) -> None:
    """Each line is as it was before the slip, or as typed; comments, blank lines and ends stay."""
    shop, file, before, typed, sure = drawn
    after = fixed(shop, file, typed)
    lines = zip(before.split("\n"), typed.split("\n"), after.after.split("\n"), strict=True)
    assert all(new in (old, slip) for old, slip, new in lines)
    if sure:
        assert after.after == before
    left = findings_in(shop, file, after.after)
    assert (after.after == typed) == (not after.corrections)
    assert not after.corrections or len(left) < len(findings_in(shop, file, typed)) + len(
        after.corrections
    )
