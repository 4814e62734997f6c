"""The schema of a procedure's file.

In: the schemas of a step. Out: `PROCEDURE`, and the definitions of its steps.
"""

from builder.reader.schemas.check_schema import PROCEDURE_RESULT, RETURNED, results_of
from builder.reader.schemas.shapes import (
    FORMAT,
    NOTE,
    SIGNED,
    Schema,
    by_name,
    choice,
    record,
    several,
    string,
)
from builder.reader.schemas.step_schema import (
    ANY_STEP,
    KIND,
    PART_NAME,
    any_of_kinds,
    step_of,
)

TAKEN = record(
    "what kind of value it is", "Something that the procedure is told; steps write it as <name>.",
    {"is": choice("a kind of value", "A part, a current, a spec, a module, or a few words.", "part",
                  "current", "spec",
                  "module", "text"),
     "else": string("a value", "What is taken where a tree says nothing.", "2 A", 60)},
    ("is",), "{is: part}",
)  # fmt: skip


def _check() -> Schema:
    words, own = KIND["check"]
    results = results_of(PROCEDURE_RESULT)
    return record(
        "a step of kind check", str(words["description"]),
        {"check": words} | own | {"results": results} | ANY_STEP, ("check",), "",
    )  # fmt: skip


PROCEDURE_STEPS: dict[str, Schema] = {
    "check": _check(),
    "action": step_of("action"),
    "return": record("a step of kind return", "An end of the procedure.", {"return": RETURNED},
                     ("return",), ""),
}  # fmt: skip
PROCEDURE = record(
    "a procedure", "A short tree that other trees run.",
    {"format": FORMAT,
     "title": string("a title", "The question it answers, or what it does.", "Is the wire good?",
                     60),
     "takes": by_name("what it takes, by name",
                      "What a tree tells it in `with`; steps write it as <name>.", TAKEN,
                      "{part: {is: part}}"),
     "returns": several("a list of words", "Every answer it can give, the good one first.",
                        RETURNED, "[good, open, shorted]"),
     "never_on": several("a list of parts", "Parts it must never be run on, such as airbags.",
                         PART_NAME,
                         "[srs-module]"),
     "every_time": choice("yes", "Its result doesn't last, such as zero volts: a walk never offers "
                          "it again, but runs the procedure again.", "yes"),
     "note": NOTE,
     "written": SIGNED | {"description": "Who wrote it, and when."},
     "reviewed": SIGNED | {"description": "Who last followed it on a vehicle, and when."},
     "steps": by_name("steps by name", "The first step is the start.",
                      any_of_kinds({kind: kind for kind in PROCEDURE_STEPS}),
                      "{through: {check: Measure resistance, results: ...}}")},
    ("title", "returns", "steps"), "",
)  # fmt: skip
