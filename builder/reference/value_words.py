"""Words inside values: ranges, ways out of a step, tasks, options, units, silencing comments.

In: the closed lists of other rooms. Out: a `WordGroup` for each.
"""

from itertools import groupby

from builder.plan.refused_options import DRIVE_IN, FIT_HERE, LEAVE, TOWED_IN
from builder.reader.schemas.step_schema import MODULE_VERBS, VERBS
from builder.reference.format_word import FormatWord, WordGroup
from builder.trade.units import UNITS, Unit

RANGES = {
    "below": ("below 12.2", "Less than 12.2; 12.2 itself isn't in it."),
    "above": ("above 14.8", "More than 14.8; 14.8 itself isn't in it."),
    "at most": ("at most 0.5", "0.5 or less."),
    "at least": ("at least 10.5", "10.5 or more."),
    "exactly": ("exactly 0", "0 and nothing else."),
    "to": ("12.4 to 13.2", "12.4, 13.2, and all between."),
    "to below": ("12.4 to below 12.6", "12.4 and more, less than 12.6."),
    "above ... to": ("above 12.4 to 12.6", "More than 12.4, up to 12.6."),
    "OL": ("OL", "The meter shows over-limit; the reading has `to: OL`."),
    "any": ("any", "Every reading; for one of several."),
    "below spec": ("below spec", "Less than what is good on this vehicle."),
    "within spec": ("within spec", "Good on this vehicle."),
    "above spec": ("above spec", "More than what is good on this vehicle."),
    "none": ("none", "With a spec: the meter or scan tool shows nothing."),
    "otherwise": ("otherwise", "All that the results above leave over; with several readings."),
}
BRANCHES = {
    "next": ("branch: next", "The next item of the list in `each`; after the last, `spent`."),
    "back": ("then: back", "The step that led here."),
    "<tree>#<step>": ("branch: charging/overcharge#reading", "A step in the middle of a tree."),
    "<name>": ("check: Is the <part> dry?", "What was answered in `asks`, or what `with` gave."),
}
TASKS = {
    "record-codes": "DTCs are saved; must come before `clear-codes`.",
    "check-supply": "Power is proved good; a module isn't condemned without it.",
    "check-ground": "Ground is proved good; a module isn't condemned without it.",
    "check-network": "The network is proved good; a module isn't condemned without it.",
    "hold-supply": "A power supply holds the battery up; must come before programming.",
    "release-supply": "The power supply is off again.",
    "disconnect-battery": "The battery is disconnected.",
    "connect-battery": "The battery is connected again.",
    "clear-codes": "DTCs are cleared; what they said is gone.",
    "cycle-key": "Key off and on again, so that modules start anew.",
    "read-codes-again": "DTCs are read once more; those that come back are real.",
    "drive": "The vehicle is driven.",
    "program": "Software is written into the module.",
    "configure": "The module is told the vehicle and its options.",
    "pair": "Keys and modules exchange secrets.",
    "initialize": "The module learns end stops or zero points.",
}
OPTIONS = {
    FIT_HERE: "We install it and set it up; where no module is replaced, we repair it.",
    DRIVE_IN: "The customer installs it and drives in; we set it up.",
    TOWED_IN: "The customer installs it and has it towed in; we set it up.",
    LEAVE: "Leave it as it is; never offered where that isn't safe.",
}
STATE = FormatWord(
    "state",
    "How the vehicle is while a step is done. The shop's own stand in kb/conditions.yml, and"
    " `baytree new state NAME` adds one. `enter` and `undo` are told, and only where it changes;"
    " of a `group` one holds at a time; what it `excludes` can't hold with it. At the end of a job"
    " everything goes back to the states with `normal: yes`.",
    ("`when` in any step", "kb/conditions.yml"),
    "when: [key-on, {unplugged: alternator}]",
)
SILENCE = FormatWord(
    "# silence:",
    "Silences one rule on its line, or on the next line if it has a line of its own. Without a"
    " reason nothing is silenced. In an article it is `[//]: # (silence: slang because ...)`.",
    ("a comment in any file",),
    "# silence: slang because the customer says it so",
)


def value_words() -> tuple[WordGroup, ...]:
    """Return the words inside values, in groups."""
    return (
        WordGroup("Ranges and results", _with_examples(RANGES, "`result`", "result: ")),
        WordGroup("The vehicle", (STATE,)),
        WordGroup("Where the job goes on", _with_examples(BRANCHES, "a branch, or a text", "")),
        WordGroup("What a step counts as", tuple(map(_task, (*VERBS, *MODULE_VERBS)))),
        WordGroup("Options of an estimate", tuple(map(_option, OPTIONS))),
        WordGroup("Units", tuple(_units())),
        WordGroup("Comments", (SILENCE,)),
    )


def _with_examples(
    words: dict[str, tuple[str, str]], place: str, key: str
) -> tuple[FormatWord, ...]:
    return tuple(
        FormatWord(name, means, (place,), key + example) for name, (example, means) in words.items()
    )


def _task(name: str) -> FormatWord:
    of_module = " eps-module" if name in MODULE_VERBS else ""
    return FormatWord(name, TASKS[name], ("`does` in any step",), f"does: [{name}{of_module}]")


def _option(name: str) -> FormatWord:
    example = f"options: {{{name}: {{hours: 1.2}}}}"
    return FormatWord(name, OPTIONS[name], ("`options` in a fix",), example)


def _units() -> list[FormatWord]:
    by_kind = groupby(UNITS.values(), key=lambda unit: unit.kind)
    return [_unit(unit, kind) for kind, units in by_kind for unit in units]


def _unit(unit: Unit, kind: str) -> FormatWord:
    shown = f", written {unit.label} on pages" if unit.label != unit.symbol else ""
    means = f"{kind[0].upper()}{kind[1:]}{shown}."
    return FormatWord(unit.symbol, means, ("`unit`",), f"unit: {unit.symbol}")
