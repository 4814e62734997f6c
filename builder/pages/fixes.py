"""The fixes and other ends of a tree as they stand on its page.

In: a fix or a stop, its tree, the figures. Out: `FixView`, `end_words`.
"""

from dataclasses import dataclass
from fractions import Fraction

from builder.model.tree import Fix, Part, Step, Stop
from builder.pages import addresses
from builder.pages.facts import Facts
from builder.pages.page import root_of
from builder.pages.ways import Plan, Target, target
from builder.plan.options import Option
from builder.plan.prices import Line
from builder.wording import phrases


@dataclass(frozen=True, slots=True)
class OptionView:
    """An option for the customer, ready to be laid out."""

    option: str
    total: str  # "" where it is not offered
    lines: tuple[tuple[str, str], ...]  # item and amount
    note: str
    not_offered: str
    coming_back: str


@dataclass(frozen=True, slots=True)
class FixView:
    """A fix, ready to be laid out."""

    id: str
    number: int
    text: str
    cause: str
    often: str  # "" where no chance is known
    hours: str
    parts: tuple[tuple[str, str], ...]  # part and price
    replaces: tuple[str, str, str] | None  # new or used, the module's name, its record's address
    verify: tuple[str, ...]
    still_there: Target | None
    tell: str
    options: tuple[OptionView, ...]


def fix_view(plan: Plan, step: Step, fix: Fix, facts: Facts) -> FixView:
    """Prepare one fix."""
    at_fix = facts.minutes.fixes.get(step.id)
    return FixView(
        id=str(step.id),
        number=plan.numbers[step.id],
        text=str(step.text),
        cause=str(fix.cause),
        often=often(at_fix.chance if at_fix else None),
        hours=f"{phrases.number(fix.hours)} h" if fix.hours is not None else "",
        parts=tuple(_part(plan, part) for part in fix.parts),
        replaces=_replaces(plan, fix),
        verify=tuple(phrases.sentence(phrases.required(text)) for text in fix.verify),
        still_there=target(plan, step, fix.still_there) if fix.still_there else None,
        tell=str(fix.tell or ""),
        options=tuple(_option(plan, option) for option in facts.options.get(step.id, ())),
    )


def often(chance: Fraction | None) -> str:
    """Say a chance as people do: `3 in 10`; rarer ends in hundredths."""
    if chance is None:
        return ""
    if chance >= 0.095:
        return f"{round(chance * 10)} in 10"
    return f"{round(chance * 100)} in 100" if chance >= 0.005 else "fewer than 1 in 100"


def end_words(stop: Stop) -> str:
    """Say what an end that mends nothing means."""
    return phrases.STOPS.get(stop.kind, str(stop.kind))


def _option(plan: Plan, option: Option) -> OptionView:
    shop = plan.library.shop
    known = phrases.money(option.total, shop) if option.total else "price not known"
    back = phrases.money(option.coming_back, shop) if option.coming_back else ""
    return OptionView(
        option=option.option,
        total="" if option.not_offered else known,
        lines=tuple((line.item, _amount(plan, line)) for line in option.lines),
        note=option.note,
        not_offered=option.not_offered,
        coming_back=back,
    )


def _amount(plan: Plan, line: Line) -> str:
    return phrases.money(line.amount, plan.library.shop) if line.amount else "not known"


def _part(plan: Plan, part: Part) -> tuple[str, str]:
    price = phrases.money(part.price, plan.library.shop) if part.price else "price not known"
    return str(part.part), price


def _replaces(plan: Plan, fix: Fix) -> tuple[str, str, str] | None:
    if not fix.replaces:
        return None
    id_ = str(fix.replaces.module)
    known = id_ in plan.library.modules
    root = root_of(addresses.tree(plan.tree.id))
    href = root + addresses.link(addresses.module(id_)) if known else ""
    return str(fix.replaces.part), phrases.module_name(id_, plan.library), href
