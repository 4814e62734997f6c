"""A test after a repair that names a check is walked as that check, with the results that pass."""

from builder.check.unchecked_library import read_library
from builder.model.ends import Fix
from builder.reader.source import Source
from builder.reader.trees import tree_from
from builder.walk.compile_verify import verify_row
from tests.walk.conftest import SAMPLES

TREE = """
format: 2
title: A
status: draft
symptom: {words: [a]}
steps:
  wet-run:
    check: How do the wipers run
    readings:
      current: {unit: A, from: 0, to: 40, resolution: 0.1, origin: common practice}
      wipers: {one_of: [kept going, stopped]}
    results:
      - {result: {current: at most 5, wipers: kept going}, branch: good}
      - {result: {current: at most 5, wipers: stopped}, branch: good}
      - {result: {current: above 5}, branch: fix}
  fix:
    fix: Free the linkage
    cause: It was stiff
    verify: [{wet-run: {current: at most 5, wipers: kept going}}]
  good: {stop: It runs, kind: not-found}
"""


def test_a_test_may_go_on_with_more_than_one_result() -> None:
    """A monitor that hasn't run yet is no failure; the story says that it is no pass."""
    checked = "    results: {not run yet: good, none: good, current: fix}\n"
    text = TREE[: TREE.index("    readings:")] + checked + TREE[TREE.index("  fix:") :]
    wanted = "verify: [{wet-run: [none, not run yet]}]"
    old = "verify: [{wet-run: {current: at most 5, wipers: kept going}}]"
    tree, findings = tree_from(Source("trees/a/a.yml", text.replace(old, wanted), ""))
    assert tree, findings
    body = tree.steps["fix"].body
    assert isinstance(body, Fix)
    row = verify_row(tree, body.verify[0], read_library(SAMPLES)[0])
    assert row == {"step": "wet-run", "passes": ["none", "not run yet"]}


def test_several_readings_are_read_again_after_the_repair() -> None:
    """The one result with both readings passes; it isn't left to a person's word."""
    tree, findings = tree_from(Source("trees/a/a.yml", TREE, ""))
    assert tree, findings
    body = tree.steps["fix"].body
    assert isinstance(body, Fix)
    row = verify_row(tree, body.verify[0], read_library(SAMPLES)[0])
    assert row == {"step": "wet-run", "passes": ["current: at most 5, wipers: kept going"]}
