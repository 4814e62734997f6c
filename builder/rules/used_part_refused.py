"""A fix that fits a used part where the module's record says that a used one cannot be set up.
Where the record says that this is not known, it is a warning.

Why: The used part locks itself to the vehicle it came from; the customer has paid for it and for
the fitting, and is no further.

Wrong:

    unit:
      fix: Fit a used radio and set it up
      cause: Radio faulty inside
      weight: 1
      replaces: {module: radio, part: used}
      verify: [all bands play]

Right:

    unit:
      fix: Fit a new radio and set it up
      cause: Radio faulty inside
      weight: 1
      replaces: {module: radio, part: new}
      verify: [all bands play]

Fix: Write `part: new`; or, if a used part was set up with proof, put the record right.
"""

from collections.abc import Iterator

from builder.model.finding import Finding, Severity
from builder.model.knowledge import Module
from builder.model.tree import Fix, Replaces
from builder.rules.shared.rule import Facts, Family, Rule, as_warning

RULE = Rule(
    name="used-part-refused",
    family=Family.SETUP,
    severity=Severity.ERROR,
    summary="A used part is fitted that cannot be set up.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every used part that its record refuses or knows nothing about."""
    for step in facts.steps:
        if isinstance(step.body, Fix) and step.body.replaces:
            replaces = step.body.replaces
            module = facts.library.modules.get(replaces.module)
            if module and replaces.part == "used":
                yield from _used(replaces, module)


def _used(replaces: Replaces, module: Module) -> Iterator[Finding]:
    why = "the customer pays for a part that locks itself to the vehicle it came from"
    if module.used_part == "no":
        message = f"a used `{module.id}` cannot be set up, says its record"
        hint = f"write `part: new`, or put {module.file} right"
        yield RULE.finding(replaces.part.at, message, why, hint)
    elif module.used_part == "not known":
        message = f"nobody knows whether a used `{module.id}` can be set up"
        hint = f"write `part: new`, or find out and put {module.file} right"
        yield as_warning(RULE.finding(replaces.part.at, message, why, hint))
