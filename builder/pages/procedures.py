"""The procedures: a list of all, and the page of each.

In: the catalog of trees; a procedure and its analysis. Out: `Page`s. A procedure's steps and chart
look like those of a tree.
"""

from collections.abc import Iterable, Iterator

from builder.graph.runs import procedures_named
from builder.graph.spec_readings import with_specs
from builder.model.library import Library
from builder.model.procedures import Procedure
from builder.model.summary import TreeSummary
from builder.model.tree import Question, Status, ValueKind
from builder.pages import addresses
from builder.pages.analysis import TreeAnalysis
from builder.pages.branches import tree_context
from builder.pages.page import Page, TreePrint
from builder.pages.render import render
from builder.pages.step_facts import run_time
from builder.pages.tree import all_cautions, all_tools, print_links, step_cards, time_text
from builder.pages.tree_catalog import TreeCatalog
from builder.wording.placeholders import in_plain_words
from builder.wording.vehicle_words import part_name

KINDS = {
    ValueKind.PART: "a part",
    ValueKind.CURRENT: "a current",
    ValueKind.SPEC: "a spec",
    ValueKind.MODULE: "a module",
    ValueKind.TEXT: "a few words",
}


def procedures_page(catalog: TreeCatalog) -> Page:
    """Write the list of procedures."""
    procedures = catalog.library.procedures.values()
    rows = [
        (addresses.procedure_path(one.name), one, run_time(one.run) if one.run else "")
        for one in sorted(procedures, key=lambda one: one.tree.title.casefold())
    ]
    body = render("procedures.html", "procedures/index", rows=rows)
    return Page("procedures/index", "Procedures", body, summary="Tests that many trees share")


def procedure_page(
    procedure: Procedure,
    library: Library,
    analysis: TreeAnalysis,
    prints: Iterable[TreePrint] = (),
) -> Page:
    """Write the page of one procedure."""
    tree = in_plain_words(with_specs(procedure.tree, library.specs))
    path = addresses.page_of(tree)
    context = tree_context(tree, library, analysis.numbers)
    cards = tuple(step_cards(context, analysis))
    body = render(
        "procedure.html",
        path,
        procedure=procedure,
        tree=tree,
        chart=analysis.chart,
        cards=cards,
        hazards=all_cautions(context),
        tools=list(all_tools(tree, library)),
        takes=[_taken(one) for one in tree.asks],
        never_on=[part_name(one, library) for one in procedure.never_on],
        time=time_text(analysis),
        start=cards[0].step.id if cards else "",
        trees=trees_that_run(procedure, library),
        others=list(procedures_that_run(procedure, library)),
        prints=print_links(tree, prints),
    )
    return Page(path, str(tree.title), body, summary=f"Returns: {', '.join(procedure.returns)}")


def trees_that_run(procedure: Procedure, library: Library) -> list[TreeSummary]:
    """Return the trees that run a procedure, by title."""
    ids = [id_ for id_, one in library.listings.items() if procedure.name in one.procedures]
    trees = (library.trees[id_] for id_ in ids)
    live = (tree for tree in trees if tree.status is not Status.RETIRED)
    return sorted(live, key=lambda tree: (tree.title.casefold(), tree.id))


def procedures_that_run(procedure: Procedure, library: Library) -> Iterator[Procedure]:
    """Yield the other procedures that run one."""
    for other in library.procedures.values():
        if procedure.name in procedures_named(other.tree) and other is not procedure:
            yield other


def _taken(taken: Question) -> str:
    """Write what a procedure takes: `load: a current, 2 A if not given`."""
    otherwise = f", {taken.default} if not given" if taken.default is not None else ""
    return f"{taken.name}: {KINDS[taken.kind]}{otherwise}"
