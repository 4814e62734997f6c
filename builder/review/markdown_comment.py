"""A review as Markdown, for a comment on a pull request.

In: `TreeReview`s by the ID of their tree. Out: Markdown of about 60 lines that are seen: trees
beyond that are folded. Author's words can't become markup, links or mentions.
"""

import re
from collections.abc import Mapping
from html import escape

from builder.review.remark import AS_IT_WAS, NOTHING, Remark, TreeReview, in_code

OPEN_LINES = 60  # about what is read in a comment; trees beyond it are folded
MOST_LETTERS = 60_000  # a comment on the usual hosts holds 65,536
_MARKUP = re.compile(r"([\\*_{}\[\]<>#|~&!$])")


def review_as_markdown(reviews: Mapping[str, TreeReview]) -> str:
    """Return a heading and two lists for each tree."""
    parts, lines, letters = ["## What changes in the bay"], 2, 0
    left = 0
    for id_, review in reviews.items():
        body = _lists(review)
        is_open = lines + len(body) + 3 <= OPEN_LINES
        part = "\n".join([f"### {_plain(id_)}", "", *body] if is_open else _fold(id_, review, body))
        letters += len(part)
        if letters > MOST_LETTERS:
            left += 1
            continue
        lines += len(body) + 3 if is_open else 1
        parts.append(part)
    if left:
        parts.append(f"{left} more trees changed: run `baytree review`.")
    return "\n\n".join(parts if reviews else [*parts, NOTHING])


def _lists(review: TreeReview) -> list[str]:
    lines = [f"- {_change(change)}" for change in review.changes] or [AS_IT_WAS]
    if review.effects:
        lines += ["", "In the bay:", ""]
        lines += [f"- {_plain(effect.message)}" for effect in review.effects]
    return lines


def _fold(id_: str, review: TreeReview, body: list[str]) -> list[str]:
    """Fold a tree to one line that says how many changes it has, and the kinds of its effects."""
    count = len(review.changes)
    effects = ", ".join(dict.fromkeys(effect.kind for effect in review.effects))
    what = f"{count} change{'s' if count != 1 else ''}" + (f"; {effects}" if effects else "")
    summary = f"<summary>{escape(_no_mention(id_))}: {what}</summary>"
    return ["<details>", summary, "", *body, "", "</details>"]


def _change(change: Remark) -> str:
    place = f"{in_code(change.step)}: " if change.step else ""
    return f"{change.kind}: {place}{_plain(change.message)}"


def _plain(message: str) -> str:
    """Escape what isn't in backquotes."""
    parts = message.split("`")
    return "`".join(
        part if number % 2 else _MARKUP.sub(r"\\\1", _no_mention(part))
        for number, part in enumerate(parts)
    )


def _no_mention(words: str) -> str:
    """Part an @ from what follows, so that nobody is called to the pull request."""
    return words.replace("@", "@\u200b")
