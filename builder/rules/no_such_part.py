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

from collections.abc import Iterator, Mapping
from datetime import date

from builder.model.conditions import Takes
from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.model.module_record import Module, SafetySystem
from builder.model.text import Text
from builder.model.tree import Step, ValueKind
from builder.model.vehicle_data import PIN_ROLES
from builder.rules.shared.close_names import closest_names
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="no-such-part",
    family=Family.KNOWLEDGE,
    severity=Severity.ERROR,
    summary="A part, or a role of a pin, that doesn't exist.",
)
WHY = "no vehicle's file can say where it is"
CRITICAL = {SafetySystem.RESTRAINTS, SafetySystem.HIGH_VOLTAGE}


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


def _unknown(names: Iterator[Text], library: Library) -> Iterator[Finding]:
    for name in names:
        if not name.startswith("<") and name not in library.parts and name not in library.modules:
            yield RULE.finding(
                name.at, f"part `{name}` doesn't exist", WHY, part_hint(name, library)
            )


def part_hint(name: str, library: Library) -> str:
    """Offer the part that is meant: by what it is also called, else by its spelling.

    By spelling no module of airbags or high voltage is offered for another one, nor the reverse.
    """
    otherwise = "add it to kb/parts.yml, or use a name from there or from kb/modules/"
    if called := _called(name, library):
        return f"did you mean `{called}`?"
    known = {id_: library.modules.get(id_) for id_ in (*library.parts, *library.modules)}
    close = [one for one in closest_names(name, known) if _may_be_offered(name, known[one])]
    return f"did you mean {' or '.join(f'`{one}`' for one in close)}?" if close else otherwise


def _called(name: str, library: Library) -> str | None:
    words = name.replace("-", " ").casefold()
    records: Mapping[str, tuple[Text, ...]] = {
        **{id_: (part.name, *part.also_called) for id_, part in library.parts.items()},
        **{id_: (module.name, *module.also_called) for id_, module in library.modules.items()},
    }
    for id_, names in records.items():
        if words in {one.replace("-", " ").casefold() for one in names}:
            return id_
    return None


def _may_be_offered(name: str, module: Module | None) -> bool:
    """Whether a slip of the keyboard is likely: never between classes of safety."""
    looks_critical = any(word in name.casefold() for word in ("airbag", "srs", "restraint"))
    is_critical = module is not None and module.safety in CRITICAL
    return looks_critical == is_critical


def _role_hint(role: str) -> str:
    close = closest_names(role, PIN_ROLES)
    listed = ", ".join(f"`{one}`" for one in PIN_ROLES)
    return f"did you mean `{close[0]}`?" if close else f"use one of {listed}"
