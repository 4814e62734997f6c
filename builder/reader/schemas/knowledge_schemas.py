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

LAMP_COLOR = "(red|yellow|blue|green|white)"
SYSTEMS = by_name(
    "systems by ID", "The systems of a vehicle; each is a folder in `trees/`.",
    record("a system", "One system.", {"name": WORDS}, ("name",), "{name: Charging}"),
    "{charging: {name: Charging}}",
)  # fmt: skip
LAMPS = by_name(
    "warning lights by ID", "The warning lights.",
    record("a warning light", "One warning light.",
           {"name": WORDS,
            "looks_like": string("a few words", "What to ask for on the phone.", "a battery", 120),
            "color": pattern("a color", "Red, yellow, blue, or green.", "red",
                             rf"^{LAMP_COLOR}( or {LAMP_COLOR})*$")},
           ("name",), "{name: Charging light, looks_like: a battery, color: red}"),
    "{charging: {name: Charging light}}",
)  # fmt: skip
HAZARDS = by_name(
    "hazards by ID", "Cautions in three parts, with the signal words of ANSI Z535.",
    record("a hazard", "One caution.",
           {"signal": choice("a signal word",
                             "DANGER kills, WARNING can kill, CAUTION injures, NOTICE is property.",
                             "DANGER", "WARNING", "CAUTION", "NOTICE"),
            "hazard": string("a few words", "What is dangerous.", "The wheel can turn by itself",
                             120),
            "harm": string("a few words", "What it does to people or property.",
                           "It breaks hands and arms", 120),
            "avoid": string("a few words", "How to stay safe.", "Keep hands and arms out", 200),
            "short": string("a few words",
                            "The danger again, short, for where it was shown in full before.",
                            "Belts and pulleys spin", 34)},
           ("signal", "hazard", "harm", "avoid"), ""),
    "{rotating-parts: {signal: WARNING, hazard: ..., harm: ..., avoid: ...}}",
)  # fmt: skip
TOOLS = by_name(
    "tools by ID", "The shop's tools and what they measure.",
    record("a tool", "One tool.",
           {"name": WORDS,
            "reads": by_name(
                "ranges by unit", "What it can measure, by unit.",
                record("a range", "The lowest and highest reading.",
                       {"from": decimal("a number", "The lowest it can show.", 0),
                        "to": decimal("a number", "The highest it can show.", 600),
                        "resolution": decimal("a number", "The finest step it shows.", 0.01, 0),
                        "error": pattern("percent of the reading plus a fixed part",
                                         "Accuracy (±): percent of the reading, and a fixed part.",
                                         "0.5 % + 0.02",
                                         r"^[0-9.]+ %( \+ [0-9.]+)?$|^[0-9.]+$"),
                        "over": string("a few characters", "What it shows above its range.", "OL",
                                       12)},
                       ("from", "to"), "{from: 0, to: 600}"),
                "{V: {from: -600, to: 600, error: 0.5 % + 0.02}}"),
            "kept": string("a place", "Where the shop keeps it.", "cabinet 2", 60),
            "note": string("a note", "What helps when using it.", "Test the leads first.", 400)},
           ("name",), "{name: Multimeter}"),
    "{multimeter: {name: Multimeter}}",
)  # fmt: skip
CODE = record(
    "a DTC in the shop's own words", "One DTC.",
    {"short": string("a few words", "What it means.", "Lost communication with EPS module", 80),
     "module": slug("a module", "The module it points at.", "eps-module"),
     "asks": by_name("answers by name", "What it answers when a tree asks, so nobody has to.",
                     WORDS,
                     "{wheel: front left}")},
    ("short",), "{short: System voltage low}",
)  # fmt: skip
FAILURE_TYPE = record(
    "a failure type in the shop's own words", "The last two characters of a long DTC.",
    {"short": string("a few words", "What it means.", "Not programmed", 60),
     "set_up": choice("a setup step", "The setup step that is still to be done.", *MODULE_VERBS)},
    ("short",), "{short: Not programmed, set_up: program}",
)  # fmt: skip
CODES: Schema = {
    "type": "object", "title": "DTCs and what they mean",
    "description": "DTCs and failure types in the shop's own words.",
    "examples": ["{P0562: {short: System voltage low}}"],
    "properties": {"failure types": by_name("failure types by their characters",
                                            "What the last two characters of a long DTC mean.",
                                            FAILURE_TYPE, '{"51": {short: Not programmed}}')},
    "additionalProperties": CODE,
}  # fmt: skip
GLOSSARY = by_name(
    "terms by ID", "Terms of the trade and what they mean here.",
    record("a term", "One term.",
           {"term": WORDS, "means": string("a few sentences", "What it means in this shop.",
                                           "Writing software into a module.",
                              400),
            "not": several("a list of words", "Words people mix it up with.", WORDS, "[update]"),
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
        "instead of this, write that", "Words this shop doesn't write, and what to write instead.",
                                          TERM_OR_TERMS,
        "{minus clamp: negative terminal}"),
        "same words": by_name("words that mean the same",
                              "Words that mean the same; only the search uses them.",
                              TERM_OR_TERMS, "{won't start: no start}")},
    "additionalProperties": TERM_OR_TERMS,
}  # fmt: skip
