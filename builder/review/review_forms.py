"""A review as text, Markdown or JSON; `pages/review.py` writes the page.

In: `TreeReview`s by the ID of their tree. Out: text. The JSON is
`{"trees": {id: {"changes": [{"kind", "step", "message"}], "effects": [...]}}}`.
"""

import json
from collections.abc import Callable, Mapping
from dataclasses import asdict

from builder.review.markdown_comment import review_as_markdown
from builder.review.remark import AS_IT_WAS, NOTHING, Remark, TreeReview, in_code

Reviews = Mapping[str, TreeReview]


def review_as_text(reviews: Reviews) -> str:
    """Return a few lines for each tree."""
    return "\n\n".join(_text_of(id_, review) for id_, review in reviews.items()) or NOTHING


def review_as_json(reviews: Reviews) -> str:
    """Return the JSON."""
    trees = {
        id_: {"changes": [*map(asdict, review.changes)], "effects": [*map(asdict, review.effects)]}
        for id_, review in reviews.items()
    }
    return json.dumps({"trees": trees}, indent=2, ensure_ascii=False)


REVIEW_FORMS: Mapping[str, Callable[[Reviews], str]] = {
    "text": review_as_text,
    "markdown": review_as_markdown,
    "json": review_as_json,
}


def _text_of(id_: str, review: TreeReview) -> str:
    changed = [f"    {_line(change)}" for change in review.changes]
    lines = [id_, "  changed:", *(changed or [f"    {AS_IT_WAS}"])]
    if review.effects:
        lines += ["  in the bay:", *(f"    {effect.message}" for effect in review.effects)]
    return "\n".join(lines)


def _line(change: Remark) -> str:
    place = f"{in_code(change.step)}: " if change.step else ""
    return f"{change.kind}: {place}{change.message}"
