"""What the author of a change did to a tree, each thing once.

In: a tree before and after, both plain, the old one with the new names of its steps. Out: `Remark`s
in the order of the new file. Changes on one line are one change.
"""

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from builder.review.plain_tree import PlainStep, PlainTree, PlainWord
from builder.review.remark import Remark, in_code
from builder.review.result_matches import Pair, match_results

KINDS_BY_WORD = {
    "when": "state changed", "hook_up": "state changed",
    "hazards": "hazard changed",
    "minutes": "minutes changed", "wait": "minutes changed", "hours": "minutes changed",
    "then": "branch changed", "spent": "branch changed", "cannot_test": "branch changed",
    "still_there": "branch changed",
    "reading": "limit changed", "readings": "limit changed", "computed": "limit changed",
    "figure": "limit changed", "spec": "limit changed", "at_most": "limit changed",
    "chance": "chance changed", "weight": "chance changed",
    "drive": "drive changed", "status": "status changed",
    "does": "task changed", "after": "order changed", "done": "task changed",
    "verify": "proof changed", "proved_by": "proof changed",
    "parts": "price changed", "options": "price changed", "replaces": "price changed",
}  # fmt: skip
BEFORE = 20  # characters that are shown before a difference
_NOTHING = PlainWord("", "", 0)


class _Change(NamedTuple):
    """A change with the line that it is on: negative in the old file, which lacks a new line."""

    line: int
    kind: str
    step: str
    message: str


def tree_changes(old: PlainTree, new: PlainTree, renamed: Mapping[str, str]) -> list[Remark]:
    """Return every change; `renamed` has the old names of steps by their new ones."""
    changes = [*_of_words("", old.head, new.head), *_of_start(old, new)]
    for name, step in new.steps.items():
        before = old.steps.get(name)
        if before is None:
            changes.append(_Change(step.line, "step added", name, f"new step: {_quoted(step)}"))
            continue
        if name in renamed:
            message = f"was named {in_code(renamed[name])}"
            changes.append(_Change(step.line, "step renamed", name, message))
        if before.kind != step.kind:
            message = f"is now {_quoted(step)}, was {_quoted(before)}"
            changes.append(_Change(step.line, "kind changed", name, message))
            continue
        changes += _of_words(name, before.words, step.words)
        changes += _of_results(before, step)
    for name, step in old.steps.items():
        if name not in new.steps:
            changes.append(_Change(-step.line, "step removed", name, f"gone: {_quoted(step)}"))
    return [Remark(*change[1:]) for change in _a_line_each(changes)]


def _a_line_each(changes: list[_Change]) -> list[_Change]:
    """Join what is on one line of one step."""
    lines: dict[tuple[int, str], _Change] = {}
    for change in changes:
        here = change.line, change.step
        known = lines.get(here)
        message = f"{known.message}; {change.message}" if known else change.message
        lines[here] = (known or change)._replace(message=message)
    return list(lines.values())


def _of_start(old: PlainTree, new: PlainTree) -> Iterator[_Change]:
    was, now = next(iter(old.steps), ""), next(iter(new.steps), "")
    if was != now and was in new.steps and now in old.steps:
        message = f"a job starts at {in_code(now)}, not at {in_code(was)}"
        yield _Change(new.steps[now].line, "start changed", now, message)


def _of_words(
    step: str, old: Mapping[str, PlainWord], new: Mapping[str, PlainWord], of: str = ""
) -> Iterator[_Change]:
    """Compare the words of one place; `of` names the result that they belong to."""
    for key in dict.fromkeys((*new, *old)):
        was, now = old.get(key, _NOTHING), new.get(key, _NOTHING)
        if was.value != now.value:
            kind = KINDS_BY_WORD.get(key, "text changed")
            line = now.line or -was.line
            yield _Change(line, kind, step, f"{of}{in_code(key)} {_from_to(was.shown, now.shown)}")


def _from_to(was: str, now: str) -> str:
    if not was:
        return f"is new: {in_code(now)}"
    if not now:
        return f"is gone: {in_code(was)}"
    now, was = _from_difference(now, was)
    return f"is now {in_code(now)}, was {in_code(was)}"


def _from_difference(one: str, other: str) -> tuple[str, str]:
    """Leave out what long texts begin with in common, or both would look the same."""
    pairs = enumerate(zip(one, other, strict=False))
    same = next((at for at, (a, b) in pairs if a != b), 0) - BEFORE
    return (f"…{one[same:]}", f"…{other[same:]}") if same > BEFORE else (one, other)


def _quoted(step: PlainStep) -> str:
    return f"{step.kind} {in_code(step.says)}"


def _of_results(old: PlainStep, new: PlainStep) -> Iterator[_Change]:
    pairs = list(match_results(old.results, new.results))
    for pair in pairs:
        yield from _of_result(new.name, pair)
    was, now = ([one.text for one in step.results] for step in (old, new))
    if "several" in new.words and was != now and set(was) == set(now):
        order = ", ".join(map(in_code, now))
        message = f"the first that fits of {order}"
        yield _Change(new.results[0].line, "order changed", new.name, message)


def _of_result(step: str, pair: Pair) -> Iterator[_Change]:
    was, now = pair
    if was is None and now is not None:
        message = f"new result {in_code(now.text)}, leads to {in_code(now.branch)}"
        yield _Change(now.line, "result added", step, message)
    if was is not None and now is None:
        message = f"result {in_code(was.text)} is gone, it led to {in_code(was.branch)}"
        yield _Change(-was.line, "result removed", step, message)
    if was is None or now is None:
        return
    if was.text != now.text:
        kind = "limit changed" if was.is_range and now.is_range else "text changed"
        yield _Change(now.line, kind, step, f"result {in_code(now.text)}, was {in_code(was.text)}")
    if was.branch != now.branch:
        message = f"{in_code(now.text)} leads to {in_code(now.branch)}, was {in_code(was.branch)}"
        yield _Change(now.branch_line, "branch changed", step, message)
    yield from _of_words(step, was.words, now.words, f"{in_code(now.text)}: ")
