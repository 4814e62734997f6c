"""The schema of a step: the keys of any step, and those of each kind.

In: nothing. Out: `STEP`, and the closed lists of what a step can do.
"""

from builder.model.vehicle_data import PIN_ROLES
from builder.reader.schemas.shapes import (
    MONEY,
    PARTS,
    Schema,
    by_name,
    by_type,
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
PART_VERBS = ("check-supply", "check-ground", "check-network")  # they can name a part
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
    f"^({'|'.join(VERBS)}|({'|'.join((*PART_VERBS, *MODULE_VERBS))}) .+)$",
) | {"examples": [*VERBS, *(f"{verb} eps-module" for verb in MODULE_VERBS)]}

SPEC_NAME = pattern("a spec", "ID from kb/specs.yml.", "charging-voltage",
                    r"^(<[a-z][a-z0-9_-]*>|[A-Za-z0-9]+([ _-][A-Za-z0-9]+)*)$")  # fmt: skip
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
        "spec": SPEC_NAME,
        "one_of": several("a list of phrases", "Phrases instead of a number.",
                          string("a phrase", "One phrase.", "clear", 28), "[clear, milky]"),
    },
    (),
    "{unit: V, from: 0, to: 20, resolution: 0.01, origin: common practice}",
) | {"anyOf": [{"required": ["unit", "from", "to"]}, {"required": ["one_of"]},
               {"required": ["spec"]}]}  # fmt: skip

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

RESULT_TEXT: Schema = {
    "anyOf": [
        string("a phrase or a range", "", "below 13.2", 28),
        by_name("a range for each reading", "", string("a range", "", "at most 0.5", 28), ""),
    ],
    "title": "a phrase, a range, or a range for each reading",
    "description": f"A phrase, or a range in words: {RANGE_WORDS}.",
    "examples": ["below 13.2"],
}
RESULT_KEYS: dict[str, Schema] = {
    "result": RESULT_TEXT,
    "means": string("a few words", "The conclusion.", "not charging", 28),
    "branch": BRANCH,
    "done": choice("yes", "With this result the step's task (`does`) is done.", "yes"),
    "with": by_name("answers by name", "Answers passed along with a handoff.",
                    string("an answer", "", "eps-module"), "{module: eps-module}"),
    "weight": decimal("a number", "How often, compared with the other results.", 2, 0),
    "chance": decimal("a number from 0 to 1", "The chance of going back this way.", 0.2, 0)
    | {"maximum": 1},
}  # fmt: skip
RETURNED = string("a word", "The word that the procedure returns.", "bad power", 28)
RESULT = record(
    "a result with a branch", "One result and where it goes.", RESULT_KEYS, ("result", "branch"),
    "{result: below 13.2, branch: belt}",
)  # fmt: skip
PROCEDURE_RESULT = record(
    "a result with a branch or a return", "One result and where it goes.",
    RESULT_KEYS | {"return": RETURNED}, ("result",),
    "{result: above spec, return: bad ground}",
) | {"anyOf": [{"required": ["branch"]}, {"required": ["return"]}]}  # fmt: skip


def results_of(result: Schema) -> Schema:
    """Results as a list, or as a map from each result to its branch."""
    example = "[{result: yes, branch: belt}, {result: no, branch: fuse}]"
    description = "Where each result goes."
    return by_type(
        "results, each with its branch", description,
        {"array": several("a list of results, each with its branch", description, result, example,
                          0),
         "object": by_name("branches by result", description, BRANCH, "{yes: belt, no: fuse}")},
        "{yes: belt, no: fuse}",
    )  # fmt: skip


OPTION = record(
    "an estimate option",
    "Replaces the standard option of the same name, or adds one.",
    {
        "option": string("a few words", "What the customer reads.", "Install a used module", 40),
        "hours": decimal("a number of hours", "Labor hours.", 1.2, 0),
        "price": MONEY,
        "parts": PARTS,
        "tow": choice("yes", "Whether it needs a tow.", "yes", "no"),
        "note": NOTE,
        "chance": decimal("a number from 0 to 1", "The chance of a comeback.", 0.15, 0)
        | {"maximum": 1},
        "part": choice(
            "new, used, or rebuilt", "What kind of part is installed.", "new", "used", "rebuilt"
        ),
        "not_offered": string("a reason", "Why we don't offer this.", "Not safe to drive", 120),
    },
    (),
    "{option: Install a used module, hours: 1.2}",
)

TOOL = slug("a tool", "ID from kb/tools.yml.", "multimeter")
HAZARD = slug("a hazard", "ID from kb/hazards.yml.", "rotating-parts")
PLACEHOLDER_OR_NAME = r"^(<[a-z][a-z0-9_-]*>|[A-Za-z0-9]+([ ._-][A-Za-z0-9]+)*)$"
PART_NAME = pattern("a part", "ID from kb/parts.yml or kb/modules/.", "alternator",
                    PLACEHOLDER_OR_NAME)  # fmt: skip
CONDITIONS_NEEDED = several(
    "a list of conditions", "The states of the vehicle that it needs.",
    by_type("a condition", "From kb/conditions.yml, or free text of several words.",
            {"string": string("a condition", "", "key-on", 60),
             "object": by_name("a condition of a part", "",
                               string("a part or a current", "", "alternator", 60),
                               "{unplugged: alternator}") | {"maxProperties": 1}},
            "key-on"),
    "[key-on, {unplugged: alternator}]",
)  # fmt: skip
DO = several(
    "a list of lines", "What is done before the answer; each line starts with a verb.",
    string("a line", "", "Zero the clamp", 80), "[Zero the clamp, Read both at once]",
)  # fmt: skip
TORQUES = several(
    "a list of torques", "Names from the vehicle's file.",
    slug("a torque", "", "lug-nuts"), "[lug-nuts]",
)  # fmt: skip
WHERE = by_type(
    "a place, a part and its pins, a connector and its pins, or a fuse",
    "Where to work or to look.",
    {"string": string("a place", "", "Behind the master cylinder", 60),
     "object": record(
         "a part and its pins, a connector and its pins, or a fuse", "",
         {"part": PART_NAME,
          "connector": slug("a connector", "From the vehicle's file.", "abs-module"),
          "pins": several("a list of pins", "Roles of a part's pins, or a connector's numbers.",
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
    "hook_up": slug("a power state", "The state in which the `do` lines are done.", "key-off"),
    "tools": several("a list of tools", "Tools the step needs.", TOOL, "[multimeter]"),
    "how_to": slug("an article", "The how-to: ID from kb/how-to/.", "charging-voltage"),
    "picture": record(
        "a picture", "A drawing in kb/how-to/pictures/.",
        {"file": pattern("a file name", "", "plug.svg",
                         r"^[A-Za-z0-9_-]+\.(svg|png|jpe?g|webp|avif|gif)$"),
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

DRIVING: dict[str, Schema] = {
    "drive": choice("yes, with care, or no",
                    "Whether the vehicle may be driven as it is, before the repair.",
                    "yes", "with care", "no"),
    "why": string("a few words", "Why, or why not, in words for the customer.",
                  "The brakes may not hold.", 120),
}  # fmt: skip
VERIFICATION = by_type(
    "a check, a procedure, or a few words", "One thing that proves the repair.",
    {"string": string("a test", "", "13.5 V or more at idle", 120),
     "object": by_name(
         "a check and the result that passes", "",
         by_type("a result", "",
                 {"string": string("a result", "", "firm", 28),
                  "object": by_name("a range for each reading", "",
                                    string("a range", "", "within spec", 28),
                                    "{play: within spec}")},
                 "firm"),
         "{hold: firm}") | {"maxProperties": 1}},
    "{hold: firm}",
)  # fmt: skip
PROOF = by_name(
    "a check and its result", "One check, and the results of it that will do.",
    by_type("a result, or a list of results", "",
            {"string": string("a result", "", "good", 28),
             "array": several("a list of results", "", string("a result", "", "good", 28),
                              "[good, low]")},
            "good"),
    "{feed: good}",
) | {"maxProperties": 1}  # fmt: skip

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
            "spec": SPEC_NAME,
            "by": slug("a procedure", "ID from kb/procedures/.", "power-and-ground"),
            "with": by_name("what the procedure takes", "A value for each.",
                            string("a value", "", "alternator", 60), "{part: alternator}"),
            "several": choice("first fits", "More than one can be true: use the first.",
                              "first fits"),
            "results": results_of(RESULT),
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
            "hours": decimal("a number of hours", "Labor hours.", 0.8, 0),
            "parts": PARTS,
            "replaces": record(
                "a module and its part",
                "Price, hours, and setup come from kb/modules/.",
                {"module": pattern("a module", "ID from kb/modules/, or an answer.", "eps-module",
                                   PLACEHOLDER_OR_NAME),
                 "part": choice("new or used", "", "new", "used")},
                ("module", "part"), "{module: eps-module, part: new}"),
            "verify": several("a list", "How to verify the repair before release.",
                              VERIFICATION, "[running, {hold: firm}, no DTC after 10 miles]"),
            "proved_by": several("a list of checks and results", "What else the fix rests on.",
                                 PROOF, "[{feed: good}]"),
            "torques": TORQUES,
            **DRIVING,
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
