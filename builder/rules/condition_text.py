"""A condition that nobody is told how to enter or leave, or of which part.

Why: The walk tells what changes in the condition's own words. Without them a tech reads on with the
connector still unplugged.

Wrong:

    # kb/conditions.yml
    lamp-load:
      takes: current
      text: load hooked up
      enter: Hook up the load
      undo: Remove the load

Right:

    # kb/conditions.yml
    lamp-load:
      takes: current
      text: <current> load hooked up
      enter: Hook up the <current> load
      undo: Remove the <current> load

Fix: Write `text` and `enter`, and `undo` where no normal state says how to leave it. A condition
that takes a part has `<part>` in `text` and `enter`, one that takes a current `<current>`.
"""

import re
from collections.abc import Iterator
from datetime import date

from builder.graph.sound_conditions import sound_conditions
from builder.model.conditions import Condition, Takes
from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.model.text import Text
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="condition-text",
    family=Family.KNOWLEDGE,
    severity=Severity.ERROR,
    summary="A condition that nobody is told how to enter or leave, or of which part.",
)
REMOVED = re.compile(r"\bremove the ([^,]+)", re.IGNORECASE)
BLANK = re.compile(r"<([^<>]*)>")
NOT_TOLD = "the walk can't tell anyone to do it"


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield what is missing or too much in the words of a condition."""
    conditions = sound_conditions(library)
    normal = {str(one.group): one for one in conditions if one.group and one.normal}
    for one in conditions:
        if not one.normal:
            yield from _missing(one)
            yield from _no_way_back(one, normal.get(str(one.group)))
        yield from _blanks(one)
        yield from _never_put_on(one)


def _missing(one: Condition) -> Iterator[Finding]:
    for word, written in (("text", one.text), ("enter", one.enter)):
        if not written:
            yield RULE.finding(one.id.at, f"`{one.id}` has no `{word}`", NOT_TOLD,
                               f"write `{word}:` under it")  # fmt: skip


def _no_way_back(one: Condition, normal: Condition | None) -> Iterator[Finding]:
    if one.undo or (one.group and (not normal or normal.enter or not normal.text)):
        return
    hint = "write `undo:` under it"
    if normal:
        hint += f", or `enter:` under `{normal.id}`"
    yield RULE.finding(one.id.at, f"nothing says how to leave `{one.id}`",
                       "at the end of the job the vehicle stays that way", hint)  # fmt: skip


def _never_put_on(one: Condition) -> Iterator[Finding]:
    """Yield what `undo` removes and `enter` never put there, such as chocks."""
    entering = " ".join(one.enter).casefold()
    for line in one.undo:
        for things in REMOVED.findall(line):
            for thing in re.split(r" and (?:the )?", things):
                word = thing.split()[-1].casefold().removesuffix("s")
                if word not in entering and one.enter and "<" not in word:
                    yield RULE.finding(
                        line.at,
                        f"`{one.id}` removes the {thing} in `undo`, and `enter` never puts them on"
                        if thing.endswith("s")
                        else f"`{one.id}` removes the {thing} in `undo`, and `enter` never puts "
                        "it on",
                        "the tech is told to take off what nobody was told to put there",
                        f"add the line about the {thing} to `enter`",
                    )


def _blanks(one: Condition) -> Iterator[Finding]:
    allowed = {None: (), Takes.PART: ("part",), Takes.CURRENT: ("current", "part")}[one.takes]
    lines = [*([one.text] if one.text else []), *one.enter, *one.undo]
    for line in lines:
        for blank in BLANK.findall(line):
            if blank not in allowed:
                yield _wrong_blank(one, line, blank, allowed)
    if one.takes:
        for words in filter(None, ([one.text] if one.text else [], [*one.enter])):
            if not any(f"<{one.takes}>" in line for line in words):
                yield RULE.finding(words[0].at,
                                   f"`{one.id}` takes a {one.takes}; `<{one.takes}>` isn't here",
                                   f"the tech can't tell which {one.takes} it is",
                                   f"write `<{one.takes}>` where it belongs")  # fmt: skip


def _wrong_blank(one: Condition, line: Text, blank: str, allowed: tuple[str, ...]) -> Finding:
    hint = f"write {' or '.join(f'`<{name}>`' for name in allowed)}"
    if not allowed:
        hint = f"write `takes: {blank}` too" if blank in ("part", "current") else "delete it"
    return RULE.finding(line.at, f"`{one.id}` has nothing to fill `<{blank}>` with",
                        "the tech reads the blank itself", hint)  # fmt: skip
