"""Events to and from JSON: nothing is lost, and what makes no sense is refused by name."""

import json
from random import Random
from typing import Any

import jsonschema
import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.reader.schemas import schema
from builder.walk.event_files import event_from, event_row
from builder.walk.events import EVENT_NAMES, Event
from builder.walk.job_state import Refused
from builder.walk.walk_tables import WalkTables
from tests.walk.random_walks import random_walk

RECORD = schema("record")
names = st.text(min_size=1, max_size=8)
maps = st.dictionaries(names, names, max_size=3)
VALUES: dict[str, st.SearchStrategy[Any]] = {
    "result": st.none() | st.integers(-2, 9),
    "index": st.integers(-1, 9),
    "line": st.integers(0, 9),
    "stated": st.booleans(),
    "on": st.booleans(),
    "passed": st.booleans(),
    "readings": maps,
    "proven": maps,
    "wrote": maps,
    "hazards": st.lists(names, max_size=3).map(tuple),
    "value": names | st.lists(names, max_size=3).map(tuple),
    "at": st.just("2026-11-29T09:15:00Z"),
}


@st.composite
def events(draw: st.DrawFn) -> Event:
    """Draw an event of any kind with all its fields."""
    kind = draw(st.sampled_from(list(EVENT_NAMES.values())))
    fields = kind.__dataclass_fields__
    values: dict[str, Any] = {name: draw(VALUES.get(name, names)) for name in fields}
    return kind(**values)


@given(event=events())
def test_an_event_comes_back_from_json(event: Event) -> None:
    """Written, sent through JSON and read it is the same event."""
    assert event_from(json.loads(json.dumps(event_row(event)))) == event


@given(event=events(), key=st.sampled_from(["steps", "answer", "Result"]))
def test_an_unknown_key_is_refused(event: Event, key: str) -> None:
    """The message names the key and those that there are."""
    refused = event_from({**event_row(event), key: 1})
    assert isinstance(refused, Refused)
    assert f"`{key}`" in refused.message


@pytest.mark.parametrize(
    ("row", "words"),
    [
        (["answer"], "is a map"),
        ({}, "no event `None`"),
        ({"event": "jump"}, "no event `jump`"),
        ({"event": "start"}, "`tree` is missing"),
        ({"event": "answer", "result": "1"}, "`result`"),
        ({"event": "answer", "result": True}, "`result`"),
        ({"event": "answer", "readings": {"": 14}}, "`readings`"),
        ({"event": "acknowledge", "hazards": "heat"}, "`hazards`"),
        ({"event": "pause", "at": "noon"}, "`at`"),
        ({"event": "pause", "at": "2026-11-29T09:15:00"}, "`at`"),
        ({"event": "fill", "name": "x", "value": [1]}, "`value`"),
        ({"event": "tick", "line": 1.0}, "`line`"),
    ],
)
def test_what_makes_no_sense_is_refused(row: object, words: str) -> None:
    """A file written by hand gets a message, never an exception."""
    refused = event_from(row)
    assert isinstance(refused, Refused)
    assert words in refused.message


def test_records_agree_with_their_schema(tables: WalkTables) -> None:
    """Held by jsonschema against the schema that is published."""
    validator = jsonschema.Draft202012Validator(RECORD)
    for tree in tables.trees:
        for seed in range(4):
            walk = random_walk(tables, tree, Random(f"{seed} {tree}"))
            validator.validate(walk["record"])


def test_the_schema_has_every_event_and_every_field() -> None:
    """What the program writes and what is published can't drift apart."""
    event = RECORD["properties"]["events"]["items"]["properties"]
    assert event["event"]["enum"] == list(EVENT_NAMES)
    fields = {name for kind in EVENT_NAMES.values() for name in kind.__dataclass_fields__}
    assert set(event) == fields | {"event"}


@given(st.recursive(st.none() | st.booleans() | st.integers() | names, st.lists, max_leaves=5))
def test_any_json_is_read_or_refused(value: object) -> None:
    """Nothing that JSON can hold makes an exception."""
    for kind, fields in ((name, cls.__dataclass_fields__) for name, cls in EVENT_NAMES.items()):
        row = {"event": kind, **dict.fromkeys(fields, value)}
        assert event_from(row) is not None
