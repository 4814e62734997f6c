"""The head of a wall chart: what it is about, read from two meters; then the particulars.

In: a tree and the library. Out: how high the head is on a paper, and its marks.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from functools import lru_cache

from reportlab.pdfgen.canvas import Canvas

from builder.chart.fonts import LEADING
from builder.chart.measured_word import measured_words
from builder.chart.text_block import TextBlock, broken_lines, text_block
from builder.graph.runs import procedure_named, with_inner_steps
from builder.model.checks import Check
from builder.model.knowledge import Hazard, Signal
from builder.model.library import Library
from builder.model.procedures import Procedure
from builder.model.tree import Step, Tree
from builder.prints.drawing import INK, SIGNAL_COLORS
from builder.prints.paper import HEAD_DISTANCE, MARGIN, Paper, size_to_read
from builder.prints.sheet import LEAST_SIZE, TextLook, lines_of, set_lines, set_words
from builder.wording.hazards import by_severity
from builder.wording.value_text import scope_text
from builder.wording.vehicle_words import part_name

SPACE = 6.0
SIGNAL_WIDTH = 62.0  # of the ground of a signal word
STEPS = 4  # that a caution names
BANNER_LINES = 2  # beyond, the most severe caution is named and no longer told
PHRASES = 5  # of a customer, that the head gives


@dataclass(frozen=True, slots=True)
class PrintedCaution:
    """A hazard of the tree as the list of cautions has it."""

    signal: Signal
    short: str  # as the bars of the boxes name it
    text: str
    brief: str  # the same without the harm, for a sheet with more cautions than room


@dataclass(frozen=True, slots=True)
class SheetHead:
    """The words of a head; the first three read from afar."""

    title: str
    first: str  # the first check
    hazard: Hazard | None  # the most severe
    particulars: tuple[str, ...]
    cautions: tuple[PrintedCaution, ...]


def head_of(tree: Tree, library: Library, numbers: dict[str, int]) -> SheetHead:
    """Gather what the head of a tree says."""
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
        cautions=tuple(_caution(hazard, steps_of[hazard.id]) for hazard in hazards),
    )


def _hazards(
    tree: Tree, library: Library, numbers: dict[str, int]
) -> Iterator[tuple[Hazard, list[int]]]:
    met: dict[str, list[int]] = {}
    for step in tree.steps.values():
        for hazard in _hazards_of(step, library):
            met.setdefault(hazard, []).append(numbers[step.id])
    for name in sorted(met, key=lambda name: min(met[name])):
        if name in library.hazards:
            yield library.hazards[name], sorted(met[name])


def _hazards_of(step: Step, library: Library) -> Iterable[str]:
    """Return the hazards of a step and of the procedures that it runs, each once."""
    steps = with_inner_steps(step, library.procedures)
    return dict.fromkeys(str(hazard) for one in steps for hazard in one.hazards)


def _caution(hazard: Hazard, steps: list[int]) -> PrintedCaution:
    at = f"({_where(steps)})."
    text = f"{hazard.hazard}. {hazard.harm}. {hazard.avoid} {at}"
    return PrintedCaution(
        hazard.signal, f"{hazard.short.capitalize()}:", text, f"{hazard.avoid} {at}"
    )


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
    """Yield the cautions shorter and shorter: in brief, then the last of them by name alone."""
    brief = tuple(replace(one, text=one.brief) for one in cautions)
    for kept in range(len(cautions), -1, -1):
        yield (*cautions[:kept], *brief[kept:])
    for kept in range(len(cautions) - 2, 0, -1):
        names = ", ".join(one.short.rstrip(":").lower() for one in cautions[kept:])
        yield (*brief[:kept], replace(cautions[kept], short="Also:", text=f"{names}."))


def draw_banner(canvas: Canvas | None, head: SheetHead, paper: Paper) -> float:
    """Draw what reads from afar at the top of a paper and return its height in points.

    Without a canvas it only measures.
    """
    far = size_to_read(HEAD_DISTANCE)
    room = paper.inner_width
    top = paper.height - MARGIN
    y = set_words(canvas, head.title, (MARGIN, top), room, TextLook(far, heavy=True))
    y = set_words(canvas, head.first, (MARGIN, y), room, TextLook(far))
    if head.hazard:
        y = _panel(canvas, head.hazard, (MARGIN, y - 3), room, far)
    return top - y + SPACE


def draw_particulars(canvas: Canvas | None, head: SheetHead, top: float, room: float) -> float:
    """Draw the particulars and the cautions under a height and return how high they are."""
    y = top
    for text in head.particulars:
        y = set_words(canvas, text, (MARGIN, y), room, TextLook())
    y -= SPACE / 2
    for caution in head.cautions:
        y = _caution_line(canvas, caution, y, room)
    return top - y + SPACE


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
    foot = set_words(None, text, (x + pad, top - 2), room - 2 * pad, look) - 2
    if canvas:
        canvas.setFillColor(ground)
        canvas.setStrokeColor(INK)
        canvas.rect(x, foot, room, top - foot, stroke=1, fill=1)
        set_words(canvas, text, (x + pad, top - 2), room - 2 * pad, look)
    return foot


def _caution_line(canvas: Canvas | None, caution: PrintedCaution, top: float, room: float) -> float:
    """Set a signal word on its ground and the caution beside it."""
    high = LEADING * LEAST_SIZE
    if canvas:
        ground, ink = SIGNAL_COLORS[caution.signal]
        canvas.setFillColor(ground)
        canvas.rect(MARGIN, top - high + 0.5, SIGNAL_WIDTH, high - 1, stroke=0, fill=1)
        look = TextLook(heavy=True, ink=ink)
        word = signal_words(caution.signal)
        set_words(canvas, word, (MARGIN + 3, top - 0.5), SIGNAL_WIDTH, look)
    left = SIGNAL_WIDTH + 5
    lines = broken_lines(_caution_words(caution), room - left)
    return set_lines(canvas, lines, (MARGIN + left, top), INK)


@lru_cache(maxsize=200)  # measured at every width that the particulars may have
def _caution_words(caution: PrintedCaution) -> TextBlock:
    name = measured_words(caution.short, LEAST_SIZE, heavy=True)
    return text_block([(*name, *measured_words(caution.text, LEAST_SIZE))])
