"""Values that an author wrote in another unit or form than the format has.

In: what the author wrote. Out: the same in the format's unit, or None where only the author knows.
Factors: NIST Special Publication 811, appendix B.8 (from memory): 1 lbf ft is 1.355818 N m, 1
lbf in is 0.1129848 N m, 1 kgf m is 9.80665 N m, 1 mi is 1.609344 km.
"""

import re
from collections.abc import Callable, Mapping
from decimal import Decimal

SPAN = re.compile(r"\d+(?:\.\d+)? ?(?:-|–|to) ?(\d+(?:\.\d+)?)(?: ?[a-z]+)?")
DIGITS = re.compile(r"(\d+) ?(?:digits?|dgts?|counts?|LSD)", re.IGNORECASE)
NUMBER = r"\d+(?:\.\d+)?"
TORQUES: Mapping[str, Decimal] = {
    "lb-ft": Decimal("1.355818"), "ft-lb": Decimal("1.355818"), "in-lb": Decimal("0.1129848"),
    "lb-in": Decimal("0.1129848"), "kgm": Decimal("9.80665"), "nm": Decimal(1),
}  # fmt: skip
DISTANCES: Mapping[str, Decimal] = {
    "mi": Decimal("1.609344"), "mile": Decimal("1.609344"), "km": Decimal(1),
}  # fmt: skip
WEIGHED = re.compile(
    rf"({NUMBER}) ?(?:lbs?|pounds?|kgs?|kilos?|kilograms?|g|grams?|oz|ounces?)\.?", re.IGNORECASE
)
CURRENCIES = {"$": "USD", "dollar": "USD", "dollars": "USD", "us$": "USD", "usd": "USD",
              "€": "EUR", "euro": "EUR", "eur": "EUR", "£": "GBP", "cad": "CAD",
              "c$": "CAD"}  # fmt: skip

SET_UP_ANSWERS = {
    **dict.fromkeys(("no", "none", "false", "n/a", "na", "not required"), "not needed"),
    **dict.fromkeys(("unknown", "?", "tbd", "not sure"), "not known"),
}


def newton_meters(_name: str, value: str) -> str | None:
    """Return a torque in newton meters, to a tenth."""
    return _converted(value, TORQUES, Decimal("0.1"))


def kilometers(_name: str, value: str) -> str | None:
    """Return a distance in whole kilometers; `75k` is 75000."""
    text = re.sub(r"(\d)[,.](\d{3})\b", r"\1\2", value)
    text = re.sub(rf"^({NUMBER}) ?k\b", lambda match: f"{Decimal(match[1]) * 1000:f}", text)
    return _converted(text, DISTANCES, Decimal(1))


def _converted(value: str, factors: Mapping[str, Decimal], step: Decimal) -> str | None:
    match = re.fullmatch(rf"({NUMBER}) ?([a-z]*(?:[ .·*-]*[a-z]+)?)\.?", value.lower())
    if not match:
        return None
    unit = (
        re.sub(r"[ .·*]+", "-", match[2].replace("·", "-")).removesuffix("s").replace("lbf", "lb")
    )
    unit = re.sub(r"^(ft|lb|in)s?-?(ft|lb|in)s?$", r"\1-\2", unit.replace("foot-pound", "ft-lb"))
    factor = factors.get(unit or min(factors, key=lambda one: factors[one] != 1))
    return f"{(Decimal(match[1]) * factor).quantize(step).normalize():f}" if factor else None


def months(_name: str, value: str) -> str | None:
    """Return a span of time in months."""
    match = re.fullmatch(r"(an?|one|\d+) ?(years?|yrs?|y|months?|mo|m)?\.?", value.lower())
    if not match:
        return None
    count = int(match[1]) if match[1].isdigit() else 1
    return f"{count * (12 if (match[2] or '').startswith('y') else 1)} months"


def days(_name: str, value: str) -> str | None:
    """Return a number alone as days."""
    return f"{value} days" if value.isdigit() else None


def currency(_name: str, value: str) -> str | None:
    """Return the three letters of a currency."""
    return CURRENCIES.get(value.lower())


def article_name(_name: str, value: str) -> str | None:
    """Return the name of an article without its folder and its ending."""
    stem = re.sub(r"\.md$", "", value.rpartition("/")[2])
    return re.sub(r"[^A-Za-z0-9_-]+", "-", stem).strip("-").lower() or None


def instrument_error(_name: str, value: str) -> str | None:
    """Return what a meter may be off by; digits are steps of its `resolution`, which isn't here."""
    plain = re.sub(r"[±+]/?-? ?(?=\d)", "+ ", value).removeprefix("+ ").replace("%", " %")
    return " ".join(plain.replace("+", " + ").split())


def lamp_color(_name: str, value: str) -> str | None:
    """Return the color of a warning light as ISO 2575 calls it (from memory)."""
    return re.sub(r"amber|orange", "yellow", value.lower())


def set_up_answer(_name: str, value: str) -> str | None:
    """Return the answer for a part of a module's setup, where it is given in one word."""
    return SET_UP_ANSWERS.get(value.lower().rstrip("."))


def good_range(_name: str, value: str) -> str:
    """Return a range as that of a vehicle; only the author knows its source."""
    return f"{{good: {value}, source: ...}}"


def number_hint(name: str, value: str, hint: str) -> str:
    """Return a better hint where one number is wanted, and a range, a unit or digits stand."""
    if name == "weight" and WEIGHED.fullmatch(value):
        return "write how many jobs end this way, beside the others that you know of"
    if name == "error" and (digits := DIGITS.search(value)):
        return f"write {digits[0]} in the unit: {digits[1]} times the `resolution`, {hint}"
    span = SPAN.fullmatch(value)
    return f"write one number, such as `{name}: {span[1]}`" if span else hint


OTHER_UNITS: Mapping[str, Callable[[str, str], str | None]] = {  # by the title of the schema
    "kilometers": kilometers,
    "newton meters": newton_meters,
    "months": months,
    "a time": days,
    "three letters": currency,
    "percent of the reading plus a fixed part": instrument_error,
    "an article": article_name,
    "a color": lamp_color,
    "`not needed`, `not known`, or minutes and states": set_up_answer,
    "a good range of this vehicle": good_range,
}
