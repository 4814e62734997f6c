"""A tree as everything behind the check gets it: read and filled in.

Filled in are its spec readings, the runs of its procedures, what is changed at the vehicle.

In: a shop's folder, the texts of its trees or trees read before, its library, an ID. Out: the
`Tree`.
"""

from collections.abc import Mapping
from pathlib import Path

from builder.check.packed_trees import PackedTrees, unpack_tree
from builder.graph.runs import procedure_named, with_runs
from builder.graph.spec_readings import with_specs
from builder.model.library import Library, NotThereError
from builder.model.tree import Tree
from builder.model.vehicle_data import Vehicle
from builder.plan.changeovers import with_changeovers
from builder.reader.source import Source, read_source
from builder.reader.trees import tree_from


def tree_of(shop: Path, library: Library, id_: str, vehicle: Vehicle | None = None) -> Tree:
    """Read one tree that the library lists, or return that of a procedure. Raises NotThereError.

    Its specs are those of the vehicle, if one is given.
    """
    listing = library.listings.get(id_)
    source = read_source(shop, shop / listing.file) if listing else None
    return _read(source if isinstance(source, Source) else None, library, id_, vehicle)


def kept_tree_of(shop: Path, packed: PackedTrees, library: Library, id_: str) -> Tree:
    """Do the same for any vehicle; a tree that the check has read isn't read again."""
    listing = library.listings.get(id_)
    kept = packed.get(listing.file) if listing else None
    return _filled(unpack_tree(kept), library) if kept else tree_of(shop, library, id_)


def saved_tree_of(texts: Mapping[str, Source], library: Library, id_: str) -> Tree:
    """Do the same for any vehicle with texts that have been read, by the names of their files."""
    listing = library.listings.get(id_)
    return _read(texts.get(listing.file) if listing else None, library, id_, None)


def _read(source: Source | None, library: Library, id_: str, vehicle: Vehicle | None) -> Tree:
    if procedure := procedure_named(library, id_):
        return with_specs(procedure.tree, library.specs, vehicle)
    tree = tree_from(source)[0] if source else None
    if tree is None:
        raise NotThereError(f"there is no tree `{id_}` in this shop that can be read")
    return _filled(tree, library, vehicle)


def _filled(tree: Tree, library: Library, vehicle: Vehicle | None = None) -> Tree:
    tree = with_runs(with_specs(tree, library.specs, vehicle), library.procedures)
    return with_changeovers(tree, library)
