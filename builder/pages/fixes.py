"""The fixes and stops of a tree as its page shows them.

In: a fix or a stop, its tree, the analysis. Out: `FixView`, `stop_text`.
"""

from dataclasses import dataclass
from fractions import Fraction

from builder.model.ends import Fix, Part, Proof, Stop
from builder.model.tree import Step
from builder.pages import addresses
from builder.pages.analysis import TreeAnalysis
from builder.pages.branches import BranchTarget, TreeContext, branch_target
from builder.plan.estimate_options import EstimateOption
from builder.plan.prices import PriceLine
from builder.wording.labels import STOP_LABELS
from builder.wording.sentences import capitalized, joined, module_name, verification_text
from builder.wording.value_text import money_text, number_text
from builder.wording.vehicle_words import driving_text


@dataclass(frozen=True, slots=True)
class OptionView:
    """An estimate option, ready to be laid out."""

    option: str
    total: str  # "" where the shop doesn't offer it
    lines: tuple[tuple[str, str], ...]  # item and amount
    note: str
    not_offered: str
    coming_back: str  # average cost with comebacks


@dataclass(frozen=True, slots=True)
class FixView:
    """A fix, ready to be laid out."""

    id: str
    number: int
    text: str
    cause: str
    likelihood: str  # "" where no chance is known
    hours: str
    parts: tuple[tuple[str, str], ...]  # part and price
    replaces: tuple[str, str, str] | None  # new or used, the module's name, its record's address
    verify: tuple[str, ...]
    still_there: BranchTarget | None
    tell: str
    proved_by: tuple[str, ...]
    torques: tuple[str, ...]
    driving: str  # "" where it is as the tree says
    options: tuple[OptionView, ...]


def fix_view(context: TreeContext, step: Step, fix: Fix, analysis: TreeAnalysis) -> FixView:
    """Prepare one fix."""
    at_fix = analysis.minutes.fixes.get(step.id)
    after = fix.still_there
    return FixView(
        id=str(step.id),
        number=context.numbers[step.id],
        text=str(step.text),
        cause=str(fix.cause),
        likelihood=likelihood(at_fix.chance if at_fix else None),
        hours=f"{number_text(fix.hours)} h" if fix.hours is not None else "",
        parts=tuple(_part(context, part) for part in fix.parts),
        replaces=_replaces(context, fix),
        verify=tuple(capitalized(verification_text(one)) for one in fix.verify),
        still_there=branch_target(context, step, after) if after else None,
        tell=str(fix.tell or ""),
        proved_by=tuple(_proof(context, proof) for proof in fix.proved_by),
        torques=tuple(name.replace("-", " ") for name in fix.torques),
        driving=driving_text(fix.drive, fix.why),
        options=tuple(_option(context, option) for option in analysis.options.get(step.id, ())),
    )


def _proof(context: TreeContext, proof: Proof) -> str:
    number = context.numbers.get(str(proof.step))
    step = f"step {number}" if number else str(proof.step)
    return f"{step}: {joined(proof.results, 'or')}"


def likelihood(chance: Fraction | None) -> str:
    """Write a chance as people say it: `3 in 10`; rare ones in hundredths."""
    if chance is None:
        return ""
    if chance >= 0.095:
        return f"{round(chance * 10)} in 10"
    return f"{round(chance * 100)} in 100" if chance >= 0.005 else "fewer than 1 in 100"


def stop_text(stop: Stop) -> str:
    """Return what a stop of this kind means."""
    kind = STOP_LABELS.get(stop.kind, str(stop.kind))
    driving = driving_text(stop.drive, stop.why)
    return f"{kind}. {driving}".strip(". ") if driving else kind


def _option(context: TreeContext, option: EstimateOption) -> OptionView:
    shop = context.library.shop
    total = money_text(option.total, shop) if option.total else "price unknown"
    back = money_text(option.cost_with_comebacks, shop) if option.cost_with_comebacks else ""
    return OptionView(
        option=option.option,
        total="" if option.not_offered else total,
        lines=tuple((line.item, _amount(context, line)) for line in option.lines),
        note=" ".join(filter(None, [_condition(option), option.note])),
        not_offered=option.not_offered,
        coming_back=back,
    )


def _condition(option: EstimateOption) -> str:
    return f"Only if {option.only_if}." if option.only_if else ""


def _amount(context: TreeContext, line: PriceLine) -> str:
    return money_text(line.amount, context.library.shop) if line.amount else "unknown"


def _part(context: TreeContext, part: Part) -> tuple[str, str]:
    shop = context.library.shop
    price = money_text(part.price, shop) if part.price else "price unknown"
    when = f", only if {part.only_if}" if part.only_if else ""
    service = " (a service)" if part.is_service else ""
    return f"{part.part}{service}{when}", price


def _replaces(context: TreeContext, fix: Fix) -> tuple[str, str, str] | None:
    if not fix.replaces:
        return None
    id_ = str(fix.replaces.module)
    here, record = addresses.page_of(context.tree), addresses.module_path(id_)
    href = addresses.href(here, record) if id_ in context.library.modules else ""
    return str(fix.replaces.part), module_name(id_, context.library), href
