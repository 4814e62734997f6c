"""Every kind of row beside a check, drawn in both styles, wide and narrow."""

from dataclasses import replace

from goldens import looks_as_it_did

from builder.chart.chart import Chart, Rect
from builder.chart.flow import Edge, Flow, Node
from builder.chart.flow_metrics import flow_metrics
from builder.chart.parts import Pen
from builder.chart.styles import STYLES, Style
from builder.chart.svg import svg
from builder.model.knowledge import Signal
from builder.plan.outline import ChainStep, OutlineBlock, OutlineSection, SideBranch

# Where each result leads, and its words.
WAYS = (
    ("next", "12.2 V or more"),
    ("fix", "no voltage"),
    ("warned", "below 9 V"),
    ("act", "9 to 12.2 V"),
    ("look", "can't test"),
    ("look", "voltage wanders, battery buzzes, housing swollen"),
    ("look", ""),
    ("tree", ""),
)


def every_row() -> Flow:
    """Write a check that leads to ends, over an action to an end, and back to itself."""
    ways = [Edge("look", to, words) for to, words in WAYS]
    ways[1] = replace(ways[1], change="was below 9 V")
    ways[2] = replace(ways[2], means="a cable is loose", change="NEW")
    edges = {
        "look": tuple(ways),
        "act": (Edge("act", "then", "once it is charged"),),
        "then": (Edge("then", "fix"),),
        "next": (),
        "fix": (),
        "warned": (),
        "tree": (),
    }
    told = ("still low: go to 2 or 3", "after 2 tries: go to the tree Lamp on")
    nodes = {
        "look": Node("look", "check", "Voltage at the battery", "1"),
        "next": Node("next", "stop", "Charges well", "2"),
        "fix": Node("fix", "fix", "Replace the battery", "3", led_to=True),
        "warned": Node(
            "warned", "fix", "Mend the cable", "4", caution=Signal.WARNING, hazards=("sparks",)
        ),
        "act": Node("act", "action", "Charge the battery", "5", notes=told),
        "then": Node(
            "then", "action", "Load it", "6", ways_on=("then go to 3",), change="CHANGED: minutes"
        ),
        "tree": Node("tree", "handoff", "Tree: Lamp on"),
    }
    nodes = {name: replace(node, href=f"#step-{name}") for name, node in nodes.items()}
    chain = (ChainStep(3, "act"), ChainStep(0, "then"), ChainStep(0, "fix"))
    chains = {1: (ChainStep(1, "fix"),), 2: (ChainStep(2, "warned"),), 3: chain,
              7: (ChainStep(7, "tree"),)}  # fmt: skip
    sides = tuple(SideBranch(at, chains.get(at, ())) for at in range(1, len(WAYS)))
    return Flow("Rows", nodes, edges, (OutlineSection((OutlineBlock("look", sides, 0),)),))


def drawn(style: Style, wider: int, *, cut: bool) -> str:
    """Draw the check and its rows alone."""
    flow = replace(every_row(), arrivals=frozenset({"act"}))
    metrics = flow_metrics(flow, sheets=True, elsewhere={("act", "2")})
    width = style.least(metrics) + wider
    (block,) = metrics.flow.sections[0].blocks
    pen = Pen(metrics, sheets={"next": 2}, numbers={"2": 2}, tops=frozenset({"then"}))
    made = style.size(metrics, block, width)
    parts = tuple(style.draw(pen, block, made, Rect(2, 2, width, 0), cut))
    high = made.body + (made.cut if cut else made.tail)
    return svg(Chart("Rows", "Every row.", width + 4, high + 4, 1, parts))


def test_every_kind_of_row_looks_as_it_did() -> None:
    """Words behind, above and inside; at the foot of a column and within it."""
    ways = [(style, wider, cut) for style in STYLES for wider in (0, 90) for cut in (False, True)]
    looks_as_it_did("".join(drawn(style, wider, cut=cut) for style, wider, cut in ways), "rows")
