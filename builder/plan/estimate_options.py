"""The estimate options for a fix: what each costs, or why it isn't offered.

In: a `Tree`, one of its fixes, the `Library`. Out: `EstimateOption`s in the order they are shown.

A fix that replaces a module has four, from the module's setup record: we install it and set it up;
the customer installs it and drives in; the customer installs it and it is towed in; leave it as it
is. Any other fix has two: we repair it, or leave it as it is. An entry in the fix's `options:`
replaces the option of the same name, or adds one; if it has no hours, price, parts or tow, the sum
stays the same.

An option that is unsafe or can't work is not offered, whatever the fix says. A vehicle is not
driven in unless its record says it may be, nor if steering, brakes, restraints or high voltage
depend on the module; then it isn't left as it is either. Customers aren't asked to work on
restraints or high voltage at home. A used part isn't installed if it can't be set up, or if that is
unknown. A repair without a record isn't left as it is in a tree whose system is one of those words,
unless the fix writes its own `leave`.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from builder.model.ends import Fix, FixOption, Money
from builder.model.library import Library
from builder.model.module_record import DriveBefore, Module, SafetySystem, UsedPart
from builder.model.shop import Shop
from builder.model.tree import Tree
from builder.plan.prices import (
    LineKind,
    PriceLine,
    cost_with_comebacks,
    labor_line,
    price_line,
    total_price,
    with_tax,
)
from builder.wording.labels import SAFETY_TEXTS

FIT_HERE, DRIVE_IN, TOWED_IN, LEAVE = "fit-here", "drive-in", "towed-in", "leave"
NOT_AT_HOME = {
    SafetySystem.RESTRAINTS: "airbags can go off",
    SafetySystem.HIGH_VOLTAGE: "high voltage is for trained techs",
}
USED_REFUSED = {
    UsedPart.NO: "A used part can't be set up on this vehicle",
    UsedPart.UNKNOWN: "Unknown if a used part can be set up",
}
USED_NOTES = {
    UsedPart.NO: "The part must be new: a used one can't be set up.",
    UsedPart.UNKNOWN: "The part must be new: it's unknown if a used one can be set up.",
    UsedPart.IF_RELEASED: "A used part can be set up only if it was released first.",
}
OWN_PART = "Setup needs a good part. We can't guarantee a part that we didn't supply."
LEAVE_NOTE = "The fault stays as it is."
NO_PRICE = PriceLine(LineKind.PRICE, "Price", None)


@dataclass(frozen=True, slots=True)
class EstimateOption:
    """One option: what it costs, line by line, or why it isn't offered."""

    id: str
    option: str  # as the customer reads it
    lines: tuple[PriceLine, ...] = ()
    total: Money | None = None  # None: not offered, or a line is unknown
    not_offered: str = ""  # the reason, if any
    note: str = ""
    cost_with_comebacks: Money | None = None  # on average


@dataclass(frozen=True, slots=True)
class _UnpricedOption:
    """An option before it is priced."""

    id: str
    option: str
    lines: tuple[PriceLine, ...] = ()
    note: str = ""


def estimate_options(tree: Tree, step_id: str, library: Library) -> tuple[EstimateOption, ...]:
    """Return the options of a fix; any other step has none."""
    fix = tree.steps[step_id].body
    if not isinstance(fix, Fix):
        return ()
    module = library.modules.get(fix.replaces.module) if fix.replaces else None
    standard = tuple(
        _of_module(fix, module, library.shop) if module else _repair(fix, library.shop)
    )
    written = {option.id: option for option in fix.options}
    offered = [
        _option(
            option,
            written.get(option.id),
            refusal_reason(option.id, tree, fix, module),
            library.shop,
        )
        for option in standard
    ]
    standard_ids = {option.id for option in standard}
    added = [option for option in fix.options if option.id not in standard_ids]
    return (*offered, *(_added(option, library.shop) for option in added))


def refusal_reason(option_id: str, tree: Tree, fix: Fix, module: Module | None) -> str:
    """Return why a standard option of a fix isn't offered, or an empty string."""
    if module is None or fix.replaces is None:
        written = any(option.id == option_id for option in fix.options)
        return _unsafe_reason(_safety_of(tree)) if option_id == LEAVE and not written else ""
    if option_id == LEAVE:
        return _unsafe_reason(module.safety)
    if option_id == FIT_HERE:
        return USED_REFUSED.get(module.used_part, "") if fix.replaces.part == "used" else ""
    if option_id in (DRIVE_IN, TOWED_IN) and module.safety in NOT_AT_HOME:
        return f"Not a job to do at home: {NOT_AT_HOME[module.safety]}"
    return _no_driving_reason(module) if option_id == DRIVE_IN else ""


def _no_driving_reason(module: Module) -> str:
    if module.drive_before_set_up is DriveBefore.YES:
        return _unsafe_reason(module.safety)
    if module.drive_before_set_up is DriveBefore.NO:
        return str(module.drive_why or "Not safe to drive before setup")
    return "Unknown if it may be driven before setup"


def _safety_of(tree: Tree) -> SafetySystem:
    """Return the safety system that a tree's system is named after, if any."""
    known = {str(system): system for system in SafetySystem}
    return known.get(tree.system, SafetySystem.NONE)


def _unsafe_reason(safety: SafetySystem) -> str:
    if safety is SafetySystem.NONE:
        return ""
    return f"Not safe to drive: {SAFETY_TEXTS[safety]}"


def _of_module(fix: Fix, module: Module, shop: Shop) -> Iterator[_UnpricedOption]:
    hours = module.hours
    install_hours = fix.hours if fix.hours is not None else hours.get("fit")
    install = labor_line("Installation", install_hours, shop)
    setup = (
        labor_line("Setup", hours.get("set_up"), shop),
        labor_line("Verification", hours.get("verify"), shop),
    )
    used = USED_NOTES.get(module.used_part, "")
    if module.used_part is UsedPart.IF_RELEASED and module.released_by:
        used = f"{used} That takes: {module.released_by}."
    used_here = used if fix.replaces and fix.replaces.part == "used" else ""
    own_part = f"{used} {OWN_PART}".strip()
    tow = price_line(LineKind.TOW, "Tow", shop.tow)
    here = (install, *setup, *_parts(fix, module))
    yield _UnpricedOption(FIT_HERE, "We install it and set it up", here, used_here)
    yield _UnpricedOption(DRIVE_IN, "You install it and drive in; we set it up", setup, own_part)
    yield _UnpricedOption(
        TOWED_IN, "You install it and have it towed in; we set it up", (*setup, tow), own_part
    )
    yield _UnpricedOption(LEAVE, "Leave it as it is", note=LEAVE_NOTE)


def _parts(fix: Fix, module: Module) -> Iterator[PriceLine]:
    """Price the module and the fix's other parts; a used module has no price in the record."""
    replaces = fix.replaces
    if not any(str(part.part) in (module.id, str(module.name)) for part in fix.parts):
        used = replaces is not None and replaces.part == "used"
        item = f"{module.name}, {'used' if used else 'new'}"
        yield price_line(LineKind.PART, item, None if used else module.price)
    yield from (price_line(LineKind.PART, str(part.part), part.price) for part in fix.parts)


def _repair(fix: Fix, shop: Shop) -> Iterator[_UnpricedOption]:
    parts = (price_line(LineKind.PART, str(part.part), part.price) for part in fix.parts)
    yield _UnpricedOption(FIT_HERE, "We repair it", (labor_line("Labor", fix.hours, shop), *parts))
    yield _UnpricedOption(LEAVE, "Leave it as it is", note=LEAVE_NOTE)


def _option(
    standard: _UnpricedOption, written: FixOption | None, reason: str, shop: Shop
) -> EstimateOption:
    """Price a standard option, with what the fix writes about it."""
    if written is None:
        return _priced(standard, reason, None, shop)
    lines = tuple(_lines(written, shop)) if _has_price(written) else standard.lines
    option = standard.option if written.option == written.id else str(written.option)
    changed = _UnpricedOption(standard.id, option, lines, str(written.note or standard.note))
    return _priced(changed, reason or str(written.not_offered or ""), written.chance, shop)


def _added(written: FixOption, shop: Shop) -> EstimateOption:
    lines = tuple(_lines(written, shop)) if _has_price(written) else (NO_PRICE,)
    added = _UnpricedOption(written.id, str(written.option), lines, str(written.note or ""))
    return _priced(added, str(written.not_offered or ""), written.chance, shop)


def _has_price(written: FixOption) -> bool:
    return bool(written.hours is not None or written.price or written.parts or written.tow)


def _lines(written: FixOption, shop: Shop) -> Iterator[PriceLine]:
    if written.hours is not None:
        yield labor_line("Labor", written.hours, shop)
    if written.price:
        yield price_line(LineKind.PRICE, "Price", written.price)
    yield from (price_line(LineKind.PART, str(part.part), part.price) for part in written.parts)
    if written.tow:
        yield price_line(LineKind.TOW, "Tow", shop.tow)


def _priced(
    option: _UnpricedOption, reason: str, chance: Decimal | None, shop: Shop
) -> EstimateOption:
    """Add tax and total; an option that isn't offered has its reason and nothing else."""
    if reason:
        return EstimateOption(option.id, option.option, not_offered=reason)
    lines = with_tax(option.lines, shop)
    cost = total_price(lines)
    average = cost_with_comebacks(cost, chance) if cost and chance else None
    return EstimateOption(option.id, option.option, lines, cost, "", option.note, average)
