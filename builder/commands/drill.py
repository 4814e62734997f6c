"""`baytree drill`: practice a tree on a simulated vehicle."""

import argparse
import sys
from functools import partial
from random import Random

from builder.commands.place import shop_of
from builder.commands.tree_names import tree_in_shop
from builder.commands.walk import CAUTION, at_terminal
from builder.walk.events import Start
from builder.walk.job_state import Refused
from builder.walk.simulated_vehicle import SimulatedVehicle

NAME = "drill"
HELP = "practice a tree on a simulated vehicle"
HOW = "Type `look` to see what the vehicle shows, then answer. `quit` ends the drill."


def add_flags(parser: argparse.ArgumentParser) -> None:
    """Add the flags."""
    parser.add_argument("tree", metavar="TREE", help="tree ID")
    parser.add_argument("--fault", metavar="ID", help="fix that is hidden (default: by weight)")
    parser.add_argument("--seed", metavar="N", type=int, help="number to get the same drill again")
    parser.add_argument("--auto", action="store_true", help="let the program answer")


def run(options: argparse.Namespace) -> int:
    """Drill, and say whether the walk ended at the hidden fault: 0 if it did, else 1."""
    from builder.commands.shop_tables import tables_of_shop
    from builder.walk.drill import auto_drill
    from builder.walk.practice import drawn_fault, faults_of, missed_steps, what_is_seen
    from builder.walk.record import record_of
    from builder.walk.screen_text import record_lines

    shop = shop_of(options)
    options.tree = tree_in_shop(options.tree, shop)
    tables, trees = tables_of_shop(shop, options.tree)
    random = Random(options.seed)
    faults = faults_of(trees.tree(options.tree))
    if not faults:
        print(f"baytree: `{options.tree}` has no fix to practice", file=sys.stderr)
        return 2
    if options.fault and options.fault not in faults:
        names = ", ".join(faults)
        print(f"baytree: `{options.tree}` has no fix `{options.fault}`: {names}", file=sys.stderr)
        return 2
    fault = options.fault or drawn_fault(faults, random)
    vehicle = SimulatedVehicle(tables, options.tree, fault, random)
    start = Start(tree=options.tree)
    if options.auto:
        state = auto_drill(tables, vehicle, start)
    else:
        print(CAUTION, HOW, sep="\n", file=sys.stderr)
        state = at_terminal(tables, start, partial(what_is_seen, tables, vehicle))
    if isinstance(state, Refused):
        print(f"baytree: {options.tree}: {state.message}", file=sys.stderr)
        return 2
    print(*record_lines(record_of(state), tables.shop["parts"]), sep="\n")
    if vehicle.is_at_fault(state):
        print(f"Right: the fault was `{fault}`.")
        return 0
    print(f"The fault was `{fault}`; the walk ended at "
          f"`{state.end.step if state.end else 'no end'}`.")  # fmt: skip
    print(*missed_steps(vehicle, state), sep="\n")
    return 1
