"""The page of a review: one file that a reviewer opens from a pull request.

In: `TreeReview`s by the ID of their tree, those trees as they are now, the library. Out: a whole
HTML page that needs nothing else: no script, styles and faces inside.
"""

import re
from base64 import b64encode
from collections.abc import Iterator, Mapping
from functools import partial
from pathlib import Path
from typing import NamedTuple

from markupsafe import Markup

from builder import chart
from builder.chart.change_marks import with_changes
from builder.chart.flow import Flow, flow_of
from builder.chart.layout import one_column
from builder.chart.svg import svg
from builder.model.library import Library
from builder.model.tree import Tree
from builder.pages.render import render
from builder.review.remark import AS_IT_WAS, NOTHING, Remark, TreeReview
from builder.wording.placeholders import in_plain_words

CHART = Path(chart.__file__).parent
FACE = re.compile(r'url\("([\w-]+\.woff2)"\)')
GONE = ("step removed", "fix out of reach", "step out of reach")


class ReviewLine(NamedTuple):
    """A change or an effect as the page shows it."""

    kind: str
    number: str  # of its step in the chart
    step: str
    href: str  # of its box in the chart
    message: Markup


class ReviewedTree(NamedTuple):
    """A tree as the page shows it."""

    id: str
    anchor: str
    title: str
    changes: tuple[ReviewLine, ...]
    effects: tuple[ReviewLine, ...]
    gone: tuple[ReviewLine, ...]  # what the chart can't mark
    chart: Markup  # "" where there is nothing to draw


def review_page(
    reviews: Mapping[str, TreeReview], trees: Mapping[str, Tree], library: Library
) -> str:
    """Return the page; where a tree can't be read any more it isn't in `trees` and has no chart."""
    shown = [
        _reviewed(f"tree-{number}", id_, review, trees.get(id_), library)
        for number, (id_, review) in enumerate(reviews.items(), 1)
    ]
    texts = {"nothing": NOTHING, "as_it_was": _with_code(AS_IT_WAS)}
    return str(render("review.html", "review", trees=shown, style=_chart_style(), **texts))


def _chart_style() -> Markup:
    """Return the style sheet of charts with its faces inside."""

    def inside(face: re.Match[str]) -> str:
        data = b64encode((CHART / "faces" / face[1]).read_bytes()).decode()
        return f'url("data:font/woff2;base64,{data}")'

    return Markup(FACE.sub(inside, (CHART / "chart.css").read_text("utf-8")))


def _reviewed(
    anchor: str, id_: str, review: TreeReview, tree: Tree | None, library: Library
) -> ReviewedTree:
    flow = with_changes(flow_of(in_plain_words(tree), library), review.marks) if tree else None
    numbers = flow.numbers if flow else {}
    changes, effects = (
        tuple(_lines(anchor, remarks, numbers)) for remarks in (review.changes, review.effects)
    )
    return ReviewedTree(
        id=id_,
        anchor=anchor,
        title=str(tree.title) if tree else id_,
        changes=changes,
        effects=effects,
        gone=tuple(line for line in (*changes, *effects) if line.kind in GONE),
        chart=_drawn(anchor, flow, review) if flow else Markup(),
    )


def _lines(
    anchor: str, remarks: tuple[Remark, ...], numbers: Mapping[str, int]
) -> Iterator[ReviewLine]:
    for remark in remarks:
        number = str(numbers.get(remark.step, ""))
        href = f"#{anchor}-box-{remark.step}" if number else ""
        yield ReviewLine(remark.kind, number, remark.step, href, _with_code(remark.message))


def _with_code(message: str) -> Markup:
    """Set what stands in backquotes as code; all of it is escaped."""
    parts = message.split("`")
    return Markup().join(
        Markup("<code>{}</code>").format(part) if number % 2 else part
        for number, part in enumerate(parts)
    )


def _drawn(anchor: str, flow: Flow, review: TreeReview) -> Markup:
    """Draw the chart; a changed box leads to what is said of it."""
    changed = {change.step for change in review.changes}
    link = partial(_to_change, anchor, changed)
    return Markup(svg(one_column(flow), link, f"{anchor}-box-"))


def _to_change(anchor: str, changed: set[str], href: str) -> str:
    step = href.removeprefix("#step-")
    return f"#{anchor}-{step}" if step != href and step in changed else ""
