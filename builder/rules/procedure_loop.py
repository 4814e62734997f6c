"""A procedure that runs itself, directly or through others.

Why: The tech goes around in it and never comes back to the tree.

Wrong:

    # kb/procedures/feed-proof.yml
    title: Is the feed good?
    returns: [good, bad]
    steps:
      ground:
        check: Is the ground good?
        by: ground-proof
        results:
          - {result: good, return: good}
          - {result: bad, return: bad}
    # kb/procedures/ground-proof.yml
    title: Is the ground good?
    returns: [good, bad]
    steps:
      feed:
        check: Is the feed good?
        by: feed-proof
        results:
          - {result: good, return: good}
          - {result: bad, return: bad}

Right:

    # kb/procedures/feed-proof.yml
    title: Is the feed good?
    returns: [good, bad]
    steps:
      ground:
        check: Is the ground good?
        by: ground-proof
        results:
          - {result: good, return: good}
          - {result: bad, return: bad}
    # kb/procedures/ground-proof.yml
    title: Is the ground good?
    returns: [good, bad]
    steps:
      strap:
        check: Is the ground strap tight and clean?
        results:
          - {result: yes, return: good}
          - {result: no, return: bad}
    # trees/charging/case.yml
    steps:
      feed:
        check: Is the feed good?
        by: feed-proof
        results:
          - {result: good, branch: all-good}
          - {result: bad, branch: repair}

Fix: Test it in one of them without running the other, or put what both need into a third.
"""

from collections.abc import Iterator
from datetime import date

import networkx as nx

from builder.model.checks import Check
from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.model.text import Text
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="procedure-loop",
    family=Family.PROCEDURES,
    severity=Severity.ERROR,
    summary="A procedure that runs itself.",
)


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every loop of procedures, at the step that closes it."""
    runs = {name: _run_by(library, name) for name in library.procedures}
    digraph: nx.DiGraph[str] = nx.DiGraph()
    digraph.add_edges_from((name, str(by)) for name, names in runs.items() for by in names)
    for loop in nx.simple_cycles(digraph):
        first = loop.index(min(loop))
        path = [*loop[first:], *loop[:first]]
        closing = next(by for by in runs[path[-1]] if by == path[0])
        yield RULE.finding(
            closing.at,
            f"`{path[-1]}` runs itself: {' -> '.join([*path, path[0]])}",
            "the tech goes around in it and never comes back to the tree",
            f"test it in `{path[-1]}` without `{path[0]}`",
        )


def _run_by(library: Library, name: str) -> list[Text]:
    steps = library.procedures[name].tree.steps.values()
    return [step.body.by for step in steps if isinstance(step.body, Check) and step.body.by]
