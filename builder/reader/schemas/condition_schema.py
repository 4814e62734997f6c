"""The schema of `kb/conditions.yml`: the states of the vehicle."""

from builder.reader.schemas.shapes import (
    Schema,
    by_name,
    choice,
    decimal,
    record,
    several,
    slug,
    string,
)
from builder.reader.schemas.step_schema import HAZARD

STATE_DEEDS = (
    "disconnect-battery", "connect-battery", "hold-supply", "release-supply", "drive",
)  # fmt: skip
CONDITION = slug("a condition", "From kb/conditions.yml.", "engine-running")
GROUP = slug("a group of conditions", "One of a group holds at a time.", "power")


def _lines(description: str, example: str) -> Schema:
    line = string("a line", "One thing to do.", example, 80)
    return {
        "anyOf": [line, several("a list of lines", "", line, f"[{example}]")],
        "title": "a line of text, or a list of lines",
        "description": description,
        "examples": [example],
    }


def _deeds(description: str, example: str) -> Schema:
    deed = choice("something from the closed list", "For the rules of order.", *STATE_DEEDS)
    return several("a list from the closed list", description, deed, f"[{example}]")


CONDITIONS = by_name(
    "conditions by id", "States of the vehicle; a step names those that it needs in `when`.",
    record(
        "a condition", "One state of the vehicle.",
        {"group": GROUP,
         "normal": choice("yes", "`yes` for the state that a vehicle comes in and leaves with.",
                          "yes", "no") | {"default": "no"},
         "takes": choice("part or current",
                         "Each part has a state of its own; a current is a load at a part.",
                         "part", "current"),
         "text": string("a few words", "As people read it, with `<part>` or `<current>`.",
                      "engine running", 60),
         "enter": _lines("How to get into it; each line starts with a verb.", "Start the engine"),
         "undo": _lines("How to leave it. Not needed where the next state says it.",
                        "Disconnect the power supply"),
         "excludes": several("a list of conditions",
                             "Can't hold at the same time; works both ways.",
                             CONDITION, "[engine-running]"),
         "changed_with": several("a list of power states",
                                 "When it may change; the first is taken where none of them holds.",
                                 CONDITION, "[key-off]"),
         "also_say": GROUP | {"description": "A group: a step names a state of it too."},
         "minutes": decimal("a number of minutes", "Minutes of work to enter it.", 4, 0),
         "wait": decimal("a number of minutes", "Minutes of waiting, not work.", 5, 0),
         "hazards": several("a list of hazards", "What can hurt or break in it.", HAZARD,
                            "[rotating-parts]"),
         "does": _deeds("What entering it counts as.", "hold-supply"),
         "undo_does": _deeds("What leaving it counts as.", "release-supply"),
         "counts_as": choice("load or power off",
                             "With a load a voltage drop counts; with power off, resistance.",
                             "load", "power off"),
         "starts_engine": choice("yes", "What steps took off (`put_back`) is put back before it.",
                                 "yes", "no") | {"default": "no"}},
        (), "{group: power, text: engine running, enter: Start the engine}"),
    "{engine-running: {group: power, text: engine running, enter: Start the engine}}",
)  # fmt: skip
