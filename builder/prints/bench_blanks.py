"""What is filled in and ticked at a step of the bench sheet.

In: a step and its box of the flow. Out: paragraphs: places for readings, boxes for results, and
where each leads.
"""

from collections.abc import Iterator

from reportlab.platypus import Paragraph

from builder.chart.flow import Flow, Node
from builder.model.checks import Check
from builder.model.ends import Fix
from builder.model.tree import Step
from builder.prints.document import blank_to_fill, paragraph, quiet_paragraph
from builder.wording.results import NO_BREAK
from builder.wording.sentences import verification_text
from builder.wording.value_text import unit_label

SHORT, LONG = 9, 18  # characters of a place for a reading, and for words


def step_blanks(step: Step, flow: Flow, node: Node) -> Iterator[Paragraph]:
    """Yield what is filled in and ticked at a step, and last where it leads."""
    several = isinstance(step.body, Check) and step.body.several
    if isinstance(step.body, Check):
        yield from _places(step.body)
    for item in step.write_down:
        yield blank_to_fill(f"{item}:", LONG)
    if isinstance(step.body, Fix):
        for one in step.body.verify:
            yield paragraph(f"☐ Verified: {verification_text(one)}")
    if several:
        yield quiet_paragraph(node.notes[0])
    yield from _ways(step, flow)
    yield from (paragraph(_way(note)) for note in node.notes[several:])
    if step.put_back:
        yield paragraph(f"☐ Before the job ends: {step.put_back}")


def _ways(step: Step, flow: Flow) -> Iterator[Paragraph]:
    for edge in flow.edges.get(str(step.id), ()):
        target = flow.nodes[edge.target]
        means = f" ({edge.means})" if edge.means else ""
        goes = on_one_line(f"go to {target.number}") if target.number else target.text
        yield paragraph(f"☐ {edge.label}{means} → {goes}" if edge.label else f"→ {goes}")


def _way(note: str) -> str:
    """Write a way out that is no result as the results are written."""
    when, colon, then = note.partition(": ")
    return (
        f"☐ {when} → {on_one_line(then)}"
        if colon
        else f"→ {on_one_line(note.removeprefix('then '))}"
    )


def on_one_line(words: str) -> str:
    """Keep words on one line."""
    return words.replace(" ", NO_BREAK)


def _places(check: Check) -> Iterator[Paragraph]:
    """Yield a place to write for each reading, and for the maker's figure."""
    if check.figure:
        sign = unit_label(check.figure.unit)
        yield blank_to_fill(f"Maker's figure, {check.figure.look_up}:", SHORT, sign)
        yield blank_to_fill("Found in:", LONG)
        yield blank_to_fill("Reading:", SHORT, sign)
    for reading in check.readings:
        of = f"({', '.join(reading.one_of)})" if reading.one_of else unit_label(reading.unit)
        yield blank_to_fill(f"{reading.name or 'Reading'}:", SHORT, of)
    for computed in check.computed:
        yield blank_to_fill(f"{computed.name} = {computed.expression}:", SHORT)
