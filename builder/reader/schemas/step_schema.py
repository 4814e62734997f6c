"""The schema of a step: the words of any step, and those of each kind."""

from builder.reader.schemas.shapes import (
    MONEY,
    PARTS,
    PLAIN_NUMBER,
    Schema,
    by_name,
    choice,
    count,
    number,
    pattern,
    record,
    several,
    slug,
    text,
)

VERBS = (
    "record-codes", "check-supply", "hold-supply", "release-supply", "disconnect-battery",
    "connect-battery", "clear-codes", "cycle-key", "read-codes-again", "drive",
    "check-ground", "check-network",
)  # fmt: skip
MODULE_VERBS = ("program", "configure", "pair", "initialise")

BRANCH = pattern(
    "a branch",
    "A step of this tree, another tree, a step of another tree, `next` or `back`.",
    "belt",
    r"^[A-Za-z0-9_-]+(/[A-Za-z0-9_-]+(#[A-Za-z0-9_-]+)?)?$",
)
NOTE = text("a note", "What else is good to know here.", "Ask who fitted it.", 400)
MINUTES = number("a number of minutes", "Minutes of work.", 4, 0)
DEED = pattern(
    "something from the closed list",
    "What the step achieves, for the rules of order.",
    "record-codes",
    f"^({'|'.join(VERBS)}|({'|'.join(MODULE_VERBS)}) .+)$",
) | {"examples": [*VERBS, *(f"{verb} steering-unit" for verb in MODULE_VERBS)]}

RANGE_WORDS = (
    "below 12.2, above 14.8, at least 5, at most 5, exactly 0, 12.2 to 13.2, "
    "above 12.4 to 12.6, 12.4 to below 12.6, OL"
)
READING = record(
    "a unit, and from where to where it can read",
    "A value to be measured.",
    {
        "unit": text("a unit", "From the shop's closed list.", "V"),
        "from": number("a number", "The lowest value that can be read.", 0),
        "to": {"anyOf": [{"type": "number"}, {"enum": ["OL"]}], "title": "a number, or OL",
               "description": "The highest value that can be read; OL: it may be over the range.",
               "examples": [20]},
        "resolution": number("a number", "The smallest step of the instrument.", 0.01, 0),
        "origin": text("an origin", "Where the limits come from.", "common practice", 120),
        "one_of": several("a list of phrases", "Phrases instead of a number.",
                          text("a phrase", "One.", "clear", 28), "[clear, milky]"),
    },
    (),
    "{unit: V, from: 0, to: 20, resolution: 0.01, origin: common practice}",
) | {"anyOf": [{"required": ["unit", "from", "to"]}, {"required": ["one_of"]}]}  # fmt: skip

FIGURE = record(
    "what to look up, its unit, and whether it is a band or a limit",
    "A figure of the maker, asked for at the vehicle.",
    {
        "look_up": text("a figure", "What to look up.", "air gap of the sensor", 60),
        "unit": text("a unit", "From the shop's closed list.", "mm"),
        "kind": choice("band or limit", "Two ends, or one.", "band", "limit"),
        "origin": text("an origin", "Where it stands.", "maker's service information", 120),
    },
    ("look_up", "unit", "kind"),
    "{look_up: air gap of the sensor, unit: mm, kind: band}",
)

RESULT = record(
    "a pair of result and branch",
    "One result and where it leads.",
    {
        "result": {
            "anyOf": [
                text("a phrase or a range", "", "below 13.2", 28),
                by_name("a range for each reading", "", text("a range", "", "at most 0.5", 28), ""),
            ],
            "title": "a phrase, a range, or a range for each reading",
            "description": f"A phrase; or a range in words: {RANGE_WORDS}.",
            "examples": ["below 13.2"],
        },
        "means": text("a few words", "What it means.", "not charging", 28),
        "branch": BRANCH,
        "done": choice("yes", "With this result the step has achieved what it `does`.", "yes"),
        "with": by_name("answers by name", "What a handoff is given.",
                        text("an answer", "", "steering-unit"), "{module: steering-unit}"),
        "weight": number("a number", "How often this way, beside the others.", 2, 0),
        "chance": number("a number from 0 to 1", "How often this way back is taken.", 0.2, 0)
        | {"maximum": 1},
    },
    ("result", "branch"),
    "{result: below 13.2, branch: belt}",
)  # fmt: skip

OPTION = record(
    "an option for the customer",
    "Replaces the standard option of its name, or adds one.",
    {
        "option": text("a few words", "As the customer reads it.", "Fit a used unit", 40),
        "hours": number("hours", "Labour.", 1.2, 0),
        "price": MONEY,
        "parts": PARTS,
        "tow": choice("yes", "Whether a tow belongs to it.", "yes", "no"),
        "note": NOTE,
        "chance": number("a number from 0 to 1", "How often it comes back.", 0.15, 0)
        | {"maximum": 1},
        "not_offered": text("a reason", "Why it is not offered.", "Not safe to drive", 120),
    },
    (),
    "{option: Fit a used unit, hours: 1.2}",
)

TOOL = slug("a tool", "From kb/tools.yml.", "multimeter")
HAZARD = slug("a hazard", "From kb/hazards.yml.", "rotating-parts")

ANY_STEP: dict[str, Schema] = {
    "note": NOTE,
    "when": several("a list of conditions", "Conditions under which the step counts.",
                    text("a condition", "", "key off", 60), "[engine at 1500 rpm]"),
    "tools": several("a list of tools", "What is needed.", TOOL, "[multimeter]"),
    "how_to": slug("an article", "How it is done: kb/how-to/.", "charging-voltage"),
    "picture": record(
        "a file and what it shows", "A drawing in kb/how-to/pictures/.",
        {"file": pattern("a file name", "", "plug.svg", r"^[A-Za-z0-9_-]+\.(svg|png)$"),
         "shows": text("a few words", "What it shows.", "Pins 1 and 2, wire side", 120)},
        ("file", "shows"), "{file: plug.svg, shows: Pins 1 plus and 2 ground}"),
    "minutes": MINUTES,
    "wait": number("a number of minutes", "Minutes of waiting, not work.", 30, 0),
    "people": count("a whole number", "How many people it takes.", 2),
    "hazards": several("a list of hazards", "What can hurt or break here.", HAZARD,
                       "[rotating-parts]"),
    "does": several("a list from the closed list", "What it achieves.", DEED, "[record-codes]"),
    "write_down": several("a list", "What goes into the record.",
                          text("a thing to write down", "", "part number", 60), "[part number]"),
    "put_back": text("a few words", "Still open until ticked.", "Take the supply off", 60),
    "at_most": count("a whole number", "Times in one walk, the first included.", 3),
    "spent": BRANCH | {"description": "Where to go when `at_most` is used up."},
    "same_as": slug("a step", "The step whose method this one takes.", "feed"),
    "after": several("a list of steps", "What must come first.", slug("a step", "", "supply"),
                     "[supply]"),
    "each": by_name("an item and its list", "Done once for each item; `next` goes on.",
                    slug("a list", "", "modules"), "{module: modules}") | {"maxProperties": 1},
}  # fmt: skip

KIND: dict[str, tuple[Schema, dict[str, Schema]]] = {
    "check": (
        text("a few words", "Something found out.", "Voltage across the battery posts", 60),
        {
            "reading": READING,
            "readings": by_name("readings by name", "Several readings at once.", READING,
                                "{plus: {unit: V, from: 0, to: 16}}"),
            "computed": by_name("sums by name", "Readings worked out from the others.",
                                text("a sum", "", "battery - lamp", 60),
                                "{drop: battery - lamp}"),
            "figure": FIGURE,
            "several": choice("first fits", "More than one can be true: the first that fits.",
                              "first fits"),
            "results": several("a list of pairs of result and branch", "Where each result leads.",
                               RESULT, "[{result: yes, branch: belt}, {result: no, branch: fuse}]",
                               0),
            "could_not": BRANCH | {"description": "Where to go when it could not be done."},
        },
    ),
    "action": (
        text("a few words", "Something done, then on.", "Charge the battery", 60),
        {"then": BRANCH | {"description": "The step that follows, or `back`."}},
    ),
    "fix": (
        text("a few words", "The end that mends.", "Replace the alternator", 60),
        {
            "cause": text("a few words", "What was wrong.", "The belt slips", 60),
            "weight": number("a number", "How often, beside the other fixes of the tree.", 3, 0),
            "hours": number("hours", "Labour.", 0.8, 0),
            "parts": PARTS,
            "replaces": record(
                "a module, and whether the part is new or used",
                "Takes price, hours and set-up from kb/modules/.",
                {"module": slug("a module", "From kb/modules/.", "steering-unit"),
                 "part": choice("new or used", "", "new", "used")},
                ("module", "part"), "{module: steering-unit, part: new}"),
            "verify": several("a list", "How the repair is proved.",
                              text("a proof", "", "charging voltage measured again", 120),
                              "[charging voltage measured again under load]"),
            "still_there": BRANCH | {"description": "Where to go when the proof fails; once."},
            "tell": text("a few sentences", "What the customer is told.", "The belt slipped.", 400),
            "options": by_name("options by name", "Options beside the standard ones.", OPTION,
                               "{used-unit: {option: Fit a used unit, hours: 1.2}}"),
        },
    ),
    "stop": (
        text("a few words", "An end that mends nothing.", "Charges well today", 60),
        {
            "kind": choice("a kind of stop", "Why it ends here.", "foreman", "not-found",
                           "not-this-tree", "customer", "unsafe"),
            "weight": number("a number", "How often it ends here.", 1, 0),
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
    "description": "One step of the tree; its first word says what kind it is.",
    "examples": ["{check: Belt tight and dry, results: [{result: yes, branch: fuse}]}"],
    "allOf": [
        {"if": {"type": "object", "required": [kind]}, "then": {"$ref": f"#/$defs/{kind}"}}
        for kind in KIND
    ],
    "anyOf": [{"required": [kind]} for kind in KIND],
}
STEP_DEFINITIONS = {kind: _step_of(kind) for kind in KIND}
__all__ = ["ANY_STEP", "KIND", "MODULE_VERBS", "PLAIN_NUMBER", "STEP", "STEP_DEFINITIONS", "VERBS"]
