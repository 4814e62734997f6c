"""Names that are asked for at the vehicle, as they read where nobody fills them in.

In: a tree with `<wheel>` in its words. Out: the same tree with "the wheel" or, in the step that is
done for each of a list, "each wheel". Sheets, charts and pages are made from that.
"""

import re
from collections.abc import Callable
from dataclasses import fields, is_dataclass, replace
from functools import partial
from typing import Any

from builder.model.text import Text
from builder.model.tree import Tree

_NAMED = re.compile(
    r"(?P<article>\b[Tt]he )?(?:\b(?P<before>\w+) )?(?P<open>\()?<(?P<name>[^<>]+)>(?P<close>\))?"
    r"(?: (?P<after>\w+)\b)?"
)


def in_plain_words(tree: Tree) -> Tree:
    """Write the names that a tree asks for in plain words; other words in `<>` stay."""
    known = {str(asked.name) for asked in tree.asks}
    known.update(str(step.each[0]) for step in tree.steps.values() if step.each)
    if not known:
        return tree
    steps = {}
    for id_, step in tree.steps.items():
        item = str(step.each[0]) if step.each else ""
        steps[id_] = _plain(step, partial(_named, known, item))
    return replace(tree, steps=steps)


def _plain(value: Any, say: Callable[[str], str]) -> Any:
    """Rewrite every text in a part of a step."""
    if isinstance(value, Text):
        return Text(say(value), value.at) if "<" in value else value
    if type(value) is tuple:
        return tuple([_plain(one, say) for one in value])
    if is_dataclass(value) and not isinstance(value, type):
        parts = {field.name: getattr(value, field.name) for field in fields(value)}
        return replace(value, **{name: _plain(part, say) for name, part in parts.items()})
    return value


def _named(known: set[str], item: str, words: str) -> str:
    return _NAMED.sub(
        lambda found: _said(found, item) if found["name"] in known else found[0], words
    )


def _said(found: re.Match[str], item: str) -> str:
    """Say a name once: `the <module> module` and `the wheel (<wheel>)` have it twice."""
    word = found["name"].replace("-", " ")
    article, before, after = (found[part] or "" for part in ("article", "before", "after"))
    each = found["name"] == item
    if found["open"]:
        end = f" {after}" if after else ""
        if before == word:
            return f"{article}{before}{end}"
        return f"{article}{before}{' ' * bool(before)}({'each' if each else 'that'} {word}){end}"
    end = f" {after}" if after and after != word else ""
    if before and before != word:
        return f"{article}{before} {'' if article else 'each ' if each else 'the '}{word}{end}"
    which = "each" if each else "the"
    first = article[:1].isupper() or (not article and found.start() == 0)
    return f"{which.capitalize() if first else which} {word}{end}"
