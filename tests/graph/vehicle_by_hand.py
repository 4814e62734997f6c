"""A vehicle that is worked on by hand, after the text of the format alone; no planner is asked.

It keeps every state that holds, the normal ones too, and knows three things: what one single
change of one state does, whether that change is allowed, and the four rules in which order a walk
makes its changes. `can_get_there` tries every order of single changes there is.
"""

from collections import deque
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from builder.model.conditions import Condition, CountsAs, Takes, VehicleState

Kinds = Mapping[str, Condition]
World = tuple[VehicleState, ...]  # every state that holds
Move = tuple[VehicleState | None, VehicleState | None]  # what is left, what is entered
PARTS = ("pump", "fan")
LOADS = ("2 A", "9 A")


@dataclass
class Vehicle:
    """A vehicle in the shop; `world` begins with what is normal."""

    kinds: Kinds
    world: World = ()

    def __post_init__(self) -> None:
        """Bring it in with every normal state, and that of every part."""
        self.world = tuple(one for one in every_state(self.kinds) if self.kind(one).normal)
        self.order: list[VehicleState] = []  # what isn't normal, as it was entered
        self.moves: list[Move] = []

    def kind(self, state: VehicleState) -> Condition:
        """Return the condition of a state."""
        return self.kinds[state.condition]

    @property
    def key(self) -> VehicleState:
        """The power state."""
        return next(one for one in self.world if self.kind(one).group == "power")

    def there(self, state: VehicleState) -> VehicleState | None:
        """Return what holds where a state would hold: of its group, or a load, at its part."""
        return replaced(self.kinds, self.world, state)

    def clash(self, one: VehicleState, other: VehicleState) -> bool:
        """Whether one of two states excludes the other, at this part."""
        return clash(self.kinds, one, other)

    def enter(self, state: VehicleState) -> None:
        """Change one state of one place."""
        old = self.there(state)
        self.world = (*(one for one in self.world if one != old), state)
        if old in self.order:
            at = self.order.index(old)
            self.order[at : at + 1] = [] if self.kind(state).normal else [state]
        elif not self.kind(state).normal:
            self.order.append(state)
        self.moves.append((old, state))

    def end(self, state: VehicleState) -> None:
        """Go back to the normal state of a group, or turn off what has no group."""
        normal = normal_of(self.kinds, state)
        if normal:
            self.enter(normal)
            return
        self.world = tuple(one for one in self.world if one != state)
        self.order.remove(state)
        self.moves.append((state, None))

    def lists(self, state: VehicleState, other: VehicleState | None) -> list[str]:
        """Return the power states in which one state may be changed for another; [] for any."""
        both = [self.kind(one).changed_with for one in (state, other) if one]
        said = [[str(key) for key in keys] for keys in both if keys]
        return [key for key in said[0] if all(key in keys for keys in said)] if said else []

    def prepare(self, needs: list[VehicleState]) -> None:
        """Do what the four rules say, in their order."""
        needs = list(dict.fromkeys(needs))
        go = [s for s in reversed(self.order) if s != self.key and self.unwanted(s, needs)]
        come = [n for n in needs if self.kind(n).group != "power" and n not in self.world]
        said = [self.lists(normal_of(self.kinds, s) or s, s) for s in go]
        said += [self.lists(n, self.there(n)) for n in come]
        said = [keys for keys in said if keys]
        key = next((n for n in needs if self.kind(n).group == "power"), None)
        if key and key not in self.world and self.kind(key).counts_as is CountsAs.POWER_OFF:  # 5
            self.ahead(go, needs, [keys for keys in said if key.condition not in keys])
            self.turn([key.condition], [], [])
        elif self.kind(self.key).counts_as is CountsAs.POWER_OFF and not all(
            self.key.condition in keys for keys in said
        ):  # 6
            self.ahead(go, needs, [keys for keys in said if self.key.condition in keys])
        go = [s for s in go if s in self.world]
        come = [n for n in needs if self.kind(n).group != "power" and n not in self.world]
        said = [self.lists(normal_of(self.kinds, s) or s, s) for s in go]
        said += [self.lists(n, self.there(n)) for n in come]
        said = [keys for keys in said if keys]
        for keys in said:  # 1
            if self.key.condition not in keys:
                self.turn(keys, said, needs)
                break
        for state in go:  # 2
            self.take_out(state, needs)
        if self.unwanted(self.key, needs) and not self.kind(self.key).normal:
            self.end(self.key)
        come = [n for n in needs if self.kind(n).group != "power" and n not in self.world]
        while come:  # 3
            state = next(n for n in come if not any(self.clash(n, w) for w in self.world))
            come.remove(state)
            self.turn_for(state, self.there(state), needs)
            self.enter(state)
        for need in needs:  # 4
            if need not in self.world:
                self.enter(need)

    def ahead(
        self, go: list[VehicleState], needs: list[VehicleState], said: list[list[str]]
    ) -> None:
        """Change what has one of these lists before all else."""
        out = [s for s in go if self.lists(normal_of(self.kinds, s) or s, s) in said]
        come = [n for n in needs if self.kind(n).group != "power" and n not in self.world]
        come = [n for n in come if self.lists(n, self.there(n)) in said]
        for keys in said:
            if self.key.condition not in keys:
                self.turn(keys, said, needs)
                break
        for state in out:
            self.take_out(state, needs)
        while ready := [n for n in come if not any(self.clash(n, w) for w in self.world)]:
            come.remove(ready[0])
            if ready[0] not in self.world:
                self.turn_for(ready[0], self.there(ready[0]), needs)
                self.enter(ready[0])

    def unwanted(self, state: VehicleState, needs: Iterable[VehicleState]) -> bool:
        """Whether a need excludes a state."""
        return any(self.clash(state, need) for need in needs)

    def take_out(self, state: VehicleState, needs: list[VehicleState]) -> None:
        """End a state, and before it what can't hold without it."""
        if state not in self.world:
            return
        normal = normal_of(self.kinds, state)
        for other in [w for w in self.order if normal and self.clash(w, normal)]:
            self.take_out(other, needs)
        self.turn_for(normal or state, state, needs)
        self.end(state)

    def turn_for(
        self, state: VehicleState, old: VehicleState | None, needs: list[VehicleState]
    ) -> None:
        """Turn the key if this change needs it elsewhere."""
        keys = self.lists(state, old)
        if keys and self.key.condition not in keys:
            self.turn(keys, [keys], needs)

    def turn(self, keys: list[str], said: list[list[str]], needs: list[VehicleState]) -> None:
        """Turn the key to the first listed that no need excludes, best where all is done there."""
        free = [key for key in keys if not self.unwanted(VehicleState(key), needs)]
        most = max(sum(key in other for other in said) for key in free)
        key = next(key for key in free if sum(key in other for other in said) == most)
        for state in [w for w in reversed(self.order) if self.clash(w, VehicleState(key))]:
            self.take_out(state, needs)
        self.enter(VehicleState(key))


def every_state(kinds: Kinds) -> Iterator[VehicleState]:
    """Yield each state there can be, of two parts and two loads."""
    for name, kind in kinds.items():
        for part in PARTS if kind.takes else ("",):
            for value in LOADS if kind.takes is Takes.CURRENT else ("",):
                yield VehicleState(name, part, value)


def clash(kinds: Kinds, one: VehicleState, other: VehicleState) -> bool:
    """Whether two states exclude each other; of two that have a part, only at the same one."""
    listed = (
        other.condition in kinds[one.condition].excludes
        or one.condition in kinds[other.condition].excludes
    )
    both = bool(kinds[one.condition].takes) and bool(kinds[other.condition].takes)
    return listed and (one.part == other.part if both else True)


def normal_of(kinds: Kinds, state: VehicleState) -> VehicleState | None:
    """Return the normal state of a group."""
    group = kinds[state.condition].group
    for name, kind in kinds.items():
        if group and kind.group == group and kind.normal:
            return VehicleState(name, state.part)
    return None


def replaced(kinds: Kinds, world: World, state: VehicleState) -> VehicleState | None:
    """Return what holds in the place of a state."""
    own = kinds[state.condition]
    for one in world:
        kind = kinds[one.condition]
        of_group = own.group and kind.group == own.group
        load = own.takes is Takes.CURRENT and kind.takes is Takes.CURRENT
        if one.part == state.part and (of_group or load or one == state):
            return one
    return None


def is_sound(kinds: Kinds, world: World) -> bool:
    """Whether no two states that hold exclude each other."""
    return not any(clash(kinds, one, other) for one in world for other in world if one != other)


def after_move(kinds: Kinds, world: World, move: Move) -> World:
    """Return the world after one change."""
    left, entered = move
    return (*(one for one in world if one != left), *((entered,) if entered else ()))


def is_allowed(kinds: Kinds, world: World, move: Move) -> bool:
    """Whether one change may be made: the key is where it must be, and nothing is excluded."""
    key = next(one.condition for one in world if kinds[one.condition].group == "power")
    ends = [kinds[one.condition] for one in move if one]
    in_time = all(not kind.changed_with or key in kind.changed_with for kind in ends)
    return in_time and is_sound(kinds, after_move(kinds, world, move))


def moves_from(kinds: Kinds, world: World) -> Iterator[Move]:
    """Yield every single change that can be tried."""
    for state in every_state(kinds):
        if state in world and not kinds[state.condition].group:
            yield state, None
        elif state not in world:
            yield replaced(kinds, world, state), state


def can_get_there(kinds: Kinds, world: World, needs: Iterable[VehicleState]) -> bool:
    """Whether any order of allowed changes leads to a world in which the needs hold."""
    wanted = set(needs)
    seen, waiting = {frozenset(world)}, deque([world])
    while waiting:
        here = waiting.popleft()
        if wanted <= set(here):
            return True
        for move in moves_from(kinds, here):
            there = after_move(kinds, here, move)
            if frozenset(there) not in seen and is_allowed(kinds, here, move):
                seen.add(frozenset(there))
                waiting.append(there)
    return False
