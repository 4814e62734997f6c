"""What each form of the bench page says: its words, an example, what it rests on, its cautions.

In: nothing. Out: `FORMS`. The sums themselves are the trade's; here stand the words around them.
"""

from dataclasses import dataclass
from typing import Final

from builder.model.knowledge import Hazard, Signal
from builder.model.text import Text
from builder.trade.look_ups import LIGHT, NOT_KNOWN


@dataclass(frozen=True, slots=True)
class TextField:
    """A field for something that is no reading in a unit."""

    name: str
    label: str
    choices: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Form:
    """A form: `id` is that of the sum or look-up; a sum brings its own fields."""

    id: str
    title: str
    what: str
    example: tuple[tuple[str, str], ...]  # name of a field and what is typed into it
    source: str
    assumes: str
    fields: tuple[TextField, ...] = ()
    unit: str = ""  # of the one reading of a look-up
    caution: Hazard | None = None


def _hazard(signal: Signal, hazard: str, harm: str, avoid: str) -> Hazard:
    return Hazard(Text("bench"), signal, Text(hazard), Text(harm), Text(avoid))


_METER: Final = _hazard(
    Signal.WARNING,
    "A meter can set off an airbag, and high voltage kills",
    "Death or grave injury",
    "No ohmmeter on restraint circuits; orange cables and anything above 60 V only by people "
    "trained for it. Power off before you measure resistance",
)
_GAS: Final = _hazard(
    Signal.WARNING,
    "A battery gives off gas that explodes, and acid",
    "Burns, blindness",
    "No sparks, eye protection on, fresh air. A high-voltage battery is none of this: trained "
    "people only, by the maker's service information",
)
_CABLE: Final = _hazard(
    Signal.WARNING,
    "A wire that is too thin or not fused burns",
    "Fire",
    "Size and fuse as the maker's service information says; this sum gives only what is lost",
)
_ROUTINE: Final = _hazard(
    Signal.WARNING,
    "A set-up routine can move parts by itself",
    "Crushed fingers or arms",
    "Hands and arms clear before the routine is started again; the maker's service information "
    "says what must be so",
)

FORMS: Final = (
    Form(
        "bus",
        "Network resistance",
        "Across the two wires of a CAN network, power off and network asleep.",
        (("ohms", "60"),),
        "Two terminators of 120 Ω side by side: ISO 11898-2. Ten percent either way, a short "
        "below 5 Ω, open from 1000 Ω: common practice, no source.",
        "Nothing is powered. A network with more or other terminators than two of 120 Ω, as the "
        "maker's service information may say, reads otherwise.",
        unit="ohm",
        caution=_METER,
    ),
    Form(
        "drop",
        "Voltage drop, current, resistance",
        "Fill in two; the third is worked out, and what it turns into heat.",
        (("amps", "10"), ("ohms", "20 mohm")),
        "Ohm's law and Joule's law, as any textbook has them.",
        "The current is steady and all of it goes through this resistance. Without current there "
        "is no drop to be seen: measure under load.",
        caution=_METER,
    ),
    Form(
        "wire",
        "Voltage lost along a wire",
        "From size, length and temperature; joints come on top.",
        (("size", "AWG 18"), ("length", "6"), ("celsius", "40"), ("amps", "5")),
        "American gauges: diameters of ASTM B258, copper of IEC 60028. Metric areas: greatest "
        "resistance of IEC 60228 class 5. Warmer or colder: 0.393 % a kelvin, IEC 60028.",
        "Sound copper without joints. Stranded wire of an American gauge has 2 to 6 % more. "
        "The length is the whole way of the current, there and back where the return is a wire.",
        caution=_CABLE,
    ),
    Form(
        "divider",
        "Voltage divider",
        "As a sensor with its pull-up resistor makes one.",
        (("supply", "5"), ("top", "2.2 kohm"), ("bottom", "10 kohm")),
        "Ohm's and Kirchhoff's laws, as any textbook has them.",
        "Nothing else draws current from the middle. A meter of 10 MΩ does not disturb a divider "
        "of some kΩ.",
        caution=_METER,
    ),
    Form(
        "rest",
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
    Form(
        "load-test",
        "Least voltage in a load test",
        "At the end of 15 s at half the cold cranking rating.",
        (("celsius", "0"),),
        "SAE J537 and Battery Council International, from memory.",
        "Charged to at least 75 % first, or the test says nothing (common practice, no source). "
        "Temperature of the battery.",
        caution=_GAS,
    ),
    Form(
        "drain",
        "How long a parked vehicle lasts",
        "Days until half of the battery is used.",
        (("capacity", "60"), ("drain", "50")),
        "Capacity divided by current. Below half charge few engines start: common practice, no "
        "source.",
        "Full at the start, and the current stays as it is. Cold and age take away capacity.",
    ),
    Form(
        "units",
        "Units",
        "A value with its unit; every other unit of its kind follows.",
        (("reading", "32 psi"),),
        "Exact factors from the definitions of NIST SP 811 (2008), appendix B.8. Inches of "
        "mercury at 0 °C.",
        "A temperature is not a difference of temperatures: 5 K of difference is 9 Δ°F. "
        "Results are rounded to six digits.",
        (TextField("reading", "Value and unit"),),
    ),
    Form(
        "code",
        "Trouble code",
        "What the signs of a code say, with its failure type or without.",
        (("code", "U0131-87"),),
        "Structure: SAE J2012, ISO 15031-6. Which codes are a maker's own: from memory. Failure "
        "types: numbers of SAE J2012-DA, wording ours.",
        "A code names a circuit or a message, never a part to be fitted. A maker's code means "
        "something only with its make.",
        (TextField("code", "Code"),),
    ),
    Form(
        "vehicle-number",
        "Vehicle number",
        "Signs, check digit and model year. What is typed stays on this page.",
        (("number", "0ZZAB1DE0S0123456"), ("class", NOT_KNOWN)),
        "Signs and their count: ISO 3779. Check digit and model year: 49 CFR 565.15, for vehicles "
        "sold in the United States. The number of the example is invented.",
        "Elsewhere a number may break these rules and be right. The check digit does not find "
        "every slip.",
        (
            TextField("number", "Vehicle number"),
            TextField("class", "What it is", (NOT_KNOWN, LIGHT)),
        ),
    ),
    Form(
        "refusal",
        "A refusal of the scan tool",
        "What a module means when it refuses a routine.",
        (("refusal", "7F 31 22"),),
        "Numbers and names: ISO 14229-1, annex A. The words are ours.",
        "Write the answer down as shown before you try again.",
        (TextField("refusal", "Number, answer or name as shown"),),
        caution=_ROUTINE,
    ),
)
