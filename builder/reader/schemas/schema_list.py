"""All schemas by kind of file, as published and as the reader uses them.

In: nothing, or a library. Out: schemas as dicts or as JSON text.
"""

import copy
import json
from collections.abc import Mapping

from builder.model.library import Library
from builder.reader.schemas.condition_schema import CONDITIONS
from builder.reader.schemas.knowledge_schemas import (
    CODES,
    GLOSSARY,
    HAZARDS,
    LAMPS,
    SYSTEMS,
    TOOLS,
    WORD_LIST,
)
from builder.reader.schemas.procedure_schema import PROCEDURE, PROCEDURE_STEPS
from builder.reader.schemas.record_schemas import ARTICLE, CASE, MODULE
from builder.reader.schemas.shapes import PLAIN_NUMBER, Schema
from builder.reader.schemas.shop_schemas import SHOP, SITE
from builder.reader.schemas.step_schema import STEP_DEFINITIONS
from builder.reader.schemas.tree_schema import TREE
from builder.reader.schemas.vehicle_schemas import SPECS, VEHICLE, VEHICLE_PARTS
from builder.reader.schemas.walk_schema import RECORD

FILE_KINDS: Mapping[str, Schema] = {
    "tree": TREE | {"$defs": STEP_DEFINITIONS},
    "shop": SHOP,
    "site": SITE,
    "systems": SYSTEMS,
    "lamps": LAMPS,
    "hazards": HAZARDS,
    "conditions": CONDITIONS,
    "tools": TOOLS,
    "specs": SPECS,
    "parts": VEHICLE_PARTS,
    "vehicle": VEHICLE,
    "procedure": PROCEDURE | {"$defs": PROCEDURE_STEPS},
    "codes": CODES,
    "glossary": GLOSSARY,
    "words": WORD_LIST,
    "module": MODULE,
    "case": CASE,
    "article": ARTICLE,
}
# All that are published: files that authors write, and what a walk writes.
PUBLISHED: Mapping[str, Schema] = {**FILE_KINDS, "record": RECORD}


def schema(kind: str) -> Schema:
    """Return a published schema; KeyError for an unknown kind."""
    head = {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "$id": f"{kind}.schema.json",
    }
    return head | copy.deepcopy(dict(PUBLISHED[kind]))


def text_schema(kind: str) -> Schema:
    """Return the schema for values that are all still text, as the reader has them."""
    result = _as_text(schema(kind))
    assert isinstance(result, dict)
    return result


def _number_pattern(part: Schema) -> str:
    """Return the pattern that stands in for the bounds of a published number."""
    if part["type"] == "integer":
        return "^[1-9][0-9]*$"
    if "maximum" in part:
        return r"^(0(\.[0-9]+)?|1(\.0+)?)$"
    return PLAIN_NUMBER.replace("-?", "") if "minimum" in part else PLAIN_NUMBER


def _as_text(part: object) -> object:
    if isinstance(part, list):
        return [_as_text(item) for item in part]
    if not isinstance(part, dict):
        return part
    result = {key: _as_text(value) for key, value in part.items()}
    if result.get("type") in ("number", "integer"):
        return result | {"type": "string", "pattern": _number_pattern(result)}
    if isinstance(kinds := result.get("type"), list):
        kinds = [kind for kind in kinds if kind not in ("number", "boolean")]
        result["type"] = kinds if len(kinds) > 1 else "string"
    return result


def named_schema(kind: str, library: Library) -> Schema:
    """Return the schema of a kind of file with the shop's own names, for editors to offer."""
    names = {
        "a tool": library.tools,
        "a hazard": library.hazards,
        "a condition": library.conditions,
        "a warning light": library.lamps,
        "a system": library.systems,
        "an article": library.how_tos,
        "a module": library.modules,
        "a procedure": library.procedures,
    }
    result = _with_names(schema(kind), {title: sorted(ids) for title, ids in names.items()})
    assert isinstance(result, dict)
    return result


def _with_names(part: object, names: Mapping[str, list[str]]) -> object:
    if isinstance(part, list):
        return [_with_names(item, names) for item in part]
    if not isinstance(part, dict):
        return part
    result = {key: _with_names(value, names) for key, value in part.items()}
    if "pattern" in result and (ids := names.get(str(result.get("title")))):
        texts = {key: result[key] for key in ("title", "description", "examples")}
        return texts | {"enum": ids}
    return result


def schema_texts(library: Library | None = None, kind: str | None = None) -> dict[str, str]:
    """Return the schemas as JSON by file name; with a library, with the shop's own names."""
    return {
        f"{name}.schema.json": json.dumps(
            named_schema(name, library) if library else schema(name), indent=2, ensure_ascii=False
        )
        + "\n"
        for name in PUBLISHED
        if kind in (None, name)
    }
