"""The record of a walk: what was measured, what it meant, where it ended.

In: a `JobState`. Out: a map for JSON, with keys in this order:

    {"tree": "charging/lamp-on", "revision": "3f2a...", "vehicle": "tern", "complaint": "...",
     "steps": [...], "end": "belt-fix", "ended": {...}, "hazards": [...],
     "filled": {...}, "struck": [...], "events": [...]}

`end` is the ID of the fix or stop, `stuck` for the person to call, null while the walk goes on.
`ended` says more: `{"in", "step", "kind", "verified"}`; null like `end`. `steps` are the steps that
hold, in their order, `struck` those that no longer follow or were undone:

    {"in": "procedures/power-and-ground", "step": "power", "result": "within spec",
     "readings": {"": {"value": "0.05", "unit": "V", "typed": "50 mV"}},
     "stated": false, "at": "2026-11-29T09:15:00Z", "minutes": 6}

`in` is the ID of a tree, or `procedures/<name>`. `minutes` are by the clock, null without times. A
step also has `means`, `item`, `seen`, `who`, `wrote` and `too_close` where they aren't empty.
`filled` are specs, pins and lists that the job was asked for, `{"value", "source"}` by name.
`write_up`, where there is any, is what the tech wrote for the papers, by end (`tree#step`).
`hazards` are those acknowledged: `{"hazard", "in", "step", "who", "at"}`. `events` are all events
as they came; played again they give the same record, so a record is also how a job is handed over.
"""

from typing import Any

from builder.walk.event_files import event_row
from builder.walk.job_state import JobState, RecordedStep, WalkEnd


def record_of(state: JobState) -> dict[str, Any]:
    """Return the record of a walk."""
    end = state.end
    return {
        "tree": state.tree,
        "revision": state.revision,
        "vehicle": state.vehicle,
        "complaint": state.complaint,
        "steps": [_step_row(entry) for entry in state.steps],
        "end": (end.step if end.kind != "stuck" else end.kind) if end else None,
        "ended": end_row(end) if end else None,
        "hazards": [
            dict(zip(("in", "step"), entry.place.rsplit("#", 1), strict=True))
            | {"hazard": entry.hazard, "who": entry.who, "at": entry.at}
            for entry in state.acknowledged
        ],
        "filled": {
            name: {
                "value": value if isinstance(value, str) else [*value],
                "source": state.sources.get(name, ""),
            }
            for name, value in state.filled.items()
        },
        **({"write_up": written} if (written := _written_up(state)) else {}),
        "struck": [_step_row(entry) for entry in state.struck],
        "events": [event_row(event) for event in state.events],
    }


def _written_up(state: JobState) -> dict[str, dict[str, str]]:
    return {place: dict(texts) for place, texts in state.write_up.items() if texts}


def end_row(end: WalkEnd) -> dict[str, Any]:
    """Return where a walk ended."""
    return {"in": end.inside, "step": end.step, "kind": end.kind, "verified": end.verified}


def _step_row(entry: RecordedStep) -> dict[str, Any]:
    more: dict[str, Any] = {
        "kind": entry.kind,
        "means": entry.means,
        "item": entry.item,
        "seen": entry.seen,
        "earlier": entry.earlier,
        "wrote": dict(entry.wrote),
        "who": entry.who,
        "too_close": entry.too_close,
    }
    return {
        "in": entry.inside,
        "step": entry.step,
        "result": entry.result,
        "readings": {
            name: {"value": reading.value, "unit": reading.unit, "typed": reading.typed}
            for name, reading in entry.readings.items()
        },
        "stated": entry.stated,
        "at": entry.at or None,
        "minutes": entry.minutes,
    } | {key: value for key, value in more.items() if value}
