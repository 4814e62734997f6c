"""Resistance across the two wires of a CAN network, and what it says.

In: ohms measured with the power off and the network asleep. Out: which state fits. Two terminators
of 120 ohm stand side by side (ISO 11898-2), so 60 ohm is whole; each state's range follows from the
tolerance of the resistors. What is in none of the ranges is a finding too: a bad joint or a wrong
part. Caution: never with the ignition on, and never on a high-voltage or restraint circuit; the
maker's service information comes first.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from builder.trade.circuits import parallel
from builder.trade.exact import Exact
from builder.trade.mistake import Mistake

TERMINATOR = 120  # ohm, ISO 11898-2
TOLERANCE_PERCENT = 10  # the band of 54 to 66 ohm is common practice, no source
SHORT_BELOW = 5  # ohm; common practice, no source
OPEN_FROM = 1000  # ohm: only the inputs of the modules are left; common practice, no source

BELOW_ZERO = "below 0 ohm: there is voltage on the line; power off, network asleep"
NO_STATE = "fits no state: a bad joint or a wrong terminator"


@dataclass(frozen=True, slots=True)
class BusState:
    """A state of the network and the ohms that show it; `high` is None when there is no end."""

    name: str
    low: Fraction
    high: Fraction | None


_TERMINATED = (
    ("two terminators too many", 4),
    ("one terminator too many", 3),
    ("both terminators there", 2),
    ("one terminator missing", 1),
)


def termination(
    count: int, ohms: Exact = TERMINATOR, tolerance_percent: Exact = TOLERANCE_PERCENT
) -> tuple[Fraction, Fraction] | Mistake:
    """Lowest and highest resistance of so many equal terminators side by side."""
    if count < 1:
        return Mistake("without a terminator there is no resistance to expect: the line is open")
    share = Fraction(tolerance_percent) / 100
    low = parallel(*[Fraction(ohms) * (1 - share)] * count)
    high = parallel(*[Fraction(ohms) * (1 + share)] * count)
    if isinstance(low, Mistake) or isinstance(high, Mistake):
        return Mistake("a terminator has some ohms, and a tolerance below 100 %")
    return low, high


def bus_states(tolerance_percent: Exact = TOLERANCE_PERCENT) -> Sequence[BusState] | Mistake:
    """Every state from short to open, in rising order of resistance."""
    states = [BusState("wires shorted together", Fraction(0), Fraction(SHORT_BELOW))]
    for name, count in _TERMINATED:
        band = termination(count, tolerance_percent=tolerance_percent)
        if isinstance(band, Mistake):
            return band
        states.append(BusState(name, *band))
    return [*states, BusState("open, no terminator reached", Fraction(OPEN_FROM), None)]


def bus_state(ohms: Exact, tolerance_percent: Exact = TOLERANCE_PERCENT) -> str | Mistake:
    """Name the state that a reading shows."""
    value, states = Fraction(ohms), bus_states(tolerance_percent)
    if isinstance(states, Mistake):
        return states
    if value < 0:
        return Mistake(BELOW_ZERO)
    for state in states:
        if state.low <= value and (state.high is None or value <= state.high):
            return state.name
    return NO_STATE
