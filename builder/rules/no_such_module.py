"""A control module without a set-up record: in what a step does, in a fix that replaces it, or
among the parts fitted elsewhere; also in the list of codes.

Why: Nobody could say whether a used part can be set up, what it takes, or what it costs.

Wrong:

    unit:
      fix: Fit a new radio and set it up
      cause: Radio faulty inside
      weight: 1
      replaces: {module: raido, part: new}
      verify: [all bands play]

Right:

    unit:
      fix: Fit a new radio and set it up
      cause: Radio faulty inside
      weight: 1
      replaces: {module: radio, part: new}
      verify: [all bands play]

Fix: Write the module as its file in `kb/modules/` is called, or write its record.
"""

from collections.abc import Iterator
from datetime import date

from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.model.text import Text
from builder.model.tree import Fix, Step
from builder.rules.shared.rule import Facts, Family, Rule
from builder.rules.shared.suggestions import unknown_names

RULE = Rule(
    name="no-such-module",
    family=Family.KNOWLEDGE,
    severity=Severity.ERROR,
    summary="A control module without a set-up record.",
)
WHY = "nobody can say what its set-up takes, or whether a used one can be set up"
WHERE = "kb/modules/ as a record"


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every module named in a tree that has no record."""
    modules = facts.library.modules
    yield from unknown_names(RULE, facts.tree.symptom.fitted_elsewhere, modules, WHY, WHERE)
    for step in facts.steps:
        yield from unknown_names(RULE, _modules(step), modules, WHY, WHERE)


def _modules(step: Step) -> Iterator[Text]:
    for deed in step.does:
        if deed.module and not deed.module.startswith("<"):  # an answer known only at the vehicle
            yield Text(deed.module, deed.text.at)
    if isinstance(step.body, Fix) and step.body.replaces:
        yield step.body.replaces.module


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every module named in the list of codes that has no record."""
    names = (entry.module for entry in library.codes.values() if entry.module)
    yield from unknown_names(RULE, names, library.modules, WHY, WHERE)
