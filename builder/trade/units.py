"""The closed list of units of a shop, with exact factors.

In: unit names as people write them. Out: `Unit`, exact conversions, the nearest names for a typo.
Factors are fractions built from the definitions of NIST SP 811 (2008), appendix B.8; nothing is
rounded here. The base of every kind is its SI unit (degree Celsius for a temperature), so that
factors multiply: mA times kohm is V. Kinds are kept apart even where a physicist would not: torque
is not energy, a difference of temperatures is not a temperature, cranking amperes are a rating and
not a current.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from difflib import get_close_matches
from fractions import Fraction
from functools import lru_cache
from unicodedata import normalize

_INCH = Fraction("0.0254")  # meters, exact
_FOOT = 12 * _INCH
_MILE = 5280 * _FOOT
_POUND_FORCE = Fraction("0.45359237") * Fraction("9.80665")  # newtons, exact
_PSI = _POUND_FORCE / _INCH**2  # pascals
# Conventional inch of mercury: 13 595.1 kg/m3 at 0 degC. The 60 degF inch is 0.28 % lower.
_INCH_OF_MERCURY = _INCH * Fraction("13595.1") * Fraction("9.80665")  # pascals


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit: value times `factor` plus `offset` is the value in the base unit of its kind."""

    symbol: str  # as files write it
    kind: str  # what it measures; only units of one kind convert into each other
    factor: Fraction
    offset: Fraction = Fraction(0)
    shown: str = ""  # as pages and prints write it; "" for the symbol itself

    @property
    def label(self) -> str:
        """The unit as pages and prints write it."""
        return self.shown or self.symbol


_THOUSAND = Fraction(1000)
_THOUSANDTH = Fraction(1, 1000)
_MILLIONTH = Fraction(1, 1_000_000)
_ONE = Fraction(1)

_LIST = (
    Unit("V", "voltage", _ONE),
    Unit("mV", "voltage", _THOUSANDTH),
    Unit("kV", "voltage", _THOUSAND),
    Unit("A", "current", _ONE),
    Unit("mA", "current", _THOUSANDTH),
    Unit("ohm", "resistance", _ONE, shown="Ω"),
    Unit("mohm", "resistance", _THOUSANDTH, shown="mΩ"),
    Unit("kohm", "resistance", _THOUSAND, shown="kΩ"),
    Unit("Mohm", "resistance", Fraction(1_000_000), shown="MΩ"),
    Unit("Hz", "frequency", _ONE),
    Unit("kHz", "frequency", _THOUSAND),
    Unit("rpm", "frequency", Fraction(1, 60)),  # turns a minute, so 60 rpm is 1 Hz
    Unit("%", "share", _ONE),
    Unit("s", "time", _ONE),
    Unit("ms", "time", _THOUSANDTH),
    Unit("us", "time", _MILLIONTH, shown="µs"),
    Unit("min", "time", Fraction(60)),
    Unit("h", "time", Fraction(3600)),
    Unit("days", "time", Fraction(86_400)),
    Unit("kPa", "pressure", _THOUSAND),
    Unit("psi", "pressure", _PSI),
    Unit("bar", "pressure", Fraction(100_000)),
    Unit("inHg", "pressure", _INCH_OF_MERCURY),
    Unit("°C", "temperature", _ONE),
    Unit("°F", "temperature", Fraction(5, 9), Fraction(-160, 9)),
    Unit("K", "temperature difference", _ONE),
    Unit("degF diff", "temperature difference", Fraction(5, 9), shown="Δ°F"),
    Unit("Nm", "torque", _ONE, shown="N·m"),
    Unit("lb-ft", "torque", _POUND_FORCE * _FOOT),
    Unit("lb-in", "torque", _POUND_FORCE * _INCH),
    Unit("m", "distance", _ONE),
    Unit("mm", "distance", _THOUSANDTH),
    Unit("um", "distance", _MILLIONTH, shown="µm"),
    Unit("in", "distance", _INCH),
    Unit("km", "distance", _THOUSAND),
    Unit("mi", "distance", _MILE),
    Unit("l", "volume", _THOUSANDTH),
    Unit("ml", "volume", _MILLIONTH),
    Unit("g/s", "air flow", _THOUSANDTH),
    Unit("km/h", "speed", _THOUSAND / 3600),
    Unit("mph", "speed", _MILE / 3600),
    Unit("Ah", "charge", Fraction(3600)),
    Unit("Wh", "energy", Fraction(3600)),
    Unit("W", "power", _ONE),
    Unit("kW", "power", _THOUSAND),
    Unit("CCA", "cranking rating", _ONE),
    Unit("steps", "motor steps", _ONE),
    Unit("counts", "counts", _ONE),
    Unit("deg", "angle", _ONE, shown="°"),
)
UNITS: Mapping[str, Unit] = {one.symbol: one for one in _LIST}

# Every other spelling is written out: folding case would turn milli into mega.
ALIASES: Mapping[str, str] = {
    alias: symbol
    for symbol, aliases in {
        "V": "v volt volts VDC Vdc",
        "A": "amp amps ampere amperes",
        "ohm": "Ω Ohm OHM ohms Ohms",
        "mohm": "mΩ mOhm milliohm",
        "kohm": "kΩ KΩ kOhm Kohm KOhm",
        "Mohm": "MΩ MOhm megohm",
        "Hz": "hz HZ hertz",
        "kHz": "khz KHz KHZ",
        "rpm": "RPM Rpm r/min 1/min",
        "%": "percent pct",
        "s": "sec second seconds",
        "us": "μs",
        "min": "minute minutes",
        "h": "hr hour hours",
        "days": "day",
        "kPa": "kpa KPa KPA",
        "psi": "PSI Psi lbf/in2",
        "bar": "BAR Bar",
        "inHg": "inhg InHg INHG",
        "°C": "C degC ºC",
        "°F": "F degF ºF",
        "K": "Δ°C ΔK",
        "degF diff": "Δ°F ΔF",
        "Nm": "N·m N⋅m N*m N-m N.m",
        "lb-ft": "ft-lb ft-lbs lb·ft lbf-ft lbf·ft lb.ft ftlb lbft",
        "lb-in": "in-lb in-lbs lb·in lbf-in lbf·in lb.in inlb lbin",
        "um": "μm",
        "in": "inch inches",
        "m": "metre metres meter meters",
        "mi": "mile miles",
        "l": "L litre litres liter liters",
        "ml": "mL",
        "km/h": "kph KPH kmh Km/h KM/H",
        "mph": "MPH Mph mi/h",
        "Ah": "AH ah",
        "W": "watt watts",
        "kW": "kw KW",
        "CCA": "cca",
        "deg": "° degrees degree",
    }.items()
    for alias in aliases.split()
}


@lru_cache(maxsize=1024)  # a shop writes a few dozen
def find_unit(text: str) -> Unit | None:
    """Find a unit by its symbol or one of its other spellings; None when it is not in the list."""
    # One character each for ohm, micro, and degrees Celsius.
    name = " ".join(normalize("NFKC", text).split())
    return UNITS.get(name) or UNITS.get(ALIASES.get(name, ""))


def nearest_units(text: str) -> list[str]:
    """Symbols that look or sound like `text`, nearest first, at most three."""
    spelled = [*UNITS, *ALIASES]
    folded = [name.casefold() for name in spelled]
    wanted = text.strip().casefold()
    close = [wanted] if wanted in folded else get_close_matches(wanted, folded, len(folded))
    names = [spelled[at] for word in close for at, name in enumerate(folded) if name == word]
    return list(dict.fromkeys(ALIASES.get(name, name) for name in names))[:3]


def same_kind(one: str, other: str) -> bool:
    """Whether two known units measure the same kind of thing; an unknown unit matches nothing."""
    first, second = find_unit(one), find_unit(other)
    return first is not None and second is not None and first.kind == second.kind


def convert(value: Decimal | Fraction | int, given: str, wanted: str) -> Fraction:
    """Convert exactly between two units of one kind.

    Both must be known and of one kind: ask `same_kind` first. A tolerance or a drop in temperature
    is a difference (K, degF diff) and never a temperature: 5 K is 9 degF of difference, not 41 °F.
    """
    source, target = find_unit(given), find_unit(wanted)
    if source is None or target is None or source.kind != target.kind:
        raise ValueError(f"{given} cannot be turned into {wanted}: not units of one kind")
    return (Fraction(value) * source.factor + source.offset - target.offset) / target.factor
