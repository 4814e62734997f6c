"""A closed job from its map.

In: the map of a file of `kb/cases/` that has passed its schema. Out: a `Case`.
"""

from collections.abc import Iterator

from builder.model.finding import Finding
from builder.model.knowledge import Case, CaseOutcome, CaseStep
from builder.model.text import Text
from builder.reader.nodes import EMPTY, Map
from builder.reader.source import mistake
from builder.reader.values import (
    choice_of,
    map_,
    maps,
    named_lists,
    named_texts,
    number,
    text,
    texts,
    the_text,
)


def case_from(file: str, root: Map) -> Case:
    """Read one closed job."""
    dates = map_(root, "dates") or EMPTY
    minutes = map_(root, "minutes") or EMPTY
    return Case(
        id=str(the_text(root, "case")),
        file=file,
        at=root.key("case").at,
        tree=the_text(root, "tree"),
        revision=text(root, "revision"),
        vehicle=named_texts(root, "vehicle"),
        opened=the_text(dates, "opened"),
        closed=the_text(dates, "closed"),
        path=tuple(_case_step(node) for node in maps(root, "path")),
        fix=text(root, "fix"),
        worked=number(minutes, "worked"),
        waited=number(minutes, "waited"),
        outcome=choice_of(CaseOutcome, root, "outcome", CaseOutcome.UNKNOWN),
        verified=text(root, "verified"),
        also_found=texts(root, "also_found"),
        fix_in=text(root, "fix_in"),
        walked=text(root, "walked") == "yes",
        asked=named_texts(root, "asked"),
        lists=named_lists(root, "lists"),
    )


def impossible_dates(case: Case) -> Iterator[Finding]:
    """Yield the finding for dates of a job that can't all be right."""
    year = case.vehicle.get("year", Text(""))
    if year.isdigit() and case.opened[:4].isdigit() and int(year) > int(case.opened[:4]) + 1:
        yield mistake("bad-value", year.at, f"model year {year}, in a job of {case.opened[:4]}",
                      "the job would count for vehicles that aren't built yet",
                      "correct one of them; a model year runs at most one year ahead")  # fmt: skip
    if case.opened and case.closed and case.closed < case.opened:
        yield mistake("bad-value", case.closed.at, f"closed on {case.closed}, before it was opened",
                      "the review status page counts jobs by these dates",
                      "look at the job card, and correct the one that is wrong: "
                      f"opened {case.opened}, closed {case.closed}; or are they swapped?",
                      )  # fmt: skip


def _case_step(node: Map) -> CaseStep:
    return CaseStep(
        step=the_text(node, "step"),
        result=text(node, "result"),
        reading=text(node, "reading"),
        readings=named_texts(node, "readings"),
        tool=text(node, "tool"),
        inside=text(node, "in"),
        stated=text(node, "stated") == "yes",
    )
