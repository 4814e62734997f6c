"""The text of each calculator's form: labels, an example, source, assumptions, caution.

In: nothing. Out: `CALCULATOR_FORMS`. The arithmetic is in `trade/`.
"""

from dataclasses import dataclass
from typing import Final

from builder.model.knowledge import Hazard, Signal
from builder.model.text import Text
from builder.trade.lookups import LIGHT_VEHICLE, OTHER_VEHICLE


@dataclass(frozen=True, slots=True)
class LookupField:
    """A field for something that is no reading in a unit."""

    name: str
    label: str
    choices: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class CalculatorForm:
    """A form: `id` is that of the calculator or lookup; a calculator brings its own fields."""

    id: str
    title: str
    what: str
    example: tuple[tuple[str, str], ...]  # name of a field and the text entered into it
    source: str
    assumes: str
    fields: tuple[LookupField, ...] = ()
    unit: str = ""  # of the one reading of a lookup
    caution: Hazard | None = None


def _hazard(signal: Signal, hazard: str, harm: str, avoid: str) -> Hazard:
    return Hazard(Text("calculators"), signal, Text(hazard), Text(harm), Text(avoid))


_METER: Final = _hazard(
    Signal.WARNING,
    "A meter can set off an airbag, and high voltage kills",
    "Death or serious injury",
    "No ohmmeter on restraint circuits. Orange cables and anything above 60 V: trained techs only. "
    "Turn the power off before you measure resistance",
)
_GAS: Final = _hazard(
    Signal.WARNING,
    "A battery gives off explosive gas, and holds acid",
    "Burns, blindness",
    "No sparks, eye protection on, fresh air. High-voltage batteries: trained techs only, "
    "following the vehicle maker's service information",
)
_CABLE: Final = _hazard(
    Signal.WARNING,
    "A wire that is too thin or has no fuse burns",
    "Fire",
    "Size and fuse it per the vehicle maker's service information; this gives the drop only",
)
_ROUTINE: Final = _hazard(
    Signal.WARNING,
    "A setup routine can move parts by itself",
    "Crushed fingers or arms",
    "Keep hands and arms clear before you start it again; the vehicle maker's service information "
    "gives the conditions",
)

CALCULATOR_FORMS: Final = (
    CalculatorForm(
        "bus",
        "CAN bus resistance",
        "Between CAN-H and CAN-L, power off, bus asleep.",
        (("ohms", "60"),),
        "Two 120 Ω terminators in parallel: ISO 11898-2. 10 % tolerance, a short below 5 Ω, open "
        "from 1000 Ω: common practice, no source.",
        "Nothing is powered. A bus with other terminators than two of 120 Ω reads differently: see "
        "the vehicle maker's service information.",
        unit="ohm",
        caution=_METER,
    ),
    CalculatorForm(
        "drop",
        "Voltage drop, current, resistance",
        "Enter two; the third is calculated, and the heat.",
        (("amps", "10"), ("ohms", "20 mohm")),
        "Ohm's law and Joule's law, from any textbook.",
        "The current is steady, and all of it flows through this resistance. With no current there "
        "is no drop: measure under load.",
        caution=_METER,
    ),
    CalculatorForm(
        "wire",
        "Voltage drop along a wire",
        "From size, length, and temperature; connections add to it.",
        (("size", "AWG 18"), ("length", "6"), ("celsius", "40"), ("amps", "5")),
        "American gauges: diameters of ASTM B258, copper of IEC 60028. Metric areas: highest "
        "resistance of IEC 60228 class 5. Temperature: 0.393 % a kelvin, IEC 60028.",
        "Copper in good condition, no connections. Stranded wire of an American gauge has 2 to 6 % "
        "more. The length is the whole current path, there and back if the return is a wire.",
        caution=_CABLE,
    ),
    CalculatorForm(
        "divider",
        "Voltage divider",
        "Like a sensor with its pull-up resistor.",
        (("supply", "5"), ("top", "2.2 kohm"), ("bottom", "10 kohm")),
        "Ohm's and Kirchhoff's laws, from any textbook.",
        "Nothing else draws current from the middle. A 10 MΩ meter doesn't disturb a divider of a "
        "few kΩ.",
        caution=_METER,
    ),
    CalculatorForm(
        "battery-charge",
        "Battery state of charge",
        "12 V lead-acid battery, open-circuit voltage.",
        (("volts", "12.40"),),
        "Battery Council International: open-circuit voltage against charge at 80 °F (26.7 °C), "
        "wet cells.",
        "The battery sat for hours, or the surface charge was removed. Battery near 80 °F (27 °C): "
        "sources disagree on how to correct a cold or hot one, so this calculator doesn't. "
        "AGM or gel: use the battery maker's table.",
        caution=_GAS,
    ),
    CalculatorForm(
        "load-test",
        "Battery load test limit",
        "Lowest voltage after 15 s at half the cold cranking rating.",
        (("celsius", "0"),),
        "SAE J537 and Battery Council International, from memory.",
        "Charged to 75 % or more first, or the test proves nothing (common practice, no source). "
        "Temperature of the battery, not of the air.",
        caution=_GAS,
    ),
    CalculatorForm(
        "drain",
        "Days until the battery is dead",
        "Parked vehicle: days until half the battery is used.",
        (("capacity", "60"), ("drain", "50")),
        "Capacity divided by current. Below half charge few engines start: common practice, no "
        "source.",
        "Fully charged at the start, steady draw. Cold and age reduce the capacity.",
    ),
    CalculatorForm(
        "units",
        "Units",
        "Enter a value with its unit to see every other unit of its kind.",
        (("reading", "32 psi"),),
        "Exact factors from the definitions of NIST SP 811 (2008), appendix B.8. Inches of "
        "mercury at 0 °C.",
        "A temperature is not a temperature difference: 5 K of difference is 9 Δ°F. "
        "Results are rounded to six digits.",
        (LookupField("reading", "Value and unit"),),
    ),
    CalculatorForm(
        "dtc",
        "DTC",
        "What the characters of a code mean, with or without its failure type.",
        (("code", "U0131-87"),),
        "Structure: SAE J2012, ISO 15031-6. Which codes a maker defines: from memory. Failure "
        "types: numbers of SAE J2012-DA, our wording.",
        "A code names a circuit or a message, never a part to replace. A maker's code means "
        "something for its make only.",
        (LookupField("code", "DTC"),),
    ),
    CalculatorForm(
        "vin",
        "VIN",
        "Characters, check digit, and model year. Your entry stays on this page.",
        (("vin", "0ZZAB1DE0S0123456"), ("class", OTHER_VEHICLE)),
        "Characters and their count: ISO 3779. Check digit and model year: 49 CFR 565.15, for "
        "vehicles sold in the United States. The example is invented.",
        "Elsewhere a VIN may break these rules and be right. The check digit doesn't catch every "
        "error.",
        (
            LookupField("vin", "VIN"),
            LookupField("class", "Vehicle class", (OTHER_VEHICLE, LIGHT_VEHICLE)),
        ),
    ),
    CalculatorForm(
        "refusal",
        "Scan tool refusal",
        "What a module means when it refuses a routine.",
        (("refusal", "7F 31 22"),),
        "Numbers and names: ISO 14229-1, annex A. The explanations are ours.",
        "Record the answer exactly as shown before you try again.",
        (LookupField("refusal", "Number, answer, or name as shown"),),
        caution=_ROUTINE,
    ),
)
