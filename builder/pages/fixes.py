"""The fixes and other ends of a tree as they stand on its page.

In: a fix or a stop, its tree, the figures. Out: `FixView`, `end_words`.
"""

from dataclasses import dataclass

from builder.model.tree import Fix, Part, Step, Stop
from builder.pages import addresses, words
from builder.pages.page import root_of
from builder.pages.ways import Plan, Target, target


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


def fix_view(plan: Plan, step: Step, fix: Fix, chance: float | None) -> FixView:
    """Prepare one fix."""
    return FixView(
        id=str(step.id),
        number=plan.numbers[step.id],
        text=str(step.text),
        cause=str(fix.cause),
        often=often(chance),
        hours=f"{words.number(fix.hours)} h" if fix.hours is not None else "",
        parts=tuple(_part(plan, part) for part in fix.parts),
        replaces=_replaces(plan, fix),
        verify=tuple(words.sentence(words.required(text)) for text in fix.verify),
        still_there=target(plan, step, fix.still_there) if fix.still_there else None,
        tell=str(fix.tell or ""),
    )


def often(chance: float | None) -> str:
    """Say a chance as people do: `3 in 10`; rarer ends in hundredths."""
    if chance is None:
        return ""
    if chance >= 0.095:
        return f"{round(chance * 10)} in 10"
    return f"{round(chance * 100)} in 100" if chance >= 0.005 else "fewer than 1 in 100"


def end_words(stop: Stop) -> str:
    """Say what an end that mends nothing means."""
    return words.STOPS.get(stop.kind, str(stop.kind))


def _part(plan: Plan, part: Part) -> tuple[str, str]:
    price = words.money(part.price, plan.library.shop) if part.price else "price not known"
    return str(part.part), price


def _replaces(plan: Plan, fix: Fix) -> tuple[str, str, str] | None:
    if not fix.replaces:
        return None
    id_ = str(fix.replaces.module)
    known = id_ in plan.library.modules
    root = root_of(addresses.tree(plan.tree.id))
    href = root + addresses.link(addresses.module(id_)) if known else ""
    return str(fix.replaces.part), words.module_name(id_, plan.library), href
