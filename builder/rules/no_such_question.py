"""A branch hands a value to another tree under a name that the tree doesn't ask for.

Why: The value is lost, and the tech is asked again for what this tree knows, from another list.

Wrong:

    # trees/charging/unit.yml
    title: Unit does not respond
    asks:
      module: {ask: Which module?, one_of: [radio, horn-unit]}
    steps:
      power:
        check: Does the <module> have power?
        results: {yes: ask, no: ask}
      ask: {stop: Ask the foreman}
    # trees/charging/case.yml
    steps:
      answers:
        check: Does the radio respond?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: charging/unit, with: {part: radio}}

Right:

    # trees/charging/unit.yml
    title: Unit does not respond
    asks:
      module: {ask: Which module?, one_of: [radio, horn-unit]}
    steps:
      power:
        check: Does the <module> have power?
        results: {yes: ask, no: ask}
      ask: {stop: Ask the foreman}
    # trees/charging/case.yml
    steps:
      answers:
        check: Does the radio respond?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: charging/unit, with: {module: radio}}

Fix: Write the name as `asks` of the other tree has it, or delete it.
"""

from collections.abc import Iterator
from datetime import date

from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.model.text import Text
from builder.rules.shared.close_names import suggestion
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="no-such-question",
    family=Family.FLOW,
    severity=Severity.ERROR,
    summary="A value for another tree that it doesn't ask for.",
)


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every value under a name that the other tree doesn't ask for."""
    for id_, listing in library.listings.items():
        for handoff in library.trees[id_].handoffs if listing.gives else ():
            if handoff.tree not in library.listings:
                continue  # `no-such-tree` speaks
            asks = library.trees[handoff.tree].asks
            free = [name for name in asks if name not in handoff.gives]
            unknown = (name for name in handoff.gives if name not in asks)
            yield from (_finding(name, handoff.tree, free) for name in unknown)


def _finding(name: Text, tree: str, free: list[str]) -> Finding:
    hint = suggestion(name, free, "delete it")
    if len(free) == 1:
        hint = f"write `{free[0]}` instead of `{name}`: that is what it asks for"
    return RULE.finding(
        name.at, f"`{tree}` doesn't ask for `{name}`",
        "the value is lost, and the tech is asked again for what is known", hint,
    )  # fmt: skip
