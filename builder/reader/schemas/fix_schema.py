"""The schema of a fix: what it proves, replaces and costs, and its options.

In: the shapes of schemas. Out: `FIX`, the keys of a fix, and `DRIVING`, which a stop has too.
"""

from builder.reader.schemas.shapes import (
    BRANCH,
    MONEY,
    NOTE,
    PARTS,
    Schema,
    by_name,
    by_type,
    choice,
    decimal,
    name_or_answer,
    record,
    sentence,
    several,
    slug,
    string,
)

OPTION = record(
    "an estimate option",
    "Replaces the standard option of the same name, or adds one.",
    {
        "option": string(
            "a few words", "The option as the customer reads it.", "Install a used module", 40
        ),
        "hours": decimal("a number of hours", "Hours of labor on the estimate.", 1.2, 0),
        "price": MONEY,
        "parts": PARTS,
        "tow": choice("yes", "`yes` adds the price of a tow.", "yes", "no") | {"default": "no"},
        "note": NOTE,
        "chance": decimal("a number from 0 to 1", "How likely the same fault comes back.", 0.15, 0)
        | {"maximum": 1},
        "part": choice(
            "new, used, or rebuilt",
            "New, used, or rebuilt; the customer reads it.",
            "new",
            "used",
            "rebuilt",
        ),
        "only_if": string(
            "a few words",
            "What it depends on and only the work shows. The sheet says what is owed if it fails.",
            "the filter isn't cracked",
            60,
        ),
        "not_offered": sentence(
            "a reason",
            "Why this can't be offered; takes the place of a price.",
            "Not safe to drive",
            120,
        ),
    },
    (),
    "{option: Install a used module, hours: 1.2}",
)

TORQUES = several(
    "a list of torques", "Tightening torques by name, from the vehicle's file.",
    slug("a torque", "", "lug-nuts"), "[lug-nuts]",
)  # fmt: skip
DRIVING: dict[str, Schema] = {
    "drive": choice("yes, with care, or no",
                    "Whether the vehicle may be driven as it is, before the repair.",
                    "yes", "with care", "no"),
    "why": sentence("a reason", "Why, or why not; the customer reads it.",
                  "The brakes may not hold.", 120),
}  # fmt: skip
VERIFICATION = by_type(
    "a check, a procedure, or a few words", "One thing that proves the repair.",
    {"string": string("a test", "", "13.5 V or more at idle", 120),
     "object": by_name(
         "a check and the result that passes", "",
         by_type("a result, or a list of results", "",
                 {"string": string("a result", "", "firm", 28),
                  "array": several("a list of results", "", string("a result", "", "none", 28),
                                   "[none, not run yet]"),
                  "object": by_name("a range for each reading", "",
                                    string("a range", "", "within spec", 28),
                                    "{play: within spec}")},
                 "firm"),
         "{hold: firm}") | {"maxProperties": 1}},
    "{hold: firm}",
)  # fmt: skip
PROOF = by_name(
    "a check and its result", "One check, and the results of it that will do.",
    by_type("a result, or a list of results", "",
            {"string": string("a result", "", "good", 28),
             "array": several("a list of results", "", string("a result", "", "good", 28),
                              "[good, low]")},
            "good"),
    "{feed: good}",
) | {"maxProperties": 1}  # fmt: skip
FIX: dict[str, Schema] = {
    "cause": sentence("a few words", "What was wrong with the vehicle.", "The belt slips",
                    60),
    "weight": decimal("a number of jobs", "How often it is this fix, compared with the others.", 3,
                      0),
    "hours": decimal("a number of hours", "Hours of labor on the estimate.", 0.8, 0),
    "parts": PARTS,
    "replaces": record(
        "a module and its part",
        "Price, hours, and setup come from the module's record.",
        {"module": name_or_answer("a module",
                                  "A module from kb/modules/, or an answer: `<module>`.",
                                  "eps-module"),
         "part": choice("new or used", "Whether the part is new or used.", "new", "used")},
        ("module", "part"), "{module: eps-module, part: new}"),
    "verify": several("a list",
                      "What proves the repair before the vehicle leaves: checks with the result "
                      "that passes, or several (`not run yet` goes on, and isn't told as passed). "
                      "A test in words is asked with the vehicle back to normal.",
                      VERIFICATION,
                      "[{running: 13.2 to 14.8}, {hold: firm}, no DTC after 10 miles]"),
    "proved_by": several("a list of checks and results",
                         "Earlier results that the fix rests on, too.",
                         PROOF, "[{feed: good}]"),
    "torques": TORQUES,
    **DRIVING,
    "still_there": BRANCH | {"description": "Where to go if the fault is still there."},
    "tell": sentence("a few sentences", "What to tell the customer, in plain words.",
                   "The belt slipped.",
                   400),
    "options": by_name("options by name", "Options that differ from the standard ones.",
                       OPTION,
                       "{used-module: {option: Install a used module, hours: 1.2}}"),
}  # fmt: skip
