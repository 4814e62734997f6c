"""Wire resistance against ASTM B258, IEC 60228 and handbook values."""

from fractions import Fraction
from math import pi

import pytest

from builder.trade.mistake import Mistake
from builder.trade.wires import (
    OHMS_PER_KM_BY_AREA,
    OHMS_PER_KM_BY_GAUGE,
    area_ohms,
    copper_factor,
    gauge_ohms,
)

# IEC 60228 table 3, class 5, plain copper, ohm per km at 20 degC (seen in several reprints).
CLASS_5 = {
    "0.5": 39.0, "0.75": 26.0, "1": 19.5, "1.5": 13.3, "2.5": 7.98, "4": 4.95, "6": 3.30,
    "10": 1.91, "16": 1.21, "25": 0.780, "35": 0.554, "50": 0.386, "70": 0.272, "95": 0.206,
    "120": 0.161,
}  # fmt: skip


@pytest.mark.parametrize("gauge", OHMS_PER_KM_BY_GAUGE)
def test_gauges_follow_astm_b258(gauge):
    """Diameter 0.127 mm x 92^((36 - n) / 39), IEC 60028 copper of 0.017241 ohm mm2/m."""
    number = 1 - int(gauge[0]) if gauge.endswith("/0") else int(gauge)
    diameter = 0.127 * 92 ** ((36 - number) / 39)
    ohms = 17.241 / (pi * diameter**2 / 4)
    assert f"{float(OHMS_PER_KM_BY_GAUGE[gauge]):.4g}" == f"{ohms:.4g}"


def test_handbook_value_of_gauge_ten():
    """10 AWG has 0.9988 ohm per 1000 ft at 20 degC (handbooks of electrical engineering)."""
    assert float(gauge_ohms("10", Fraction("304.8"))) == pytest.approx(0.9988, abs=1e-4)


def test_every_gauge_from_four_nought_to_twenty_six():
    """No gauge that a vehicle uses is left out."""
    assert list(OHMS_PER_KM_BY_GAUGE) == ["4/0", "3/0", "2/0", "1/0", *map(str, range(1, 27))]


def test_areas_are_those_of_iec_60228():
    """Every area carries the printed greatest resistance."""
    assert {area: float(ohms) for area, ohms in OHMS_PER_KM_BY_AREA.items()} == CLASS_5


@pytest.mark.parametrize(
    ("gauge", "metres", "amperes", "volts"),
    [("4", "1.5", 200, "0.2446"), ("2", "1.5", 200, "0.1538"), ("1/0", "1.5", 200, "0.0967"),
     ("12", "3", 20, "0.3127"), ("16", "5", 10, "0.6585"), ("18", "5", 5, "0.5238")],
)  # fmt: skip
def test_drops_of_cables(gauge, metres, amperes, volts):
    """Drops calculated by hand from the formula of ASTM B258 (to a tenth of a percent)."""
    drop = float(gauge_ohms(gauge, Fraction(metres)) * amperes)
    assert drop == pytest.approx(float(volts), rel=1e-3)


@pytest.mark.parametrize(
    ("celsius", "factor"), [(80, "1.2358"), (0, "0.9214"), (-40, "0.7642"), (20, "1")]
)
def test_copper_rises_with_heat(celsius, factor):
    """R(T) = R20 (1 + 0.00393 (T - 20)), IEC 60028."""
    assert copper_factor(celsius) == Fraction(factor)
    assert gauge_ohms("18", 1, celsius) == gauge_ohms("18", 1) * Fraction(factor)
    assert area_ohms("2.5", 1, celsius) == area_ohms("2.5", 1) * Fraction(factor)


def test_the_correction_of_iec_60228_is_near():
    """IEC 60228 annex B counts from 234.5 K below zero; at 80 degC both agree within 1 %."""
    assert float(copper_factor(80)) == pytest.approx(1 / 0.806, rel=0.01)


def test_what_is_no_wire_says_so():
    """An unknown size lists the known ones; a length below zero is refused."""
    assert "1/0" in gauge_ohms("5/0", 1).message
    assert isinstance(area_ohms("3", 1), Mistake)
    assert isinstance(area_ohms("2.5", -1), Mistake)
    assert area_ohms("2.5", 0) == 0
    assert area_ohms("2.5", 1000) == Fraction("7.98")
