"""Placeholders in a tree's words, for pages and prints where nothing fills them in.

In: a tree with `<wheel>` in its words. Out: the same tree with "the wheel" or, in a step that
repeats over a list, "each wheel". Sheets, charts and pages use that tree.
"""

import re
from collections.abc import Callable, Mapping
from dataclasses import fields, is_dataclass, replace
from functools import partial
from typing import Any

from builder.model.checks import Check
from builder.model.text import Text
from builder.model.tree import Step, Tree, Where

_PLACEHOLDER = re.compile(
    r"(?P<article>\b[Tt]he )?(?:\b(?P<before>\w+) )?(?P<open>\()?<(?P<name>[^<>]+)>(?P<close>\))?"
    r"(?: (?P<after>\w+)\b)?"
)
BLANK = "___"
# Fields with names of parts and currents, which are no sentences: `vehicle_words` writes them.
_NAMES = {Step: {"needs", "run"}, Check: {"with_"}, Where: {"part", "fuse"}}


def in_plain_words(tree: Tree) -> Tree:
    """Return the tree with its placeholders in plain words; other words in `<>` stay."""
    names = {str(question.name) for question in tree.asks}
    names.update(str(step.each[0]) for step in tree.steps.values() if step.each)
    if not names:
        return tree
    steps = {}
    for id_, step in tree.steps.items():
        item = str(step.each[0]) if step.each else ""
        steps[id_] = _rewritten(step, partial(_replaced, names, item))
    return replace(tree, steps=steps)


def _rewritten(value: Any, rewrite: Callable[[str], str]) -> Any:
    """Rewrite every text in a part of a step."""
    if isinstance(value, Text):
        return Text(rewrite(value), value.at) if "<" in value else value
    if isinstance(value, Mapping):
        return {name: _rewritten(item, rewrite) for name, item in value.items()}
    if type(value) is tuple:
        return tuple([_rewritten(item, rewrite) for item in value])
    if is_dataclass(value) and not isinstance(value, type):
        names = (field.name for field in fields(value))
        left = _NAMES.get(type(value), set())
        parts = {name: getattr(value, name) for name in names if name not in left}
        return replace(value, **{name: _rewritten(part, rewrite) for name, part in parts.items()})
    return value


def _replaced(names: set[str], item: str, text: str) -> str:
    return _PLACEHOLDER.sub(
        lambda match: _phrase(match, item) if match["name"] in names else match[0], text
    )


def _phrase(match: re.Match[str], item: str) -> str:
    """Return the words for a placeholder, without repeating the word beside it.

    `the <module> module` is "the module", `the wheel (<wheel>)` is "the wheel"; `a <miles>-mile
    drive` has a blank.
    """
    word = match["name"].replace("-", " ")
    article, before, after = (match[part] or "" for part in ("article", "before", "after"))
    if match.string.startswith("-", match.end()):  # a value and its unit: a blank to fill in
        return match[0].replace(f"<{match['name']}>", BLANK)
    is_item = match["name"] == item
    if match["open"]:
        end = f" {after}" if after else ""
        if before == word:
            return f"{article}{before}{end}"
        which = "each" if is_item else "that"
        return f"{article}{before}{' ' * bool(before)}({which} {word}){end}"
    end = f" {after}" if after and after != word else ""
    which = "each" if is_item else "the"
    if before and before != word:
        return f"{article}{before} {'' if article else f'{which} '}{word}{end}"
    first = article[:1].isupper() or (not article and match.start() == 0)
    return f"{which.capitalize() if first else which} {word}{end}"
