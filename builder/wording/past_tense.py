"""What was done, from what was to be done: for the story of a job on a repair order.

In: the text of a fix, which begins with a verb: `Replace the alternator, inspect the belt`. Out:
`Replaced the alternator, inspected the belt`. A verb that isn't listed is left as it is, after
`Done:`. Only the first word and the one after a comma, `and` or `or` is a verb: `oil` or `seal` is
mostly a part, so it isn't listed.
"""

import re

_REGULAR = (
    "add", "adjust", "aim", "align", "ask", "balance", "bypass", "calibrate", "center",
    "change", "charge", "check", "clamp", "clean", "clear", "close", "configure", "connect",
    "correct", "drain", "end", "equalize", "evacuate", "fill", "finish", "fix", "flush", "free",
    "glue", "grease", "hand", "initialize", "inspect", "install", "latch", "loosen", "lube",
    "machine", "move", "note", "open", "pair", "patch", "polish", "recover", "refill", "rejoin",
    "release", "remove", "repair", "replace", "reseal", "reseat", "rotate", "secure", "tighten",
    "torque", "turn", "update", "use",
)  # fmt: skip
_OWN = {
    "bed": "bedded", "bend": "bent", "bleed": "bled", "blow": "blew", "cut": "cut",
    "drive": "drove", "dry": "dried", "find": "found", "get": "got", "have": "had",
    "keep": "kept", "leave": "left", "program": "programmed", "prop": "propped", "put": "put",
    "refit": "refitted", "reset": "reset", "run": "ran", "set": "set", "show": "showed",
    "stop": "stopped", "teach": "taught",
}  # fmt: skip
PAST = {verb: f"{verb.removesuffix('e')}ed" for verb in _REGULAR} | _OWN
_VERB = re.compile(r"(?P<before>^|, (?:and |or |then )?| and | or )(?P<verb>[A-Za-z]+)\b")


def past_tense(text: str) -> str:
    """Write the text of a fix as what was done."""
    first = _VERB.match(text)
    if first is None or first["verb"].lower() not in PAST:
        return f"Done: {text}"
    return _VERB.sub(lambda match: match["before"] + _past(match["verb"]), text)


def _past(verb: str) -> str:
    past = PAST.get(verb.lower(), verb)
    return past.capitalize() if verb[:1].isupper() else past
