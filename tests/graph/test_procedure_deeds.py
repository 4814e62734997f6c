"""What a procedure has done by each word, and what that is worth to the trees that run it."""

from pathlib import Path
from textwrap import dedent

import pytest

from builder.check.unchecked_library import read_library
from builder.graph.unproved_words import words_without_proof
from builder.model.library import Library
from builder.model.tree import ProcedureRun
from builder.reader.trees import read_tree
from builder.rules.shared.judge import judge

SHOP = """\
shop: A shop
site_address: https://charts.example/
labor_rate: 90
currency: USD
stuck: {call: foreman}
"""
SAMPLES = Path(__file__).parents[1] / "samples"


@pytest.fixture
def shop(tmp_path: Path):
    """Return a function that writes procedures, and reads the shop with them."""

    def read(**procedures: str) -> Library:
        (tmp_path / "trees").mkdir()
        (tmp_path / "site_config").mkdir()
        (tmp_path / "site_config/shop.yml").write_text(SHOP)
        (tmp_path / "kb/procedures").mkdir(parents=True)
        for name, text in procedures.items():
            (tmp_path / f"kb/procedures/{name}.yml").write_text(dedent(text))
        library, findings = read_library(tmp_path)
        assert not findings, findings
        return library

    return read


def done(library: Library, name: str) -> dict[str, list[str]]:
    """Return by word what a procedure has done."""
    run = library.procedures[name].run
    assert isinstance(run, ProcedureRun)
    return {word: [str(deed.text) for deed in one.does] for word, one in run.outcomes.items()}


TWO_PATHS = """\
title: Two paths
takes: {part: {is: part}}
returns: [good, bad]
steps:
  feed:
    check: Is the feed of the <part> good?
    does: [check-supply]
    results:
      - {result: yes, done: yes, branch: ground}
      - {result: no, return: bad}
      - {result: skip it, branch: ground}
  ground:
    check: Is the ground of the <part> good?
    does: [check-ground <part>]
    results:
      - {result: yes, done: yes, return: good}
      - {result: no, return: bad}
"""


def test_a_word_counts_what_every_path_to_it_has_done(shop) -> None:
    """One path around the feed is enough: it isn't proved. The ground is, by its good result."""
    assert done(shop(two=TWO_PATHS), "two") == {"good": ["check-ground <part>"], "bad": []}


def test_a_procedure_inside_counts_with_its_values(shop) -> None:
    """What the inner one proves of `<part>`, the outer one has proved of what it hands over."""
    outer = """\
        title: Outer
        takes: {unit: {is: module}}
        returns: [good, bad]
        steps:
          both:
            check: Are both good?
            by: two
            with: {part: <unit>}
            results: [{result: good, return: good}, {result: bad, return: bad}]
        """
    assert done(shop(two=TWO_PATHS, outer=outer), "outer")["good"] == ["check-ground <unit>"]


def test_what_may_be_undone_is_told(shop) -> None:
    """A supply that is released on one path can't be relied on, unless it is held again."""
    steps = """\
        title: Drive
        returns: [back, held, kept]
        steps:
          ask:
            check: What is to be done?
            results:
              - {result: drive, branch: drive}
              - {result: drive and hold, branch: drive-first}
              - {result: nothing, return: kept}
          drive:
            action: Drive it
            does: [drive]
            then: gone
          drive-first:
            action: Drive it, then hold the supply
            does: [drive, hold-supply]
            then: held
          gone:
            return: back
          held:
            return: held
        """
    assert done(shop(drive=steps), "drive") == {"back": ["drive"], "held": ["hold-supply"],
                                                "kept": []}  # fmt: skip


def test_what_it_needs_is_asked_of_the_steps_that_run_it(shop) -> None:
    """A procedure that clears DTCs without recording them is sound where they were recorded."""
    clear = """\
        title: Clear
        returns: [done]
        steps:
          clear:
            check: Are the DTCs gone?
            does: [clear-codes]
            results: [{result: yes, return: done}]
        """
    run = shop(clear=clear).procedures["clear"].run
    assert [str(deed.text) for deed in run.unmet["the codes are recorded"]] == ["clear-codes"]


def test_a_procedure_that_runs_itself_has_no_figures(shop) -> None:
    """Nothing can be said of it; a rule reports it."""
    text = """\
        title: Around
        returns: [good]
        steps:
          again:
            check: Is it good?
            by: around
            results: [{result: good, return: good}]
        """
    assert shop(around=text).procedures["around"].run is None


def test_words_by_then_spent_and_cannot_test_prove_nothing(shop) -> None:
    """A fix with parts must rest on a result; so it is through a procedure inside."""
    inner = """\
        title: Inner
        returns: [good, bad, tired, dark]
        steps:
          look:
            check: Is it good?
            at_most: 2
            spent: tired
            cannot_test: dark
            results:
              - {result: yes, return: good}
              - {result: no, return: bad}
              - {result: unsure, branch: look}
          tired: {return: tired}
          dark: {return: dark}
        """
    outer = """\
        title: Outer
        returns: [good, unsure]
        steps:
          look:
            check: Is it good?
            by: inner
            results:
              - {result: good, return: good}
              - {result: bad, return: unsure}
              - {result: tired, branch: clean}
              - {result: dark, return: good}
          clean:
            check: Is it clean?
            results: [{result: yes, return: good}, {result: no, return: unsure}]
        """
    library = shop(inner=inner, outer=outer)
    one = library.procedures
    assert words_without_proof(one["inner"], one) == {"tired", "dark"}
    assert words_without_proof(one["outer"], one) == {"good"}


@pytest.mark.parametrize(
    ("name", "words"),
    [("battery-proof", {"won't take a charge"}), ("module-setup", {"refused"}),
     ("bleed-brakes", {"still soft"}), ("power-and-ground", set())],
)  # fmt: skip
def test_the_samples_name_what_is_not_proved(name: str, words: set[str]) -> None:
    """Each such word has a name of its own, or leads to no part."""
    procedures = read_library(SAMPLES)[0].procedures
    assert words_without_proof(procedures[name], procedures) == words


@pytest.mark.parametrize("id_", ["brakes/soft-pedal", "network/module-silent",
                                 "steering/assist-lamp-after-module-swap"])  # fmt: skip
def test_procedures_prove_the_modules_of_the_samples(id_: str) -> None:
    """Without the proofs in their procedures, the modules would be replaced on a guess."""
    library, _ = read_library(SAMPLES)
    tree, _ = read_tree(SAMPLES, SAMPLES / f"trees/{id_}.yml")
    assert tree is not None
    order = ("prove-before-replacing", "supply-before-programming", "codes-before-clearing")
    assert not [one for one in judge(tree, library) if one.rule in order]
    bare = Library(
        **{name: getattr(library, name) for name in library.__dataclass_fields__
           if name not in ("listings", "callers", "procedures")}
    )  # fmt: skip
    assert {one.rule for one in judge(tree, bare)} & set(order)
