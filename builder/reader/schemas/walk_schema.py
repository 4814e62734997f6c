"""The schema of a walk's record, for what reads records.

In: nothing. Out: `RECORD`, a JSON Schema. `walk/record.py` writes records, `walk/events.py` says
what each event does. No author writes them, so the reader doesn't use it.
"""

from typing import Any

from builder.reader.schemas.shapes import Schema


def _part(title: str, description: str, **more: Any) -> Schema:
    return {"title": title, "description": description, **more}


def _text(title: str, description: str) -> Schema:
    return _part(title, description, type="string")


def _flag(title: str, description: str) -> Schema:
    return _part(title, description, type="boolean")


def _texts(title: str, description: str) -> Schema:
    return _part(title, description, type="object", additionalProperties={"type": "string"})


def _map(title: str, description: str, properties: dict[str, Schema], required: str) -> Schema:
    return _part(
        title,
        description,
        type="object",
        properties=properties,
        required=required.split(),
        additionalProperties=False,
    )


_IN = _text("a tree or procedure", "ID of the tree, or `procedures/` and the procedure's name.")
_STEP = _text("a step", "ID of the step.")
_TIME = _text("a time", "Time with its offset from UTC, as ISO 8601 has it.")
_MAYBE_TIME = _TIME | {"type": ["string", "null"]}
_WHO = _text("a name", "Who it was.")

_READING = _map(
    "a reading", "One value that was read or computed.",
    {
        "value": _text("a value", "Exact decimal in the unit, `OL`, `nothing shown`, or a phrase."),
        "unit": _text("a unit", "Unit of the value; empty for a phrase."),
        "typed": _text("text", "The reading as it was typed; empty if it was computed."),
    },
    "value unit typed",
)  # fmt: skip

_STEP_ENTRY = _map(
    "a step", "A step that was answered or done.",
    {
        "in": _IN,
        "step": _STEP,
        "result": _text("a result", "The result's words, `done`, `cannot test`, `none of these`, "
                        "`passed` or `failed`."),
        "readings": _part("readings by name", 'The one reading of a check has the name "".',
                          type="object", additionalProperties=_READING),
        "stated": _flag("true or false", "Whether it was stated, and not measured on this walk."),
        "at": _MAYBE_TIME,
        "minutes": _part("minutes", "By the clock, without breaks; null without times.",
                         type=["integer", "null"], minimum=0),
        "kind": _part("a kind", "What the step is; `verify` is a test after the repair.",
                      enum=["check", "action", "fix", "verify"]),
        "means": _text("a few words", "What the result means."),
        "item": _text("an item", "The item of the list that the step goes through."),
        "seen": _text("a line", "What was seen, is in the way, or was tested."),
        "earlier": _text("a step", "The check that had proved it, where it wasn't run again."),
        "wrote": _texts("notes by name", "What was written down."),
        "who": _WHO,
        "too_close": _flag("true", "A limit is nearer than the instrument can tell."),
    },
    "in step result readings stated at minutes kind",
)  # fmt: skip

_EVENT = _map(
    "an event", "One thing that happened on the walk; played again, they give the same record.",
    {
        "event": _part("a kind of event", "What happened.", enum=[
            "start", "fill", "answer", "done", "cannot_test", "none_of_these", "tick",
            "acknowledge", "run", "take", "verify", "write_up", "back", "correct", "pause",
            "hand_over", "resume", "rejoin",
        ]),
        "step": _text("a step", "`tree#step`, or the step alone; left out: where the walk is."),
        "tree": _text("a tree", "ID of the tree in which the job starts."),
        "vehicle": _text("a vehicle", "ID of the vehicle."),
        "complaint": _text("words", "The complaint in the customer's words."),
        "enter": _text("a step", "The step to begin with, if it isn't the first."),
        "proven": _texts("results by step", "What was proved before: stated, not measured."),
        "name": _text("a name", "What is filled in."),
        "value": _part("a text or a list", "What it is filled in with.", type=["string", "array"],
                       items={"type": "string"}),
        "source": _text("a source", "Where a spec was looked up."),
        "result": _part("a number", "The result, counted from 0.", type=["integer", "null"]),
        "readings": _texts("readings by name", "The readings as typed."),
        "stated": _flag("true", "Stated, and not measured."),
        "wrote": _texts("notes by name", "What was written down."),
        "seen": _text("a line", "What was seen, or is in the way."),
        "line": _part("a number", "The line to do, counted from 0.", type="integer"),
        "on": _flag("true or false", "Whether the line is done."),
        "hazards": _part("hazards", "The cautions that were read.", type="array",
                         items={"type": "string"}),
        "passed": _flag("true or false", "Whether the test after the repair was good."),
        "index": _part("a number", "The step of the record, counted from 0.", type="integer"),
        "to": _text("a name", "Who takes over."),
        "text": _text("words", "What the papers are to say."),
        "at": _TIME,
        "who": _WHO,
    },
    "event",
)  # fmt: skip


def _list(title: str, description: str, item: Schema) -> Schema:
    return _part(title, description, type="array", items=item)


RECORD: Schema = _map(
    "a record", "One walk: what was measured, what it meant, where it ended.",
    {
        "tree": _text("a tree", "ID of the tree in which the job started."),
        "revision": _text("a revision", "Hash of the tree's content at that time."),
        "vehicle": _text("a vehicle", "ID of the vehicle; empty if none was chosen."),
        "complaint": _text("words", "The complaint in the customer's words."),
        "steps": _list("steps", "The steps that hold, in their order.", _STEP_ENTRY),
        "end": _part("an end", "ID of the fix or stop; `stuck` for the person to call; null while "
                     "the walk goes on.", type=["string", "null"]),
        "ended": _map(
            "an end", "Where the walk ended.",
            {
                "in": _IN,
                "step": _STEP,
                "kind": _text("a kind of end", "`fix`, `stuck`, or the kind of the stop."),
                "verified": _part("true, false or null", "Whether a fix was verified; null before.",
                                  type=["boolean", "null"]),
            },
            "in step kind verified",
        ) | {"type": ["object", "null"]},
        "hazards": _list("cautions", "The cautions that were acknowledged.", _map(
            "a caution", "A caution that was read.",
            {"in": _IN, "step": _STEP, "hazard": _text("a hazard", "ID of the hazard."),
             "who": _WHO, "at": _text("a time", "When; empty if not known.")},
            "in step hazard who at",
        )),
        "filled": _part(
            "values by name", "Specs, pins and lists that were looked up or named for this job.",
            type="object",
            additionalProperties=_map(
                "a value", "What was filled in.",
                {"value": _part("a text or a list", "The value, a spec in its unit.",
                                type=["string", "array"], items={"type": "string"}),
                 "source": _text("a source", "Where it was looked up.")},
                "value source",
            ),
        ),
        "write_up": _part(
            "own words by end", "What the papers say, by tree and end; then by `where`, `cause`, "
            "`repair`, `parts`, `complaint`, `next`, `caused`, `codes`, `chosen`, `declined`, "
            "`time`, `after`, `handed`, or the check where it was seen, `#codes` where "
            "its name is one of these.",
            type="object",
            additionalProperties=_texts("texts by name", "In the tech's own words."),
        ),
        "struck": _list("steps", "Steps that no longer follow, or were undone.", _STEP_ENTRY),
        "events": _list("events", "All events, in their order.", _EVENT),
        "job": _map(
            "the job", "What the shop calls it; typed on the page, and kept for the next reader.",
            {
                "title": _text("a title", "Title of the tree in which the job started."),
                "order": _text("an order", "Number of the repair order."),
                "vin": _text("a VIN", "As it was typed; its check digit may be wrong."),
                "year": _text("a year", "Model year."),
                "make": _text("a make", "Make of the vehicle."),
                "model": _text("a model", "Model of the vehicle."),
                "mileage": _text("a mileage", "As it was typed: `61,800 km`, `38400 mi`."),
                "customer": _text("a name", "Who brought the vehicle."),
                "codes": _text("DTCs", "DTCs that were read, each with its status."),
                "chosen": _text("an option", "ID of the estimate option that was chosen."),
                "declined": _text("a few words", "What the customer turned down."),
            },
            "",
        ),
    },
    "tree revision vehicle complaint steps end",
)  # fmt: skip
