"""The bench sheet: every step in a list, with blanks for the readings and boxes to tick.

In: a tree, the library, a paper. Out: the bytes of a PDF.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from reportlab.lib.colors import HexColor
from reportlab.platypus import CondPageBreak, Flowable, Paragraph, Table
from reportlab.platypus.doctemplate import LayoutError

from builder.chart.flow import Flow, Node, flow_of
from builder.graph.runs import procedures_of
from builder.graph.spec_readings import with_specs
from builder.model.ends import Fix
from builder.model.library import Library
from builder.model.tree import Step, Tree
from builder.prints.bench_blanks import on_one_line, step_blanks
from builder.prints.bench_order import BenchPart, bench_parts
from builder.prints.document import (
    DocumentNames,
    blank_table,
    caution_table,
    document,
    heading,
    paragraph,
    paragraph_style,
    quiet_paragraph,
)
from builder.prints.drawing import INK
from builder.prints.head import head_of, signal_words
from builder.prints.paper import PAPERS, Paper
from builder.prints.sheet import Foot, foot_lines, page_address
from builder.wording.labels import STEP_LABELS
from builder.wording.placeholders import in_plain_words
from builder.wording.results import tied
from builder.wording.sentences import requirement_text
from builder.wording.vehicle_words import where_text

JOB = ("Order number", "Vehicle number", "Odometer", "Date", "Name", "")
FIRST_STEP = 130  # points: room for the heading of the steps and the first of them
ZEBRA = HexColor("#f3f4f6")


@dataclass(frozen=True, slots=True)
class Listed:
    """A tree or a procedure as the sheet lists it."""

    tree: Tree
    flow: Flow
    library: Library


def bench_sheet(tree: Tree, library: Library, paper: str = "") -> bytes:
    """Print a tree as a list to work through and write on; without a paper, on the shop's."""
    tree = in_plain_words(tree)
    sheet = PAPERS[paper or library.shop.paper]
    try:
        return _printed(tree, library, sheet, split=False)
    except LayoutError:  # a step that is longer than a page
        return _printed(tree, library, sheet, split=True)


def _printed(tree: Tree, library: Library, paper: Paper, split: bool) -> bytes:
    return document(
        paper,
        DocumentNames(f"{tree.title}: bench sheet", f"Bench sheet of {tree.id}, {tree.revision}"),
        lambda: _story(tree, library, paper, split),
        Foot(str(tree.title), foot_lines(tree, library), page_address(tree, library)),
    )


def _story(tree: Tree, library: Library, paper: Paper, split: bool) -> list[Flowable]:
    flow = flow_of(tree, library)
    head = head_of(tree, library, flow.numbers)
    met = head.cautions
    asked = [f"{asks.ask}" for asks in tree.asks]
    return [
        paragraph(str(tree.title), paragraph_style(18, heavy=True, below=2)),
        *(quiet_paragraph(text) for text in head.particulars[1:]),
        blank_table([*JOB[:5], *(asked or JOB[5:])], paper),
        *([heading("Cautions"), *caution_table(met, paper)] if met else []),
        *_parts(Listed(tree, flow, library), paper, split),
        *_procedures(tree, library, paper, split),
    ]


def _parts(listed: Listed, paper: Paper, split: bool) -> Iterator[Flowable]:
    """Yield the way most jobs take, then what branches off it, section by section."""
    for part in bench_parts(listed.flow):
        yield CondPageBreak(FIRST_STEP)
        yield heading(part.title)
        yield _table(list(_rows(listed, part)), paper, split)


def _procedures(tree: Tree, library: Library, paper: Paper, split: bool) -> Iterator[Flowable]:
    """Yield the steps of each procedure that the tree runs, once; their numbers are their own."""
    steps = tree.steps.values()
    run = {one.name: one for step in steps for one in procedures_of(step, library.procedures)}
    for procedure in run.values():
        body = in_plain_words(with_specs(procedure.tree, library.specs))
        flow = flow_of(body, library)
        yield CondPageBreak(FIRST_STEP)
        yield heading(f"Procedure {procedure.name.replace('-', ' ')}: {body.title}")
        if procedure.note:
            yield quiet_paragraph(str(procedure.note))
        every = BenchPart("", tuple(sorted(flow.numbers, key=flow.numbers.__getitem__)))
        yield _table(list(_rows(Listed(body, flow, library), every)), paper, split)


def _rows(listed: Listed, part: BenchPart) -> Iterator[list[object]]:
    yield [
        paragraph(text, paragraph_style(heavy=True))
        for text in ("", "", "Step", "Reading, result, what next")
    ]
    tree, library, numbers = listed.tree, listed.library, listed.flow.numbers
    for name in part.steps:
        step, node = tree.steps[name], listed.flow.nodes[name]
        yield [
            paragraph("☐", paragraph_style(14)),
            paragraph(node.number, paragraph_style(12, heavy=True)),
            [*_step_words(step, node, library), *_beside(tree, step, numbers, library)],
            list(step_blanks(step, listed.flow, node)),
        ]


def _table(rows: list[list[object]], paper: Paper, split: bool) -> Table:
    rest = paper.inner_width - 52
    widths = [22, 30, 0.46 * rest, 0.54 * rest]
    made = Table(rows, colWidths=widths, repeatRows=1, splitInRow=int(split))
    made.setStyle([
        ("VALIGN", (0, 0), (-1, -1), "TOP"),
        ("LINEBELOW", (0, 0), (-1, -1), 0.6, INK),
        ("LEFTPADDING", (0, 0), (-1, -1), 3),
        ("RIGHTPADDING", (0, 0), (-1, -1), 8),
        ("TOPPADDING", (0, 0), (-1, -1), 3),
        ("BOTTOMPADDING", (0, 0), (-1, -1), 5),
        ("BACKGROUND", (0, 0), (-1, 0), ZEBRA),
    ])  # fmt: skip
    return made


def _tool(name: str, library: Library) -> str:
    known = library.tools.get(name)
    words = str(known.name) if known else name
    return words if words[1:2].isupper() else words[:1].lower() + words[1:]


def _step_words(step: Step, node: Node, library: Library) -> Iterator[Paragraph]:
    if node.caution:
        yield paragraph(
            f"{signal_words(node.caution)}: {', '.join(node.hazards)}", paragraph_style(heavy=True)
        )
    kind = f"{STEP_LABELS[node.kind]}: " if node.kind in ("fix", "stop") else ""
    yield paragraph(kind + node.text, paragraph_style(11, heavy=bool(kind)))
    if node.when:
        yield quiet_paragraph(f"when {', '.join(node.when)}")
    if step.where:
        for line in f"at: {where_text(step.where, library)}".split("; "):
            yield quiet_paragraph(line)
    for line in step.do:
        yield paragraph(f"☐ {tied(line)}")
    if step.note:
        yield quiet_paragraph(tied(step.note))
    told = [
        *node.facts,
        node.work,
        f"{step.people} people" if step.people else "",
        ", ".join(_tool(tool, library) for tool in step.tools),
    ]
    if any(told):
        yield quiet_paragraph("; ".join(filter(None, told)))
    if isinstance(step.body, Fix) and step.body.cause:
        yield quiet_paragraph(f"Cause: {step.body.cause}")


def _beside(
    tree: Tree, step: Step, numbers: Mapping[str, int], library: Library
) -> Iterator[Paragraph]:
    """Yield what a step leans on: another step, what comes first, the list it is done for."""
    if step.same_as in numbers:
        yield quiet_paragraph(f"done as in step {numbers[str(step.same_as)]}")
    if step.after:
        first = (f"step {numbers[one]}" if one in numbers else requirement_text(one)
                 for one in map(str, step.after))  # fmt: skip
        yield quiet_paragraph(f"only after {', '.join(first)}")
    if step.each:
        item, listed = step.each
        for of, items in _lists(tree, str(listed), library):
            ticks = " ".join(on_one_line(f"☐ {one}") for one in items)
            yield paragraph(f"For each {item}{of}: {ticks}")


def _lists(tree: Tree, name: str, library: Library) -> Iterator[tuple[str, Sequence[str]]]:
    """Yield a list by its name: the tree's own, or that of each vehicle that it is for."""
    if name in tree.lists:
        yield "", tree.lists[name]
        return
    named = {(scope.make, scope.model) for scope in tree.applies_to}
    for vehicle in library.vehicles.values():
        scope = vehicle.scope
        if name in vehicle.lists and (not named or (scope.make, scope.model) in named):
            yield f", {scope.make} {scope.model}", vehicle.lists[name]
