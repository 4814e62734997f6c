"""What must come first in work on a vehicle, as data.

In: nothing. Out: `Requirement`s in the verbs of the closed list of `does`, for the rules of order
and for the plan's order of checks. All of it is common practice, no source; the vehicle maker's
service information comes first.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from builder.model.tree import Deed


@dataclass(frozen=True, slots=True)
class Requirement:
    """A state that must hold before a step that needs it.

    A deed at one part, such as `check-ground <part>`, meets what is required of that part only; a
    deed that names none meets it for every part.
    """

    name: str  # as a technician would say it: "the codes are recorded"
    met_by: str  # the verb after which it holds
    undone_by: frozenset[str] = frozenset()  # verbs after which it no longer holds
    needed_by: frozenset[str] = frozenset()  # verbs that need it
    part: str | None = None  # what it must hold for; None for the vehicle

    @property
    def key(self) -> str:
        """Its name, and the part that it must hold for."""
        return f"{self.name}: {self.part}" if self.part else self.name

    def at(self, part: str) -> "Requirement":
        """Return what is required of one part."""
        return replace(self, part=part)

    def is_met_by(self, deed: Deed) -> bool:
        """Whether it holds after a deed."""
        return deed.verb == self.met_by and deed.module in (None, self.part)


# A module can be lost when its supply voltage drops during these.
WRITING_VERBS = frozenset({"program", "configure", "initialize"})

CODES_RECORDED = Requirement(
    name="the codes are recorded",
    met_by="record-codes",
    needed_by=frozenset({"clear-codes", "disconnect-battery"}),
)
SUPPLY_PROVED = Requirement(
    name="the supply is proved", met_by="check-supply", needed_by=WRITING_VERBS
)
SUPPLY_HELD = Requirement(
    name="a support supply is connected",
    met_by="hold-supply",
    undone_by=frozenset({"release-supply", "disconnect-battery", "drive"}),
    needed_by=WRITING_VERBS,
)
GROUND_PROVED = Requirement(name="the ground is proved under load", met_by="check-ground")
NETWORK_PROVED = Requirement(name="the network is proved", met_by="check-network")

REQUIREMENTS = (CODES_RECORDED, SUPPLY_PROVED, SUPPLY_HELD, GROUND_PROVED, NETWORK_PROVED)

# What a module's record can ask for in `prove_first` before the module may be condemned.
PROVE_FIRST: Mapping[str, Requirement] = {
    "supply": SUPPLY_PROVED,
    "ground": GROUND_PROVED,
    "network": NETWORK_PROVED,
}
