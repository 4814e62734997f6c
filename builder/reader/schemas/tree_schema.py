"""The schema of a decision tree: every key of the format and what it is for.

In: the schema of a step. Out: `TREE`.
"""

from builder.reader.schemas.fix_schema import DRIVING
from builder.reader.schemas.shapes import (
    FORMAT,
    SCOPE,
    SIGNED,
    Schema,
    by_name,
    by_type,
    choice,
    pattern,
    record,
    several,
    slug,
    string,
)
from builder.reader.schemas.step_schema import STEP

PHRASE = string("a phrase", "What a customer or an apprentice says.", "battery light on")
TREE_ID = pattern("a tree ID", "The file's path in trees/, without `.yml`.", "charging/lamp-on",
                  r"^[a-z0-9-]+/[a-z0-9-]+$")  # fmt: skip
DURING = ("starting", "driving off", "driving", "braking", "steering", "parked")

SYMPTOM = record(
    "words, warning lights, and DTCs",
    "The complaint; the search finds the tree by it.",
    {
        "words": several("a list of phrases",
                         "What customers say, slang too; eight or more search best.",
                         PHRASE, "[battery light on while driving]"),
        "lamps": several("a list of warning lights",
                         "Warning lights that are on, from kb/lamps.yml.",
                         slug("a warning light", "ID from kb/lamps.yml.", "charging"),
                         "[charging]"),
        "codes": several("a list of DTCs", "DTCs that bring people to this tree.",
                         string("a DTC", "A letter and four characters.", "P0562"), "[P0562]"),
        "fitted_elsewhere": several("a list of modules",
                                    "Modules that another shop has replaced already.",
                                    slug("a module", "ID from kb/modules/.", "eps-module"),
                                    "[eps-module]"),
        "during": several("a list of situations", "What the driver or the vehicle was doing.",
                          choice("a situation", "When it happens.", *DURING), "[starting]"),
    },
    ("words",),
    "{words: [battery light on while driving], codes: [P0562]}",
)  # fmt: skip

ASKED = record(
    "a question, asked once",
    "Steps write its answer as <name>; a DTC or a handoff may answer it.",
    {
        "ask": string("a question", "The question, asked before the first step.", "Which wheel",
                      60),
        "is": choice("part", "`part` if the answers are parts that steps name.", "part"),
        "one_of": several("a list of answers", "The answers to choose from.",
                          string("an answer", "One answer.", "front left", 28),
                          "[front left, front right]"),
        "codes": by_name("DTCs and their answers", "DTCs that answer it, so nobody has to ask.",
                         string("an answer", "What the DTC tells you.", "front left"),
                         "{C0031: front left}"),
    },
    ("ask",),
    "{ask: Which wheel, one_of: [front left, front right]}",
)  # fmt: skip

TREE: Schema = {
    "$schema": "https://json-schema.org/draft/2020-12/schema",
    "$id": "tree.schema.json",
} | record(
    "a decision tree",
    "A decision tree of the shop, from symptom to fix.",
    {
        "format": FORMAT,
        "title": string("a title", "The complaint in a few words.", "Charging light on", 60),
        "status": choice("a status",
                         "`draft`: in work; `ready`: use it; `retired`: replaced.",
                         "draft", "ready", "retired") | {"default": "draft"},
        "replaced_by": TREE_ID | {"description": "The tree that replaces a retired one."},
        "system": slug("a system", "From kb/systems.yml; without it, the tree's folder.",
                       "charging"),
        "symptom": by_type(
            "a list of phrases, or words, warning lights, and DTCs",
                           "The complaint; the search finds the tree by it.",
            {"array": several("a list of phrases",
                              "What customers say, slang too; eight or more search best.",
                              PHRASE, "[no horn, horn quiet]"),
             "object": SYMPTOM},
            "[no horn, horn quiet]"),
        "applies_to": {
            "anyOf": [{"enum": ["any"]}, several("a list of vehicles", "The vehicles.", SCOPE, "")],
            "title": "`any`, or a list of vehicles",
            "description": "The vehicles it is for.",
            "default": "any",
            "examples": ["[{make: Corvane, model: Tern, years: 2017-2022}]"],
        },
        **DRIVING,
        "written": SIGNED | {"description": "Who wrote it, and when."},
        "reviewed": SIGNED | {"description": "Who last followed it on a vehicle, and when."},
        "asks": by_name("questions by name", "Asked once, before the first step.", ASKED,
                        "{wheel: {ask: Which wheel}}"),
        "lists": by_name("lists by name", "Lists that a step goes through with `each`.",
                         several("a list", "Its items.",
                                 string("an item", "One item.", "engine-module"),
                                 "[engine-module]"),
                         "{modules: [engine-module, abs-module]}"),
        "steps": by_name("steps by name", "The steps by name; a job starts at the first.", STEP,
                         "{running: {check: Measure battery voltage, results: ...}}"),
    },
    ("title", "symptom", "steps"),
    "",
)  # fmt: skip
