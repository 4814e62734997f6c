"""Resistance between CAN-H and CAN-L, and what it shows.

In: ohms measured with the power off and the bus asleep. Out: the state that matches. Two 120 ohm
terminators in parallel (ISO 11898-2) read 60 ohm; each state's range follows from the tolerance of
the resistors. From 15 % on, ranges overlap: a reading there is reported as one state or the other,
never as the first of them. A reading outside all ranges is a finding too: a bad connection or a
wrong part. Caution: never with the ignition on, and never on a high-voltage or restraint circuit;
follow the vehicle maker's service information first.
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

BELOW_ZERO = "below 0 ohm means voltage on the bus: turn the power off, let the bus go to sleep"
NO_STATE = "no match: bad connection or wrong terminator"
EITHER = " or "  # between states that a reading can't tell apart


@dataclass(frozen=True, slots=True)
class BusState:
    """A state of the bus and the ohms that show it; `high` is None when there is no upper end."""

    name: str
    low: Fraction
    high: Fraction | None


_TERMINATED = (
    ("two extra terminators", 4),
    ("one extra terminator", 3),
    ("both terminators present", 2),
    ("one terminator missing", 1),
)


def termination(
    count: int, ohms: Exact = TERMINATOR, tolerance_percent: Exact = TOLERANCE_PERCENT
) -> tuple[Fraction, Fraction] | Mistake:
    """Return the lowest and highest resistance of `count` equal terminators in parallel."""
    if count < 1:
        return Mistake("no terminators means an open bus: there is no resistance to expect")
    share = Fraction(tolerance_percent) / 100
    low = parallel(*[Fraction(ohms) * (1 - share)] * count)
    high = parallel(*[Fraction(ohms) * (1 + share)] * count)
    if isinstance(low, Mistake) or isinstance(high, Mistake):
        return Mistake("a terminator needs a resistance above 0 and a tolerance below 100 %")
    return low, high


def bus_states(tolerance_percent: Exact = TOLERANCE_PERCENT) -> Sequence[BusState] | Mistake:
    """Return every state from short to open, in rising order of resistance."""
    states = [BusState("CAN-H and CAN-L shorted together", Fraction(0), Fraction(SHORT_BELOW))]
    for name, count in _TERMINATED:
        band = termination(count, tolerance_percent=tolerance_percent)
        if isinstance(band, Mistake):
            return band
        states.append(BusState(name, *band))
    return [*states, BusState("open circuit, no terminator connected", Fraction(OPEN_FROM), None)]


def bus_state(ohms: Exact, tolerance_percent: Exact = TOLERANCE_PERCENT) -> str | Mistake:
    """Name the state that a reading shows; where ranges overlap, every state it can be."""
    value, states = Fraction(ohms), bus_states(tolerance_percent)
    if isinstance(states, Mistake):
        return states
    if value < 0:
        return Mistake(BELOW_ZERO)
    matches = [one.name for one in states if _matches(one, value)]
    return EITHER.join(matches) or NO_STATE


def _matches(state: BusState, ohms: Fraction) -> bool:
    return state.low <= ohms and (state.high is None or ohms <= state.high)
