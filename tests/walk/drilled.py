"""Every fix of every tree of a shop, walked to by a simulated vehicle.

In: the folder of a shop. Out: for each fix the state at the end of its walk, with what is needed to
read it.
"""

from dataclasses import dataclass
from functools import cache
from pathlib import Path
from random import Random

from builder.check.filled_tree import tree_of
from builder.check.unchecked_library import read_library
from builder.model.library import Library
from builder.model.tree import Tree
from builder.walk.compile_shop import walk_tables
from builder.walk.compile_tree import tree_table
from builder.walk.drill import auto_drill
from builder.walk.events import Start
from builder.walk.job_state import JobState
from builder.walk.practice import faults_of
from builder.walk.simulated_vehicle import SimulatedVehicle
from builder.walk.walk_tables import WalkTables


@dataclass(frozen=True)
class DrilledShop:
    """A shop, its trees by ID, and the tables of its walks."""

    folder: Path
    library: Library
    trees: dict[str, Tree]
    tables: WalkTables


@dataclass(frozen=True)
class DrilledFix:
    """A walk that ended at the fix that was hidden."""

    tree: Tree
    fix: str
    state: JobState


@cache
def drilled_shop(folder: Path) -> DrilledShop:
    """Read a shop."""
    library, _ = read_library(folder)
    trees = {id_: tree_of(folder, library, id_) for id_ in library.trees}
    tables = {id_: tree_table(tree, library) for id_, tree in trees.items()}
    return DrilledShop(folder, library, trees, walk_tables(library, tables))


@cache
def drilled_fixes(folder: Path) -> tuple[DrilledFix, ...]:
    """Walk to every fix that a walk of its own tree can end at."""
    trees = drilled_shop(folder).trees
    places = [(id_, fix) for id_, tree in trees.items() for fix in faults_of(tree)]
    return tuple(job for place in places if (job := drilled_fix(folder, *place)))


@cache
def drilled_fix(folder: Path, tree: str, fix: str) -> DrilledFix | None:
    """Walk to a fix; None where no walk ends there."""
    shop = drilled_shop(folder)
    vehicle = SimulatedVehicle(shop.tables, tree, fix, Random(3))
    of_shop = next(iter(shop.library.vehicles), "")
    start = Start(tree=tree, vehicle=of_shop, complaint="it does it again")
    state = auto_drill(shop.tables, vehicle, start)
    if not isinstance(state, JobState) or not vehicle.is_at_fault(state):
        return None
    return DrilledFix(shop.trees[tree], fix, state)
