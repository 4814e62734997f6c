"""What the chart of a changed tree marks.

In: a tree before and after, both plain, and what the author changed. Out: a `ChangeMark` for each
step of now that is new or changed.
"""

from collections.abc import Iterable, Iterator, Mapping

from builder.chart.change_marks import NEW, ChangeMark
from builder.review.plain_tree import PlainResult, PlainStep, PlainTree
from builder.review.remark import Remark
from builder.review.result_matches import match_results

NOT_REACHED = ChangeMark("NO LONGER REACHED")


def chart_marks(
    old: PlainTree, new: PlainTree, changes: Iterable[Remark]
) -> Mapping[str, ChangeMark]:
    """Return the marks by the name of the step."""
    kinds: dict[str, list[str]] = {}
    for change in changes:
        if change.step in new.steps:
            kinds.setdefault(change.step, []).append(change.kind)
    return {name: _mark(old.steps.get(name), new.steps[name], kinds[name]) for name in kinds}


def _mark(old: PlainStep | None, new: PlainStep, kinds: list[str]) -> ChangeMark:
    if old is None:
        return ChangeMark(NEW)
    words = ", ".join(dict.fromkeys(kind.removesuffix(" changed") for kind in kinds))
    return ChangeMark(f"CHANGED: {words}", tuple(_results(old, new)))


def _results(old: PlainStep, new: PlainStep) -> Iterator[str]:
    """Yield for each result what it was, in the words of the file."""
    before = {id(now): was for was, now in match_results(old.results, new.results) if now}
    for result in new.results:
        yield _was(before[id(result)], result)


def _was(was: PlainResult | None, now: PlainResult) -> str:
    if was is None:
        return "new"
    text = f"was {was.text}" if was.text != now.text else ""
    branch = f"led to {was.branch}" if was.branch != now.branch else ""
    return ", ".join(filter(None, (text, branch)))
