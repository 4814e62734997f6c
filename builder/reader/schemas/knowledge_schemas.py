"""The schemas of the lists in `kb/`, such as systems, hazards and tools.

In: the schemas of a step. Out: one schema for each list in `kb/`.
"""

from builder.reader.schemas.shapes import (
    NAMES,
    WORDS,
    Schema,
    by_name,
    choice,
    decimal,
    pattern,
    record,
    several,
    slug,
    string,
)
from builder.reader.schemas.step_schema import MODULE_VERBS

SYSTEMS = by_name(
    "systems by ID", "The systems of a vehicle; each is a folder in `trees/`.",
    record("a system", "One system.", {"name": WORDS}, ("name",), "{name: Charging}"),
    "{charging: {name: Charging}}",
)  # fmt: skip
LAMPS = by_name(
    "warning lights by ID", "The warning lights.",
    record("a warning light", "One warning light.",
           {"name": WORDS,
            "looks_like": string("a few words", "What it looks like.", "a battery", 120),
            "color": string("a color", "Red, amber, blue, or green.", "red", 28)},
           ("name",), "{name: Charging light, looks_like: a battery, color: red}"),
    "{charging: {name: Charging light}}",
)  # fmt: skip
HAZARDS = by_name(
    "hazards by ID", "Cautions in three parts, with the signal words of ANSI Z535.",
    record("a hazard", "One caution.",
           {"signal": choice("a signal word",
                             "DANGER kills, WARNING can kill, CAUTION injures, NOTICE is property.",
                             "DANGER", "WARNING", "CAUTION", "NOTICE"),
            "hazard": string("a few words", "The danger.", "The wheel can turn by itself", 120),
            "harm": string("a few words", "What it does.", "It breaks hands and arms", 120),
            "avoid": string("a few words", "How to avoid it.", "Keep hands and arms out", 200),
            "short": string("a few words", "For a single line.", "Belts and pulleys spin", 34)},
           ("signal", "hazard", "harm", "avoid"), ""),
    "{rotating-parts: {signal: WARNING, hazard: ..., harm: ..., avoid: ...}}",
)  # fmt: skip
TOOLS = by_name(
    "tools by ID", "The shop's tools and what they measure.",
    record("a tool", "One tool.",
           {"name": WORDS,
            "reads": by_name(
                "ranges by unit", "What it measures.",
                record("a range", "The lowest and highest reading.",
                       {"from": decimal("a number", "The lowest reading.", 0),
                        "to": decimal("a number", "The highest reading.", 600),
                        "resolution": decimal("a number", "The resolution.", 0.01, 0),
                        "error": pattern("percent of the reading plus a fixed part",
                                         "Accuracy (±).", "0.5 % + 0.02",
                                         r"^[0-9.]+ %( \+ [0-9.]+)?$|^[0-9.]+$"),
                        "over": string("a few characters", "Its over-range reading.", "OL", 12)},
                       ("from", "to"), "{from: 0, to: 600}"),
                "{V: {from: -600, to: 600, error: 0.5 % + 0.02}}"),
            "kept": string("a place", "Where the shop keeps it.", "cabinet 2", 60),
            "note": string("a note", "What else helps.", "Test the leads first.", 400)},
           ("name",), "{name: Multimeter}"),
    "{multimeter: {name: Multimeter}}",
)  # fmt: skip
CODE = record(
    "a DTC in the shop's own words", "One DTC.",
    {"short": string("a few words", "What it means.", "Lost communication with EPS module", 80),
     "module": slug("a module", "The module it is about.", "eps-module"),
     "asks": by_name("answers by name", "The answers it gives to a tree's questions.", WORDS,
                     "{wheel: front left}")},
    ("short",), "{short: System voltage low}",
)  # fmt: skip
FAILURE_TYPE = record(
    "a failure type in the shop's own words", "The last two characters of a long DTC.",
    {"short": string("a few words", "What it means.", "Not programmed", 60),
     "set_up": choice("a setup step", "The setup step that is missing.", *MODULE_VERBS)},
    ("short",), "{short: Not programmed, set_up: program}",
)  # fmt: skip
CODES: Schema = {
    "type": "object", "title": "DTCs and what they mean",
    "description": "DTCs and failure types in the shop's own words.",
    "examples": ["{P0562: {short: System voltage low}}"],
    "properties": {"failure types": by_name("failure types by their characters", "Of long DTCs.",
                                            FAILURE_TYPE, '{"51": {short: Not programmed}}')},
    "additionalProperties": CODE,
}  # fmt: skip
GLOSSARY = by_name(
    "terms by ID", "Terms of the trade and what they mean here.",
    record("a term", "One term.",
           {"term": WORDS, "means": string("a few sentences", "What it means.", "", 400),
            "not": several("a list of words", "Words it gets mixed up with.", WORDS, "[update]"),
            "also": NAMES},
           ("term", "means"), "{term: Programming, means: Software is written}"),
    "{programming: {term: Programming, means: Software is written}}",
)  # fmt: skip
TERM_OR_TERMS: Schema = {
    "anyOf": [WORDS, several("a list of terms", "", WORDS, "")],
    "title": "a proper term, or a list of terms to choose from",
    "description": "What the word means; with a list, the search asks which.",
    "examples": ["no crank"],
}
WORD_LIST: Schema = {
    "type": "object", "title": "slang and the proper term for it",
    "description": "Slang words; `same words` lists words that mean the same in a search.",
    "examples": ["{won't crank: no crank}"],
    "properties": {"house words": by_name(
        "instead of this, write that", "Phrases that the shop doesn't write.", TERM_OR_TERMS,
        "{minus clamp: negative terminal}"),
        "same words": by_name("words that mean the same", "For the search only.",
                              TERM_OR_TERMS, "{won't start: no start}")},
    "additionalProperties": TERM_OR_TERMS,
}  # fmt: skip
