"""What is being run at a place of a walk: the tree, a procedure, a check that verifies a fix.

In: a tree and what the shop knows. Out: the `Frame` of any calls.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field

from builder.graph.moves import Call, Moves, moves_of
from builder.graph.needed_states import NOTHING_GIVEN, Given, values_given
from builder.graph.step_entry import Planner
from builder.graph.verifications import VerifyingRun, verifying_runs
from builder.model.checks import Check
from builder.model.module_record import Module
from builder.model.procedures import Procedure
from builder.model.tree import Step, Tree

Calls = tuple[Call, ...]


@dataclass(frozen=True, slots=True)
class PathKnowledge:
    """What the shop knows that decides in which state a step is entered."""

    planner: Planner
    procedures: Mapping[str, Procedure] = field(default_factory=dict)
    modules: Mapping[str, Module] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Frame:
    """A tree or a procedure as it is run."""

    tree: Tree
    moves: Moves
    given: Given
    procedures: tuple[str, ...] = ()  # those that are being run
    item: VerifyingRun | None = None  # what it verifies

    @property
    def verifies_step(self) -> bool:
        """Whether one step of the tree is run alone, to verify a fix."""
        return self.item is not None and self.item.is_step


class Frames:
    """The frames of a tree; each is made once."""

    def __init__(self, tree: Tree, known: PathKnowledge) -> None:
        """Begin with the tree itself."""
        self.known = known
        self._frames: dict[Calls, Frame] = {(): Frame(tree, moves_of(tree), NOTHING_GIVEN)}
        self._moves: dict[str, Moves] = {}  # of the procedures
        self._items: dict[tuple[int, str], tuple[VerifyingRun, ...]] = {}

    def frame(self, calls: Calls) -> Frame:
        """Return what is being run."""
        if calls not in self._frames:
            self._frames[calls] = self._new_frame(calls)
        return self._frames[calls]

    def items(self, frame: Frame, fix: Step) -> tuple[VerifyingRun, ...]:
        """Return what verifies a fix."""
        key = id(frame.tree), str(fix.id)
        if key not in self._items:
            self._items[key] = tuple(verifying_runs(frame.tree, fix, self.known.procedures))
        return self._items[key]

    def procedure(self, frame: Frame, step: Step) -> Procedure | None:
        """Return the procedure that a step runs; one that runs itself isn't followed."""
        name = step.body.by if isinstance(step.body, Check) else None
        if name is None or str(name) in frame.procedures:
            return None
        return self.known.procedures.get(str(name))

    def _new_frame(self, calls: Calls) -> Frame:
        outer, call = self.frame(calls[:-1]), calls[-1]
        step = outer.tree.steps[call.step]
        if call.verification is None:
            assert isinstance(step.body, Check)
            return self._of_procedure(outer, str(step.body.by), step.body.with_, None)
        item = self.items(outer, step)[call.verification]
        if item.is_step:
            return Frame(outer.tree, outer.moves, outer.given, outer.procedures, item)
        return self._of_procedure(outer, item.name, item.with_, item)

    def _of_procedure(
        self, outer: Frame, name: str, with_: Mapping[str, str], item: VerifyingRun | None
    ) -> Frame:
        tree = self.known.procedures[name].tree
        if name not in self._moves:
            self._moves[name] = moves_of(tree)
        given = values_given(tree, with_, outer.given)
        return Frame(tree, self._moves[name], given, (*outer.procedures, name), item)
