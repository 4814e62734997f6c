"""A part that isn't in `kb/parts.yml` and is no module, or a kind of pin that doesn't exist.

Why: The vehicle's file can't say where it is, and its pins, wires and fuses stay unknown.

Wrong:

    # kb/parts.yml
    alternator: {name: Alternator}
    # trees/charging/case.yml
    steps:
      sense:
        check: Is the sense pin corroded?
        at: {part: alternater, pins: [sence]}
        results: {yes: repair, no: all-good}

Right:

    # kb/parts.yml
    alternator: {name: Alternator}
    # trees/charging/case.yml
    steps:
      sense:
        check: Is the sense pin corroded?
        at: {part: alternator, pins: [sense]}
        results: {yes: repair, no: all-good}

Fix: Write the part as it is in `kb/parts.yml` or `kb/modules/`, or add it to `kb/parts.yml`; the
pin by one of the roles that the message lists.
"""

from collections.abc import Iterator
from datetime import date

from builder.model.conditions import Takes
from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.model.text import Text
from builder.model.tree import Step, ValueKind
from builder.model.vehicle_data import PIN_ROLES
from builder.rules.shared.close_names import closest_names
from builder.rules.shared.part_hint import part_hint
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="no-such-part",
    family=Family.KNOWLEDGE,
    severity=Severity.ERROR,
    summary="A part, or a role of a pin, that doesn't exist.",
)
WHY = "no vehicle's file can say where it is"


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every part and every role of a pin that doesn't exist."""
    for step in facts.steps:
        yield from _unknown(_parts_of(facts, step), facts.library)
        if step.where and not step.where.connector:
            for role in step.where.pins:
                if role not in PIN_ROLES:
                    yield RULE.finding(role.at, f"no pin has the role `{role}`",
                                       "no vehicle's file can say which pin that is",
                                       _role_hint(role))  # fmt: skip
    for question in facts.tree.asks:
        if question.kind is ValueKind.PART:
            yield from _unknown(iter(question.one_of), facts.library)


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every connector of a part that doesn't exist."""
    for vehicle in library.vehicles.values():
        yield from _unknown((one.of for one in vehicle.connectors.values()), library)


def _parts_of(facts: Facts, step: Step) -> Iterator[Text]:
    for need in step.needs:
        condition = facts.library.conditions.get(need.condition)
        if condition and condition.takes is Takes.PART and need.value is not None:
            yield need.value
    if step.where:
        yield from filter(None, (step.where.part, step.where.fuse))
    proofs = (deed for deed in step.does if deed.module and not deed.is_setup)
    yield from (Text(str(deed.module), deed.text.at) for deed in proofs)


def _unknown(names: Iterator[Text], library: Library) -> Iterator[Finding]:
    for name in names:
        if not name.startswith("<") and name not in library.parts and name not in library.modules:
            yield RULE.finding(
                name.at, f"part `{name}` doesn't exist", WHY, part_hint(name, library)
            )


def _role_hint(role: str) -> str:
    close = closest_names(role, PIN_ROLES)
    listed = ", ".join(f"`{one}`" for one in PIN_ROLES)
    return f"did you mean `{close[0]}`?" if close else f"use one of {listed}"
