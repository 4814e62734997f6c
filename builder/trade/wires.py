"""Resistance of copper wire by gauge number and by metric area.

In: a size, a length in meters, a temperature in degrees Celsius. Out: ohms as an exact fraction, or
a `Mistake`. The length is the whole path of the current: there and back where the return is a wire.
"""

from collections.abc import Mapping
from decimal import Decimal
from fractions import Fraction

from builder.trade.exact import Exact
from builder.trade.mistake import Mistake

COPPER_PER_KELVIN = Fraction("0.00393")  # IEC 60028, annealed copper, from 20 degC

# Solid copper at 20 degC, ohm per km. Diameters of ASTM B258, d = 0.127 mm x 92^((36 - n) / 39),
# with IEC 60028's 0.017241 ohm mm2/m. Stranded wire of vehicles runs 2 to 6 % higher.
OHMS_PER_KM_BY_GAUGE: Mapping[str, Fraction] = {
    "4/0": Fraction("0.1608"),
    "3/0": Fraction("0.2028"),
    "2/0": Fraction("0.2557"),
    "1/0": Fraction("0.3224"),
    "1": Fraction("0.4066"),
    "2": Fraction("0.5127"),
    "3": Fraction("0.6464"),
    "4": Fraction("0.8152"),
    "5": Fraction("1.028"),
    "6": Fraction("1.296"),
    "7": Fraction("1.634"),
    "8": Fraction("2.061"),
    "9": Fraction("2.599"),
    "10": Fraction("3.277"),
    "11": Fraction("4.132"),
    "12": Fraction("5.211"),
    "13": Fraction("6.571"),
    "14": Fraction("8.285"),
    "15": Fraction("10.45"),
    "16": Fraction("13.17"),
    "17": Fraction("16.61"),
    "18": Fraction("20.95"),
    "19": Fraction("26.41"),
    "20": Fraction("33.31"),
    "21": Fraction("42"),
    "22": Fraction("52.96"),
    "23": Fraction("66.78"),
    "24": Fraction("84.21"),
    "25": Fraction("106.2"),
    "26": Fraction("133.9"),
}

# Highest resistance at 20 degC, ohm per km, by area in mm2: IEC 60228 class 5 (flexible), plain
# annealed copper.
OHMS_PER_KM_BY_AREA: Mapping[str, Fraction] = {
    "0.5": Fraction("39.0"),
    "0.75": Fraction("26.0"),
    "1": Fraction("19.5"),
    "1.5": Fraction("13.3"),
    "2.5": Fraction("7.98"),
    "4": Fraction("4.95"),
    "6": Fraction("3.30"),
    "10": Fraction("1.91"),
    "16": Fraction("1.21"),
    "25": Fraction("0.780"),
    "35": Fraction("0.554"),
    "50": Fraction("0.386"),
    "70": Fraction("0.272"),
    "95": Fraction("0.206"),
    "120": Fraction("0.161"),
}


def gauge_ohms(gauge: str, meters: Exact, celsius: Exact = 20) -> Fraction | Mistake:
    """Return the resistance of a length of solid copper of an American gauge: "18", "1/0"."""
    return _ohms(OHMS_PER_KM_BY_GAUGE, gauge, meters, celsius)


def area_ohms(
    square_millimeters: Decimal | str, meters: Exact, celsius: Exact = 20
) -> Fraction | Mistake:
    """Return the highest resistance of flexible copper of a metric area: "0.75", "2.5"."""
    return _ohms(OHMS_PER_KM_BY_AREA, str(square_millimeters), meters, celsius)


def _ohms(
    sizes: Mapping[str, Fraction], size: str, meters: Exact, celsius: Exact
) -> Fraction | Mistake:
    if size not in sizes:
        return Mistake(f"{size} is no wire size of the table; it has {', '.join(sizes)}")
    if Fraction(meters) < 0:
        return Mistake(f"a wire can't be {meters} m long")
    return sizes[size] * Fraction(meters) / 1000 * copper_factor(celsius)


def copper_factor(celsius: Exact) -> Fraction:
    """Return the resistance of copper at a temperature, as a multiple of that at 20 °C."""
    return 1 + COPPER_PER_KELVIN * (Fraction(celsius) - 20)
