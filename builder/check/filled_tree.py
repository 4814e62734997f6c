"""A tree as everything behind the check gets it: read and filled in.

Filled in are its spec readings, the runs of its procedures, what is changed at the vehicle.

In: a shop's folder, its library, an ID. Out: the `Tree`.
"""

from pathlib import Path

from builder.graph.runs import procedure_named, with_runs
from builder.graph.spec_readings import with_specs
from builder.model.library import Library, NotThereError
from builder.model.tree import Tree
from builder.model.vehicle_data import Vehicle
from builder.plan.changeovers import with_changeovers
from builder.reader.trees import read_tree


def tree_of(shop: Path, library: Library, id_: str, vehicle: Vehicle | None = None) -> Tree:
    """Read one tree that the library lists, or return that of a procedure. Raises NotThereError.

    Its specs are those of the vehicle, if one is given.
    """
    if procedure := procedure_named(library, id_):
        return with_specs(procedure.tree, library.specs, vehicle)
    listing = library.listings.get(id_)
    tree = read_tree(shop, shop / listing.file)[0] if listing else None
    if tree is None:
        raise NotThereError(f"there is no tree `{id_}` in {shop / 'trees'}")
    tree = with_runs(with_specs(tree, library.specs, vehicle), library.procedures)
    return with_changeovers(tree, library)
