"""Values of the format as readers see them.

In: values of the model. Out: plain phrases; nothing here is HTML.
"""

from collections.abc import Iterable, Mapping
from decimal import Decimal
from fractions import Fraction

from builder.model.knowledge import SafetySystem
from builder.model.library import Library
from builder.model.shop import Shop
from builder.model.tree import Deed, Money, Scope
from builder.trade.units import find_unit

KINDS: Mapping[str, str] = {"check": "Check", "action": "Do", "fix": "Fix", "stop": "Stop"}

STOPS: Mapping[str, str] = {
    "foreman": "Call the foreman",
    "not-found": "Not found today",
    "not-this-tree": "Wrong tree",
    "customer": "Customer decides",
    "unsafe": "Unsafe: stop",
}

DEEDS: Mapping[str, str] = {
    "record-codes": "record the DTCs",
    "check-supply": "test the power feed",
    "check-ground": "test the ground",
    "check-network": "test the network",
    "hold-supply": "connect the programming power supply",
    "release-supply": "disconnect the programming power supply",
    "disconnect-battery": "disconnect the battery",
    "connect-battery": "connect the battery",
    "program": "program {}",
    "configure": "configure {}",
    "pair": "do the security pairing of {}",
    "initialise": "initialize {}",
    "clear-codes": "clear the DTCs",
    "cycle-key": "turn the key off and on again",
    "read-codes-again": "read the DTCs again",
    "drive": "drive the vehicle",
}

SET_UP: Mapping[str, str] = {
    "program": "Programming",
    "configure": "Configuration",
    "pair": "Security pairing",
    "initialise": "Initialization",
}

USED_PART: Mapping[str, str] = {
    "yes": "A used part can be set up",
    "no": "A used part can't be set up: it's tied to its first vehicle, or the part must be new",
    "if released": "A used part can be set up only if it was released on its donor vehicle",
    "not known": "Unknown whether a used part can be set up",
}

DRIVE_BEFORE: Mapping[str, str] = {
    "yes": "OK to drive before setup",
    "no": "Don't drive before setup",
    "not known": "Unknown, so don't drive before setup",
}

SAFETY: Mapping[SafetySystem, str] = {
    SafetySystem.NONE: "no steering, brakes, restraints or high voltage depend on it",
    SafetySystem.STEERING: "the steering depends on it",
    SafetySystem.BRAKES: "the brakes depend on it",
    SafetySystem.RESTRAINTS: "airbags and seat belts depend on it",
    SafetySystem.HIGH_VOLTAGE: "high voltage depends on it, trained techs only",
}

STATUS: Mapping[str, str] = {"draft": "Draft", "ready": "Ready", "retired": "Retired"}


def joined(texts: Iterable[str], last: str = "and") -> str:
    """Join texts: `a, b and c`."""
    items = [str(text) for text in texts]
    if len(items) < 2:
        return "".join(items)
    return f"{', '.join(items[:-1])} {last} {items[-1]}"


def deed_text(deed: Deed, library: Library) -> str:
    """Return what a step is for: `program the Steering-assist unit` for `program steering-unit`."""
    return DEEDS.get(deed.verb, str(deed.text)).replace("{}", module_name(deed.module, library))


def required_text(text: str) -> str:
    """Return what must have been done before; text that isn't a deed stays as it is."""
    verb, _, module = text.partition(" ")
    return DEEDS[verb].replace("{}", module) if verb in DEEDS else text


def module_name(id_: str | None, library: Library) -> str:
    """Return the name in a module's record, or its ID without a record."""
    module = library.modules.get(id_ or "")
    return str(module.name) if module else str(id_ or "the module")


def sentence(text: str) -> str:
    """Begin with a capital, leave the rest as it is."""
    return text[:1].upper() + text[1:]


def first_small(text: str) -> str:
    """Begin with a small letter, leave the rest as it is; an abbreviation stays one."""
    return text if text[1:2].isupper() else text[:1].lower() + text[1:]


def scope_text(scope: Scope) -> str:
    """Return the vehicles of a scope: `Corvane Tern 2017 to 2022`."""
    name = f"{scope.make} {scope.model}"
    if not scope.years:
        return name
    first, last = scope.years
    return f"{name} {first}" if first == last else f"{name} {first} to {last}"


def amount(value: Decimal, shop: Shop) -> str:
    """Write an amount with two decimals and the shop's decimal mark, without the currency."""
    text = f"{value:.2f}"
    return text.replace(".", ",") if shop.decimal_mark == "comma" else text


def money_text(money: Money, shop: Shop) -> str:
    """Write an amount or a range of amounts in the shop's currency."""
    return f"{shop.currency} {amounts(money, shop)}"


def amounts(money: Money, shop: Shop) -> str:
    """Write an amount or a range of amounts, without the currency."""
    low, high = amount(money.low, shop), amount(money.high, shop)
    return low if low == high else f"{low} to {high}"


def number_text(value: Decimal) -> str:
    """Write a number without needless zeros or an exponent."""
    text = f"{value:f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def unit_label(symbol: str) -> str:
    """Return a unit as readers know it: Ω for ohm."""
    unit = find_unit(symbol)
    return unit.label if unit else symbol


def grouped(value: Decimal) -> str:
    """Write a number with its digits in groups of three."""
    return f"{Decimal(number_text(value)):,}".replace(",", "\N{NARROW NO-BREAK SPACE}")


def duration_text(value: Fraction) -> str:
    """Write minutes, rounded; from 90 on as hours and minutes."""
    whole = round(value)
    if whole < 90:
        return f"{whole} min"
    hours, rest = divmod(whole, 60)
    return f"{hours} h {rest} min" if rest else f"{hours} h"


def stuck(shop: Shop) -> str:
    """Return what to do when no result matches: whom to call, and the phone."""
    call, phone = shop.stuck.get("call", "foreman"), shop.stuck.get("phone")
    person = call if call.lower().startswith("the ") else f"the {call}"
    return f"call {person}" + (f", phone {phone}" if phone else "")
