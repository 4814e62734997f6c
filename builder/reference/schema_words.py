"""The words of files, from their schemas.

In: the schema of each kind of file. Out: `FormatWord`s, in the order of the schemas.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from builder.reader.schemas.schema_list import FILE_KINDS
from builder.reader.schemas.shapes import Schema
from builder.reader.schemas.step_schema import KIND
from builder.reference.format_word import FormatWord

FILES = {
    "tree": "trees/<system>/<name>.yml",
    "procedure": "kb/procedures/<name>.yml",
    "conditions": "kb/conditions.yml",
    "specs": "kb/specs.yml",
    "parts": "kb/parts.yml",
    "vehicle": "kb/vehicles/<id>.yml",
    "module": "kb/modules/<id>.yml",
    "hazards": "kb/hazards.yml",
    "tools": "kb/tools.yml",
    "systems": "kb/systems.yml",
    "lamps": "kb/lamps.yml",
    "codes": "kb/codes.yml",
    "glossary": "kb/glossary.yml",
    "words": "kb/words.yml",
    "article": "kb/how-to/<name>.md",
    "case": "kb/cases/<number>.yml",
    "shop": "site_config/shop.yml",
    "site": "site_config/mkdocs.yml",
}
ANY_STEP = "any step"
STEPS = {kind: f"{'an' if kind == 'action' else 'a'} {kind}" for kind in (*KIND, "return")}
_INNER = ("items", "additionalProperties", "then", "else", "anyOf")


@dataclass(frozen=True, slots=True)
class _Place:
    """Where in a file the walk through its schema is."""

    file: str
    step: str = ""  # the kind of step
    key: str = ""  # the nearest key above

    @property
    def text(self) -> str:
        beside = STEPS[self.step] if self.step else self.file
        return f"`{self.key}` in {beside}" if self.key else beside


def schema_words() -> tuple[FormatWord, ...]:
    """Return every word once for each meaning, with all places where it may stand."""
    words: dict[tuple[str, ...], FormatWord] = {}
    for kind, file in FILES.items():
        for word in _words_of_kind(FILE_KINDS[kind], file):
            meaning = (word.name, word.means, word.example, *word.choices)
            known = words.get(meaning)
            places = dict.fromkeys((*(known.places if known else ()), *word.places))
            words[meaning] = replace(known or word, places=tuple(places))
    return tuple(replace(word, places=_joined(word.places)) for word in words.values())


def _words_of_kind(schema: Schema, file: str) -> Iterator[FormatWord]:
    yield from _words(schema, _Place(file))
    for step, definition in schema.get("$defs", {}).items():
        yield from _words(definition, _Place(file, step))


def _words(part: Schema, place: _Place) -> Iterator[FormatWord]:
    required = part.get("required", ())
    for name, value in part.get("properties", {}).items():
        yield _word(name, value, place, name in required)
        yield from _words(value, replace(place, key=name))
    for key in _INNER:
        inner = part.get(key, ())
        for one in inner if isinstance(inner, list) else (inner,):
            if isinstance(one, dict):
                yield from _words(one, place)


def _word(name: str, schema: Schema, place: _Place, required: bool) -> FormatWord:
    examples = [str(one) for one in schema.get("examples", ()) if one != ""]
    choices = () if examples else tuple(map(str, schema.get("enum", ())))
    shown = (*examples, *choices)
    return FormatWord(
        name=name,
        means=schema["description"],
        places=(place.text,),
        example=f"{name}: {shown[0]}" if shown else "",
        choices=choices,
        default=str(schema.get("default", "")),
        required=required,
    )


def _joined(places: tuple[str, ...]) -> tuple[str, ...]:
    """Write the four kinds of step as any step."""
    kinds = [STEPS[kind] for kind in KIND]
    joined = list(places)
    for place in places:
        beside = place.removesuffix(kinds[0])
        of_kinds = [beside + kind for kind in kinds]
        if beside != place and set(of_kinds) <= set(joined):
            joined[joined.index(place)] = beside + ANY_STEP
            joined = [one for one in joined if one not in of_kinds]
    return tuple(joined)
