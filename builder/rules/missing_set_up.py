"""A module is installed without its setup: a fix lists the module under `parts` without `replaces`,
its `verify` doesn't run the shop's procedure for the setup, an option has fewer hours than
installing and setup take, or the module's record books fewer hours than its own setup steps need.
Where the record doesn't know a setup step, it's a warning.

Why: The part fits, the fault stays, and nobody told the customer what is still missing.

Wrong:

    unit:
      fix: Install a new radio
      cause: The radio failed internally
      weight: 1
      parts: [{part: Radio, price: 300}]
      verify: [all bands play]

Right:

    unit:
      fix: Install a new radio and set it up
      cause: The radio failed internally
      weight: 1
      replaces: {module: radio, part: new}
      verify: [all bands play]

Fix: Write `replaces: {module: ..., part: new}`, so that price, hours and setup come from the
record. Hours of your own must cover the setup. What an earlier step did on every path counts as
done.
"""

from collections.abc import Iterator
from datetime import date
from decimal import ROUND_CEILING, Decimal

from builder.model.ends import Fix, FixOption
from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.model.module_record import Module, SetUpStep
from builder.model.procedures import Procedure
from builder.model.tree import Step
from builder.rules.shared.order import is_done_before
from builder.rules.shared.rule import Facts, Family, Rule, as_warning

RULE = Rule(
    name="missing-set-up",
    family=Family.SETUP,
    severity=Severity.ERROR,
    summary="A module is installed without its setup.",
)
WHY = "the part fits, the fault stays, and nobody said what is still missing"
WITH_SETUP = ("fit-here", "drive-in", "towed-in")


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every fix that leaves out the setup of a module."""
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
        for name in (module.id, module.id.replace("-", " "), module.name, *module.also_called)
    }
    for part in fix.parts:
        module = names.get(part.part.casefold())
        if module and _needed(module):
            verbs = ", ".join(f"{step.verb}" for step in _needed(module))
            yield RULE.finding(
                part.part.at,
                f"`{part.part}` is a module, and its setup is missing: {verbs}",
                WHY,
                f"write `replaces: {{module: {module.id}, part: new}}`",
            )


def _needed(module: Module) -> list[SetUpStep]:
    return [step for step in module.set_up if step.needed == "needed"]


def _replaced(facts: Facts, step: Step, fix: Fix, module: Module) -> Iterator[Finding]:
    assert fix.replaces is not None
    remaining = [
        record
        for record in module.set_up
        if record.needed != "not needed" and not is_done_before(facts, step, record.verb, module.id)
    ]
    for record in remaining:
        if record.needed == "not known":
            yield as_warning(
                RULE.finding(
                    fix.replaces.module.at,
                    f"it's unknown whether `{module.id}` needs this setup: {record.verb}",
                    "the job could end with a part that fits and doesn't work",
                    f"find out, and correct {module.file}",
                )
            )
    yield from _not_in_verify(facts.library, fix, remaining)
    timed = [record for record in remaining if record.minutes]
    for option in fix.options:
        yield from _option(option, fix, module, timed)


def _not_in_verify(library: Library, fix: Fix, remaining: list[SetUpStep]) -> Iterator[Finding]:
    """Yield a finding where the shop has a procedure for the setup, and `verify` doesn't run it."""
    assert fix.replaces is not None
    if not fix.verify or all(record.needed != "needed" for record in remaining):
        return
    doing = {name: done for name, one in library.procedures.items() if (done := _setup_of(one))}
    if doing and not any(one.text in doing for one in fix.verify):
        module, widest = fix.replaces.module, max(doing, key=lambda name: len(doing[name]))
        yield RULE.finding(
            fix.verify[0].text.at,
            f"`verify` doesn't set up the new `{module}`",
            "the walk ends with a part that fits and doesn't work",
            f"put `{{{widest}: {module}}}` first in `verify`",
        )


def _setup_of(procedure: Procedure) -> set[str]:
    """Return what a procedure does to a module that it takes."""
    return {
        deed.verb
        for step in procedure.tree.steps.values()
        for deed in step.does
        if deed.is_setup and deed.module and deed.module.startswith("<")
    }


def _option(
    option: FixOption, fix: Fix, module: Module, remaining: list[SetUpStep]
) -> Iterator[Finding]:
    """Compare the hours of an option with installing and what remains of the setup."""
    if option.hours is None or option.id not in WITH_SETUP or option.not_offered or not remaining:
        return
    setup = _hours(remaining)
    fit = fix.hours if fix.hours is not None else module.hours.get("fit", Decimal(0))
    minimum = setup + (fit if option.id == "fit-here" else 0)
    if option.hours < minimum:
        verbs = " and ".join(record.verb for record in remaining)
        yield RULE.finding(
            option.hours.at,
            f"{option.hours} h don't cover `{option.id}`: with {verbs} it takes {minimum} h",
            WHY,
            f"write `hours: {minimum}` or more, or delete `hours`: the record has them",
        )


def _hours(steps: list[SetUpStep]) -> Decimal:
    """Return the hours the steps take, rounded up to tenths of an hour, as labor is booked."""
    minutes = sum((step.minutes or Decimal(0) for step in steps), Decimal(0))
    return (minutes / 6).to_integral_value(ROUND_CEILING) / 10


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every record that books less time than its own setup takes."""
    for module in library.modules.values():
        booked, needed = module.hours.get("set_up"), _hours(_needed(module))
        if booked is not None and booked < needed:
            yield RULE.finding(
                booked.at,
                f"{booked} h are booked, but the setup of `{module.id}` takes {needed} h",
                "the customer's price leaves out part of the work",
                f"write `set_up: {needed}` or more",
            )
