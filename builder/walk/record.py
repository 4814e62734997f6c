"""The record of a walk: what was measured, what it meant, where it ended.

In: a `WalkState`. Out: a map for JSON, with keys in this order:

    {"tree": "charging/lamp-on", "revision": "3f2a...", "vehicle": "tern", "complaint": "...",
     "steps": [...], "end": "belt-fix", "ended": {...}, "hazards": [...], "struck": [...],
     "events": [...]}

`end` is the ID of the fix or stop, `stuck` for the person to call, null while the walk goes on.
`ended` says more: `{"in", "step", "kind", "verified"}`; null like `end`. `steps` are the steps that
hold, in their order, `struck` those that no longer follow or were undone:

    {"in": "procedures/power-and-ground", "step": "power", "result": "within spec",
     "readings": {"": {"value": "0.05", "unit": "V", "typed": "50 mV"}},
     "stated": false, "at": "2026-11-29T09:15:00Z", "minutes": 6}

`in` is the ID of a tree, or `procedures/<name>`. `minutes` are by the clock, null without times. A
step also has `means`, `item`, `seen`, `who`, `wrote` and `too_close` where they aren't empty.
`hazards` are those acknowledged: `{"hazard", "in", "step", "who", "at"}`. `events` are all events as
they came; played again they give the same record, so a record is also how a job is handed over.
"""
