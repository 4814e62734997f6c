"""A review that can't have happened as written: in the future, before the tree was written, or by
its own author.

Why: A review means that someone else followed the tree at a vehicle; people rely on it without
looking again.

Wrong:

    status: ready
    written: {by: R. Osei, date: 2026-03-02}
    reviewed: {by: R. Osei, date: 2026-08-15}
    steps:
      belt:
        check: Is the belt tight?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Right:

    status: ready
    written: {by: R. Osei, date: 2026-03-02}
    reviewed: {by: M. Lind, date: 2026-08-15}
    steps:
      belt:
        check: Is the belt tight?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Fix: Correct the date or the name. Where nobody else is in the shop, have a colleague from another
one look at it, or silence the rule on that line and say why.
"""

from collections.abc import Iterator
from datetime import date, timedelta

from builder.model.finding import Finding, Related, Severity
from builder.model.library import Library
from builder.model.text import Text
from builder.model.tree import Signed, Status
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="review-in-doubt",
    family=Family.UPKEEP,
    severity=Severity.WARNING,
    summary="A review in the future, before the writing, or by the author.",
)
WHY = "techs rely on the review, and nobody can have followed the tree then"
A_DAY = timedelta(days=1)  # a reviewer may be a time zone ahead


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for a review by the author, or one older than the tree."""
    written, reviewed = facts.tree.written, facts.tree.reviewed
    if not written or not reviewed or facts.tree.status is not Status.READY:
        return
    first, second = _date(written.date), _date(reviewed.date)
    if first and second and second < first:
        yield RULE.finding(
            reviewed.date.at,
            f"reviewed on {second}, but written on {first}",
            WHY,
            "correct the date that is wrong",
            Related(written.date.at, "written here"),
        )
    if _name(reviewed.by) and _name(reviewed.by) == _name(written.by):
        yield RULE.finding(
            reviewed.by.at,
            f"`{reviewed.by}` wrote this tree and reviewed it",
            "authors read what they meant, not what they wrote; a second pair of eyes finds it",
            "have a colleague follow it at a vehicle, and write that name here",
            Related(written.by.at, "the author"),
        )


def check_library(library: Library, today: date) -> Iterator[Finding]:
    """Yield a finding for every review in the future."""
    for listing in library.listings.values():
        if listing.status is Status.READY and (_date(listing.reviewed) or today) > today + A_DAY:
            yield from _future(library.trees[listing.id].reviewed, today)
    for article in library.how_tos.values():
        yield from _future(article.reviewed, today)


def _future(reviewed: Signed | None, today: date) -> Iterator[Finding]:
    day = _date(reviewed.date) if reviewed else None
    if reviewed and day and day > today + A_DAY:
        message = f"the review date {day} is after today, {today}"
        hint = f"write the day of the review; {_likely(day, today)}"
        yield RULE.finding(reviewed.date.at, message, WHY, hint)


def _likely(day: date, today: date) -> str:
    """Return what the author may have meant: day and month swapped, or another year."""
    if day.day <= 12 and date(day.year, day.day, day.month) <= today:
        return f"did you mean {date(day.year, day.day, day.month)}?"
    return (
        f"did you mean {today.year}?" if day.year > today.year else "is this computer's date right?"
    )


def _date(text: Text | str) -> date | None:
    try:
        return date.fromisoformat(text)
    except ValueError:
        return None


def _name(text: Text) -> str:
    return " ".join(text.casefold().split())
