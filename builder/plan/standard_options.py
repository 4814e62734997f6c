"""The options that every fix has, before they are priced.

In: a fix, the module that it replaces if any, the shop, the advice on driving. Out:
`UnpricedOption`s in the order they are shown, each with its lines.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from builder.model.ends import Drive, Fix, PartKind
from builder.model.module_record import Module, UsedPart
from builder.model.shop import Shop
from builder.plan.drive_advice import DriveAdvice
from builder.plan.prices import LineKind, PriceLine, labor_line, part_line, price_line
from builder.plan.refused_options import DRIVE_IN, FIT_HERE, LEAVE, TOWED_IN
from builder.wording.drive_condition import condition_of
from builder.wording.sentences import uncapitalized
from builder.wording.value_text import money_text

USED_NOTES = {
    UsedPart.NO: "The part must be new: a used one can't be set up.",
    UsedPart.UNKNOWN: "The part must be new: it's unknown if a used one can be set up.",
    UsedPart.IF_RELEASED: "A used part can be set up only if it was released first.",
}
OWN_PART = (
    "If your part is bad, its setup fails and is owed all the same. "
    "We can't guarantee a part that we didn't supply."
)
WORSE = "It may get worse."  # where the tree gives no reason of its own


@dataclass(frozen=True, slots=True)
class UnpricedOption:
    """An option before fee, tax and total."""

    id: str
    option: str
    lines: tuple[PriceLine, ...] = ()
    note: str = ""


def standard_options(
    fix: Fix, module: Module | None, shop: Shop, advice: DriveAdvice | None
) -> Iterator[UnpricedOption]:
    """Yield the options of a fix; one whose module has no record is a repair like any other."""
    if module:
        yield from _of_module(fix, module, shop, advice)
    else:
        yield from _repair(fix, shop)
    yield _left(shop, advice)


def _of_module(
    fix: Fix, module: Module, shop: Shop, advice: DriveAdvice | None
) -> Iterator[UnpricedOption]:
    hours = module.hours
    install_hours = fix.hours if fix.hours is not None else hours.get("fit")
    install = labor_line("Installation", install_hours, shop)
    setup = (
        labor_line("Setup", hours.get("set_up"), shop),
        labor_line("Verification", hours.get("verify"), shop),
    )
    used = USED_NOTES.get(module.used_part, "")
    if module.used_part is UsedPart.IF_RELEASED and module.released_by:
        used = f"{used} It is released by {uncapitalized(module.released_by)}."
    used_here = used if _kind_of(fix) is PartKind.USED else ""
    own_part = f"{used} {OWN_PART}".strip()
    here = (install, *setup, *_parts(fix, module))
    yield UnpricedOption(FIT_HERE, "We install it and set it up", here, used_here)
    yield UnpricedOption(DRIVE_IN, "You install it and drive in; we set it up", setup, own_part)
    yield UnpricedOption(
        TOWED_IN,
        "You install it and have it towed in; we set it up",
        (*setup, *_tows(shop, advice)),
        own_part,
    )


def _tows(shop: Shop, advice: DriveAdvice | None) -> Iterator[PriceLine]:
    """Price the way here; a car that must not be driven has to get home first."""
    is_stuck_here = advice is not None and advice.drive is Drive.NO
    for item in ("Tow home", "Tow back to us") if is_stuck_here else ("Tow",):
        yield price_line(LineKind.TOW, item, shop.tow)


def _left(shop: Shop, advice: DriveAdvice | None) -> UnpricedOption:
    """Return what it means to leave it: what the tree says of driving, where it says something."""
    condition, why = condition_of(advice.why) if advice else ("", "")
    note = f"Not repaired. {why or WORSE}"
    if advice and condition and advice.drive is not Drive.NO:
        price = f", {money_text(shop.tow, shop)} if we arrange it" if shop.tow else ""
        note = f"{note} Don't drive it if {condition}. Then have it towed{price}."
    return UnpricedOption(LEAVE, "Leave it as it is", note=note)


def _kind_of(fix: Fix) -> PartKind:
    """Return what kind of module a fix installs."""
    own = next((option.part for option in fix.options if option.id == FIT_HERE), None)
    written = fix.replaces.part if fix.replaces else PartKind.NEW
    return own or next((kind for kind in PartKind if kind == written), PartKind.NEW)


def _parts(fix: Fix, module: Module) -> Iterator[PriceLine]:
    """Price the module and the fix's other parts; only a new module has a price in the record."""
    kind, names = _kind_of(fix), (module.id, str(module.name))
    if not any(str(part.part) in names for part in fix.parts):
        price = module.price if kind is PartKind.NEW else None
        yield price_line(LineKind.PART, f"{module.name}, {kind}", price)
    for part in fix.parts:
        yield part_line(part, kind if str(part.part) in names else PartKind.NEW)


def _repair(fix: Fix, shop: Shop) -> Iterator[UnpricedOption]:
    parts = (part_line(part, _kind_of(fix)) for part in fix.parts)
    yield UnpricedOption(FIT_HERE, "We repair it", (labor_line("Labor", fix.hours, shop), *parts))
