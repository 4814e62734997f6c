"""The schema of a decision tree: every word of the format with what it is for."""

from builder.reader.schemas.shapes import (
    SCOPE,
    SIGNED,
    Schema,
    by_name,
    choice,
    pattern,
    record,
    several,
    slug,
    text,
)
from builder.reader.schemas.step_schema import STEP

PHRASE = text("a phrase", "As a customer or an apprentice would say it.", "battery light on")
TREE_ID = pattern("the id of a tree", "Its path without the ending.", "charging/lamp-on",
                  r"^[a-z0-9-]+/[a-z0-9-]+$")  # fmt: skip
DURING = ("starting", "driving off", "driving", "braking", "steering", "parked")

SYMPTOM = record(
    "words, lamps and codes",
    "How the fault shows.",
    {
        "words": several("a list of phrases", "How people say it; eight or more find it best.",
                         PHRASE, "[battery light on while driving]"),
        "lamps": several("a list of lamps", "From kb/lamps.yml.",
                         slug("a lamp", "Its name.", "charging"), "[charging]"),
        "codes": several("a list of trouble codes", "The codes this tree handles.",
                         text("a trouble code", "Letter and four signs.", "P0562"), "[P0562]"),
        "fitted_elsewhere": several("a list of modules", "Parts that came from outside.",
                                    slug("a module", "From kb/modules/.", "steering-unit"),
                                    "[steering-unit]"),
        "during": several("a list of situations", "What the vehicle or the driver was doing.",
                          choice("a situation", "When it shows.", *DURING), "[starting]"),
    },
    ("words",),
    "{words: [battery light on while driving], codes: [P0562]}",
)  # fmt: skip

ASKED = record(
    "a question asked once",
    "Steps name its answer as <name>; a code or a handoff may answer it.",
    {
        "ask": text("a question", "Asked at the start.", "Which wheel", 60),
        "one_of": several("a list of answers", "What can be answered.",
                          text("an answer", "One of them.", "front left", 28),
                          "[front left, front right]"),
        "codes": by_name("codes and the answers they give", "A code that answers it.",
                         text("an answer", "What the code says.", "front left"),
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
    "A decision tree of the shop, from the symptom to the fix.",
    {
        "format": {"enum": [1, "1"], "title": "the number 1",
                   "description": "The version of this format.", "examples": [1]},
        "title": text("a title", "What the tree is about.", "Charging lamp on while driving", 60),
        "status": choice("the state of the work",
                         "draft: half written; ready: may be relied on; retired: replaced.",
                         "draft", "ready", "retired"),
        "replaced_by": TREE_ID | {"description": "The tree that replaces a retired one."},
        "system": slug("a system", "From kb/systems.yml.", "charging"),
        "symptom": SYMPTOM,
        "applies_to": {
            "anyOf": [{"enum": ["any"]}, several("a list of vehicles", "The vehicles.", SCOPE, "")],
            "title": "`any`, or a list of vehicles",
            "description": "The vehicles that this tree is for.",
            "examples": ["[{make: Corvane, model: Tern, years: 2017-2022}]"],
        },
        "written": SIGNED | {"description": "Who wrote it, and when."},
        "reviewed": SIGNED | {"description": "Who followed it at a vehicle last, and when."},
        "asks": by_name("questions by name", "Asked once for the whole tree.", ASKED,
                        "{wheel: {ask: Which wheel}}"),
        "lists": by_name("lists by name", "Lists that a step goes through with `each`.",
                         several("a list", "Its items.", text("an item", "One.", "engine-unit"),
                                 "[engine-unit]"),
                         "{modules: [engine-unit, brake-unit]}"),
        "steps": by_name("steps by name", "The first is the start; nothing falls through.", STEP,
                         "{running: {check: Voltage across the battery posts, results: ...}}"),
    },
    ("format", "title", "status", "system", "symptom", "steps"),
    "",
)  # fmt: skip
