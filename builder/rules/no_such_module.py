"""A module without a record: in what a step does, in a fix that replaces it, among the parts
replaced at another shop, or in the list of DTCs.

Why: Nobody can tell whether a used part works, what the setup takes, or what it costs.

Wrong:

    unit:
      fix: Install a new radio and set it up
      cause: The radio failed internally
      weight: 1
      replaces: {module: raido, part: new}
      verify: [all bands play]

Right:

    unit:
      fix: Install a new radio and set it up
      cause: The radio failed internally
      weight: 1
      replaces: {module: radio, part: new}
      verify: [all bands play]

Fix: Write the module as its file in `kb/modules/` is called, or write its record.
"""

from collections.abc import Iterator
from datetime import date

from builder.model.ends import Fix
from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.model.text import Text
from builder.model.tree import Step
from builder.rules.shared.close_names import unknown_names
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="no-such-module",
    family=Family.KNOWLEDGE,
    severity=Severity.ERROR,
    summary="A module without a record.",
)
WHY = "nobody can tell what its setup takes, or whether a used one works"


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every module of a tree that has no record."""
    yield from unknown_names(RULE, facts.tree.symptom.fitted_elsewhere, facts.library, WHY)
    for step in facts.steps:
        yield from unknown_names(RULE, _modules(step), facts.library, WHY)


def _modules(step: Step) -> Iterator[Text]:
    deeds = (Text(deed.module, deed.text.at) for deed in step.does if deed.module and deed.is_setup)
    replaces = step.body.replaces if isinstance(step.body, Fix) else None
    names = (*deeds, *((replaces.module,) if replaces else ()))
    yield from (name for name in names if not name.startswith("<"))  # the answer comes later


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every module of the list of codes that has no record."""
    names = (entry.module for entry in library.codes.values() if entry.module)
    yield from unknown_names(RULE, names, library, WHY)
