"""Placeholders read as words where nothing fills them in."""

from pathlib import Path
from textwrap import dedent

import pytest

from builder.model.ends import Fix
from builder.model.tree import Tree
from builder.reader.source import Source, decode
from builder.reader.trees import read_tree, tree_files, tree_from
from builder.wording.placeholders import in_plain_words

SHOP = Path(__file__).parents[1] / "shop"


def read(text: str) -> Tree:
    """Make a tree of one step's words; `<part>` is asked for, `<fuse>` comes from a list."""
    source = decode("trees/x/y.yml", dedent(f"""\
        format: 2
        title: One thing
        status: draft
        system: charging
        symptom: {{words: [it is so]}}
        asks:
          part: {{ask: Which part}}
        lists:
          fuses: [F1, F2]
        steps:
          one:
            check: "{text}"
            each: {{fuse: fuses}}
            results:
              - {{result: "hot <part>", branch: two}}
              - {{result: cold, branch: next}}
            spent: two
          two:
            fix: "{text}"
            cause: "The <part> leaks"
            put_back: "the <part>"
            verify: ["<part> tight"]
        """).encode())  # fmt: skip
    assert isinstance(source, Source)
    tree, findings = tree_from(source)
    assert tree
    assert not findings, findings
    return tree


@pytest.mark.parametrize(
    ("written", "printed"),
    [
        ("Coil of <part>", "Coil of the part"),
        ("Is the <part> fitted at all", "Is the part fitted at all"),
        ("The <part> alone", "The part alone"),
        ("<part> alone", "The part alone"),
        ("Unplug the <part> part, look", "Unplug the part, look"),
        ("Resistance across part <part>", "Resistance across the part"),
        ("Pull the right <part>", "Pull the right part"),
        ("Take out the part (<part>)", "Take out the part"),
        ("Side of the holder (<part>), inside", "Side of the holder (that part), inside"),
        ("Between <part> and <part>", "Between the part and the part"),
        ("Is it <what> or < 5 V", "Is it <what> or < 5 V"),
        ("Pull the <fuse>", "Pull the fuse"),
        ("Drive a <part>-mile loop", "Drive a ___-mile loop"),
    ],
)
def test_a_name_reads_as_the_thing(written: str, printed: str) -> None:
    """On paper nothing fills in `<part>`, and the word isn't repeated."""
    assert in_plain_words(read(written)).steps["two"].text == printed


@pytest.mark.parametrize(
    ("written", "printed"),
    [
        ("Resistance across fuse <fuse>", "Resistance across each fuse"),
        ("Unplug the <fuse> fuse", "Unplug each fuse"),
        ("The holder (<fuse>)", "The holder (each fuse)"),
        ("Coil of <part>", "Coil of the part"),
    ],
)
def test_in_the_step_of_a_list_it_is_each(written: str, printed: str) -> None:
    """Where a step is done for each of a list, it says so."""
    assert in_plain_words(read(written)).steps["one"].text == printed


def test_every_word_of_a_step_is_rewritten() -> None:
    """Results, causes, what to put back and what to verify, and each keeps its place."""
    written = read("Pull it")
    tree = in_plain_words(written)
    one, two = tree.steps["one"].body, tree.steps["two"]
    assert one.results[0].text == "hot the part"  # type: ignore[union-attr]
    assert isinstance(two.body, Fix)
    assert (two.body.cause, two.put_back) == ("The part leaks", "the part")
    assert [one.text for one in two.body.verify] == ["The part tight"]
    assert two.body.cause.at == written.steps["two"].body.cause.at  # type: ignore[union-attr]


def test_no_name_in_brackets_is_left() -> None:
    """In a shop's trees every name in `<>` is one that the tree asks for, or goes through."""
    asked = 0
    for file in tree_files(SHOP):
        tree = read_tree(SHOP, file)[0]
        assert tree
        asked += sum("<" in step.text for step in tree.steps.values())
        for step in in_plain_words(tree).steps.values():
            assert "<" not in step.text, (file, step.id)
    assert asked >= 5
