"""The options that a customer has once a fix is known: what each costs, or why it is not offered.

In: a `Tree`, one of its fixes, the `Library`. Out: `Option`s in the order in which they are told.

A fix that replaces a module has four from the module's set-up record: fitted and set up here; the
customer fits it and drives in; the customer fits it and it is towed in; left as it is. Any other
fix has two: repaired here, and left as it is. `options:` in the fix takes the place of the one of
the same name, or adds one; where it names no hours, price, parts or tow, the sum stays as it was.

What is not safe or cannot work is not offered, whatever the fix says: a vehicle is not driven in
when its record does not say that it may be, or when steering, brakes, restraints or high voltage
depend on the module; it is then not left as it is either. Nobody is asked to work on restraints or
high voltage at home. A used part is not fitted where it cannot be set up, or nobody knows. A repair
without a record is not left as it is in a tree whose system is one of those words, unless the fix
writes a `leave` of its own.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from builder.model.knowledge import DriveBefore, Module, SafetySystem, UsedPart
from builder.model.library import Library
from builder.model.shop import Shop
from builder.model.tree import Fix, FixOption, Money, Tree
from builder.plan.prices import Kind, Line, labour, priced, total, with_coming_back, with_tax
from builder.wording.labels import SAFETY_TEXTS

FIT_HERE, DRIVE_IN, TOWED_IN, LEAVE = "fit-here", "drive-in", "towed-in", "leave"
NOT_AT_HOME = {
    SafetySystem.RESTRAINTS: "airbags can go off",
    SafetySystem.HIGH_VOLTAGE: "high voltage is for trained techs",
}
USED_REFUSED = {
    UsedPart.NO: "A used part cannot be set up on this vehicle",
    UsedPart.UNKNOWN: "It is not known whether a used part can be set up",
}
USED_NOTES = {
    UsedPart.NO: "The part has to be new: a used one cannot be set up.",
    UsedPart.UNKNOWN: "The part has to be new: it is not known whether a used one can be set up.",
    UsedPart.IF_RELEASED: "A used part can be set up only if it was released first.",
}
OWN_PART = "Set-up needs a sound part. We cannot guarantee a part that we did not supply."
LEFT = "The fault stays as it was found."
NO_PRICE = Line(Kind.PRICE, "Price", None)


@dataclass(frozen=True, slots=True)
class Option:
    """One option: what it costs, line by line, or why it is not offered."""

    id: str
    option: str  # as the customer reads it
    lines: tuple[Line, ...] = ()
    total: Money | None = None  # None: not offered, or a line is not known
    not_offered: str = ""  # the reason, or nothing
    note: str = ""
    coming_back: Money | None = None  # with the chance of having to do it again


@dataclass(frozen=True, slots=True)
class _Standard:
    """An option before it is priced."""

    id: str
    option: str
    lines: tuple[Line, ...] = ()
    note: str = ""


def options(tree: Tree, step_id: str, library: Library) -> tuple[Option, ...]:
    """Return the options of a fix; a step that is no fix has none."""
    fix = tree.steps[step_id].body
    if not isinstance(fix, Fix):
        return ()
    module = library.modules.get(fix.replaces.module) if fix.replaces else None
    standard = tuple(
        _of_module(fix, module, library.shop) if module else _repair(fix, library.shop)
    )
    written = {option.id: option for option in fix.options}
    known = {one.id for one in standard}
    found = [
        _option(one, written.get(one.id), refusal(one.id, tree, fix, module), library.shop)
        for one in standard
    ]
    return (*found, *(_added(one, library.shop) for one in fix.options if one.id not in known))


def refusal(option_id: str, tree: Tree, fix: Fix, module: Module | None) -> str:
    """Return why a standard option of a fix is not offered, or nothing."""
    if module is None or fix.replaces is None:
        said = any(option.id == option_id for option in fix.options)
        return _depends(_safety_of(tree)) if option_id == LEAVE and not said else ""
    if option_id == LEAVE:
        return _depends(module.safety)
    if option_id == FIT_HERE:
        return USED_REFUSED.get(module.used_part, "") if fix.replaces.part == "used" else ""
    if option_id in (DRIVE_IN, TOWED_IN) and module.safety in NOT_AT_HOME:
        return f"Not a job to do at home: {NOT_AT_HOME[module.safety]}"
    return _not_to_be_driven(module) if option_id == DRIVE_IN else ""


def _not_to_be_driven(module: Module) -> str:
    if module.drive_before_set_up is DriveBefore.YES:
        return _depends(module.safety)
    if module.drive_before_set_up is DriveBefore.NO:
        return str(module.drive_why or "Not safe to drive before the set-up")
    return "It is not known whether it may be driven before the set-up"


def _safety_of(tree: Tree) -> SafetySystem:
    """Return what depends on a tree's system, if that is named like a safety system."""
    known = {str(system): system for system in SafetySystem}
    return known.get(tree.system, SafetySystem.NONE)


def _depends(safety: SafetySystem) -> str:
    if safety is SafetySystem.NONE:
        return ""
    return f"Not safe to drive: {SAFETY_TEXTS[safety]}"


def _of_module(fix: Fix, module: Module, shop: Shop) -> Iterator[_Standard]:
    hours = module.hours
    fit = labour("Fitting", fix.hours if fix.hours is not None else hours.get("fit"), shop)
    set_up = (
        labour("Set-up", hours.get("set_up"), shop),
        labour("Verification", hours.get("verify"), shop),
    )
    used = USED_NOTES.get(module.used_part, "")
    if module.used_part is UsedPart.IF_RELEASED and module.released_by:
        used = f"{used} That takes: {module.released_by}."
    here = used if fix.replaces and fix.replaces.part == "used" else ""
    yours = f"{used} {OWN_PART}".strip()
    tow = priced(Kind.TOW, "Tow", shop.tow)
    yield _Standard(FIT_HERE, "Fitted and set up here", (fit, *set_up, *_parts(fix, module)), here)
    yield _Standard(DRIVE_IN, "You fit it, drive in, we set it up", set_up, yours)
    yield _Standard(TOWED_IN, "You fit it, it is towed in, we set it up", (*set_up, tow), yours)
    yield _Standard(LEAVE, "Left as it is", note=LEFT)


def _parts(fix: Fix, module: Module) -> Iterator[Line]:
    """The module and what else the fix takes; a used module has no price in the record."""
    replaces = fix.replaces
    if not any(str(part.part) in (module.id, str(module.name)) for part in fix.parts):
        used = replaces is not None and replaces.part == "used"
        item = f"{module.name}, {'used' if used else 'new'}"
        yield priced(Kind.PART, item, None if used else module.price)
    yield from (priced(Kind.PART, str(part.part), part.price) for part in fix.parts)


def _repair(fix: Fix, shop: Shop) -> Iterator[_Standard]:
    parts = (priced(Kind.PART, str(part.part), part.price) for part in fix.parts)
    yield _Standard(FIT_HERE, "Repaired here", (labour("Labour", fix.hours, shop), *parts))
    yield _Standard(LEAVE, "Left as it is", note=LEFT)


def _option(standard: _Standard, written: FixOption | None, reason: str, shop: Shop) -> Option:
    """Price a standard option, with what the fix says about it."""
    if written is None:
        return _sum(standard, reason, None, shop)
    lines = tuple(_lines(written, shop)) if _has_a_price(written) else standard.lines
    option = standard.option if written.option == written.id else str(written.option)
    said = _Standard(standard.id, option, lines, str(written.note or standard.note))
    return _sum(said, reason or str(written.not_offered or ""), written.chance, shop)


def _added(written: FixOption, shop: Shop) -> Option:
    lines = tuple(_lines(written, shop)) if _has_a_price(written) else (NO_PRICE,)
    added = _Standard(written.id, str(written.option), lines, str(written.note or ""))
    return _sum(added, str(written.not_offered or ""), written.chance, shop)


def _has_a_price(written: FixOption) -> bool:
    return bool(written.hours is not None or written.price or written.parts or written.tow)


def _lines(written: FixOption, shop: Shop) -> Iterator[Line]:
    if written.hours is not None:
        yield labour("Labour", written.hours, shop)
    if written.price:
        yield priced(Kind.PRICE, "Price", written.price)
    yield from (priced(Kind.PART, str(part.part), part.price) for part in written.parts)
    if written.tow:
        yield priced(Kind.TOW, "Tow", shop.tow)


def _sum(standard: _Standard, reason: str, chance: Decimal | None, shop: Shop) -> Option:
    """Add tax and total; what is not offered has its reason and nothing else."""
    if reason:
        return Option(standard.id, standard.option, not_offered=reason)
    lines = with_tax(standard.lines, shop)
    cost = total(lines)
    again = with_coming_back(cost, chance) if cost and chance else None
    return Option(standard.id, standard.option, lines, cost, "", standard.note, again)
