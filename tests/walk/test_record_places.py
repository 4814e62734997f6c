"""Where something was done is in the record by its tree and its step, whatever they are called."""

import shutil
from pathlib import Path
from random import Random

from builder.walk.drill import auto_drill
from builder.walk.events import Start
from builder.walk.job_state import JobState
from builder.walk.record import record_of
from builder.walk.simulated_vehicle import SimulatedVehicle
from tests.walk.conftest import SHOP, tables_of

NAME = "charging/battery-lamp#2"  # the check refuses it; a walk may be older than the rename


def test_a_number_sign_in_the_name_of_a_tree_is_part_of_the_name(tmp_path: Path) -> None:
    """The hazards that were acknowledged have this tree and the step of it."""
    shop = Path(shutil.copytree(SHOP, tmp_path / "shop"))
    shutil.copy(shop / "trees/charging/battery-lamp.yml", shop / f"trees/{NAME}.yml")
    tables = tables_of(shop)
    steps = tables.trees[NAME]["steps"]
    fix = next(id_ for id_, row in steps.items() if row["kind"] == "fix")
    state = auto_drill(tables, SimulatedVehicle(tables, NAME, fix, Random(1)), Start(tree=NAME))
    assert isinstance(state, JobState)
    places = [(row["in"], row["step"]) for row in record_of(state)["hazards"]]
    assert places
    assert all(inside == NAME and step in steps for inside, step in places)
