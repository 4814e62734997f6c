"""Flows of any form, drawn at random for properties of charts; and checks in a row."""

from hypothesis import strategies as st

from builder.chart.flow import Edge, Flow, Node, nodes_reached_by_number
from builder.plan.outline import OutlineEdge, StepGraph, outline, reading_order

SAID = "measure the voltage across battery posts 12.2 and an".split()  # noqa: SIM905
WORDS = st.lists(st.sampled_from(SAID), min_size=1, max_size=14).map(" ".join)


@st.composite
def flows(draw: st.DrawFn) -> Flow:
    """Draw a flow of any form: ways back, merged checks, chains of actions, long words."""
    count = draw(st.integers(1, 14))
    kinds = [
        draw(st.sampled_from(("check", "check", "action", "fix", "stop"))) for _ in range(count)
    ]
    names = [str(number) for number in range(count)]
    edges = {
        name: tuple(
            Edge(name, target, draw(WORDS) if kind == "check" else "")
            for target in draw(
                st.lists(st.sampled_from(names), max_size=5 if kind == "check" else 1)
            )
        )
        if kind in ("check", "action")
        else ()
        for name, kind in zip(names, kinds, strict=True)
    }
    leads = {name: [OutlineEdge(edge.target) for edge in out] for name, out in edges.items()}
    ends = frozenset(name for name, out in edges.items() if not out)
    checks = frozenset(name for name, kind in zip(names, kinds, strict=True) if kind == "check")
    sections = outline(StepGraph("0", leads, ends, checks))
    numbers = {name: str(at) for at, name in enumerate(dict.fromkeys(reading_order(sections)), 1)}
    nodes = {
        name: Node(name, kind, draw(WORDS), numbers[name], when=draw(st.just("") | WORDS))
        for name, kind in zip(names, kinds, strict=True)
    }
    return Flow("drawn", nodes, edges, sections, nodes_reached_by_number(edges, sections))


def in_a_row(*fixes: int) -> Flow:
    """Make checks that each have so many fixes, and a way on to the next."""
    checks = [f"check {at}" for at in range(len(fixes))]
    ends = {check: [f"{check} fix {at}" for at in range(count)]
            for check, count in zip(checks, fixes, strict=True)}  # fmt: skip
    nodes = {check: Node(check, "check", "Look", str(at)) for at, check in enumerate(checks, 1)}
    edges: dict[str, tuple[Edge, ...]] = {}
    for check, following in zip(checks, [*checks[1:], None], strict=True):
        targets = [*ends[check], *([following] if following else [])]
        edges[check] = tuple(Edge(check, to, f"result {to}") for to in targets)
        for fix in ends[check]:
            edges[fix] = ()
            nodes[fix] = Node(fix, "fix", fix, str(len(nodes) + 1))
    leads = {name: [OutlineEdge(edge.target) for edge in out] for name, out in edges.items()}
    bare = frozenset(name for name, out in edges.items() if not out)
    sections = outline(StepGraph(checks[0], leads, bare, frozenset(checks)))
    return Flow("in a row", nodes, edges, sections, nodes_reached_by_number(edges, sections))
