"""The readings and the figure of a check.

In: the map of a check that has passed the schema. Out: its readings and its figure, and a finding
where two of them exclude each other.
"""

from decimal import Decimal

from builder.model.checks import Figure, Reading
from builder.model.figures import FigureKind
from builder.model.finding import Finding
from builder.model.ranges import INFINITY
from builder.model.text import NOWHERE, Position, Text
from builder.reader.nodes import Map
from builder.reader.source import mistake
from builder.reader.values import map_, maps_by_name, number, text, texts, the_text

WHY = "the tech can't tell whether this result matches"


def readings_from(step: Map, findings: list[Finding]) -> tuple[Reading, ...]:
    """Build the readings of a check; its mistakes are added to `findings`."""
    single, several = map_(step, "reading"), map_(step, "readings")
    if single and several:
        message = "a check takes `reading` or `readings`, not both"
        findings.append(misfit(step.key("readings"), message,
                               "put all of them under `readings`, each with a name"))  # fmt: skip
    if map_(step, "computed") and not several:
        message = "`computed` has no `readings` to calculate from"
        findings.append(misfit(step.key("computed"), message,
                               "put the readings under `readings`, each with a name"))  # fmt: skip
    if spec := text(step, "spec"):
        if single or several:
            other = "reading" if single else "readings"
            message = f"a check takes `spec` or `{other}`, not both"
            hint = (
                "delete `reading`: unit, range, and what is good come from the spec"
                if single
                else "put `spec` under the reading it belongs to"
            )
            findings.append(misfit(step.key("spec"), message, hint))
        return (_spec_reading("", spec.at, spec),)
    if single:
        return (_reading("", single),)
    return tuple(_reading(str(name), value) for name, value in maps_by_name(several))


def _spec_reading(name: str, at: Position, spec: Text) -> Reading:
    """Return a reading of which nothing but its spec is known: its unit and span come later."""
    return Reading(at, name, Text("", NOWHERE), Decimal(0), Decimal(0), spec=spec)


def _reading(name: str, node: Map) -> Reading:
    if spec := text(node, "spec"):
        return _spec_reading(name, node.at, spec)
    one_of = texts(node, "one_of")
    top = text(node, "to")
    low: Decimal = number(node, "from") or Decimal(0)
    high: Decimal = Decimal(len(one_of) - 1) if one_of else Decimal(0)
    if top is not None:
        high = INFINITY if top == "OL" else number(node, "to") or Decimal(0)
    return Reading(
        at=node.at,
        name=name,
        unit=text(node, "unit") or Text("", NOWHERE),
        low=low,
        high=high,
        resolution=Decimal(1) if one_of else number(node, "resolution") or None,  # type: ignore[arg-type]
        origin=text(node, "origin"),
        one_of=one_of,
    )


def figure_from(step: Map, findings: list[Finding]) -> Figure | None:
    """Build the figure of a check, if it has one; its mistakes are added to `findings`."""
    node = map_(step, "figure")
    if node is None:
        return None
    for other in ("reading", "readings", "computed"):
        if map_(step, other):
            message = f"a check takes `figure` or `{other}`, not both"
            hint = "split this into two checks, or keep the one that is measured"
            findings.append(misfit(step.key("figure"), message, hint))
            return None
    return Figure(
        at=node.at,
        look_up=the_text(node, "look_up"),
        unit=the_text(node, "unit"),
        kind=FigureKind(str(text(node, "kind"))),
        origin=text(node, "origin"),
    )


def misfit(at: Text, message: str, hint: str) -> Finding:
    """Return the finding for a reading or a result that doesn't fit its check."""
    return mistake("bad-value", at.at, message, WHY, hint)
