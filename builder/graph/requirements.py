"""What must come first in the work at a vehicle, as data.

In: nothing. Out: `Requirement`s in the verbs of the closed list of `does`, for the rules of order
and for whoever suggests an order of checks. All of it is common practice of the trade, no source;
the maker's service information comes first.
"""

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Requirement:
    """Something that has to be so before a step that needs it is started."""

    name: str  # as a technician would say it: "the codes are recorded"
    brought_by: str  # the verb that brings it about
    undone_by: frozenset[str] = frozenset()  # verbs after which it is no longer so
    needed_by: frozenset[str] = frozenset()  # verbs that need it


WRITES = frozenset({"program", "configure", "initialise"})  # the unit is lost if the supply drops

CODES_RECORDED = Requirement(
    name="the codes are recorded",
    brought_by="record-codes",
    needed_by=frozenset({"clear-codes", "disconnect-battery"}),
)
SUPPLY_PROVED = Requirement(
    name="the supply is proved", brought_by="check-supply", needed_by=WRITES
)
SUPPLY_HELD = Requirement(
    name="a support supply is connected",
    brought_by="hold-supply",
    undone_by=frozenset({"release-supply", "disconnect-battery", "drive"}),
    needed_by=WRITES,
)
GROUND_PROVED = Requirement(name="the ground is proved under load", brought_by="check-ground")
NETWORK_PROVED = Requirement(name="the network is proved", brought_by="check-network")

ALL = (CODES_RECORDED, SUPPLY_PROVED, SUPPLY_HELD, GROUND_PROVED, NETWORK_PROVED)

# What a module's record can ask for in `prove_first` before the module may be condemned.
PROVE_FIRST: Mapping[str, Requirement] = {
    "supply": SUPPLY_PROVED,
    "ground": GROUND_PROVED,
    "network": NETWORK_PROVED,
}
