"""The schema of a check: what is read, and its results.

In: the shapes of schemas. Out: `CHECK`, the keys of a check, and the result of a procedure.
"""

from builder.reader.schemas.shapes import (
    BRANCH,
    OVER_LIMIT,
    Schema,
    by_name,
    by_type,
    choice,
    decimal,
    pattern,
    record,
    several,
    slug,
    string,
)

SPEC_NAME = pattern("a spec",
                    "A value from kb/specs.yml: unit, range, and what is good come from there.",
                    "charging-voltage",
                    r"^(<[a-z][a-z0-9_-]*>|[A-Za-z0-9]+([ _-][A-Za-z0-9]+)*)$")  # fmt: skip
RANGE_WORDS = (
    "below 12.2, above 14.8, at least 5, at most 5, exactly 0, 12.2 to 13.2, "
    "above 12.4 to 12.6, 12.4 to below 12.6, OL"
)
READING = record(
    "a reading with a unit and a range",
    "What is read from the meter.",
    {
        "unit": string("a unit", "The unit the meter shows.", "V"),
        "from": decimal("a number", "The lowest that the meter can show here.", 0),
        "to": OVER_LIMIT,
        "resolution": decimal("a number", "The finest step the meter shows.", 0.01, 0),
        "origin": string("an origin", "Where the limits come from.", "common practice", 120),
        "spec": SPEC_NAME,
        "one_of": several("a list of phrases", "What is seen, where it is no number.",
                          string("a phrase", "One thing that is seen.", "clear", 28),
                          "[clear, milky]"),
    },
    (),
    "{unit: V, from: 0, to: 20, resolution: 0.01, origin: common practice}",
) | {"anyOf": [{"required": ["unit", "from", "to"]}, {"required": ["one_of"]},
               {"required": ["spec"]}]}  # fmt: skip

FIGURE = record(
    "a spec to look up",
    "A limit that differs by vehicle: the walk asks for it.",
    {
        "look_up": string(
            "a spec", "What to look up in the service information.", "sensor air gap", 60
        ),
        "unit": string("a unit", "The unit it is given in.", "mm"),
        "kind": choice(
            "band or limit", "`band` has a low and a high end, `limit` has one.", "band", "limit"
        ),
        "origin": string("an origin", "Where to look it up.", "service information", 120),
    },
    ("look_up", "unit", "kind"),
    "{look_up: sensor air gap, unit: mm, kind: band}",
)

RESULT_TEXT: Schema = {
    "anyOf": [
        string("a phrase or a range", "", "below 13.2", 28),
        by_name("a range for each reading", "", string("a range", "", "at most 0.5", 28), ""),
    ],
    "title": "a phrase, a range, or a range for each reading",
    "description": f"A phrase, or a range in words: {RANGE_WORDS}. Of several readings each by its "
    "name: `{current: at most 5, wipers: kept going}`.",
    "examples": ["below 13.2"],
}
RESULT_KEYS: dict[str, Schema] = {
    "result": RESULT_TEXT,
    "means": string("a few words", "What the result tells the tech.", "not charging", 28),
    "branch": BRANCH,
    "done": choice("yes", "Only this result counts as having done what `does` says.", "yes"),
    "with": by_name("answers by name", "Answers the other tree would ask for.",
                    string("an answer", "", "eps-module"), "{module: eps-module}"),
    "weight": decimal("a number of jobs",
                      "How often it turns out so, compared with the other results.", 2, 0),
    "chance": decimal("a number from 0 to 1", "How likely a job goes around this way once more.",
                      0.2, 0)
    | {"maximum": 1},
}  # fmt: skip
RETURNED = string("a word", "The answer that goes back to the tree.", "bad power", 28)
RESULT = record(
    "a result with a branch", "One answer, and where the job goes on.", RESULT_KEYS, ("result",
                                                                                      "branch"),
    "{result: below 13.2, branch: belt}",
)  # fmt: skip
PROCEDURE_RESULT = record(
    "a result with a branch or a return", "One answer, and where the job goes on.",
    RESULT_KEYS | {"return": RETURNED}, ("result",),
    "{result: above spec, return: bad ground}",
) | {"anyOf": [{"required": ["branch"]}, {"required": ["return"]}]}  # fmt: skip


def results_of(result: Schema) -> Schema:
    """Results as a list, or as a map from each result to its branch."""
    example = "[{result: yes, branch: belt}, {result: no, branch: fuse}]"
    description = "Every possible answer, and where each leads."
    return by_type(
        "results, each with its branch", description,
        {"array": several("a list of results, each with its branch", description, result, example,
                          0),
         "object": by_name("branches by result", description, BRANCH, "{yes: belt, no: fuse}")},
        "{yes: belt, no: fuse}",
    )  # fmt: skip


CHECK: dict[str, Schema] = {
    "reading": READING,
    "readings": by_name("readings by name",
                        "Several values in one check, each with its name.", READING,
                        "{positive: {unit: V, from: 0, to: 16}}"),
    "computed": by_name("formulas by name",
                        "Values worked out from the others; no math in the bay.",
                        string("a formula", "", "battery - bulb", 60),
                        "{drop: battery - bulb}"),
    "figure": FIGURE,
    "spec": SPEC_NAME,
    "by": slug("a procedure", "From kb/procedures/: it finds the answer.",
               "power-and-ground"),
    "with": by_name("what the procedure takes",
                    "What the procedure is told: the part, the load, the spec.",
                    string("a value", "", "alternator", 60), "{part: alternator}"),
    "told": choice("yes",
                   "The answer is told or looked up, not seen on the vehicle: papers say so.",
                   "yes"),
    "several": choice("first fits",
                      "More than one answer may be true: the first that fits counts.",
                      "first fits"),
    "results": results_of(RESULT),
    "cannot_test": BRANCH | {"description": "Where to go if it can't be tested."},
}  # fmt: skip
