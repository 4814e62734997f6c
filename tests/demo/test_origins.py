"""Where the demo's limits come from: a standard, a second figure, or the maker."""

import re
from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction

import pytest

from builder.model.checks import Check
from builder.model.library import Library
from builder.model.tree import Tree
from builder.trade.wires import OHMS_PER_KM_BY_GAUGE

LOSS = re.compile(r"(\d+) ft of (\d+) AWG take ([\d.]+) V at (?:a bulb's )?(\d+) A")
KM_PER_FOOT = Fraction("0.0003048")  # exact by definition of the international foot


@pytest.fixture(scope="module")
def origins(library: Library, trees: tuple[Tree, ...]) -> tuple[str, ...]:
    """Return every origin that is written in the demo."""
    return tuple(dict.fromkeys(map(str, _written(library, trees))))


def _written(library: Library, trees: tuple[Tree, ...]) -> Iterator[str]:
    yield from (spec.origin for spec in library.specs.values() if spec.origin)
    procedures = [one.tree for one in library.procedures.values()]
    for step in (step for tree in (*trees, *procedures) for step in tree.steps.values()):
        if isinstance(step.body, Check):
            yield from (one.origin for one in step.body.readings if one.origin)
            if step.body.figure and step.body.figure.origin:
                yield step.body.figure.origin


def test_no_limit_rests_on_custom_alone(origins: tuple[str, ...]) -> None:
    """A limit of common practice names a second figure that it can be held against."""
    assert [one for one in origins if one.strip(" .") == "common practice"] == []


def test_a_cable_loses_what_the_demo_says(origins: tuple[str, ...]) -> None:
    """The losses that stand beside limits follow from ASTM B258 and Ohm's law."""
    losses = [match.groups() for one in origins if (match := LOSS.search(one))]
    assert len(losses) >= 5
    for feet, gauge, volts, amperes in losses:
        ohms = OHMS_PER_KM_BY_GAUGE[gauge] * int(feet) * KM_PER_FOOT
        lost = Decimal(float(ohms * int(amperes)))
        assert round(lost, -Decimal(volts).as_tuple().exponent) == Decimal(volts)  # type: ignore[operator]
