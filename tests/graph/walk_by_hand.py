"""Every walk of a small tree, made by hand after the text of the format.

It works on a vehicle of its own (`vehicle_by_hand`), counts how often each step was done, and asks
neither the planner nor the moves of a tree. `arrivals` tries every answer there is.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import NamedTuple

from builder.model.checks import Branch, Check
from builder.model.conditions import Takes, VehicleState
from builder.model.ends import Fix, Return, Stop
from builder.model.procedures import Procedure
from builder.model.tree import Action, Step, Tree

from .vehicle_by_hand import Kinds, Vehicle

MOST = 3000  # walks that are followed, each with its memory


class At(NamedTuple):
    """Where a walk is: what it runs, the step, the step before it, the vehicle, and the counts."""

    running: tuple[tuple[str, int], ...]  # the step that runs something, and which verification
    step: str
    before: str
    vehicle: tuple[VehicleState, ...]
    done: tuple[tuple[tuple[tuple[str, int], ...], str], ...] = ()


@dataclass
class Bay:
    """A tree with its procedures and conditions."""

    tree: Tree
    procedures: dict[str, Procedure]
    kinds: Kinds

    def arrivals(self) -> set[At]:
        """Return where walks can arrive, as far as they are followed."""
        start = At((), str(self.tree.start.id), "", ())
        seen, waiting = {start}, [start]
        while waiting and len(seen) < MOST:
            for there in self.onward(waiting.pop(0)):
                if there not in seen:
                    seen.add(there)
                    waiting.append(there)
        return seen

    def tree_at(self, running: tuple[tuple[str, int], ...]) -> Tree:
        """Return the tree or the procedure that is run."""
        if not running:
            return self.tree
        name, number = running[-1]
        outer = self.tree_at(running[:-1])
        body = outer.steps[name].body
        if isinstance(body, Fix):
            asked = self.asked(outer, body)[number]
            return outer if asked in outer.steps else self.procedures[asked].tree
        return self.procedures["procedure"].tree

    def asked(self, tree: Tree, fix: Fix) -> list[str]:
        """Return what verifies a fix, without free text."""
        known = {*tree.steps, *self.procedures}
        return [str(one.text) for one in fix.verify if str(one.text) in known]

    def needs(self, step: Step) -> list[VehicleState]:
        """Return what a step needs."""
        found = []
        for need in step.needs:
            takes = self.kinds[need.condition].takes
            value = str(need.value or "")
            if takes is Takes.CURRENT:
                assert step.where
                found.append(VehicleState(need.condition, str(step.where.part), value))
            else:
                found.append(VehicleState(need.condition, value))
        return found

    def worked(self, at: At, step: Step) -> tuple[VehicleState, ...]:
        """Return the vehicle after it was brought into what a step needs."""
        vehicle = Vehicle(self.kinds)
        for state in at.vehicle:
            vehicle.enter(state)
        vehicle.prepare(self.needs(step))
        return tuple(vehicle.order)

    def onward(self, at: At) -> Iterator[At]:
        """Yield where a walk can be next."""
        tree = self.tree_at(at.running)
        step = tree.steps[at.step]
        if self.alone(at.running):
            if isinstance(step.body, Check) and step.body.by:
                yield self.into(at)
            else:
                yield from self.after_proof(at.running, replace_vehicle(at, self.worked(at, step)))
            return
        key = (at.running, at.step)
        if step.at_most is not None:
            if at.done.count(key) == step.at_most:
                assert step.spent
                yield from self.led(at, step.spent)
                return
            at = at._replace(done=tuple(sorted((*at.done, key))))
        if isinstance(step.body, Check) and step.body.by:
            yield self.into(at)
            return
        at = replace_vehicle(at, self.worked(at, step))
        yield from self.left(at, step)

    def alone(self, running: tuple[tuple[str, int], ...]) -> bool:
        """Whether one step of a tree is done alone, to verify a fix."""
        if not running or running[-1][1] < 0:
            return False
        outer = self.tree_at(running[:-1])
        body = outer.steps[running[-1][0]].body
        assert isinstance(body, Fix)
        return self.asked(outer, body)[running[-1][1]] in outer.steps

    def into(self, at: At) -> At:
        """Begin the procedure that a step runs."""
        start = str(self.procedures["procedure"].tree.start.id)
        return At((*at.running, (at.step, -1)), start, "", at.vehicle, at.done)

    def left(self, at: At, step: Step) -> Iterator[At]:
        """Yield the ways out of a step that was done."""
        match step.body:
            case Check(results=results, cannot_test=cannot_test):
                for one in results:
                    yield from self.led(at, one.branch)
                if cannot_test:
                    yield from self.led(at, cannot_test)
                else:
                    yield from self.cannot(at)
            case Action(then=then):
                assert then
                yield from self.led(at, then)
            case Return():
                yield from self.said(at, str(step.text))
            case Fix():
                yield from self.proving(at, step)
            case Stop():
                pass

    def led(self, at: At, branch: Branch) -> Iterator[At]:
        """Follow a branch."""
        if branch.returns:
            yield from self.said(at, str(branch.text))
        elif branch.text == "back":
            if at.before:
                yield at._replace(step=at.before, before="")
        else:
            name = str(branch.step)
            yield at._replace(step=name, before=at.step if self.goes_back(at, name) else "")

    def goes_back(self, at: At, name: str) -> bool:
        """Whether a step goes back to where it came from, so that this has to be remembered."""
        body = self.tree_at(at.running).steps[name].body
        return isinstance(body, Action) and body.then is not None and body.then.text == "back"

    def said(self, at: At, word: str) -> Iterator[At]:
        """Go on behind the step that ran a procedure."""
        outer, (name, number) = at.running[:-1], at.running[-1]
        at = forgotten(at)._replace(running=outer, step=name, before="")
        if number >= 0:
            yield from self.after_proof((*outer, (name, number)), at)
        elif self.alone(outer):
            yield from self.after_proof(outer, at)
        else:
            body = self.tree_at(outer).steps[name].body
            assert isinstance(body, Check)
            for one in body.results:
                if one.text == word:
                    yield from self.led(at, one.branch)

    def cannot(self, at: At) -> Iterator[At]:
        """Go on where a check inside can't be done."""
        while at.running:
            outer, (name, number) = at.running[:-1], at.running[-1]
            at = forgotten(at)._replace(running=outer, step=name, before="")
            if number >= 0:
                yield from self.after_proof((*outer, (name, number)), at)
                return
            body = self.tree_at(outer).steps[name].body
            if isinstance(body, Check) and body.cannot_test and not self.alone(outer):
                yield from self.led(at, body.cannot_test)
                return

    def proving(self, at: At, fix: Step) -> Iterator[At]:
        """Put everything back, then begin to verify a fix; free text can fail at once."""
        body = fix.body
        assert isinstance(body, Fix)
        at = replace_vehicle(at, ())
        if self.asked(self.tree_at(at.running), body):
            yield self.proof(at, str(fix.id), 0)
        if len(self.asked(self.tree_at(at.running), body)) < len(body.verify):
            yield from self.failed(at, fix)

    def proof(self, at: At, fix: str, number: int) -> At:
        """Do one thing that verifies a fix, from normal."""
        tree = self.tree_at(at.running)
        body = tree.steps[fix].body
        assert isinstance(body, Fix)
        asked = self.asked(tree, body)[number]
        running = (*at.running, (fix, number))
        name = asked if asked in tree.steps else str(self.procedures[asked].tree.start.id)
        return At(running, name, "", (), at.done)

    def after_proof(self, running: tuple[tuple[str, int], ...], at: At) -> Iterator[At]:
        """Go on after one thing that verifies a fix, passed or failed."""
        outer, (name, number) = running[:-1], running[-1]
        at = at._replace(running=outer, step=name, before="")
        fix = self.tree_at(outer).steps[name]
        assert isinstance(fix.body, Fix)
        if number + 1 < len(self.asked(self.tree_at(outer), fix.body)):
            yield self.proof(at, name, number + 1)
        yield from self.failed(at, fix)

    def failed(self, at: At, fix: Step) -> Iterator[At]:
        """Go on where the fault is still there."""
        assert isinstance(fix.body, Fix)
        tree = self.tree_at(at.running)
        checks = [name for name in self.asked(tree, fix.body) if name in tree.steps]
        if fix.body.still_there:
            yield from self.led(at, fix.body.still_there)
        elif checks:
            yield at._replace(step=checks[0], before="")


def replace_vehicle(at: At, vehicle: tuple[VehicleState, ...]) -> At:
    """Return the same place with the vehicle in another state."""
    return at._replace(vehicle=vehicle)


def forgotten(at: At) -> At:
    """Forget how often the steps of what is left now were done."""
    return at._replace(done=tuple(one for one in at.done if one[0] != at.running))
