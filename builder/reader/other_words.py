"""Words of the bay that an author writes where the format has another one.

In: a word as written. Out: the word of the format. These are for hints alone: a word with several
meanings isn't here.
"""

from collections.abc import Iterable, Mapping

KEYS: Mapping[str, tuple[str, ...]] = {
    "repair": ("fix",), "question": ("check",), "test": ("check",), "measure": ("check",),
    "end": ("stop",), "then": ("branch",), "next": ("then", "branch"), "goto": ("branch", "then"),
    "go_to": ("branch", "then"), "answers": ("results",), "answer": ("result",),
    "coding": ("configure",), "configuration": ("configure",), "flash": ("program",),
    "programming": ("program",), "relearn": ("initialize",), "initialization": ("initialize",),
    "calibrate": ("initialize",), "pairing": ("pair",), "learn": ("pair",),
    "lb-ft": ("Nm",), "ft-lb": ("Nm",), "lbft": ("Nm",), "miles": ("km",), "mileage": ("km",),
    "odometer": ("km",), "cost": ("price",), "labor": ("hours",), "photo": ("picture",),
    "image": ("picture",), "author": ("written",), "color": ("wire",), "amp": ("amps",),
}  # fmt: skip
VALUES: Mapping[str, tuple[str, ...]] = {
    "true": ("yes",), "y": ("yes",), "ok": ("yes", "fixed"), "x": ("yes",), "false": ("no",),
    "n": ("no",), "amps": ("current",), "power": ("supply",), "can": ("network",),
    "bus": ("network",), "repaired": ("fixed",), "returned": ("came back",),
    "depends": ("if released", "with care"), "maybe": ("with care", "not known"),
    "unknown": ("not known",), "limited": ("with care",), "airbag": ("restraints",),
    "airbags": ("restraints",), "srs": ("restraints",), "finished": ("ready",),
    "final": ("ready",), "done": ("yes", "ready"), "8.5x11": ("letter",), "11x17": ("tabloid",),
    ".": ("point",), ",": ("comma",), "danger!": ("DANGER",),
}  # fmt: skip
ANSWERS: Mapping[str, str] = {  # of a question that is answered with yes or no
    **dict.fromkeys(("y", "yep", "yeah", "yes.", "true"), "yes"),
    **dict.fromkeys(("n", "nope", "nah", "no.", "false"), "no"),
}
SPEC_RESULTS: Mapping[str, str] = {
    **dict.fromkeys(("in spec", "good", "ok", "pass", "in range", "inside spec", "to spec",
                     "within specs", "within limits"), "within spec"),
    **dict.fromkeys(("over spec", "high", "too high", "over", "out of spec high"), "above spec"),
    **dict.fromkeys(("under spec", "low", "too low", "under"), "below spec"),
    **dict.fromkeys(("no reading", "nothing", "blank"), "none"),
}  # fmt: skip


def meant(word: str, table: Mapping[str, tuple[str, ...]], known: Iterable[str]) -> str | None:
    """Return the one of the known words that another word stands for."""
    here = set(known)
    return next((one for one in table.get(word.lower(), ()) if one in here), None)
