"""Events as files have them, and back.

In: maps from JSON. Out: events, or a `Refused` that names the key. A written event leaves out what
it has anyway.
"""

from collections.abc import Mapping
from dataclasses import MISSING, fields
from datetime import datetime
from typing import Any

from builder.walk.events import EVENT_NAMES, Event
from builder.walk.job_state import Refused

_NAMES = {kind: name for name, kind in EVENT_NAMES.items()}
_KINDS: Mapping[str, tuple[type, str]] = {
    "result": (int, "a whole number"),
    "index": (int, "a whole number"),
    "line": (int, "a whole number"),
    "stated": (bool, "true or false"),
    "on": (bool, "true or false"),
    "passed": (bool, "true or false"),
    "readings": (dict, "texts by name"),
    "proven": (dict, "texts by name"),
    "wrote": (dict, "texts by name"),
    "hazards": (list, "a list of texts"),
}


def event_from(row: object) -> Event | Refused:
    """Return an event from its map."""
    if not isinstance(row, dict):
        return Refused("an event is a map: {event: answer, result: 1}")
    kind = EVENT_NAMES.get(str(row.get("event")))
    if kind is None:
        return Refused(f"there is no event `{row.get('event')}`; use: {', '.join(EVENT_NAMES)}")
    name = row["event"]
    known = {field.name: field for field in fields(kind)}
    values = {key: value for key, value in row.items() if key != "event"}
    if unknown := [key for key in values if key not in known]:
        return Refused(f"the event `{name}` has no `{unknown[0]}`; use: {', '.join(known)}")
    for key, field in known.items():
        is_needed = field.default is MISSING and field.default_factory is MISSING
        if is_needed and key not in values:
            return Refused(f"`{key}` is missing in the event `{name}`")
    for key, value in values.items():
        if wrong := _mistake(key, value):
            return Refused(f"`{key}` in the event `{name}` must be {wrong}")
    return kind(**{key: _frozen(value) for key, value in values.items()})


def event_row(event: Event) -> dict[str, Any]:
    """Return the map of an event."""
    row: dict[str, Any] = {"event": _NAMES[type(event)]}
    for field in fields(event):
        value = getattr(event, field.name)
        empty = {} if field.default_factory is not MISSING else field.default
        if value != empty:
            row[field.name] = list(value) if isinstance(value, tuple) else value
    return row


def _mistake(key: str, value: object) -> str:
    """Return what the value must be, if it is something else."""
    if key == "at":
        return "" if _is_time(value) else "a time, as in 2026-11-29T09:15:00Z"
    if key == "value" and isinstance(value, list):
        return "" if all(isinstance(item, str) for item in value) else "a text or a list of texts"
    kind, words = _KINDS.get(key, (str, "a text"))
    if key == "result" and value is None:
        return ""
    if not isinstance(value, kind) or (kind is int and isinstance(value, bool)):
        return words
    inner = value.values() if isinstance(value, dict) else value if isinstance(value, list) else ()
    return "" if all(isinstance(item, str) for item in inner) else words


def _is_time(value: object) -> bool:
    try:
        return isinstance(value, str) and datetime.fromisoformat(value).tzinfo is not None
    except ValueError:
        return False


def _frozen(value: Any) -> Any:
    return tuple(value) if isinstance(value, list) else value
