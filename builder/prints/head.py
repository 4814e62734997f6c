"""The head of a wall chart: what it is about, read from two meters; then the particulars.

In: a tree and the library. Out: how high the head is on a paper, and its marks.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from reportlab.pdfgen.canvas import Canvas

from builder.chart.fonts import bold, medium
from builder.chart.hazard_marks import HazardMark, hazard_marks, hazards_of, hazards_of_needs
from builder.graph.runs import procedure_named
from builder.model.checks import Check
from builder.model.knowledge import Hazard, Signal
from builder.model.library import Library
from builder.model.procedures import Procedure
from builder.model.tree import Step, Tree
from builder.prints.caution_strip import PrintedCaution, draw_cautions
from builder.prints.drawing import INK, SIGNAL_COLORS
from builder.prints.paper import HEAD_DISTANCE, MARGIN, Paper, size_to_read
from builder.prints.sheet import TextLook, lines_of, set_words
from builder.wording.hazards import by_severity
from builder.wording.sentences import capitalized
from builder.wording.value_text import scope_text
from builder.wording.vehicle_words import part_name

SPACE = 6.0
RISE = 0.15  # ems, by which large words are set higher than text: they need less room above them
STEPS = 4  # that a caution names
BANNER_LINES = 1  # beyond, the most severe caution is named and no longer told
PHRASES = 5  # of a customer, that the head gives


@dataclass(frozen=True, slots=True)
class SheetHead:
    """The words of a head; title and hazard read from afar, the first check if it has room."""

    title: str
    first: str  # the first check
    hazard: Hazard | None  # the most severe
    particulars: tuple[str, ...]
    cautions: tuple[PrintedCaution, ...]


def tree_marks(tree: Tree, library: Library) -> Mapping[str, HazardMark]:
    """Give every hazard of a tree its sign, the gravest first."""
    met = {one.id: one for step in tree.steps.values() for one in _met_at(step, library)}
    return hazard_marks(by_severity(met.values()))


def head_of(tree: Tree, library: Library, numbers: Mapping[str, int]) -> SheetHead:
    """Gather what the head of a tree says."""
    marks = tree_marks(tree, library)
    met = list(_hazards(tree, library, numbers))
    steps_of = {hazard.id: steps for hazard, steps in met}
    hazards = by_severity(hazard for hazard, _ in met)
    checks = [step for step in tree.steps.values() if isinstance(step.body, Check)]
    first = min(checks, key=lambda step: numbers[step.id], default=None)
    return SheetHead(
        title=str(tree.title),
        first=f"First: {first.text}" if first else "",
        hazard=hazards[0] if hazards else None,
        particulars=tuple(_particulars(tree, library)),
        cautions=tuple(
            _caution(hazard, marks[hazard.id], steps_of[hazard.id]) for hazard in hazards
        ),
    )


def _hazards(
    tree: Tree, library: Library, numbers: Mapping[str, int]
) -> Iterator[tuple[Hazard, list[int]]]:
    """Yield each hazard with its steps; what only states bring comes last, without steps."""
    met: dict[str, list[int]] = {}
    for step in tree.steps.values():
        for name in dict.fromkeys(str(hazard.id) for hazard in _met_at(step, library)):
            met.setdefault(name, []).append(numbers[step.id])
    own = {str(one.id) for step in tree.steps.values() for one in hazards_of(step, library)}
    for name in sorted(met, key=lambda name: (name not in own, min(met[name]))):
        yield library.hazards[name], sorted(met[name]) if name in own else []


def _met_at(step: Step, library: Library) -> Iterator[Hazard]:
    yield from hazards_of(step, library)
    yield from hazards_of_needs(step, library)


def _caution(hazard: Hazard, mark: HazardMark, steps: list[int]) -> PrintedCaution:
    if not steps:  # a state brings it, at many steps: its name has to do
        return PrintedCaution(mark, hazard.signal, capitalized(hazard.short), "", "")
    text = f"{hazard.hazard}. {hazard.harm}. {hazard.avoid} ({_where(steps)})."
    return PrintedCaution(mark, hazard.signal, capitalized(hazard.short), text, f"{hazard.avoid}.")


def _where(steps: list[int]) -> str:
    """Name a few steps; the bars of the boxes name the hazard at each."""
    few = steps if len(steps) <= STEPS else steps[: STEPS - 1]
    words = f"step{'' if len(steps) == 1 else 's'} {', '.join(map(str, few))}"
    return words if few is steps else f"{words} and {len(steps) - len(few)} more"


def _particulars(tree: Tree, library: Library) -> Iterator[str]:
    if procedure := procedure_named(library, tree.id):
        yield from _of_procedure(procedure, library)
        return
    symptom = tree.symptom
    if symptom.words:
        yield "Customers say: " + "; ".join(f"“{words}”" for words in symptom.words[:PHRASES])
    lamps = [str(library.lamps[id_].name) for id_ in symptom.lamps if id_ in library.lamps]
    signs = [", ".join(lamps), ", ".join(symptom.codes)]
    if any(signs):
        yield "Shows: " + "; ".join(filter(None, signs))
    vehicles = ", ".join(map(scope_text, tree.applies_to)) or "any vehicle"
    known = library.systems.get(tree.system)
    yield f"For: {vehicles}. System: {known.name if known else tree.system}"


def _of_procedure(procedure: Procedure, library: Library) -> Iterator[str]:
    yield f"Procedure. Returns: {', '.join(procedure.returns)}"
    if procedure.tree.asks:
        yield f"Takes: {', '.join(str(one.name) for one in procedure.tree.asks)}"
    running = [tree for tree in library.listings.values() if procedure.name in tree.procedures]
    titles = [str(library.trees[tree.id].title) for tree in running]
    if titles:
        yield f"Run by: {'; '.join(sorted(titles))}"
    if procedure.never_on:
        parts = ", ".join(part_name(one, library) for one in procedure.never_on)
        yield f"Never on: {parts}"
    if procedure.every_time:
        yield "Do it every time: what it showed before doesn't count"


def head_that_fits(head: SheetHead, paper: Paper, room: float) -> SheetHead:
    """Return the head with so many cautions in brief, the least grave first, that it fits a room.

    The page and the bench sheet have every caution in full.
    """
    made = head
    for cautions in _shorter(head.cautions):
        made = replace(head, cautions=cautions)
        if draw_particulars(None, made, 0, paper.inner_width) <= room:
            break
    return made


def _shorter(cautions: tuple[PrintedCaution, ...]) -> Iterator[tuple[PrintedCaution, ...]]:
    """Yield the cautions shorter and shorter: in brief, then by name alone, the gravest last."""
    brief = tuple(replace(one, text=one.brief) for one in cautions)
    for kept in range(len(cautions), -1, -1):
        yield (*cautions[:kept], *brief[kept:])
    names = tuple(replace(one, text="") for one in cautions)
    for kept in range(len(cautions) - 1, -1, -1):
        yield (*brief[:kept], *names[kept:])


def draw_banner(canvas: Canvas | None, head: SheetHead, paper: Paper) -> float:
    """Draw what reads from afar at the top of a paper and return its height in points.

    Without a canvas it only measures.
    """
    far = size_to_read(HEAD_DISTANCE)
    room = paper.inner_width
    top = paper.height - MARGIN
    rise = RISE * far
    y = set_words(canvas, head.title, (MARGIN, top + rise), room, TextLook(far, heavy=True))
    _first(canvas, head, top + rise, room)
    if head.hazard:
        y = _panel(canvas, head.hazard, (MARGIN, y - 3), room, far)
    return top - y + SPACE


def draw_particulars(canvas: Canvas | None, head: SheetHead, top: float, room: float) -> float:
    """Draw the particulars and the cautions under a height and return how high they are."""
    y = set_words(canvas, " · ".join(head.particulars), (MARGIN, top), room, TextLook())
    y -= SPACE / 2
    y -= draw_cautions(canvas, head.cautions, (MARGIN, y), room)
    return top - y + SPACE


def _first(canvas: Canvas | None, head: SheetHead, top: float, room: float) -> None:
    """Set the first check behind the title if it fits there; it stands below it in any case."""
    far = size_to_read(HEAD_DISTANCE)
    after = bold().width(f"{head.title}  ", far)
    if canvas and head.first and after + medium().width(head.first, far) <= room:
        set_words(canvas, head.first, (MARGIN + after, top), room, TextLook(far))


def signal_words(signal: Signal) -> str:
    """Return a signal word behind its sign; NOTICE is for things and has none."""
    return str(signal) if signal is Signal.NOTICE else f"⚠ {signal}"


def _panel(
    canvas: Canvas | None, hazard: Hazard, place: tuple[float, float], room: float, size: float
) -> float:
    """Set the most severe caution on the ground of its signal word."""
    x, top = place
    ground, ink = SIGNAL_COLORS[hazard.signal]
    pad = 0.3 * size
    text, look = f"{signal_words(hazard.signal)}: {hazard.hazard}", TextLook(size, True, ink)
    if len(lines_of(text, room - 2 * pad, look)) > BANNER_LINES:
        text = f"{signal_words(hazard.signal)}: {hazard.short}"
    under = top + RISE * size / 2
    foot = set_words(None, text, (x + pad, under), room - 2 * pad, look)
    if canvas:
        canvas.setFillColor(ground)
        canvas.setStrokeColor(INK)
        canvas.rect(x, foot, room, top - foot, stroke=1, fill=1)
        set_words(canvas, text, (x + pad, under), room - 2 * pad, look)
    return foot
