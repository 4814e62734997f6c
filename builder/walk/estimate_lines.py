"""What the story says of the estimate: hours, what was chosen and declined.

In: the options of a fix, what the record has of the job. Out: text and lines; blanks for a pen
where nobody recorded it.
"""

import re
from collections.abc import Mapping, Sequence
from dataclasses import replace

from builder.model.shop import Shop
from builder.plan.estimate_options import EstimateOption, declined
from builder.plan.prices import LineKind
from builder.plan.refused_options import FIT_HERE, LEAVE
from builder.walk.complaint_lines import NEXT, NOTHING, REST
from builder.walk.job_details import BLANK
from builder.wording.one_of_several import narrowed_name
from builder.wording.value_text import money_text

NOTHING_NOW = "No repair now"  # instead of leaving it, where it isn't safe
_TAKEN = re.compile(r"second diagnosis|\bquoted\b|appointment|booked", re.IGNORECASE)
LINE = 90  # characters that are sure to stand in one line


def hours_text(options: Sequence[EstimateOption]) -> str:
    """Return the hours of the repair as estimated; "" where they aren't known."""
    here = next((one for one in options if one.id == FIT_HERE), None)
    hours = [line.hours for line in here.lines if line.hours is not None] if here else []
    return f"{sum(hours):f}" if hours else ""


def with_known_parts(
    options: Sequence[EstimateOption], known: Sequence[str]
) -> tuple[EstimateOption, ...]:
    """Return options in which a part that may be one of several is named as the one it was."""
    return tuple(
        replace(
            option,
            lines=tuple(
                replace(line, name=narrowed_name(line.name, known))
                if line.kind is LineKind.PART
                else line
                for line in option.lines
            ),
        )
        for option in options
    )


def chosen_option(options: Sequence[EstimateOption], chosen: str) -> EstimateOption | None:
    """Return the option that was chosen, by its ID or in words: `We repair it, $276.00`."""
    if not chosen:
        return None
    offered = [one for one in options if not one.not_offered]
    words = chosen.casefold()
    named = [one for one in offered if chosen == one.id or words == one.option.casefold()]
    begun = [one for one in offered if words.startswith(f"{one.option.casefold()},")]
    return next(iter((*named, *begun)), None)


def choice_lines(
    options: Sequence[EstimateOption], job: Mapping[str, str], shop: Shop
) -> list[str]:
    """Return what the customer chose and turned down; blanks where nobody recorded it."""
    if not options:
        return []
    chosen, own = job.get("chosen", ""), job.get("declined", "")
    option = chosen_option(options, chosen)
    offered = [one for one in options if not one.not_offered]
    is_left = option is None and chosen == LEAVE  # where it isn't safe, that is not offered
    name = _with_total(option, shop) if option else NOTHING_NOW if is_left else chosen
    others = [one.option for one in offered if one is not option] if option or is_left else []
    turned_down = [one for one in others if one.casefold() not in own.casefold()]
    down = "; ".join(filter(None, [*turned_down, own, _second_declined(own, job, shop)]))
    if not name and not down:
        return [f"Chosen: {BLANK * 2} declined: {BLANK * 2}"]
    lines = [f"Chosen: {name or BLANK * 2}"]
    if down or not (option or is_left):
        lines.append(f"Declined: {down or BLANK * 2}")
    return [". ".join(lines)] if sum(map(len, lines)) <= LINE else lines


def _second_declined(own: str, job: Mapping[str, str], shop: Shop) -> str:
    """Return the second diagnosis that was offered for the rest of a complaint, and not taken."""
    rest, becomes = job.get(REST, ""), job.get(NEXT, "")
    said = f"{own} {job.get('chosen', '')} {becomes}"
    owed = declined(shop).total
    if not rest or rest.casefold() == NOTHING or not owed or not owed.high or _TAKEN.search(said):
        return ""
    return f"second diagnosis, for “{rest}”, {money_text(owed, shop)}"


def _with_total(option: EstimateOption, shop: Shop) -> str:
    total = f", {money_text(option.total, shop)}" if option.total else ""
    return f"{option.option}{total}"
