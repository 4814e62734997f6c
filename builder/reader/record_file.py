"""The record of a walk as a file: read, and held against its schema.

In: the path of a JSON file. Out: the record as a map, or one sentence that says what is wrong. The
file may come from anywhere: it is bounded in size and depth, and nothing in it is trusted yet.
"""

import json
from functools import cache
from pathlib import Path
from typing import Any

import jsonschema_rs

from builder.reader.explaining_validator import explaining_validator
from builder.reader.schemas.schema_list import schema
from builder.reader.source import MAX_FILE_BYTES


@cache
def _quick_validator() -> jsonschema_rs.Validator:
    return jsonschema_rs.validator_for(schema("record"))


def read_record(path: Path) -> dict[str, Any] | str:
    """Return the record in a file, or what is wrong with it. Raises OSError."""
    with path.open("rb") as stream:
        content = stream.read(MAX_FILE_BYTES + 1)
    if len(content) > MAX_FILE_BYTES:
        return f"this is no record: it is larger than {MAX_FILE_BYTES // 2**20} MB"
    try:
        record = json.loads(content.decode("utf-8"), parse_constant=_refused, parse_float=str)
        json.dumps(record, ensure_ascii=False).encode("utf-8")
    except RecursionError:
        return "this is no record: it is nested too deep"
    except ValueError as error:
        return f"this is no record of a walk, which is JSON, such as `job.json`: {error}"
    return record_mistake(record) or record


def record_mistake(record: object) -> str:
    """Return what a record lacks or has too much, by its first place; "" if it is sound."""
    if _quick_validator().is_valid(record):
        return ""
    errors = explaining_validator(schema("record")).iter_errors(record)
    first = min(errors, key=lambda error: [str(part) for part in error.absolute_path])
    place = ".".join(str(part) for part in first.absolute_path) or "the record"
    return f"this is no record of a walk: {place}: {first.message[:200]}"


def _refused(word: str) -> object:
    raise ValueError(f"`{word}` is no value of a record")
