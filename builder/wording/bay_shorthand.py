"""What techs type for short, written out: nobody retypes a paper for the customer.

In: `Repl LF strut assy, clrd P0562`. Out: `Replaced left front strut assembly, cleared P0562`. Only
what means one thing in a shop is here: `R` may be right or rear, `reg` regulator or regular.
"""

import re

_LONG = {
    "assy": "assembly", "batt": "battery", "brg": "bearing", "brgs": "bearings",
    "brkt": "bracket", "chkd": "checked", "clrd": "cleared", "conn": "connector",
    "ctrl": "control", "cust": "customer", "cyl": "cylinder", "drvr": "driver", "frt": "front",
    "gnd": "ground", "grd": "ground", "hdwe": "hardware", "hi": "high", "hist": "history",
    "insp": "inspected", "intermit": "intermittent", "lf": "left front", "lo": "low",
    "lr": "left rear", "lwr": "lower", "machd": "machined", "norm": "normal", "psgr": "passenger",
    "pwr": "power", "r&i": "removed and installed", "r&r": "removed and replaced",
    "repl": "replaced", "replcd": "replaced", "rf": "right front", "rplcd": "replaced",
    "rr": "right rear", "strg": "steering", "trlr": "trailer", "tstat": "thermostat",
    "upr": "upper", "veh": "vehicle", "w/": "with", "w/o": "without", "whl": "wheel",
    "whls": "wheels", "wts": "weights",
}  # fmt: skip
_SHORT = re.compile(
    rf"(?<![\w/-])(?:{'|'.join(map(re.escape, sorted(_LONG, key=len, reverse=True)))})"
    r"(?:'d)?(?:\.(?= [a-z]))?(?![\w/-])",
    re.IGNORECASE,
)
_FRONT = re.compile(
    r"\bF(?= (?:axle|brake|hub|pad|rotor|strut|tire|wheel)s?\b)"
)  # before anything else it may be a temperature
_CHARGED = re.compile(
    r"\bchgd(?= (?:with )?\d[\d.]* ?(?:oz|lb|g|kg)\b)", re.IGNORECASE
)  # of refrigerant; else it may be changed
_CAPITALS = ("lf", "lr", "r&i", "r&r", "rf", "rr")  # anywhere in a sentence


def written_out(text: str) -> str:
    """Write a tech's words without the usual shorthand."""
    return _CHARGED.sub("charged", _FRONT.sub("front", _SHORT.sub(_long, text)))


def _long(match: re.Match[str]) -> str:
    short = match[0].casefold().rstrip(".").removesuffix("'d")
    is_first = match[0][:1].isupper() and (short not in _CAPITALS or match.start() == 0)
    return _LONG[short].capitalize() if is_first else _LONG[short]
