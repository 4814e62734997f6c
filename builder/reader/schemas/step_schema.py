"""The schema of a step: the keys of any step, and those of each kind.

In: nothing. Out: `STEP`, and the closed lists of what a step can do.
"""

from builder.reader.schemas.shapes import (
    MONEY,
    PARTS,
    PLAIN_NUMBER,
    Schema,
    by_name,
    choice,
    count,
    decimal,
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
MODULE_VERBS = ("program", "configure", "pair", "initialize")

BRANCH = pattern(
    "a branch",
    "A step of this tree, another tree, a step of another tree, `next`, or `back`.",
    "belt",
    r"^[A-Za-z0-9_-]+(/[A-Za-z0-9_-]+(#[A-Za-z0-9_-]+)?)?$",
)
NOTE = string("a note", "What else helps here.", "Ask who installed it.", 400)
MINUTES = decimal("a number of minutes", "Labor, in minutes.", 4, 0)
TASK = pattern(
    "a task from the list",
    "What the step gets done; the checks of step order read it.",
    "record-codes",
    f"^({'|'.join(VERBS)}|({'|'.join(MODULE_VERBS)}) .+)$",
) | {"examples": [*VERBS, *(f"{verb} eps-module" for verb in MODULE_VERBS)]}

RANGE_WORDS = (
    "below 12.2, above 14.8, at least 5, at most 5, exactly 0, 12.2 to 13.2, "
    "above 12.4 to 12.6, 12.4 to below 12.6, OL"
)
READING = record(
    "a reading with a unit and a range",
    "A value to measure.",
    {
        "unit": string("a unit", "A unit of measure.", "V"),
        "from": decimal("a number", "The lowest reading possible.", 0),
        "to": {"anyOf": [{"type": "number"}, {"enum": ["OL"]}], "title": "a number, or OL",
               "description": "The highest reading possible; OL if the meter can show over-limit.",
               "examples": [20]},
        "resolution": decimal("a number", "The resolution of the instrument.", 0.01, 0),
        "origin": string("an origin", "The source of the limits.", "common practice", 120),
        "one_of": several("a list of phrases", "Phrases instead of a number.",
                          string("a phrase", "One phrase.", "clear", 28), "[clear, milky]"),
    },
    (),
    "{unit: V, from: 0, to: 20, resolution: 0.01, origin: common practice}",
) | {"anyOf": [{"required": ["unit", "from", "to"]}, {"required": ["one_of"]}]}  # fmt: skip

FIGURE = record(
    "a spec to look up",
    "A spec from the maker's service information, looked up at the vehicle.",
    {
        "look_up": string("a spec", "What to look up.", "sensor air gap", 60),
        "unit": string("a unit", "A unit of measure.", "mm"),
        "kind": choice("band or limit", "band: low and high; limit: one end.", "band", "limit"),
        "origin": string("an origin", "The source of the spec.", "service information", 120),
    },
    ("look_up", "unit", "kind"),
    "{look_up: sensor air gap, unit: mm, kind: band}",
)

RESULT = record(
    "a result with a branch",
    "One result and where it goes.",
    {
        "result": {
            "anyOf": [
                string("a phrase or a range", "", "below 13.2", 28),
                by_name("a range for each reading", "",
                        string("a range", "", "at most 0.5", 28), ""),
            ],
            "title": "a phrase, a range, or a range for each reading",
            "description": f"A phrase, or a range in words: {RANGE_WORDS}.",
            "examples": ["below 13.2"],
        },
        "means": string("a few words", "The conclusion.", "not charging", 28),
        "branch": BRANCH,
        "done": choice("yes", "With this result the step's task (`does`) is done.", "yes"),
        "with": by_name("answers by name", "Answers passed along with a handoff.",
                        string("an answer", "", "eps-module"), "{module: eps-module}"),
        "weight": decimal("a number", "How often, compared with the other results.", 2, 0),
        "chance": decimal("a number from 0 to 1", "The chance of going back this way.", 0.2, 0)
        | {"maximum": 1},
    },
    ("result", "branch"),
    "{result: below 13.2, branch: belt}",
)  # fmt: skip

OPTION = record(
    "an estimate option",
    "Replaces the standard option of the same name, or adds one.",
    {
        "option": string("a few words", "What the customer reads.", "Install a used module", 40),
        "hours": decimal("hours", "Labor hours.", 1.2, 0),
        "price": MONEY,
        "parts": PARTS,
        "tow": choice("yes", "Whether it needs a tow.", "yes", "no"),
        "note": NOTE,
        "chance": decimal("a number from 0 to 1", "The chance of a comeback.", 0.15, 0)
        | {"maximum": 1},
        "not_offered": string("a reason", "Why we don't offer this.", "Not safe to drive", 120),
    },
    (),
    "{option: Install a used module, hours: 1.2}",
)

TOOL = slug("a tool", "ID from kb/tools.yml.", "multimeter")
HAZARD = slug("a hazard", "ID from kb/hazards.yml.", "rotating-parts")

ANY_STEP: dict[str, Schema] = {
    "note": NOTE,
    "when": several("a list of conditions", "Conditions the reading needs.",
                    string("a condition", "", "key off", 60), "[engine at 1500 rpm]"),
    "tools": several("a list of tools", "Tools the step needs.", TOOL, "[multimeter]"),
    "how_to": slug("an article", "The how-to: ID from kb/how-to/.", "charging-voltage"),
    "picture": record(
        "a picture", "A drawing in kb/how-to/pictures/.",
        {"file": pattern("a file name", "", "plug.svg", r"^[A-Za-z0-9_-]+\.(svg|png)$"),
         "shows": string("a few words", "What it shows.", "Pins 1 and 2, wire side", 120)},
        ("file", "shows"), "{file: plug.svg, shows: Pin 1 power and pin 2 ground}"),
    "minutes": MINUTES,
    "wait": decimal("a number of minutes", "Waiting, in minutes.", 30, 0),
    "people": count("a whole number", "People needed.", 2),
    "hazards": several("a list of hazards", "What can hurt people or property here.", HAZARD,
                       "[rotating-parts]"),
    "does": several("a list of tasks", "What the step gets done.", TASK, "[record-codes]"),
    "write_down": several("a list", "What to record.",
                          string("a value to record", "", "part number", 60), "[part number]"),
    "put_back": string("a few words", "What to put back before release.", "Remove the jumper", 60),
    "at_most": count("a whole number", "How many times in one job, counting the first.", 3),
    "spent": BRANCH | {"description": "Where to go when the limit `at_most` is reached."},
    "same_as": slug("a step", "A step with the same method.", "feed"),
    "after": several("a list of steps", "Steps or tasks to do first.", slug("a step", "", "supply"),
                     "[supply]"),
    "each": by_name("an item and its list", "Repeats the step; `next` goes to the next item.",
                    slug("a list", "", "modules"), "{module: modules}") | {"maxProperties": 1},
}  # fmt: skip

KIND: dict[str, tuple[Schema, dict[str, Schema]]] = {
    "check": (
        string("a few words", "A question or a measurement.", "Measure battery voltage", 60),
        {
            "reading": READING,
            "readings": by_name("readings by name", "Several readings in one check.", READING,
                                "{positive: {unit: V, from: 0, to: 16}}"),
            "computed": by_name("formulas by name", "Readings calculated from the others.",
                                string("a formula", "", "battery - bulb", 60),
                                "{drop: battery - bulb}"),
            "figure": FIGURE,
            "several": choice("first fits", "More than one can be true: use the first.",
                              "first fits"),
            "results": several("a list of results, each with its branch", "Where each result goes.",
                               RESULT, "[{result: yes, branch: belt}, {result: no, branch: fuse}]",
                               0),
            "cannot_test": BRANCH | {"description": "Where to go if you can't test."},
        },
    ),
    "action": (
        string("a few words", "What to do.", "Charge the battery", 60),
        {"then": BRANCH | {"description": "The next step, or `back`."}},
    ),
    "fix": (
        string("a few words", "The repair.", "Replace the alternator", 60),
        {
            "cause": string("a few words", "What was wrong.", "The belt slips", 60),
            "weight": decimal("a number", "How often, compared with the other fixes.", 3, 0),
            "hours": decimal("hours", "Labor hours.", 0.8, 0),
            "parts": PARTS,
            "replaces": record(
                "a module and its part",
                "Price, hours, and setup come from kb/modules/.",
                {"module": slug("a module", "ID from kb/modules/.", "eps-module"),
                 "part": choice("new or used", "", "new", "used")},
                ("module", "part"), "{module: eps-module, part: new}"),
            "verify": several("a list", "How to verify the repair before release.",
                              string("a test", "", "13.5 V or more at idle", 120),
                              "[13.5 V or more at idle with headlights on]"),
            "still_there": BRANCH | {"description": "Where to go if it isn't fixed; once."},
            "tell": string("a few sentences", "What to tell the customer.", "The belt slipped.",
                           400),
            "options": by_name("options by name", "Options besides the standard ones.", OPTION,
                               "{used-module: {option: Install a used module, hours: 1.2}}"),
        },
    ),
    "stop": (
        string("a few words", "An end without a repair.", "Charging is OK today", 60),
        {
            "kind": choice("a kind of stop", "Why the job ends here.", "foreman", "not-found",
                           "not-this-tree", "customer", "unsafe"),
            "weight": decimal("a number", "How often the job ends here.", 1, 0),
        },
    ),
}  # fmt: skip
REQUIRED = {"check": (), "action": (), "fix": ("cause",), "stop": ("kind",)}


def _step_of(kind: str) -> Schema:
    words, own = KIND[kind]
    return record(
        f"a step of kind {kind}",
        str(words["description"]),
        {kind: words} | own | ANY_STEP,
        (kind, *REQUIRED[kind]),
        "",
    )


STEP: Schema = {
    "type": "object",
    "title": "a step: a check, an action, a fix or a stop",
    "description": "One step of the tree; its first key is its kind.",
    "examples": ["{check: Is the belt tight and dry?, results: [{result: yes, branch: fuse}]}"],
    "allOf": [
        {"if": {"type": "object", "required": [kind]}, "then": {"$ref": f"#/$defs/{kind}"}}
        for kind in KIND
    ],
    "anyOf": [{"required": [kind]} for kind in KIND],
}
STEP_DEFINITIONS = {kind: _step_of(kind) for kind in KIND}
__all__ = ["ANY_STEP", "KIND", "MODULE_VERBS", "PLAIN_NUMBER", "STEP", "STEP_DEFINITIONS", "VERBS"]
