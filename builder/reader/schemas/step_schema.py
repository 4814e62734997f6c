"""The schema of a step: the keys of any step, and those of each kind.

In: nothing. Out: `STEP`, and the closed lists of what a step can do.
"""

from builder.model.vehicle_data import PIN_ROLES
from builder.reader.schemas.check_schema import CHECK
from builder.reader.schemas.fix_schema import DRIVING, FIX
from builder.reader.schemas.shapes import (
    BRANCH,
    NOTE,
    Schema,
    by_name,
    by_type,
    choice,
    count,
    decimal,
    name_or_answer,
    pattern,
    record,
    several,
    slug,
    string,
)

VERBS = (
    "record-codes", "check-supply", "hold-supply", "release-supply", "disconnect-battery",
    "connect-battery", "clear-codes", "cycle-key", "read-codes-again", "drive",
    "check-ground", "check-network",
)  # fmt: skip
PART_VERBS = ("check-supply", "check-ground", "check-network")  # they can name a part
MODULE_VERBS = ("program", "configure", "pair", "initialize")

MINUTES = decimal("a number of minutes", "Minutes of work, without waiting.", 4, 0)
TASK = pattern(
    "a task from the list",
    "What it counts as in the order of work.",
    "record-codes",
    f"^({'|'.join(VERBS)}|({'|'.join((*PART_VERBS, *MODULE_VERBS))}) .+)$",
) | {"examples": [*VERBS, *(f"{verb} eps-module" for verb in MODULE_VERBS)]}

TOOL = slug("a tool", "ID from kb/tools.yml.", "multimeter")
HAZARD = slug("a hazard", "ID from kb/hazards.yml.", "rotating-parts")
PART_NAME = name_or_answer(
    "a part", "A part from kb/parts.yml, or a module from kb/modules/.", "alternator"
)
CONDITIONS_NEEDED = several(
    "a list of conditions", "How the vehicle must be; the walk tells how to get there.",
    by_type("a condition", "From kb/conditions.yml, or free text of several words.",
            {"string": string("a condition", "", "key-on", 60),
             "object": by_name("a condition of a part", "",
                               string("a part or a current", "", "alternator", 60),
                               "{unplugged: alternator}") | {"maxProperties": 1}},
            "key-on"),
    "[key-on, {unplugged: alternator}]",
)  # fmt: skip
DO = several(
    "a list of lines", "What to do before the answer, a line each, verb first.",
    string("a line", "", "Zero the clamp", 80), "[Zero the clamp, Read both at once]",
)  # fmt: skip
WHERE = by_type(
    "a place, a part and its pins, a connector and its pins, or a fuse",
    "Where to probe, work, or look.",
    {"string": string("a place", "", "Behind the master cylinder", 60),
     "object": record(
         "a part and its pins, a connector and its pins, or a fuse", "",
         {"part": PART_NAME,
          "connector": slug("a connector", "A connector in the vehicle's file.", "abs-module"),
          "pins": several("a list of pins", "Roles for any vehicle; numbers with `connector`.",
                          string("a pin", f"One of {', '.join(PIN_ROLES)}, or a number.", "power"),
                          "[power]"),
          "fuse": PART_NAME | {"title": "the part that the fuse feeds"}},
         (), "{part: abs-module, pins: [power]}")
     | {"anyOf": [{"required": ["part"]}, {"required": ["connector"]}, {"required": ["fuse"]}]}},
    "{part: abs-module, pins: [power]}",
)  # fmt: skip

ANY_STEP: dict[str, Schema] = {
    "note": NOTE,
    "do": DO,
    "at": WHERE,
    "when": CONDITIONS_NEEDED,
    "hook_up": slug("a power state", "The power state in which the `do` lines are done.",
                    "key-off"),
    "tools": several("a list of tools", "What to bring to the vehicle.", TOOL, "[multimeter]"),
    "how_to": slug("an article", "The article in kb/how-to/ that shows how.", "charging-voltage"),
    "picture": record(
        "a picture", "A drawing or photo from kb/how-to/pictures/.",
        {"file": pattern("a file name", "Its name in that folder.", "plug.svg",
                         r"^[A-Za-z0-9_-]+\.(svg|png|jpe?g|webp|avif|gif)$"),
         "shows": string("a few words", "What there is to see, for those who can't.",
                         "Pins 1 and 2, wire side", 120)},
        ("file", "shows"), "{file: plug.svg, shows: Pin 1 power and pin 2 ground}"),
    "minutes": MINUTES,
    "wait": decimal("a number of minutes",
                    "Minutes of waiting, such as charging or cooling; no labor.", 30, 0),
    "people": count("a whole number", "How many it takes.", 2) | {"default": 1},
    "hazards": several("a list of hazards",
                       "What only this step brings; each caution is shown before it.", HAZARD,
                       "[rotating-parts]"),
    "does": several("a list of tasks", "What it counts as in the order of work.", TASK,
                    "[record-codes]"),
    "write_down": several("a list", "What to write on the job: numbers, part codes, settings.",
                          string("a value to record", "", "part number", 60), "[part number]"),
    "put_back": string("a few words", "What goes back on before the next start of the engine.",
                       "Remove the jumper", 60),
    "at_most": count("a whole number", "How many times in one job; then `spent` says where to go.",
                     3),
    "spent": BRANCH | {"description": "Where to go once it was done `at_most` times."},
    "same_as": slug("a step", "A step that is done the same way.", "feed"),
    "after": several("a list of steps", "What must be done before this step.", slug("a step", "",
                                                                                    "supply"),
                     "[supply]"),
    "each": by_name("an item and its list",
                    "Repeats the step over a list; `next` takes the next item.",
                    slug("a list", "", "modules"), "{module: modules}") | {"maxProperties": 1},
}  # fmt: skip

KIND: dict[str, tuple[Schema, dict[str, Schema]]] = {
    "check": (
        string("a few words", "A question, or `Measure` and what is measured.",
               "Measure battery voltage", 60),
        CHECK,
    ),
    "action": (
        string("a few words", "What to do; starts with a verb.", "Charge the battery", 60),
        {"then": BRANCH | {"description": "The next step; `back` is the step that led here."}},
    ),
    "fix": (
        string("a few words", "The repair; the job ends with it.", "Replace the alternator", 60),
        FIX,
    ),
    "stop": (
        string("a few words", "The job ends here without a repair.", "Charging is OK today", 60),
        {
            "kind": choice("a kind of stop", "Why the job ends here.", "foreman", "not-found",
                           "not-this-tree", "customer", "unsafe") | {"default": "foreman"},
            "weight": decimal("a number of jobs",
                              "How often it ends here, compared with the fixes.", 1, 0),
            **DRIVING,
        },
    ),
}  # fmt: skip
REQUIRED = {"check": (), "action": (), "fix": ("cause",), "stop": ()}


def step_of(kind: str) -> Schema:
    """Return the schema of one kind of step."""
    words, own = KIND[kind]
    return record(
        f"a step of kind {kind}",
        str(words["description"]),
        {kind: words} | own | ANY_STEP,
        (kind, *REQUIRED[kind]),
        "",
    )


def any_of_kinds(kinds: dict[str, str]) -> Schema:
    """Return the schema of a step whose first key is its kind: definitions by kind."""
    return {
        "type": "object",
        "title": f"a step: {', '.join(f'a {kind}' for kind in kinds)}".replace(
            "a action", "an action"
        ),
        "description": "One step; its first key is its kind.",
        "examples": ["{check: Is the belt tight and dry?, results: {yes: fuse, no: belt-fix}}"],
        "allOf": [
            {"if": {"type": "object", "required": [kind]}, "then": {"$ref": f"#/$defs/{name}"}}
            for kind, name in kinds.items()
        ],
        "anyOf": [{"required": [kind]} for kind in kinds],
    }


STEP = any_of_kinds({kind: kind for kind in KIND})
STEP_DEFINITIONS = {kind: step_of(kind) for kind in KIND}
