"""A ready tree or an article that nobody has followed at a vehicle for longer than the shop allows
(`review_good_for` in `site_config/shop.yml`), or never.

Why: Software, parts and vehicles change; what was right two years ago may send people wrong now.

Wrong:

    status: ready
    reviewed: {by: M. Lind, date: 2024-01-15}
    steps:
      belt:
        check: Is the belt tight?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Right:

    status: ready
    reviewed: {by: M. Lind, date: 2026-08-15}
    steps:
      belt:
        check: Is the belt tight?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Fix: Follow it at a vehicle, correct what has changed, and write name and date into `reviewed`.
"""

import re
from calendar import monthrange
from collections.abc import Iterator
from datetime import date

from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.model.text import Position
from builder.model.tree import Signed, Status
from builder.rules.shared.rule import Family, Rule
from builder.rules.template_text import TEMPLATE_TEXTS

RULE = Rule(
    name="review-too-old",
    family=Family.UPKEEP,
    severity=Severity.WARNING,
    summary="A review older than the shop allows, or none.",
)
LEAP_DAY = re.compile(r"\d{4}-02-29")  # any other day that isn't one, the reader knows
WHY = "what was right then may send people wrong now"
NEVER = "a mistake that only shows at a vehicle is still in it"
HINT = "follow it at a vehicle, and write name and date into `reviewed`"


def check_library(library: Library, today: date) -> Iterator[Finding]:
    """Yield a finding for every ready tree and article without a recent review."""
    months = library.shop.review_months
    for listing in library.listings.values():
        if listing.status is Status.READY and _is_due(listing.reviewed, months, today):
            tree = library.trees[listing.id]
            if tree.written and tree.written.by in TEMPLATE_TEXTS:
                continue  # `template-text` speaks first: it isn't ready to be reviewed
            yield from _review(tree.reviewed, tree.at, months, today)
    for article in library.how_tos.values():
        yield from _review(article.reviewed, article.at, months, today)


def _is_due(reviewed: str, months: int, today: date) -> bool:
    """Whether there is a finding; most reviews are recent, and their summaries are not needed."""
    day = _date(reviewed)
    return day is None or today > _months_later(day, months)


def _review(reviewed: Signed | None, at: Position, months: int, today: date) -> Iterator[Finding]:
    if reviewed is None:
        yield RULE.finding(at, "nobody has reviewed this", NEVER, HINT)
        return
    day = _date(reviewed.date)
    if day is None and not LEAP_DAY.fullmatch(reviewed.date):
        return  # the reader says so
    if day is None:
        message = f"`{reviewed.date}` is not a date"
        yield RULE.finding(reviewed.date.at, message, WHY, "write it as `2026-03-02`")
    elif _months_later(day, months) < today:
        message = f"the last review was on {day}; it was good for {months} months"
        yield RULE.finding(reviewed.date.at, message, WHY, HINT)


def _date(text: str) -> date | None:
    try:
        return date.fromisoformat(text)
    except ValueError:
        return None


def _months_later(day: date, months: int) -> date:
    """Return the same day some months later, or the last of that month."""
    year, month = divmod(day.year * 12 + day.month - 1 + months, 12)
    if year > date.max.year:
        return date.max
    return date(year, month + 1, min(day.day, monthrange(year, month + 1)[1]))
