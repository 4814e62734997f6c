"""An author's own value comes back in the form that the format takes."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from jsonschema import Draft202012Validator

from builder.reader.put_right import listed, put_right
from builder.reader.schemas.schema_list import text_schema

RIGHT = {
    "a number of minutes": {
        "2 min": "2", "2min": "2", "1h30": "90", "1 h 30 min": "90", "1:30": "90", "1.5 h": "90",
        "2 hours": "120", "six": "6", "~10": "10", "2,5": "2.5", "1,200": "1200", "5.0": "5",
        "overnight": None, "a while": None,
    },
    "a number of hours": {
        "1:06": "1.1", "45 min": "0.75", "1h30": "1.5", "1,1": "1.1", "2 h": "2", ".5": "0.5",
        "half a day": None,
    },
    "a number of jobs": {"seven": "7", "7 times": "7", "35 lb": None, "2.5 kg": None},
    "a number from 0 to 1": {"25%": "0.25", "25 %": "0.25", "30": "0.3", "often": None},
    "a whole number": {"three times": "3", "3x": "3", "twice": "2", "0": None, "2.5": None},
    "a number, or OL": {"16V": "16", "O.L": "OL", "ol": "OL", "-5 V": "-5"},
    "a date": {
        "11/29/2026": "2026-11-29", "2026-9-2": "2026-09-02", "Nov 29, 2026": "2026-11-29",
        "29.11.2026": "2026-11-29", "November 2nd, 2026": "2026-11-02", "last week": None,
        "2026-02-31": None,
    },
    "an amount, or a range of amounts": {
        "$35": "35", "120-160": "120 to 160", "$120 – $160": "120 to 160", "1,200": "1200",
        "35,50": "35.50", "cheap": None,
    },
    "model years": {"2017 to 2022": "2017-2022", "2017–2022": "2017-2022", "17-22": "2017-2022",
                    "2022-2017": None},
    "a branch": {"park switch": "park-switch", "Park Switch!": "Park-Switch"},
    "a file name": {"fuse box.JPG": "fuse-box.jpg", "hose.heic": "hose.jpg", "hose": None},
    "`any`, or a list of vehicles": {
        "Corvane Tern 2017-2022": "[{make: Corvane, model: Tern, years: 2017-2022}]",
        "everything": None,
    },
}  # fmt: skip
CASES = [
    (title, typed, right) for title, values in RIGHT.items() for typed, right in values.items()
]


@pytest.mark.parametrize(("title", "typed", "right"), CASES)
def test_a_value_is_put_right(title: str, typed: str, right: str | None) -> None:
    """None where only the author knows what was meant."""
    assert put_right(title, "key", typed) == right


def test_a_line_of_phrases_becomes_a_list() -> None:
    """A phrase that needs quotes isn't guessed at."""
    assert listed("no horn, horn dead; horn weak") == "[no horn, horn dead, horn weak]"
    assert listed("no horn: dead") is None


def titles(schema: object) -> dict[str, dict[str, object]]:
    """Return the schemas of single values by title."""
    found: dict[str, dict[str, object]] = {}
    if isinstance(schema, dict):
        if isinstance(schema.get("title"), str) and "pattern" in schema:
            found[schema["title"]] = schema
        for part in schema.values():
            found |= titles(part)
    elif isinstance(schema, list):
        for part in schema:
            found |= titles(part)
    return found


@given(st.sampled_from(["a number of minutes", "a number of hours", "a whole number", "a date"]),
       st.text("0123456789 .,:/-hmin%$~", max_size=10))  # fmt: skip
def test_what_is_offered_is_taken(title: str, typed: str) -> None:
    """Whatever was typed: no error, and an offered value is one that the schema takes."""
    right = put_right(title, "key", typed)
    if right is not None and not right.startswith("-"):
        assert Draft202012Validator(titles(text_schema("tree"))[title]).is_valid(right)
