"""A fix that installs a used part where the module's record says a used one can't be set up. Where
the record doesn't know, it's a warning.

Why: The used part stays locked to the vehicle it came from: the customer has paid for the part and
the labor for nothing.

Wrong:

    unit:
      fix: Install a used radio and set it up
      cause: The radio failed internally
      weight: 1
      replaces: {module: radio, part: used}
      verify: [all bands play]

Right:

    unit:
      fix: Install a new radio and set it up
      cause: The radio failed internally
      weight: 1
      replaces: {module: radio, part: new}
      verify: [all bands play]

Fix: Write `part: new`. If a used part was set up and proved, correct the record.
"""

from collections.abc import Iterator

from builder.model.ends import Fix, Replaces
from builder.model.finding import Finding, Severity
from builder.model.module_record import Module
from builder.rules.shared.rule import Facts, Family, Rule, as_warning

RULE = Rule(
    name="used-part-refused",
    family=Family.SETUP,
    severity=Severity.ERROR,
    summary="A used part is installed that can't be set up.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every used part that its record rules out or doesn't know about."""
    for step in facts.steps:
        if isinstance(step.body, Fix) and step.body.replaces:
            replaces = step.body.replaces
            module = facts.library.modules.get(replaces.module)
            if module and replaces.part == "used":
                yield from _used(replaces, module)


def _used(replaces: Replaces, module: Module) -> Iterator[Finding]:
    why = "the customer pays for a part that stays locked to the vehicle it came from"
    if module.used_part == "no":
        message = f"a used `{module.id}` can't be set up, per its record"
        hint = f"write `part: new`, or correct {module.file}"
        yield RULE.finding(replaces.part.at, message, why, hint)
    elif module.used_part == "not known":
        message = f"it's unknown whether a used `{module.id}` can be set up"
        hint = f"write `part: new`, or find out and correct {module.file}"
        yield as_warning(RULE.finding(replaces.part.at, message, why, hint))
