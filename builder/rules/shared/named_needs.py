"""The states that are named: by a step, by how a module is installed, by each part of its setup.

In: the facts of a tree, or the library. Out: `NamedNeeds`, those that have to hold together.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from builder.graph.needed_states import state_of
from builder.model.conditions import Conditions, VehicleState
from builder.model.library import Library
from builder.model.text import Text
from builder.model.tree import Need, Where
from builder.rules.shared.rule import Facts


@dataclass(frozen=True, slots=True)
class NamedNeeds:
    """States that are needed at the same time."""

    by: str  # the step or the part of a record, as the author calls it
    needs: tuple[Need, ...]
    where: Where | None = None

    def states(self, conditions: Conditions) -> list[tuple[Need, VehicleState]]:
        """Return the needs that name a state, each with it."""
        pairs = ((need, state_of(conditions, need, self.where)) for need in self.needs)
        return [(need, state) for need, state in pairs if state]


def needs_of_steps(facts: Facts) -> Iterator[NamedNeeds]:
    """Yield the needs of every step that names one."""
    for step in facts.steps:
        if step.needs:
            yield NamedNeeds(str(step.id), step.needs, step.where)


def needs_of_modules(library: Library) -> Iterator[NamedNeeds]:
    """Yield the needs of every module's record, where the shop has states."""
    if not library.conditions:
        return
    for module in library.modules.values():
        if module.fit and module.fit.needs:
            yield NamedNeeds("fit", module.fit.needs)
        for record in module.set_up:
            needs = tuple(Need(Text(word, word.at)) for word in record.needs if " " not in word)
            if needs:
                yield NamedNeeds(record.verb, needs)
