"""A module is fitted and its set-up is left out: a fix lists the module among its parts without
`replaces`, writes an option of its own with fewer hours than fitting and set-up take, or the record
books fewer hours than its own steps add up to. A set-up that is not known is a warning.

Why: The part fits, the lamp stays on, and nobody has told the customer what is still missing.

Wrong:

    unit:
      fix: Fit a new radio
      cause: Radio faulty inside
      weight: 1
      parts: [{part: Radio, price: 300}]
      verify: [all bands play]

Right:

    unit:
      fix: Fit a new radio and set it up
      cause: Radio faulty inside
      weight: 1
      replaces: {module: radio, part: new}
      verify: [all bands play]

Fix: Write `replaces: {module: ..., part: new}`, so that price, hours and set-up come from the
record; let hours of your own cover the set-up. What a step before has done on every path counts as
done.
"""

from collections.abc import Iterator
from datetime import date
from decimal import ROUND_CEILING, Decimal

from builder.model.finding import Finding, Severity
from builder.model.knowledge import Module, SetUpStep
from builder.model.library import Library
from builder.model.tree import Fix, FixOption, Step
from builder.rules.shared.order import is_done_before
from builder.rules.shared.rule import Facts, Family, Rule, as_warning

RULE = Rule(
    name="missing-set-up",
    family=Family.SETUP,
    severity=Severity.ERROR,
    summary="A module is fitted and its set-up is left out.",
)
WHY = "the part fits, the fault stays, and nobody has said what is still missing"
WITH_SET_UP = ("fit-here", "drive-in", "towed-in")


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every fix that leaves out the set-up of a module."""
    for step in facts.steps:
        if isinstance(step.body, Fix):
            yield from _part_only(facts.library, step.body)
            module = _module(facts.library, step.body)
            if module:
                yield from _replaced(facts, step, step.body, module)


def _module(library: Library, fix: Fix) -> Module | None:
    return library.modules.get(fix.replaces.module) if fix.replaces else None


def _part_only(library: Library, fix: Fix) -> Iterator[Finding]:
    if not fix.parts or fix.replaces:
        return
    names = {
        name.casefold(): module
        for module in library.modules.values()
        for name in (module.id, module.name, *module.also_called)
    }
    for part in fix.parts:
        module = names.get(part.part.casefold())
        if module and _needed(module):
            verbs = ", ".join(f"{step.verb}" for step in _needed(module))
            yield RULE.finding(
                part.part.at,
                f"`{part.part}` is a module, and its set-up is left out: {verbs}",
                WHY,
                f"write `replaces: {{module: {module.id}, part: new}}`",
            )


def _needed(module: Module) -> list[SetUpStep]:
    return [step for step in module.set_up if step.needed == "needed"]


def _replaced(facts: Facts, step: Step, fix: Fix, module: Module) -> Iterator[Finding]:
    assert fix.replaces is not None
    left = [
        one
        for one in module.set_up
        if one.needed != "not needed" and not is_done_before(facts, step, one.verb, module.id)
    ]
    for one in left:
        if one.needed == "not known":
            yield as_warning(
                RULE.finding(
                    fix.replaces.module.at,
                    f"nobody knows whether `{module.id}` needs this: {one.verb}",
                    "the fix could end with a part that fits and does not work",
                    f"find out, and put {module.file} right",
                )
            )
    for option in fix.options:
        yield from _option(option, fix, module, [one for one in left if one.minutes])


def _option(
    option: FixOption, fix: Fix, module: Module, left: list[SetUpStep]
) -> Iterator[Finding]:
    """Hold the hours of a written option against fitting and what is left of the set-up."""
    if option.hours is None or option.id not in WITH_SET_UP or option.not_offered or not left:
        return
    set_up = _hours(left)
    fit = fix.hours if fix.hours is not None else module.hours.get("fit", Decimal(0))
    least = set_up + (fit if option.id == "fit-here" else 0)
    if option.hours < least:
        verbs = " and ".join(one.verb for one in left)
        yield RULE.finding(
            option.hours.at,
            f"{option.hours} h do not cover `{option.id}`: with {verbs} it takes {least} h",
            WHY,
            f"write at least `hours: {least}`, or leave it out: the record has the hours",
        )


def _hours(steps: list[SetUpStep]) -> Decimal:
    """Return what the steps take, in tenths of an hour as labour is booked, rounded up."""
    minutes = sum((one.minutes or Decimal(0) for one in steps), Decimal(0))
    return (minutes / 6).to_integral_value(ROUND_CEILING) / 10


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every record that books less time than its own set-up takes."""
    for module in library.modules.values():
        booked, takes = module.hours.get("set_up"), _hours(_needed(module))
        if booked is not None and booked < takes:
            yield RULE.finding(
                booked.at,
                f"{booked} h are booked, and the set-up of `{module.id}` takes {takes} h",
                "the customer is told a price that leaves out part of the work",
                f"write at least `set_up: {takes}`",
            )
