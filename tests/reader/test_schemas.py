"""The schemas are sound JSON Schemas, and say something about every word."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from builder.reader.knowledge_files import read_knowledge
from builder.reader.schemas import named_schema, schema
from builder.reader.schemas.schema_list import PUBLISHED, text_schema

SHOP = Path(__file__).parents[1] / "shop"


@pytest.mark.parametrize("kind", PUBLISHED)
def test_a_schema_is_sound(kind: str) -> None:
    """Held against the meta-schema of JSON Schema 2020-12, as jsonschema carries it."""
    published = schema(kind)
    assert published["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    jsonschema.Draft202012Validator.check_schema(published)
    jsonschema.Draft202012Validator.check_schema(text_schema(kind))


@pytest.mark.parametrize("kind", PUBLISHED)
def test_every_word_is_described(kind: str) -> None:
    """An editor shows the description while the author types."""
    named = list(properties(schema(kind)))
    assert named
    for name, part in named:
        assert "description" in part or "$ref" in part, f"{kind}: {name}"
        assert "title" in part or "$ref" in part, f"{kind}: {name}"


def properties(part: Any) -> Iterator[tuple[str, dict[str, Any]]]:
    """Yield every named property, at any depth."""
    if isinstance(part, dict):
        named = part.get("properties")
        if isinstance(named, dict):
            yield from named.items()
        for value in part.values():
            yield from properties(value)
    elif isinstance(part, list):
        for value in part:
            yield from properties(value)


def test_an_editor_is_offered_the_shop_s_own_names() -> None:
    """Tools, hazards, systems, lamps, articles and modules are completed as they are typed."""
    library, _ = read_knowledge(SHOP)
    assert {"multimeter", "loud-horn", "supply-at-the-plug"} <= {
        *library.tools, *library.hazards, *library.how_tos,
    }  # fmt: skip
    checks = named_schema("tree", library)["$defs"]["check"]["properties"]
    assert checks["tools"]["items"]["enum"] == sorted(library.tools)
    assert checks["hazards"]["items"]["enum"] == sorted(library.hazards)
    assert checks["how_to"]["enum"] == sorted(library.how_tos)
    jsonschema.Draft202012Validator.check_schema(named_schema("tree", library))
