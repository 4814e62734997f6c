"""What each procedure of a shop does and takes, computed once for all trees that run it.

In: a library as it was read. Out: the library with the `run` of every procedure. Procedures that
others run come first; one that runs itself has none, which a rule reports.
"""

from collections.abc import Iterator
from dataclasses import replace

import networkx as nx

from builder.graph.procedure_deeds import run_with_deeds
from builder.graph.runs import procedure_of, with_runs
from builder.model.library import Library
from builder.model.procedures import Procedure, Procedures
from builder.plan.changeovers import with_changeovers
from builder.plan.word_figures import with_figures


def with_procedure_runs(library: Library) -> Library:
    """Return the library with the runs of its procedures."""
    done: dict[str, Procedure] = dict(library.procedures)
    for name in _inner_first(library.procedures):
        procedure = done[name]
        tree = with_changeovers(with_runs(procedure.tree, done), replace(library, procedures=done))
        run = with_figures(tree, run_with_deeds(tree, map(str, procedure.returns)))
        done[name] = replace(procedure, tree=tree, run=run)
    return replace(library, procedures=done)


def _inner_first(procedures: Procedures) -> Iterator[str]:
    """Yield the procedures that don't run themselves, each after those that it runs."""
    digraph: nx.DiGraph[str] = nx.DiGraph()
    digraph.add_nodes_from(procedures)
    for name, procedure in procedures.items():
        inner = (procedure_of(step, procedures) for step in procedure.tree.steps.values())
        digraph.add_edges_from((one.name, name) for one in inner if one)
    groups = nx.condensation(digraph)
    for group in nx.topological_sort(groups):
        (first, *others) = groups.nodes[group]["members"]
        if not others and not digraph.has_edge(first, first):
            yield first
