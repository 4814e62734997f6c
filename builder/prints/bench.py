"""The bench sheet: every step in a list, with blanks for the readings and boxes to tick.

In: a tree, the library, a paper. Out: the bytes of a PDF.
"""

from collections.abc import Iterator, Mapping

from reportlab.lib.colors import HexColor
from reportlab.platypus import Flowable, Paragraph, Table

from builder.chart.flow import Flow, Node, flow_of
from builder.chart.results import tied
from builder.model.library import Library
from builder.model.tree import Check, Fix, Step, Tree
from builder.prints.drawing import INK, QUIET
from builder.prints.flowing import blanks, cautions, document, heading, quiet, style, words
from builder.prints.head import head_of
from builder.prints.paper import PAPERS, Paper
from builder.prints.sheet import Foot, foot_lines, page_address
from builder.trade.units import unit

JOB = ("Order number", "Vehicle number", "Odometer", "Date", "Name", "")
LINE = "_" * 9  # a place for a reading
ZEBRA = HexColor("#f3f4f6")


def bench_sheet(tree: Tree, library: Library, paper: str = "") -> bytes:
    """Print a tree as a list to work through and write on; without a paper, on the shop's."""
    sheet = PAPERS[paper or library.shop.paper]
    foot = Foot(str(tree.title), foot_lines(tree, library), page_address(tree, library))
    return document(
        sheet,
        f"{tree.title}: bench sheet",
        f"Bench sheet of {tree.id}, {tree.revision}",
        lambda: _story(tree, library, sheet),
        foot,
    )


def _story(tree: Tree, library: Library, paper: Paper) -> list[Flowable]:
    flow = flow_of(tree, library)
    numbers = {name: int(node.number) for name, node in flow.nodes.items() if node.number}
    head = head_of(tree, library, numbers)
    met = [(str(signal), text) for signal, text in head.cautions]
    asked = [f"{asks.ask}" for asks in tree.asks]
    return [
        words(str(tree.title), style(18, heavy=True, below=2)),
        *(quiet(text) for text in head.particulars[1:]),
        blanks([*JOB[:5], *(asked or JOB[5:])], paper),
        heading("Cautions" if met else "Steps"),
        *cautions(met, paper),
        *([heading("Steps")] if met else []),
        _table(tree, flow, numbers, paper),
    ]


def _table(tree: Tree, flow: Flow, numbers: Mapping[str, int], paper: Paper) -> Table:
    rows: list[list[object]] = [[words(text, style(heavy=True)) for text in
                                 ("", "", "Step", "Reading, result, what next")]]  # fmt: skip
    for name in sorted(numbers, key=lambda name: numbers[name]):
        step, node = tree.steps[name], flow.nodes[name]
        rows.append([
            words("☐", style(14)),
            words(node.number, style(12, heavy=True)),
            list(_step_words(step, node)),
            list(_answers(step, flow, node)),
        ])  # fmt: skip
    rest = paper.inner_width - 48
    made = Table(rows, colWidths=[20, 28, 0.46 * rest, 0.54 * rest], repeatRows=1, splitInRow=1)
    made.setStyle([
        ("VALIGN", (0, 0), (-1, -1), "TOP"),
        ("LINEBELOW", (0, 0), (-1, -1), 0.6, INK),
        ("LEFTPADDING", (0, 0), (-1, -1), 3),
        ("RIGHTPADDING", (0, 0), (-1, -1), 3),
        ("TOPPADDING", (0, 0), (-1, -1), 3),
        ("BOTTOMPADDING", (0, 0), (-1, -1), 5),
        ("BACKGROUND", (0, 0), (-1, 0), ZEBRA),
    ])  # fmt: skip
    return made


def _step_words(step: Step, node: Node) -> Iterator[Paragraph]:
    if node.caution:
        sign = node.caution if node.caution == "NOTICE" else f"⚠ {node.caution}"
        yield words(sign, style(heavy=True))
    fix = "Fix: " if isinstance(step.body, Fix) else ""
    yield words(fix + node.text, style(11, heavy=bool(fix)))
    if node.when:
        yield quiet(f"when {node.when}")
    if step.note:
        yield quiet(tied(step.note))
    told = [
        node.minutes,
        f"wait {step.wait} min" if step.wait else "",
        f"{step.people} people" if step.people else "",
        ", ".join(step.tools),
    ]
    if any(told):
        yield quiet("; ".join(filter(None, told)))
    if isinstance(step.body, Fix) and step.body.cause:
        yield quiet(f"Cause: {step.body.cause}")


def _answers(step: Step, flow: Flow, node: Node) -> Iterator[Paragraph]:
    if isinstance(step.body, Check):
        yield from _places(step.body)
    for edge in flow.edges.get(str(step.id), ()):
        target = flow.nodes[edge.target]
        means = f" ({edge.means})" if edge.means else ""
        goes = f"go to {target.number}" if target.number else target.text
        yield words(f"☐ {edge.label}{means} → {goes}" if edge.label else f"→ {goes}")
    for note in node.notes:
        yield quiet(note)
    for item in step.write_down:
        yield words(f"{item}: {LINE * 2}")
    if isinstance(step.body, Fix):
        for item in step.body.verify:
            yield words(f"☐ Verified: {item}")
    if step.put_back:
        yield words(f"☐ Before the end: {step.put_back}")


def _places(check: Check) -> Iterator[Paragraph]:
    """Yield a place to write for each reading, and for the maker's figure."""
    if check.figure:
        yield words(f"Maker's figure, {check.figure.look_up}: {LINE} {_sign(check.figure.unit)}")
        yield words("Found in: " + LINE * 2, style(ink=QUIET))
        yield words(f"Reading: {LINE} {_sign(check.figure.unit)}")
    for reading in check.readings:
        name = f"{reading.name}: " if reading.name else "Reading: "
        of = f" ({', '.join(reading.one_of)})" if reading.one_of else f" {_sign(reading.unit)}"
        yield words(f"{name}{LINE}{of}")
    for computed in check.computed:
        yield words(f"{computed.name} = {computed.expression}: {LINE}")


def _sign(symbol: str) -> str:
    known = unit(symbol)
    return known.sign if known else symbol
