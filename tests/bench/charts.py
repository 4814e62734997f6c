"""How large the text of a chart is on one sheet, against Graphviz dot with the same texts.

In: three sets of 30 seeded graphs. Out: a table for Letter (upright) and Tabloid (lying), margins
of half an inch; the text sizes are read from the PDFs. Both get the same broken lines in the same
boxes; dot has its customary gaps (14 points between boxes, 28 between ranks) and draws merged fixes
once, ours where they would take much room. Then what a layout and the sheets of the
demo cost in processor time, in runs of dot. Run by hand: `python tests/bench/charts.py` (needs
Graphviz; three minutes; `--time` for the costs alone).
"""

import resource
import subprocess
import sys
from collections.abc import Callable, Sequence
from functools import partial
from io import BytesIO
from pathlib import Path
from statistics import median
from time import process_time

from chart_graphs import Graph, graphs, make
from pypdf import PdfReader

ROOT = Path(__file__).parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests" / "chart")]

from faults import NONE, faults  # noqa: E402

from builder.chart.chart import Box, Chart, Label, Polyline, Rect  # noqa: E402
from builder.chart.flow import Edge, Flow, Node, nodes_reached_by_number  # noqa: E402
from builder.chart.flow_metrics import FlowMetrics, flow_metrics  # noqa: E402
from builder.chart.layout import one_sheet  # noqa: E402
from builder.chart.parts import Pen, box_part, label_part  # noqa: E402
from builder.chart.text_block import _text_block  # noqa: E402
from builder.chart.text_fit import Room  # noqa: E402
from builder.check.unchecked_library import read_library  # noqa: E402
from builder.plan.outline import OutlineEdge, StepGraph, outline, reading_order  # noqa: E402
from builder.prints.bench import bench_sheet  # noqa: E402
from builder.prints.drawing import draw_chart  # noqa: E402
from builder.prints.paper import MARGIN  # noqa: E402
from builder.prints.sheet import new_canvas  # noqa: E402
from builder.prints.wall import wall_chart  # noqa: E402
from builder.reader.trees import read_tree, tree_files  # noqa: E402

SETS = (1000, 2000, 3000)  # the first is the set that the layout was made on, the others are fresh
SHEETS = {"Letter": (612.0, 792.0), "Tabloid": (1224.0, 792.0)}
USUAL = 180.0  # points: width of dot's boxes
WIDTHS = (100.0, 110.0, 120.0, 130.0, 150.0, 165.0, USUAL, 200.0, 220.0)
Matrix = Sequence[float]
TIMES = 9  # runs of which the fastest counts


def flow_of(graph: Graph) -> Flow:
    """Make a flow of a graph, its steps numbered in reading order."""
    leads: dict[str, list[OutlineEdge]] = {str(at): [] for at in range(len(graph.nodes))}
    edges: dict[str, tuple[Edge, ...]] = dict.fromkeys(leads, ())
    for source, target, label in graph.edges:
        leads[str(source)].append(OutlineEdge(str(target)))
        edges[str(source)] += (Edge(str(source), str(target), label),)
    kinds = {str(at): "start" if kind == "symptom" else kind
             for at, (kind, _) in enumerate(graph.nodes)}  # fmt: skip
    of_kind = {kind: {node for node in kinds if kinds[node] == kind} for kind in kinds.values()}
    sections = outline(StepGraph("0", leads, of_kind["fix"], of_kind["check"]))
    numbers: dict[str, str] = {"0": ""}
    for node in reading_order(sections):
        numbers.setdefault(node, str(len(numbers)))
    nodes = {node: Node(node, kinds[node], graph.nodes[int(node)][1], numbers[node])
             for node in kinds}  # fmt: skip
    return Flow("graph", nodes, edges, sections, nodes_reached_by_number(edges, sections))


def dot_input(flow: Flow, measured: FlowMetrics, width: float) -> str:
    """Write a flow for dot: boxes and labels of the size that our words take."""
    lines = ["digraph {", 'nodesep="0.19444"; ranksep="0.38889";', 'node [shape=box, label=""];']
    for node in flow.nodes:
        high = measured.box_height(node, width)
        lines.append(f"{node} [fixedsize=true, width={width / 72:.4f}, height={high / 72:.4f}];")
    for source, edges in flow.edges.items():
        for lead, edge in enumerate(edges):
            label = label_part(measured.labels[source][lead], width, 0, 0)
            table = ""
            if label:
                table = (
                    '[label=<<table border="0" cellborder="0" cellspacing="0" cellpadding="0" '
                    f'fixedsize="true" width="{label.rect.width + 4:.0f}" '
                    f'height="{label.rect.height:.0f}"><tr><td></td></tr></table>>]'
                )
            lines.append(f"{source} -> {edge.target} {table};")
    return "\n".join([*lines, "}"])


def dot(text: str) -> str:
    """Run dot."""
    run = subprocess.run(["dot", "-Tplain"], input=text, capture_output=True, text=True, check=True)
    return run.stdout


def dot_chart(flow: Flow, measured: FlowMetrics, width: float) -> Chart:
    """Lay a flow out with dot, and put our boxes and words where it says."""
    parts: list[Box | Polyline | Label] = []
    wide = high = 0.0
    pen = Pen(measured)
    for line in dot(dot_input(flow, measured, width)).splitlines():
        word, *rest = line.split()
        if word == "graph":
            wide, high = float(rest[1]) * 72, float(rest[2]) * 72
        elif word == "node":
            x, y, w, h = (float(value) * 72 for value in rest[1:5])
            parts.append(box_part(pen, rest[0], Rect(x - w / 2, high - y - h / 2, w, h)))
        elif word == "edge":
            source = rest[0]
            lead = [edge.target for edge in flow.edges[source]].index(rest[1])
            count = int(rest[2])
            points = [(float(x) * 72, high - float(y) * 72)
                      for x, y in zip(rest[3 : 3 + 2 * count : 2], rest[4 : 4 + 2 * count : 2],
                                      strict=True)]  # fmt: skip
            parts.append(Polyline(tuple(points), True))
            label = label_part(measured.labels[source][lead], width, 0, 0)
            if label:
                x, y = (float(value) * 72 for value in rest[4 + 2 * count : 6 + 2 * count])
                corner = x - label.rect.width / 2, high - y - label.rect.height / 2
                parts.append(label_part(measured.labels[source][lead], width, *corner) or label)
    return Chart("dot", "", wide, high, 1, tuple(parts))


def on_sheet(chart: Chart, sheet: tuple[float, float]) -> bytes:
    """Print a chart on one sheet, as large as it can be."""
    room = sheet[0] - 2 * MARGIN, sheet[1] - 2 * MARGIN
    scale = min(room[0] / chart.width, room[1] / chart.height)
    canvas, buffer = new_canvas("chart", "")
    canvas.setPageSize(sheet)
    canvas.translate(MARGIN, sheet[1] - MARGIN)
    draw_chart(canvas, Chart("", "", chart.width, chart.height, scale, chart.parts))
    canvas.showPage()
    canvas.save()
    return buffer.getvalue()


def text_size(pdf: bytes) -> float:
    """Read from a PDF the size of its largest text, that of the words in the boxes."""
    sizes = []

    def visit(text: str, outer: Matrix, inner: Matrix, _font: object, size: float) -> None:
        if text.strip():
            sizes.append(size * abs(inner[3] * outer[3]))

    PdfReader(BytesIO(pdf)).pages[0].extract_text(visitor_text=visit)
    return max(sizes)


def ceiling(flow: Flow, measured: FlowMetrics, room: tuple[float, float]) -> float:
    """Text size if the boxes were packed without a gap, at the best of many widths."""

    def area(width: float) -> float:
        return sum(width * measured.box_height(node, width) for node in flow.nodes)

    return 10 * max((room[0] * room[1] / area(width)) ** 0.5 for width in range(90, 400, 5))


def measure(flows: list[Flow], name: str, sheet: tuple[float, float]) -> None:
    """Print the figures of one set on one kind of sheet."""
    room = sheet[0] - 2 * MARGIN, sheet[1] - 2 * MARGIN
    stocks = [flow_metrics(flow) for flow in flows]
    dots = {
        width: [text_size(on_sheet(dot_chart(f, s, width), sheet))
                for f, s in zip(flows, stocks, strict=True)]
        for width in WIDTHS
    }  # fmt: skip
    usual, free = dots[USUAL], [max(each) for each in zip(*dots.values(), strict=True)]
    packed = [ceiling(f, s, room) for f, s in zip(flows, stocks, strict=True)]
    print(f"  {name}: dot at {USUAL:.0f} pt {median(usual):.2f} (least {min(usual):.2f}), "
          f"with any width {median(free):.2f} (least {min(free):.2f}); "
          f"boxes without gaps {median(packed):.1f}")  # fmt: skip
    for style in ("under", "right", ""):
        charts = [one_sheet(flow, Room(*room, room[1]), style) for flow in flows]
        sizes = [text_size(on_sheet(chart, sheet)) for chart in charts]
        print(f"    {style or 'chosen':7} {median(sizes):5.2f} (least {min(sizes):.2f})",
              ratios(sizes, usual), "of dot at 180,", ratios(sizes, free), "of dot at any width,",
              f"{median(a / b for a, b in zip(sizes, packed, strict=True)):.2f} of the packing;",
              sum(map(faults, charts), NONE))  # fmt: skip


def ratios(ours: list[float], theirs: list[float]) -> str:
    """Write the median and the least of the ratios."""
    each = [a / b for a, b in zip(ours, theirs, strict=True)]
    return f"{median(each):.2f} (least {min(each):.2f})"


def processor_seconds(work: Callable[[], object], times: int = TIMES) -> float:
    """Return the seconds that a processor works, in this process and in those it starts.

    Of several runs the fastest counts: other work on the machine only ever makes one slower.
    """
    runs = []
    for _ in range(times):
        _text_block.cache_clear()  # no run may use what the one before has measured
        before = process_time() + children_seconds()
        work()
        runs.append(process_time() + children_seconds() - before)
    return min(runs)


def children_seconds() -> float:
    """Return the processor seconds of all processes that have been started and are done."""
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


def run_of_dot(size: int) -> tuple[Flow, float]:
    """Return a graph and the processor seconds of one run of dot on it."""
    flow = flow_of(make(5000 + size, size))
    text = dot_input(flow, flow_metrics(flow), USUAL)
    return flow, processor_seconds(lambda: dot(text))


def speed(size: int, most: float) -> None:
    """Print how long a layout takes, in runs of dot."""
    flow, theirs = run_of_dot(size)
    room = Room(1152, 720, 720)
    ours = processor_seconds(lambda: one_sheet(flow, room))
    print(f"{len(flow.nodes)} nodes: one layout {ours * 1000:.0f} ms, one run of dot "
          f"{theirs * 1000:.0f} ms, ratio {ours / theirs:.2f} (at most {most:g})")  # fmt: skip


def sheets(most: float) -> None:
    """Print what the sheets of the demo cost, in runs of dot on a graph of 79 nodes."""
    library = read_library(ROOT)[0]
    trees = [tree for file in tree_files(ROOT) if (tree := read_tree(ROOT, file)[0])]
    _, theirs = run_of_dot(80)
    for name, printed in (("wall charts", wall_chart), ("bench sheets", bench_sheet)):
        costs = {}
        for tree in trees:
            costs[tree.id] = processor_seconds(partial(printed, tree, library), 4) / theirs
        dearest = max(costs, key=lambda id_: costs[id_])
        print(f"{name} of the demo: median {median(costs.values()):.1f} runs of dot on 79 nodes, "
              f"{costs[dearest]:.1f} for {dearest} (at most {most:g})")  # fmt: skip


def main() -> None:
    """Print everything, or with `--time` only what it costs."""
    for first in SETS if "--time" not in sys.argv else ():
        print(f"graphs from seed {first}")
        flows = [flow_of(graph) for graph in graphs(first)]
        for name, sheet in SHEETS.items():
            measure(flows, name, sheet)
    speed(80, 1)
    speed(500, 3)
    sheets(8)


if __name__ == "__main__":
    main()
