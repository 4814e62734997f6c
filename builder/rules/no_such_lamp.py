"""A warning light that isn't in the list of lamps.

Why: An apprentice who searches by the light won't find the tree.

Wrong:

    symptom: {words: [battery light on], lamps: [chargeing]}
    steps:
      belt:
        check: Is the belt tight and dry?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Right:

    symptom: {words: [battery light on], lamps: [charging]}
    steps:
      belt:
        check: Is the belt tight and dry?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Fix: Write the light as it is in `kb/lamps.yml`, or add it there.
"""

import re
from collections.abc import Iterator
from dataclasses import replace

from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.rules.shared.close_names import unknown_names
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="no-such-lamp",
    family=Family.KNOWLEDGE,
    severity=Severity.ERROR,
    summary="A warning light that isn't in the list of lamps.",
)


NO_NAME = {"light", "lamp", "lights", "warning", "indicator", "a", "an", "the", "with", "and", "of"}


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every warning light that doesn't exist."""
    why = "a search by this warning light won't find the tree"
    for name in facts.tree.symptom.lamps:
        likely = _described(name, facts.library)
        for finding in unknown_names(RULE, [name], facts.library, why):
            is_told = finding.edit is not None or not likely
            yield finding if is_told else replace(finding, hint=f"did you mean {likely}?")


def _described(words: str, library: Library) -> str:
    """Return the lights that are called so, or that look like it, with what they look like."""
    wanted = _words(words)
    return " or ".join(
        f"`{lamp.id}` ({lamp.name}: {lamp.looks_like})"
        for lamp in library.lamps.values()
        if wanted & (_words(lamp.name) | _words(lamp.looks_like or ""))
    )


def _words(text: str) -> set[str]:
    return {*re.findall(r"[a-z]+", text.casefold())} - NO_NAME
