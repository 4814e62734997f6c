"""Trees with every way out that a step can have, in every place where a branch may stand.

In: trees that hypothesis draws, sound and unsound. Each is checked, counted, numbered, laid out,
printed and rendered; a tree that hangs one of these fails within the time limit.
"""

import json
import signal
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, replace
from datetime import date
from functools import cache
from pathlib import Path
from types import FrameType
from typing import Any

import pytest
from hypothesis import HealthCheck, event, given, settings
from hypothesis import strategies as st

from builder.check.unchecked_library import read_library
from builder.graph.summaries import summary_of
from builder.model.ends import Fix
from builder.model.finding import Severity
from builder.model.library import Library
from builder.model.tree import Tree
from builder.pages.analysis import analyze_tree
from builder.pages.tree import tree_page
from builder.plan.entry_numbers import with_entry_numbers
from builder.plan.minutes import minutes_as_json, tree_minutes
from builder.plan.numbering import numbering
from builder.prints.bench import bench_sheet
from builder.prints.customer import customer_sheet
from builder.prints.paper import PAPERS
from builder.prints.wall import wall_chart
from builder.prints.wall_layout import wall_layout
from builder.reader.source import Source, decode
from builder.reader.trees import tree_from
from builder.rules.shared.judge import judge, judge_library
from builder.walk.table import walk_table

SHOP = Path(__file__).parent / "rules" / "shop"
TODAY = date(2026, 10, 1)
LIMIT = 30  # seconds of processor time for two trees, which take a fraction of one
HANDOFFS = ("network/unit-silent", "network/unit-silent#answers")
HEAD = {
    "format": 2,
    "drive": "with care",
    "why": "It may get worse.",
    "status": "ready",
    "system": "charging",
    "written": {"by": "R. Osei", "date": "2026-03-02"},
    "reviewed": {"by": "M. Lind", "date": "2026-09-01"},
    "lists": {"cells": ["one", "two"]},
}
Words = dict[str, Any]


@contextmanager
def in_time() -> Iterator[None]:
    """Turn a hang into a failure; the alarm comes in the main thread, in which tests run."""

    def too_long(_signal: int, _frame: FrameType | None) -> None:
        raise TimeoutError(f"not through after {LIMIT} s")

    before = signal.signal(signal.SIGPROF, too_long)
    signal.setitimer(signal.ITIMER_PROF, LIMIT)  # other work on the machine does not count
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)
        signal.signal(signal.SIGPROF, before)


@dataclass(frozen=True)
class Around:
    """What a branch of a step may name."""

    next: str  # the step after it in the file
    later: list[str]
    every: list[str]
    others: tuple[str, ...]  # other trees, and steps of them
    careful: bool  # lead back only where that is bounded, so that most trees are sound


@st.composite
def branches(draw: st.DrawFn, around: Around, bounded: bool, listed: bool) -> str:
    """Draw a branch: mostly to a later step, now and then to anywhere at all."""
    kinds = ["later"] * 4 + ["other"]
    if bounded or not around.careful:
        kinds += ["any", "any"]
    if listed or not around.careful:
        kinds += ["next", "next"]
    if not around.careful:
        kinds.append("back")
    kind = draw(st.sampled_from(kinds))
    if kind == "later":
        return draw(st.sampled_from(around.later or around.every))
    if kind in ("any", "other"):
        return draw(st.sampled_from(around.every if kind == "any" else around.others))
    return kind


@st.composite
def step_words(draw: st.DrawFn, kind: str, around: Around) -> Words:
    """Draw a step of a kind with some of the ways out that it may have."""
    bound = draw(st.sampled_from(("", "", "at_most", "at_most", "each")))
    to = branches(around, bool(bound), bound == "each")
    words: Words = {kind: f"What is {kind}ed", "minutes": draw(st.integers(0, 20))}
    if bound:
        words[bound] = draw(st.integers(1, 3)) if bound == "at_most" else {"cell": "cells"}
        if draw(st.booleans()):
            words["spent"] = draw(branches(around, bounded=False, listed=False))
    on = st.just(around.next) if around.careful else to
    if kind == "check":
        others = to.filter(lambda name: name != around.next)  # else it asks and nothing follows
        targets = [draw(on), *draw(st.lists(others, min_size=1, max_size=3))]
        words["results"] = [draw(_result_words(at, name)) for at, name in enumerate(targets)]
        if draw(st.booleans()):
            words["cannot_test"] = draw(to)
    elif kind == "action":
        words["then"] = draw(on)
    elif kind == "fix":
        words |= {"cause": "It is worn", "hours": 1, "verify": ["measured again"]}
        words["weight"] = draw(st.integers(0, 9))
        if draw(st.booleans()) or (around.next and around.careful):
            words["still_there"] = draw(on if around.next else to)
    else:
        words["kind"] = "not-found"
    return words


@st.composite
def _result_words(draw: st.DrawFn, number: int, to: str) -> Words:
    words: Words = {"result": f"seen {number}", "branch": to}
    if draw(st.integers(0, 3)) == 0:
        words["weight"] = draw(st.integers(0, 9))
    if draw(st.integers(0, 3)) == 0:
        words["chance"] = draw(st.sampled_from((0, 0.2, 0.5, 1)))
    return words


@st.composite
def trees(draw: st.DrawFn, slug: str, others: tuple[str, ...], careful: bool) -> Tree:
    """Draw a tree of up to nine steps that hands off to others; the last two steps are ends."""
    first = draw(st.lists(st.sampled_from(("check", "check", "action")), min_size=1, max_size=4))
    more = draw(st.lists(st.sampled_from(("check", "action", "fix")), max_size=3))
    kinds = [*first, *more, "check", "stop", "fix"]
    names = [f"{kind}-{number}" for number, kind in enumerate(kinds)]
    steps = {}
    for at, (name, kind) in enumerate(zip(names, kinds, strict=True)):
        onward = names[at + 1] if at + 2 < len(names) else ""
        around = Around(onward, names[at + 1 :], names, others, careful)
        steps[name] = draw(step_words(kind, around))
    steps[names[-3]]["results"][1] |= {"branch": names[-1]}  # nothing is out of reach
    told = {"title": f"Drawn {slug}", "symptom": {"words": [f"it shows as {slug}"]}}
    text = json.dumps(HEAD | told | {"steps": steps}, indent=1)
    source = decode(f"trees/charging/{slug}.yml", text.encode())
    assert isinstance(source, Source)
    tree, findings = tree_from(source)
    assert tree is not None
    assert not findings, findings
    return tree


@st.composite
def pairs(draw: st.DrawFn) -> tuple[Tree, Tree]:
    """Draw two trees; the first may hand off to the second, and into the middle of it."""
    careful = draw(st.sampled_from((True, True, False)))
    second = draw(trees("second", HANDOFFS, careful))
    steps = tuple(f"charging/second#{name}" for name in second.steps)
    others = (*HANDOFFS, "charging/second", *steps)
    return draw(trees("first", others, careful)), second


@cache
def knowledge() -> Library:
    """Return the small shop with the tree that is handed off to."""
    return read_library(SHOP)[0]


def library_of(*drawn: Tree) -> Library:
    """Put the drawn trees into the small shop."""
    known = knowledge()
    library = replace(known, trees=dict(known.trees) | {one.id: summary_of(one) for one in drawn})
    by_id = {one.id: one for one in drawn}
    return with_entry_numbers(library, by_id.get)


def is_sound(library: Library, *drawn: Tree) -> bool:
    """Whether the check has no error to tell of the trees."""
    found = [*judge_library(library, TODAY)]
    for tree in drawn:
        found += judge(tree, library)
    files = {tree.file for tree in drawn}
    return not any(one.severity is Severity.ERROR for one in found if one.at.file in files)


def put_through(tree: Tree, library: Library) -> None:
    """Do with a tree all that a command or a build does with it, but draw no PDF."""
    found = tree_minutes(tree)
    assert minutes_as_json(found)["expected"] == float(found.expected)
    assert set(numbering(tree)) == set(tree.steps)
    walk_table(tree, library)
    page = tree_page(tree, library, analyze_tree(tree, library))
    assert all(f'id="step-{name}"' in page.body for name in tree.steps)
    wall_layout(tree, library, PAPERS["a4"])


def print_all(tree: Tree, library: Library) -> Iterator[bytes]:
    """Print every sheet of a tree."""
    yield wall_chart(tree, library)
    yield bench_sheet(tree, library)
    for name, step in tree.steps.items():
        if isinstance(step.body, Fix):
            yield customer_sheet(tree, name, library)


@given(drawn=pairs())
@settings(max_examples=30, deadline=None, suppress_health_check=list(HealthCheck))
def test_no_tree_hangs_or_breaks_anything(drawn: tuple[Tree, Tree]) -> None:
    """Sound or not, a tree is judged, counted, numbered, laid out and rendered, and comes out."""
    with in_time():
        library = library_of(*drawn)
        event("sound" if is_sound(library, *drawn) else "unsound")
        for tree in drawn:
            put_through(tree, library)


@given(drawn=pairs())
@settings(max_examples=15, deadline=None, suppress_health_check=list(HealthCheck))
def test_no_tree_hangs_its_prints(drawn: tuple[Tree, Tree]) -> None:
    """Every sheet of every drawn tree comes out as a PDF."""
    with in_time():
        library = library_of(*drawn)
        for tree in drawn:
            assert all(sheet.startswith(b"%PDF-") for sheet in print_all(tree, library))


PLACES = {
    "cannot_test": {"check": "Look", "results": [{"result": "yes", "branch": "fix"}]},
    "still_there": {"fix": "Mend it", "cause": "It is worn", "weight": 1, "verify": ["again"]},
    "spent": {"action": "Charge it", "at_most": 1, "then": "fix"},
    "then": {"action": "Charge it"},
}


@pytest.mark.parametrize("place", PLACES)
@pytest.mark.parametrize("branch", [*HANDOFFS, "fix", "look", "next", "back"])
def test_a_branch_may_lead_anywhere_from_any_place(place: str, branch: str) -> None:
    """Each place with each kind of branch, one by one: a handoff once hung the plan for ever."""
    steps = {
        "look": {
            "check": "Which is it",
            "results": [{"result": "this", "branch": "place"}, {"result": "that", "branch": "fix"}],
        },
        "place": PLACES[place] | {place: branch},
        "fix": {"fix": "Mend it", "cause": "It is old", "weight": 2, "verify": ["again"]},
    }
    told = {"title": "By hand", "symptom": {"words": ["it shows by hand"]}, "steps": steps}
    source = decode("trees/charging/hand.yml", json.dumps(HEAD | told).encode())
    assert isinstance(source, Source)
    tree, _ = tree_from(source)
    assert tree is not None
    with in_time():
        library = library_of(tree)
        is_sound(library, tree)
        put_through(tree, library)
