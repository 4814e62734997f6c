"""What procedures take, computed once for all that run them."""

from fractions import Fraction
from pathlib import Path

from builder.check.filled_knowledge import filled_knowledge
from builder.model.library import Library
from builder.plan import minutes_range
from builder.plan.forward_graph import forward_graph
from builder.plan.procedure_runs import with_procedure_runs
from builder.plan.step_costs import StepCosts
from builder.reader.procedure_files import procedure_from
from builder.reader.source import Source

SHOP = Path(__file__).parents[1] / "shop"
RUNNING = """\
title: Does it hold?
returns: [good, bad]
steps:
  first:
    check: {by}
    results:
      - {{result: good, branch: fine}}
      - {{result: bad, branch: look}}
  look:
    check: Is the connector clean?
    minutes: 5
    results:
      - {{result: yes, return: good}}
      - {{result: no, return: bad}}
  fine: {{return: good}}
"""


def library_with(**runs: str) -> Library:
    """Return a library of procedures, each of which runs the one that is named."""
    procedures = {}
    for name, by in runs.items():
        check = f"Inner\n    by: {by}" if by else "Does the bulb glow?\n    minutes: 3"
        source = Source(f"kb/procedures/{name}.yml", RUNNING.format(by=check), "")
        procedure, _ = procedure_from(source)
        assert procedure
        procedures[name] = procedure
    return with_procedure_runs(Library(filled_knowledge(SHOP)[0].shop, procedures=procedures))


def test_what_runs_itself_has_no_figures() -> None:
    """Neither at once nor around another; a procedure beside them keeps its own."""
    runs = library_with(itself="itself", one="other", other="one", alone="").procedures
    assert {name for name, one in runs.items() if one.run} == {"alone"}


def test_a_word_takes_what_its_walks_take() -> None:
    """`good` comes after 3 or 3 + 5, `bad` after both; around it, 5 more or none."""
    runs = library_with(outer="alone", alone="").procedures
    ranges = {
        name: [(outcome.shortest, outcome.longest) for outcome in one.run.outcomes.values()]
        for name, one in runs.items() if one.run
    }  # fmt: skip
    assert ranges["alone"] == [(3, 8), (8, 8)]
    assert ranges["outer"] == [(3, 8 + 5), (8 + 5, 8 + 5)]


def test_with_too_many_repeats_a_procedure_counts_by_its_words(monkeypatch) -> None:
    """The shortest and the longest word, once."""
    outer = library_with(outer="alone", alone="").procedures["outer"].tree
    monkeypatch.setattr(minutes_range, "MAX_STATES", 0)
    bounds = minutes_range.minutes_range(outer, forward_graph(outer))
    assert (bounds.shortest["first"], bounds.longest["first"]) == (3, 8 + 5)


def test_leaving_a_step_costs_what_its_word_takes_more() -> None:
    """On average 5; by one of its exits 2 more."""
    costs = StepCosts({"a": Fraction(5), "b": Fraction(3)}, {("a", 1): Fraction(2)})
    assert [costs.leaving(key) for key in (("a", 0), ("a", 1), ("b", 1))] == [5, 7, 3]
