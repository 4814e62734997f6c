"""A condition, or a group of conditions, that isn't in `kb/conditions.yml`.

Why: The walk would let two states hold that can't, such as a load on a running engine.

Wrong:

    # kb/conditions.yml
    key-off:
      group: power
      normal: yes
      text: key off
      enter: Turn the key off
    engine-running:
      group: power
      text: engine running
      enter: Start the engine
    battery-support:
      excludes: [engine-runing]
      text: battery support on
      enter: Connect the power supply
      undo: Disconnect the power supply

Right:

    # kb/conditions.yml
    key-off:
      group: power
      normal: yes
      text: key off
      enter: Turn the key off
    engine-running:
      group: power
      text: engine running
      enter: Start the engine
    battery-support:
      excludes: [engine-running]
      text: battery support on
      enter: Connect the power supply
      undo: Disconnect the power supply

Fix: Write the id as it stands in `kb/conditions.yml`, or add the condition there.
"""

import re
from collections.abc import Iterator
from datetime import date
from difflib import get_close_matches

from builder.graph.sound_conditions import sound_conditions
from builder.model.conditions import POWER, Conditions
from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.model.text import Text
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="no-such-condition",
    family=Family.KNOWLEDGE,
    severity=Severity.ERROR,
    summary="A condition, or a group of conditions, that doesn't exist.",
)
WHY = "the walk can't tell which states go together, or when one may be changed"
NEGATION = re.compile(r"(?:^|-)(?:un|dis|not?-)")  # unplugged, battery-disconnected, no-load


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every name of a condition or group that doesn't exist."""
    conditions = library.conditions
    for one in conditions.values():
        yield from _unknown(one.excludes, conditions, "use a name from there")
        powers = [id_ for id_, other in conditions.items() if other.group == POWER]
        yield from _unknown(one.changed_with, conditions, _one_of(powers))
    groups = {str(one.group) for one in conditions.values() if one.group}
    for one in sound_conditions(library):
        if one.also_say and one.also_say not in groups:
            hint = _offer(one.also_say, groups, _one_of(sorted(groups)))
            yield RULE.finding(one.also_say.at, f"group `{one.also_say}` doesn't exist",
                               "no step can name a state of it", hint)  # fmt: skip


def _unknown(names: tuple[Text, ...], conditions: Conditions, otherwise: str) -> Iterator[Finding]:
    for name in names:
        if name not in conditions:
            by_text = {str(one.text): str(one.id) for one in conditions.values() if one.text}
            hint = _offer(name, conditions, f"add it to kb/conditions.yml, or {otherwise}", by_text)
            yield RULE.finding(name.at, f"condition `{name}` doesn't exist", WHY, hint)


def _one_of(names: list[str]) -> str:
    return f"use one of {', '.join(f'`{name}`' for name in names)}"


def _offer(
    name: str, known: Conditions | set[str], otherwise: str, by_text: dict[str, str] | None = None
) -> str:
    """Offer what is meant by its words, else what is spelled like it, but never the opposite."""
    words = (by_text or {}).get(name.replace("-", " "))
    near = [words] if words else get_close_matches(name.casefold(), known, cutoff=0.75)
    near = [one for one in near if bool(NEGATION.search(one)) == bool(NEGATION.search(name))]
    return f"did you mean {' or '.join(f'`{one}`' for one in near)}?" if near else otherwise
