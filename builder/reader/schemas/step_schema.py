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
    "Where the job goes on: a step, another tree, `tree#step`, `next`, or `back`.",
    "belt",
    r"^[A-Za-z0-9_-]+(/[A-Za-z0-9_-]+(#[A-Za-z0-9_-]+)?)?$",
)
NOTE = string(
    "a note", "What the tech must know here, 30 words or less.", "Ask who installed it.", 400
)
MINUTES = decimal("a number of minutes", "Minutes of work, without waiting.", 4, 0)
TASK = pattern(
    "a task from the list",
    "What it counts as in the order of work.",
    "record-codes",
    f"^({'|'.join(VERBS)}|({'|'.join((*PART_VERBS, *MODULE_VERBS))}) .+)$",
) | {"examples": [*VERBS, *(f"{verb} eps-module" for verb in MODULE_VERBS)]}

SPEC_NAME = pattern("a spec",
                    "A value from kb/specs.yml: unit, range, and what is good come from there.",
                    "charging-voltage",
                    r"^(<[a-z][a-z0-9_-]*>|[A-Za-z0-9]+([ _-][A-Za-z0-9]+)*)$")  # fmt: skip
RANGE_WORDS = (
    "below 12.2, above 14.8, at least 5, at most 5, exactly 0, 12.2 to 13.2, "
    "above 12.4 to 12.6, 12.4 to below 12.6, OL"
)
READING = record(
    "a reading with a unit and a range",
    "What is read from the meter.",
    {
        "unit": string("a unit", "The unit the meter shows.", "V"),
        "from": decimal("a number", "The lowest that the meter can show here.", 0),
        "to": {"anyOf": [{"type": "number"}, {"enum": ["OL"]}], "title": "a number, or OL",
               "description": "The highest that it can show; `OL` if it can show over-limit.",
               "examples": [20]},
        "resolution": decimal("a number", "The finest step the meter shows.", 0.01, 0),
        "origin": string("an origin", "Where the limits come from.", "common practice", 120),
        "spec": SPEC_NAME,
        "one_of": several("a list of phrases", "What is seen, where it is no number.",
                          string("a phrase", "One thing that is seen.", "clear", 28),
                          "[clear, milky]"),
    },
    (),
    "{unit: V, from: 0, to: 20, resolution: 0.01, origin: common practice}",
) | {"anyOf": [{"required": ["unit", "from", "to"]}, {"required": ["one_of"]},
               {"required": ["spec"]}]}  # fmt: skip

FIGURE = record(
    "a spec to look up",
    "A limit that differs by vehicle: the walk asks for it.",
    {
        "look_up": string(
            "a spec", "What to look up in the service information.", "sensor air gap", 60
        ),
        "unit": string("a unit", "The unit it is given in.", "mm"),
        "kind": choice(
            "band or limit", "`band` has a low and a high end, `limit` has one.", "band", "limit"
        ),
        "origin": string("an origin", "Where to look it up.", "service information", 120),
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
    "means": string("a few words", "What the result tells the tech.", "not charging", 28),
    "branch": BRANCH,
    "done": choice("yes", "Only this result counts as having done what `does` says.", "yes"),
    "with": by_name("answers by name", "Answers the other tree would ask for.",
                    string("an answer", "", "eps-module"), "{module: eps-module}"),
    "weight": decimal("a number", "How often it turns out so, compared with the other results.", 2,
                      0),
    "chance": decimal("a number from 0 to 1", "How likely a job goes around this way once more.",
                      0.2, 0)
    | {"maximum": 1},
}  # fmt: skip
RETURNED = string("a word", "The answer that goes back to the tree.", "bad power", 28)
RESULT = record(
    "a result with a branch", "One answer, and where the job goes on.", RESULT_KEYS, ("result",
                                                                                      "branch"),
    "{result: below 13.2, branch: belt}",
)  # fmt: skip
PROCEDURE_RESULT = record(
    "a result with a branch or a return", "One answer, and where the job goes on.",
    RESULT_KEYS | {"return": RETURNED}, ("result",),
    "{result: above spec, return: bad ground}",
) | {"anyOf": [{"required": ["branch"]}, {"required": ["return"]}]}  # fmt: skip


def results_of(result: Schema) -> Schema:
    """Results as a list, or as a map from each result to its branch."""
    example = "[{result: yes, branch: belt}, {result: no, branch: fuse}]"
    description = "Every possible answer, and where each leads."
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
        "option": string(
            "a few words", "The option as the customer reads it.", "Install a used module", 40
        ),
        "hours": decimal("a number of hours", "Hours of labor on the estimate.", 1.2, 0),
        "price": MONEY,
        "parts": PARTS,
        "tow": choice("yes", "`yes` adds the price of a tow.", "yes", "no") | {"default": "no"},
        "note": NOTE,
        "chance": decimal("a number from 0 to 1", "How likely the same fault comes back.", 0.15, 0)
        | {"maximum": 1},
        "part": choice(
            "new, used, or rebuilt",
            "New, used, or rebuilt; the customer reads it.",
            "new",
            "used",
            "rebuilt",
        ),
        "not_offered": string(
            "a reason",
            "Why this can't be offered; takes the place of a price.",
            "Not safe to drive",
            120,
        ),
    },
    (),
    "{option: Install a used module, hours: 1.2}",
)

TOOL = slug("a tool", "ID from kb/tools.yml.", "multimeter")
HAZARD = slug("a hazard", "ID from kb/hazards.yml.", "rotating-parts")
PLACEHOLDER_OR_NAME = r"^(<[a-z][a-z0-9_-]*>|[A-Za-z0-9]+([ ._-][A-Za-z0-9]+)*)$"
PART_NAME = pattern("a part", "A part from kb/parts.yml, or a module from kb/modules/.",
                    "alternator",
                    PLACEHOLDER_OR_NAME)  # fmt: skip
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
TORQUES = several(
    "a list of torques", "Tightening torques by name, from the vehicle's file.",
    slug("a torque", "", "lug-nuts"), "[lug-nuts]",
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
    "put_back": string("a few words", "What goes back on before the vehicle leaves.",
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

DRIVING: dict[str, Schema] = {
    "drive": choice("yes, with care, or no",
                    "Whether the vehicle may be driven as it is, before the repair.",
                    "yes", "with care", "no"),
    "why": string("a few words", "Why, or why not; the customer reads it.",
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
        string("a few words", "A question, or `Measure` and what is measured.",
               "Measure battery voltage", 60),
        {
            "reading": READING,
            "readings": by_name("readings by name",
                                "Several values in one check, each with its name.", READING,
                                "{positive: {unit: V, from: 0, to: 16}}"),
            "computed": by_name("formulas by name",
                                "Values worked out from the others; no math in the bay.",
                                string("a formula", "", "battery - bulb", 60),
                                "{drop: battery - bulb}"),
            "figure": FIGURE,
            "spec": SPEC_NAME,
            "by": slug("a procedure", "From kb/procedures/: it finds the answer.",
                       "power-and-ground"),
            "with": by_name("what the procedure takes",
                            "What the procedure is told: the part, the load, the spec.",
                            string("a value", "", "alternator", 60), "{part: alternator}"),
            "several": choice("first fits",
                              "More than one answer may be true: the first that fits counts.",
                              "first fits"),
            "results": results_of(RESULT),
            "cannot_test": BRANCH | {"description": "Where to go if it can't be tested."},
        },
    ),
    "action": (
        string("a few words", "What to do; starts with a verb.", "Charge the battery", 60),
        {"then": BRANCH | {"description": "The next step; `back` is the step that led here."}},
    ),
    "fix": (
        string("a few words", "The repair; the job ends with it.", "Replace the alternator", 60),
        {
            "cause": string("a few words", "What was wrong with the vehicle.", "The belt slips",
                            60),
            "weight": decimal("a number", "How often it is this fix, compared with the others.", 3,
                              0),
            "hours": decimal("a number of hours", "Hours of labor on the estimate.", 0.8, 0),
            "parts": PARTS,
            "replaces": record(
                "a module and its part",
                "Price, hours, and setup come from the module's record.",
                {"module": pattern("a module",
                                   "A module from kb/modules/, or an answer: `<module>`.",
                                   "eps-module",
                                   PLACEHOLDER_OR_NAME),
                 "part": choice("new or used", "Whether the part is new or used.", "new", "used")},
                ("module", "part"), "{module: eps-module, part: new}"),
            "verify": several("a list", "What proves the repair before the vehicle leaves.",
                              VERIFICATION, "[running, {hold: firm}, no DTC after 10 miles]"),
            "proved_by": several("a list of checks and results",
                                 "Earlier results that the fix rests on, too.",
                                 PROOF, "[{feed: good}]"),
            "torques": TORQUES,
            **DRIVING,
            "still_there": BRANCH | {"description": "Where to go if the fault is still there."},
            "tell": string("a few sentences", "What to tell the customer, in plain words.",
                           "The belt slipped.",
                           400),
            "options": by_name("options by name", "Options that differ from the standard ones.",
                               OPTION,
                               "{used-module: {option: Install a used module, hours: 1.2}}"),
        },
    ),
    "stop": (
        string("a few words", "The job ends here without a repair.", "Charging is OK today", 60),
        {
            "kind": choice("a kind of stop", "Why the job ends here.", "foreman", "not-found",
                           "not-this-tree", "customer", "unsafe") | {"default": "foreman"},
            "weight": decimal("a number", "How often it ends here, compared with the fixes.", 1, 0),
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
