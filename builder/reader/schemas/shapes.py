"""The few shapes that schemas are built from.

In: for each shape a title (what it is, as the messages print it), a description (what it is for)
and an example. Out: JSON Schema as plain dicts. YAML reads `12` as a number and `yes` as a boolean;
the format takes both as text, so a schema for editors allows every plain scalar for a text.
"""

from typing import Any

Schema = dict[str, Any]

PLAIN_NUMBER = r"^-?(0|[1-9][0-9]{0,11})(\.[0-9]{1,9})?$"
LONGEST = 1000  # characters of a text that has no box to fit


def string(title: str, description: str, example: str, most: int = LONGEST) -> Schema:
    """Text of at least one character; up to `most` characters a chart stays readable."""
    schema: Schema = {
        "type": ["string", "number", "boolean"],
        "title": title,
        "description": description,
        "examples": [example],
        "minLength": 1,
        "maxLength": 3 * most,
    }
    return schema


def sentence(title: str, description: str, example: str, most: int = LONGEST) -> Schema:
    """Text that people read, so `yes` alone is none."""
    plain = string(title, description, example, most)
    return plain | {"not": {"enum": ["yes", "no", "true", "false", True, False]}}


def decimal(title: str, description: str, example: float, least: float | None = None) -> Schema:
    """A plain decimal."""
    schema: Schema = {
        "type": "number",
        "title": title,
        "description": description,
        "examples": [example],
    }
    return schema | {"minimum": least} if least is not None else schema


def count(title: str, description: str, example: int) -> Schema:
    """A whole number, one or more."""
    return decimal(title, description, example, 1) | {"type": "integer"}


def choice(title: str, description: str, *words: str) -> Schema:
    """One of a few words."""
    return {"enum": list(words), "title": title, "description": description}


def pattern(title: str, description: str, example: str, regex: str) -> Schema:
    """Text of a given form."""
    return string(title, description, example) | {"pattern": regex}


def several(title: str, description: str, item: Schema, example: str, least: int = 1) -> Schema:
    """A list."""
    return {
        "type": "array",
        "items": item,
        "minItems": least,
        "title": title,
        "description": description,
        "examples": [example],
    }


def by_name(title: str, description: str, value: Schema, example: str) -> Schema:
    """A map from names that the author chooses to values of one shape."""
    return {
        "type": "object",
        "additionalProperties": value,
        "minProperties": 1,
        "title": title,
        "description": description,
        "examples": [example],
    }


def record(
    title: str,
    description: str,
    properties: dict[str, Schema],
    required: tuple[str, ...],
    example: str,
) -> Schema:
    """A map of known keys."""
    return {
        "type": "object",
        "properties": properties,
        "required": list(required),
        "additionalProperties": False,
        "title": title,
        "description": description,
        "examples": [example],
    }


def by_type(title: str, description: str, shapes: dict[str, Schema], example: str) -> Schema:
    """One of several shapes, told apart by their JSON type; each keeps its own messages."""
    *others, last = sorted(shapes, key=lambda kind: kind == "string")
    rest = shapes[last]
    for kind in others:
        rest = {"if": {"type": kind}, "then": shapes[kind], "else": rest}
    return {
        "type": [*shapes, *(("number", "boolean") if "string" in shapes else ())],
        "title": title,
        "description": description,
        "examples": [example],
    } | {key: rest[key] for key in ("if", "then", "else")}


def slug(title: str, description: str, example: str) -> Schema:
    """A name that other files refer to."""
    return pattern(title, description, example, r"^[A-Za-z0-9]+([ _-][A-Za-z0-9]+)*$")


def name_or_answer(title: str, description: str, example: str) -> Schema:
    """A name that other files refer to, or the answer to a question, as `<module>`."""
    regex = r"^(<[a-z][a-z0-9_-]*>|[A-Za-z0-9]+([ ._-][A-Za-z0-9]+)*)$"
    return pattern(title, description, example, regex)


FORMAT: Schema = {
    "enum": [2, "2"], "title": "the number 2", "examples": [2],
    "description": "The version of the format; without it, the newest.", "default": 2,
}  # fmt: skip
WORDS = string("a few words", "As the shop calls it.", "Charging light")
NAMES = several(
    "a list of names",
    "What else people call it; the search knows these too.",
    WORDS,
    "[steering computer]",
)
DAY = r"(?:0[1-9]|1[0-2])-(?:0[1-9]|1\d|2\d)|(?:0[13-9]|1[0-2])-30|(?:0[13578]|1[02])-31"
DATE = pattern("a date", "Year, month, and day.", "2026-03-02", rf"^\d{{4}}-(?:{DAY})$")
SIGNED = record(
    "a name and a date",
    "Who signs for it, and when.",
    {"by": string("a name", "The person's name.", "R. Osei"), "date": DATE},
    ("by", "date"),
    "{by: R. Osei, date: 2026-03-02}",
)
SCOPE = record(
    "a vehicle",
    "One model that it covers.",
    {
        "make": string("a make", "The vehicle make.", "Corvane"),
        "model": string("a model", "The vehicle model.", "Tern"),
        "years": pattern(
            "model years", "One year, or the first and last year.", "2017-2022", r"^\d{4}(-\d{4})?$"
        ),
    },
    ("make", "model"),
    "{make: Corvane, model: Tern, years: 2017-2022}",
)
MONEY = pattern(
    "an amount, or a range of amounts",
    "In the shop's currency; a range where it varies.",
    "280 to 340",
    r"^[0-9]+(\.[0-9]+)?( to [0-9]+(\.[0-9]+)?)?$",
)
PARTS = several(
    "a list of parts and prices",
    "What the customer pays for besides labor.",
    record(
        "a part and its price",
        "One part to buy.",
        {
            "part": string("a part", "As the parts counter calls it.", "alternator", 60),
            "price": MONEY,
            "only_if": string(
                "a few words",
                "When it is needed, if not always. The estimate has it from 0 to its price.",
                "they are worn thin",
                60,
            )
            | {"pattern": "[A-Za-z]"},  # a figure alone is a price
            "service": choice(
                "yes",
                "`yes`: work that is bought, no part; tax on parts leaves it out.",
                "yes",
                "no",
            )
            | {"default": "no"},
        },
        ("part",),
        "{part: alternator, price: 310}",
    ),
    "[{part: alternator, price: 310}]",
)
BRANCH = pattern(
    "a branch",
    "Where the job goes on: a step, another tree, `tree#step`, `next`, or `back`.",
    "belt",
    r"^[A-Za-z0-9_-]+(/[A-Za-z0-9_-]+)?(#[A-Za-z0-9_-]+)?$",
)
NOTE = sentence(
    "a note", "What the tech must know here, 30 words or less.", "Ask who installed it.", 400
)
OVER_LIMIT: Schema = {
    "anyOf": [{"type": "number"}, {"enum": ["OL"]}],
    "title": "a number, or OL",
    "description": "The highest that it can show; `OL` if it can show over-limit.",
    "examples": [20],
}
