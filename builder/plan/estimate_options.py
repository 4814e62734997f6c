"""The estimate options for a fix: what each costs, or why it isn't offered.

In: a `Tree`, one of its fixes, the `Library`. Out: `EstimateOption`s in the order they are shown,
what leaves the fault as it is at the end.

A fix that replaces a module has four, from the module's setup record: we install it and set it up;
the customer installs it and drives in; the customer installs it and it is towed in; leave it as it
is. Nobody has a car towed in that is safe to drive and may be driven in; one that must not be
driven is here, so it is towed twice: home, and back. Any other fix has two: we repair it, or leave
it as it is. An entry in the fix's `options:` replaces the option of the same name, or adds one; if
it has no hours, price, parts or tow, the sum stays the same. Every option owes the shop's diagnosis
fee.

An option that is unsafe or can't work is not offered, whatever the fix writes: see
`refused_options`.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from builder.model.ends import Drive, Fix, FixOption, Money, PartKind
from builder.model.library import Library
from builder.model.shop import Shop
from builder.model.tree import Tree
from builder.plan.drive_advice import DriveAdvice, drive_advice
from builder.plan.prices import (
    LineKind,
    PriceLine,
    cost_with_comebacks,
    difference,
    labor_line,
    part_line,
    price_line,
    total_price,
    with_tax,
)
from builder.plan.refused_options import (
    DRIVE_IN,
    FIT_HERE,
    LEAVE,
    TOWED_IN,
    part_reason,
    refusal_reason,
)
from builder.plan.standard_options import UnpricedOption, standard_options
from builder.wording.value_text import money_text

NO_REPAIR = "No repair now: I know not to drive it, and have it towed"
OWN_TOW = "The tow is not in this sum, and yours to pay"
NO_PRICE = PriceLine(LineKind.PRICE, "Price", None)
DIAGNOSIS, FLAT = "Diagnosis", "Diagnosis, flat charge"
PARTLY_ELSEWHERE = (DRIVE_IN, TOWED_IN)  # the part and its installation are not in the price


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
    saves: Money | None = None  # against having all of it done here; below 0 it costs more
    only_if: str = ""  # what only the work shows
    if_not: Money | None = None  # what is owed at most if it then can't be done


def estimate_options(
    tree: Tree, step_id: str, library: Library, advice: DriveAdvice | None = None
) -> tuple[EstimateOption, ...]:
    """Return the options of a fix; any other step has none.

    `advice` is what holds for driving after a walk; without it the tree's own holds.
    """
    fix = tree.steps[step_id].body
    if not isinstance(fix, Fix):
        return ()
    advice = advice or drive_advice(tree, step_id)
    shop = library.shop
    module = library.modules.get(fix.replaces.module) if fix.replaces else None
    standard = tuple(standard_options(fix, module, shop, advice))
    written = {option.id: option for option in fix.options}
    offered = []
    for option in standard:
        reason = refusal_reason(option.id, tree, fix, module, advice)
        own = written.get(option.id)
        if own and option.id == LEAVE and advice and not reason:
            own = replace(own, not_offered=None)  # `drive` decides
        reason = reason or (part_reason(own, module) if own else "")
        offered.append(_option(option, own, reason, shop))
    standard_ids = {option.id for option in standard}
    added = [
        _added(option, part_reason(option, module), shop)
        for option in fix.options
        if option.id not in standard_ids
    ]
    every = (*_without_needless_tow(offered, advice), *added)
    leave_last = sorted(every, key=lambda option: option.id == LEAVE)
    return _with_savings(tuple(leave_last), shop)


def _without_needless_tow(
    options: Sequence[EstimateOption], advice: DriveAdvice | None
) -> Iterator[EstimateOption]:
    """Yield the options; without the tow where the car is safe to drive and may be driven in."""
    drives_in = any(one.id == DRIVE_IN and not one.not_offered for one in options)
    is_needless = drives_in and advice is not None and advice.drive is Drive.YES
    return (one for one in options if one.id != TOWED_IN or not is_needless)


def declined(shop: Shop) -> EstimateOption:
    """Return what is owed where a vehicle that isn't safe to drive is not repaired."""
    price = f": {money_text(shop.tow, shop)} if we arrange it" if shop.tow else ""
    return _priced(UnpricedOption(LEAVE, NO_REPAIR, note=f"{OWN_TOW}{price}."), "", None, shop)


def _option(
    standard: UnpricedOption, written: FixOption | None, reason: str, shop: Shop
) -> EstimateOption:
    """Price a standard option, with what the fix writes about it."""
    if written is None:
        return _priced(standard, reason, None, shop)
    tows = tuple(line for line in standard.lines if line.kind is LineKind.TOW)
    lines = tuple(_lines(written, shop, tows)) if _has_price(written) else standard.lines
    option = standard.option if written.option == written.id else str(written.option)
    changed = UnpricedOption(standard.id, option, lines, str(written.note or standard.note))
    return _priced(changed, str(written.not_offered or "") or reason, written, shop)


def _added(written: FixOption, reason: str, shop: Shop) -> EstimateOption:
    lines = tuple(_lines(written, shop)) if _has_price(written) else (NO_PRICE,)
    added = UnpricedOption(written.id, str(written.option), lines, str(written.note or ""))
    return _priced(added, str(written.not_offered or "") or reason, written, shop)


def _has_price(written: FixOption) -> bool:
    return bool(written.hours is not None or written.price or written.parts or written.tow)


def _lines(written: FixOption, shop: Shop, tows: tuple[PriceLine, ...] = ()) -> Iterator[PriceLine]:
    """Price what a fix writes; `tows` are those of the standard option of that name."""
    if written.hours is not None:
        yield labor_line("Labor", written.hours, shop)
    if written.price:
        yield price_line(LineKind.PRICE, "Price", written.price)
    yield from (part_line(part, written.part or PartKind.NEW) for part in written.parts)
    if written.tow:
        yield from tows or [price_line(LineKind.TOW, "Tow", shop.tow)]


def _priced(
    option: UnpricedOption, reason: str, written: FixOption | None, shop: Shop
) -> EstimateOption:
    """Add fee, tax and total; an option that isn't offered has its reason and nothing else."""
    if reason:
        return EstimateOption(option.id, option.option, not_offered=reason)
    fee = _fee(shop)
    lines = with_tax((*option.lines, *([fee] if fee.amount else [])), shop)
    cost, chance = total_price(lines), written.chance if written else None
    priced = EstimateOption(
        option.id,
        option.option,
        lines,
        cost,
        note=option.note,
        cost_with_comebacks=cost_with_comebacks(cost, chance) if cost and chance else None,
    )
    if written is None or not written.only_if:
        return priced
    return replace(priced, only_if=str(written.only_if), if_not=_work_alone(lines, shop))


def _work_alone(lines: Sequence[PriceLine], shop: Shop) -> Money | None:
    """Return the price of labor and diagnosis, with their tax if work is taxed."""
    done = [one for one in lines if one.kind in (LineKind.LABOR, LineKind.FEE)]
    return total_price(with_tax(done, shop))


def _fee(shop: Shop) -> PriceLine:
    fee = shop.diagnosis_fee
    return price_line(LineKind.FEE, FLAT if fee and fee.low == fee.high else DIAGNOSIS, fee)


def _with_savings(options: tuple[EstimateOption, ...], shop: Shop) -> tuple[EstimateOption, ...]:
    """Add what is saved by having a part of the work done elsewhere, after tow and setup."""
    here = next((_compared(option, shop) for option in options if option.id == FIT_HERE), None)
    totals = {one.id: _compared(one, shop) for one in options if one.id in PARTLY_ELSEWHERE}
    return tuple(
        replace(option, saves=difference(here, total))
        if here and (total := totals.get(option.id))
        else option
        for option in options
    )


def _compared(option: EstimateOption, shop: Shop) -> Money | None:
    """Return the total to compare: without a fee that is a range, as it is the same in both.

    Where everything is taxed, that may round to a cent beside the difference of the totals.
    """
    fee = next((line.amount for line in option.lines if line.kind is LineKind.FEE), None)
    if option.total is None or fee is None or fee.low == fee.high:
        return option.total
    lines = (line for line in option.lines if line.kind not in (LineKind.FEE, LineKind.TAX))
    return total_price(with_tax(lines, shop))
