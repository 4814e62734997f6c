"""What techs type for short, written out: nobody retypes a paper for the customer.

In: `Repl LF strut assy, clrd P0562`. Out: `Replaced left front strut assembly, cleared P0562`. Only
what means one thing in a shop is here: `R` may be right or rear, `reg` regulator or regular.
"""

import re

_LONG = {
    "assy": "assembly", "batt": "battery", "brkt": "bracket", "chkd": "checked",
    "clrd": "cleared", "conn": "connector", "cust": "customer", "gnd": "ground",
    "hdwe": "hardware", "hist": "history", "intermit": "intermittent", "lf": "left front",
    "lr": "left rear", "machd": "machined", "norm": "normal", "repl": "replaced",
    "replcd": "replaced", "rf": "right front", "rr": "right rear", "w/": "with",
    "w/o": "without", "wts": "weights",
}  # fmt: skip
_SHORT = re.compile(
    rf"(?<![\w/-])(?:{'|'.join(map(re.escape, sorted(_LONG, key=len, reverse=True)))})"
    r"(?:'d)?(?:\.(?= [a-z]))?(?![\w/-])",
    re.IGNORECASE,
)
_FRONT = re.compile(
    r"\bF(?= (?:axle|brake|hub|pad|rotor|strut|tire|wheel)s?\b)"
)  # before anything else it may be a temperature
_SIDES = ("lf", "lr", "rf", "rr")  # in capitals anywhere in a sentence


def written_out(text: str) -> str:
    """Write a tech's words without the usual shorthand."""
    return _FRONT.sub("front", _SHORT.sub(_long, text))


def _long(match: re.Match[str]) -> str:
    short = match[0].casefold().rstrip(".").removesuffix("'d")
    is_first = match[0][:1].isupper() and (short not in _SIDES or match.start() == 0)
    return _LONG[short].capitalize() if is_first else _LONG[short]
