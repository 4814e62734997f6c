"""A value that a procedure takes and no step uses.

Why: Every tree must hand it over, and the tech measures something else than the author thinks.

Wrong:

    # kb/procedures/feed-proof.yml
    title: Is the feed good?
    takes:
      part: {is: part}
    returns: [good, bad]
    steps:
      bulb:
        check: Does a headlight bulb glow at the pins?
        results:
          - {result: yes, return: good}
          - {result: no, return: bad}
    # trees/charging/case.yml
    steps:
      feed:
        check: Is the feed good at the radio?
        by: feed-proof
        with: {part: radio}
        results: {good: all-good, bad: repair}

Right:

    # kb/procedures/feed-proof.yml
    title: Is the feed good?
    takes:
      part: {is: part}
    returns: [good, bad]
    steps:
      bulb:
        check: Does a headlight bulb glow at the <part>?
        results:
          - {result: yes, return: good}
          - {result: no, return: bad}
    # trees/charging/case.yml
    steps:
      feed:
        check: Is the feed good at the radio?
        by: feed-proof
        with: {part: radio}
        results:
          - {result: good, branch: all-good}
          - {result: bad, branch: repair}

Fix: Write `<name>` where the value belongs, or delete it from `takes` and from every `with`.
"""

from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass
from datetime import date
from typing import Any

from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.rules.shared.procedure_steps import VALUE
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="unused-value",
    family=Family.PROCEDURES,
    severity=Severity.WARNING,
    summary="A value that a procedure takes and doesn't use.",
)


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every value whose `<name>` is in no step."""
    for procedure in library.procedures.values():
        if procedure.tree.broken:
            continue  # a step with a text error may be the one that uses it
        texts = {text for step in procedure.tree.steps.values() for text in _texts(step)}
        names = {str(taken.name) for taken in procedure.tree.asks}
        if any(name not in names for text in texts for name in VALUE.findall(text)):
            continue  # it may be the same value by another name: `procedure-values` asks for it
        for taken in procedure.tree.asks:
            if not any(f"<{taken.name}>" in text for text in texts):
                yield RULE.finding(
                    taken.name.at,
                    f"no step of `{procedure.name}` uses `<{taken.name}>`",
                    "every tree must hand it over for nothing",
                    f"write `<{taken.name}>` where it belongs, or delete it",
                )


def _texts(value: Any) -> Iterator[str]:
    """Yield every text in a part of a step."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, Mapping):
        yield from (text for item in value.values() for text in _texts(item))
    elif isinstance(value, tuple):
        yield from (text for item in value for text in _texts(item))
    elif is_dataclass(value):
        yield from (text for one in fields(value) for text in _texts(getattr(value, one.name)))
