"""Units against NIST SP 811 (2008) appendix B.8 and against Pint."""

from decimal import Decimal
from fractions import Fraction

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.trade.units import UNITS, convert, find_unit, nearest_units, same_kind

# Digits as NIST SP 811 appendix B.8 prints them (from memory), or exact by definition.
HANDBOOK = [
    ("psi", "kPa", "6.894757", 7),
    ("inHg", "kPa", "3.386389", 7),  # the conventional inch, not the one at 60 degF
    ("bar", "kPa", "100", 3),
    ("lb-ft", "Nm", "1.355818", 7),
    ("lb-in", "Nm", "0.1129848", 7),
    ("mi", "km", "1.609344", 7),
    ("mph", "km/h", "1.609344", 7),
    ("in", "mm", "25.4", 3),
    ("kPa", "psi", "0.1450377", 7),
    ("Nm", "lb-ft", "0.7375621", 7),
]

# Our symbol, and what Pint calls it. Its traps: Nm, lb-ft, C, F and K mean other things there, so
# no name of ours is ever handed to it; and its rpm counts radians, see the test of rpm.
PINT = {
    "V": "volt", "mV": "millivolt", "kV": "kilovolt", "A": "ampere", "mA": "milliampere",
    "ohm": "ohm", "mohm": "milliohm", "kohm": "kiloohm", "Mohm": "megaohm",
    "Hz": "hertz", "kHz": "kilohertz", "s": "second", "ms": "millisecond", "us": "microsecond",
    "min": "minute", "h": "hour", "days": "day",
    "kPa": "kilopascal", "psi": "psi", "bar": "bar", "inHg": "inHg",
    "°C": "degC", "°F": "degF", "K": "delta_degC", "degF diff": "delta_degF",
    "Nm": "newton * meter", "lb-ft": "lbf * foot", "lb-in": "lbf * inch",
    "m": "meter", "mm": "millimeter", "um": "micrometer", "in": "inch", "km": "kilometer",
    "mi": "mile", "l": "liter", "ml": "milliliter", "g/s": "gram / second",
    "km/h": "kilometer / hour", "mph": "mile / hour", "Ah": "ampere * hour",
    "Wh": "watt * hour", "W": "watt", "kW": "kilowatt",
}  # fmt: skip
ALONE = {"rpm", "%", "CCA", "steps", "counts", "deg"}  # nothing to hold them against there
PAIRS = [(a, b) for a in UNITS for b in UNITS if UNITS[a].kind == UNITS[b].kind]


@pytest.fixture(scope="module")
def registry() -> pint.UnitRegistry:
    """The reference library."""
    return pint.UnitRegistry()


@pytest.mark.parametrize(("given_unit", "wanted", "printed", "digits"), HANDBOOK)
def test_factors_are_those_of_the_handbook(given_unit, wanted, printed, digits):
    """A conversion factor reads digit for digit as NIST SP 811 prints it."""
    assert f"{float(convert(1, given_unit, wanted)):.{digits}g}" == f"{float(printed):.{digits}g}"


def test_exact_definitions_stay_exact():
    """The inch, the pound-force and standard gravity enter as their definitions (SP 811 B.8)."""
    pound_force = Fraction("0.45359237") * Fraction("9.80665")
    assert convert(1, "lb-in", "Nm") == pound_force * Fraction("0.0254")
    assert convert(1, "psi", "kPa") == pound_force / Fraction("0.0254") ** 2 / 1000
    assert (
        convert(1, "inHg", "kPa")
        == Fraction("25.4") * Fraction("13.5951") * Fraction("9.80665") / 1000
    )
    assert convert(1, "mi", "m") == Fraction("1609.344")


@pytest.mark.parametrize(("one", "other"), [pair for pair in PAIRS if not ALONE & {*pair}])
def test_every_pair_agrees_with_pint(one, other, registry):
    """Pint converts every pair of our units to the same value (it carries floats)."""
    for value in (1, 37):
        ours = convert(value, one, other)
        theirs = registry.Quantity(float(value), PINT[one]).to(PINT[other]).magnitude
        assert float(ours) == pytest.approx(theirs, rel=1e-9, abs=1e-9)


def test_no_unit_is_left_without_a_reference():
    """Each unit is either held against Pint or named as one that stands alone."""
    assert set(UNITS) == set(PINT) | ALONE


def test_rpm_is_counted_by_sixty():
    """60 rpm is 1 Hz and 800 rpm 13.33 Hz: turns, not radians (SP 811 B.8)."""
    assert convert(60, "rpm", "Hz") == 1
    assert convert(800, "rpm", "Hz") == Fraction(40, 3)
    assert convert(1, "kHz", "rpm") == 60000


@pytest.mark.parametrize(
    ("celsius", "fahrenheit"), [(-40, -40), (0, 32), (100, 212), (71, "159.8"), (37, "98.6")]
)
def test_fixed_points_of_the_two_scales(celsius, fahrenheit):
    """Freezing, boiling and the point where both scales meet (SP 811 B.8)."""
    assert convert(celsius, "C", "F") == Fraction(fahrenheit)
    assert convert(Decimal(fahrenheit), "°F", "°C") == celsius


def test_a_difference_of_temperatures_is_no_temperature():
    """A rise of 22 K is 39.6 degF of rise, the 40 degF of a warm-up cycle, and not 71.6 °F."""
    assert convert(22, "K", "degF diff") == Fraction("39.6")
    assert convert(5, "K", "degF diff") == 9
    assert not same_kind("K", "°C")


def test_look_alike_kinds_stay_apart():
    """Torque is not energy, cranking amperes are not current, and nothing matches the unknown."""
    assert not same_kind("Nm", "Wh")
    assert not same_kind("CCA", "A")
    assert not same_kind("furlong", "m")
    with pytest.raises(ValueError, match="Nm cannot be turned into Wh"):
        convert(1, "Nm", "Wh")


@given(value=st.decimals(-(10**6), 10**6, places=3), pair=st.sampled_from(PAIRS))
def test_there_and_back_is_exact(value, pair):
    """Converting there and back gives the very value, whatever the pair."""
    one, other = pair
    assert convert(convert(value, one, other), other, one) == Fraction(value)


@pytest.mark.parametrize(
    ("typed", "symbol"),
    [
        ("C", "°C"), ("F", "°F"), ("℃", "°C"), ("Ω", "ohm"), ("\u2126", "ohm"), ("kΩ", "kohm"),
        ("KOhm", "kohm"), ("MΩ", "Mohm"), ("mΩ", "mohm"), ("µs", "us"), ("μs", "us"),
        ("N·m", "Nm"), ("ft-lb", "lb-ft"), ("PSI", "psi"), ("RPM", "rpm"),
        ("degF  diff", "degF diff"),
        ("Δ°F", "degF diff"), ("L", "l"), (" V ", "V"),
    ],
)  # fmt: skip
def test_other_spellings(typed, symbol):
    """What people and instruments write is taken for the unit it means."""
    found = find_unit(typed)
    assert found is not None
    assert found.symbol == symbol


@pytest.mark.parametrize("typed", ["MV", "Mv", "MA", "MM", "mpa", "furlong", "", "nm", "Kohms x"])
def test_milli_and_mega_are_never_confused(typed):
    """Letter case is never folded: an unknown spelling is refused, not guessed."""
    assert find_unit(typed) is None


def test_the_nearest_names_are_offered():
    """A typo brings the units that were probably meant, the likeliest first."""
    assert nearest_units("MV") == ["mV"]
    assert nearest_units("kPas")[0] == "kPa"
    assert nearest_units("Volt") == ["V"]
    assert nearest_units("zzzzzz") == []
    assert len(nearest_units("mohms")) == 3


def test_labels_for_pages():
    """Pages write Ω, µs and N·m where files write ohm, us and Nm."""
    assert [UNITS[one].label for one in ("kohm", "us", "Nm", "V")] == ["kΩ", "µs", "N·m", "V"]


def test_each_kind_has_an_si_base():
    """Factors multiply across kinds because every kind is counted in its SI unit."""
    assert UNITS["mA"].factor * UNITS["kohm"].factor == UNITS["V"].factor
    assert UNITS["A"].factor * UNITS["h"].factor == UNITS["Ah"].factor
    assert UNITS["kW"].factor * UNITS["h"].factor == 1000 * UNITS["Wh"].factor
    assert UNITS["km/h"].factor * UNITS["h"].factor == UNITS["km"].factor
    assert UNITS["kPa"].factor == 1000
    assert UNITS["l"].factor == Fraction(1, 1000)
    assert UNITS["g/s"].factor == Fraction(1, 1000)
    assert {UNITS[one].factor for one in ("%", "CCA", "steps", "counts", "deg", "°C", "K")} == {1}
