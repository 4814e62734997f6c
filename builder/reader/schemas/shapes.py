"""The few shapes that schemas are made of.

Each shape has a title (what it is, as the messages say it), a description (what it is for) and an
example. YAML would call `12` a number and `yes` a word; the format takes both as text, so a schema
for editors allows every plain scalar where text is wanted.
"""

from typing import Any

Schema = dict[str, Any]

PLAIN_NUMBER = r"^-?(0|[1-9][0-9]{0,11})(\.[0-9]{1,9})?$"
LONGEST = 1000  # signs of a text that has no box to fit


def text(title: str, description: str, example: str, most: int = LONGEST) -> Schema:
    """Text of at least one sign; `most` is the length up to which a chart stays readable."""
    made: Schema = {
        "type": ["string", "number", "boolean"],
        "title": title,
        "description": description,
        "examples": [example],
        "minLength": 1,
        "maxLength": 3 * most,
    }
    return made


def number(title: str, description: str, example: float, least: float | None = None) -> Schema:
    """A plain decimal."""
    made: Schema = {
        "type": "number",
        "title": title,
        "description": description,
        "examples": [example],
    }
    return made | {"minimum": least} if least is not None else made


def count(title: str, description: str, example: int) -> Schema:
    """A whole number, one or more."""
    return number(title, description, example, 1) | {"type": "integer"}


def choice(title: str, description: str, *words: str) -> Schema:
    """One of a few words."""
    return {"enum": list(words), "title": title, "description": description}


def pattern(title: str, description: str, example: str, regex: str) -> Schema:
    """Text of a given form."""
    return text(title, description, example) | {"pattern": regex}


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
    """A map from names of the author's own to values of one shape."""
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
    """A map of known words."""
    return {
        "type": "object",
        "properties": properties,
        "required": list(required),
        "additionalProperties": False,
        "title": title,
        "description": description,
        "examples": [example],
    }


def slug(title: str, description: str, example: str) -> Schema:
    """A name that other files refer to."""
    return pattern(title, description, example, r"^[A-Za-z0-9]+([ _-][A-Za-z0-9]+)*$")


DATE = pattern("a date", "Year, month, day.", "2026-03-02", r"^\d{4}-\d{2}-\d{2}$")
SIGNED = record(
    "who and when",
    "A name and a date.",
    {"by": text("a name", "Who.", "R. Osei"), "date": DATE},
    ("by", "date"),
    "{by: R. Osei, date: 2026-03-02}",
)
SCOPE = record(
    "a make, a model and its years",
    "Vehicles that this is about.",
    {
        "make": text("a make", "The maker's name.", "Corvane"),
        "model": text("a model", "The model's name.", "Tern"),
        "years": pattern(
            "model years", "One year, or first and last.", "2017-2022", r"^\d{4}(-\d{4})?$"
        ),
    },
    ("make", "model"),
    "{make: Corvane, model: Tern, years: 2017-2022}",
)
MONEY = pattern(
    "an amount, or a range of amounts",
    "In the shop's currency.",
    "280 to 340",
    r"^[0-9]+(\.[0-9]+)?( to [0-9]+(\.[0-9]+)?)?$",
)
PARTS = several(
    "a list of parts and prices",
    "What has to be bought.",
    record(
        "a part and its price",
        "One part.",
        {"part": text("a part", "Its name.", "alternator", 60), "price": MONEY},
        ("part",),
        "{part: alternator, price: 310}",
    ),
    "[{part: alternator, price: 310}]",
)
