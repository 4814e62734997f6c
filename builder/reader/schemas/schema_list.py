"""All schemas by kind of file, as published and as the reader uses them."""

import copy
import json
from collections.abc import Mapping

from builder.model.library import Library
from builder.reader.schemas import knowledge_schemas as knowledge
from builder.reader.schemas.shapes import PLAIN_NUMBER, Schema
from builder.reader.schemas.step_schema import STEP_DEFINITIONS
from builder.reader.schemas.tree_schema import TREE

KINDS: Mapping[str, Schema] = {
    "tree": TREE | {"$defs": STEP_DEFINITIONS},
    "shop": knowledge.SHOP,
    "site": knowledge.SITE,
    "systems": knowledge.SYSTEMS,
    "lamps": knowledge.LAMPS,
    "hazards": knowledge.HAZARDS,
    "tools": knowledge.TOOLS,
    "vehicles": knowledge.VEHICLES,
    "codes": knowledge.CODES,
    "glossary": knowledge.GLOSSARY,
    "words": knowledge.WORD_LIST,
    "module": knowledge.MODULE,
    "case": knowledge.CASE,
    "article": knowledge.ARTICLE,
}


def schema(kind: str) -> Schema:
    """Return the published schema of a kind of file; KeyError for an unknown kind."""
    head = {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "$id": f"{kind}.schema.json",
    }
    return head | copy.deepcopy(dict(KINDS[kind]))


def text_schema(kind: str) -> Schema:
    """Return the schema for values that are all still text, as the reader has them."""
    made = _as_text(schema(kind))
    assert isinstance(made, dict)
    return made


def _form(wanted: Schema) -> str:
    """Say with a pattern what the published schema says with bounds."""
    if wanted["type"] == "integer":
        return "^[1-9][0-9]*$"
    if "maximum" in wanted:
        return r"^(0(\.[0-9]+)?|1(\.0+)?)$"
    return PLAIN_NUMBER.replace("-?", "") if "minimum" in wanted else PLAIN_NUMBER


def _as_text(part: object) -> object:
    if isinstance(part, list):
        return [_as_text(item) for item in part]
    if not isinstance(part, dict):
        return part
    made = {key: _as_text(value) for key, value in part.items()}
    if made.get("type") in ("number", "integer"):
        return made | {"type": "string", "pattern": _form(made)}
    if isinstance(made.get("type"), list):
        made["type"] = "string"
    return made


def named_schema(kind: str, library: Library) -> Schema:
    """Return the schema of a kind of file with the shop's own names, for editors to offer."""
    names = {
        "a tool": library.tools,
        "a hazard": library.hazards,
        "a lamp": library.lamps,
        "a system": library.systems,
        "an article": library.how_tos,
        "a module": library.modules,
    }
    made = _with_names(schema(kind), {title: sorted(known) for title, known in names.items()})
    assert isinstance(made, dict)
    return made


def _with_names(part: object, names: Mapping[str, list[str]]) -> object:
    if isinstance(part, list):
        return [_with_names(item, names) for item in part]
    if not isinstance(part, dict):
        return part
    made = {key: _with_names(value, names) for key, value in part.items()}
    if "pattern" in made and (known := names.get(str(made.get("title")))):
        words = {key: made[key] for key in ("title", "description", "examples")}
        return words | {"enum": known}
    return made


def schema_texts(library: Library | None = None, kind: str | None = None) -> dict[str, str]:
    """Return the schemas as JSON by file name; with a library, with the shop's own names."""
    return {
        f"{name}.schema.json": json.dumps(
            named_schema(name, library) if library else schema(name), indent=2, ensure_ascii=False
        )
        + "\n"
        for name in KINDS
        if kind in (None, name)
    }
