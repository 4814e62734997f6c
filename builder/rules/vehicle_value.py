"""A value in `kb/specs.yml` or a vehicle's file that can't be right: a good
range outside what can be read, a pin outside its connector, or a wire whose color has another code.

Why: The walk compares a reading with a limit it can never reach, and every reading passes.

Wrong:

    # kb/specs.yml
    ripple: {text: AC ripple, unit: V, from: 0, to: 5, good: at most 50, origin: common practice}

Right:

    # kb/specs.yml
    ripple: {text: AC ripple, unit: V, from: 0, to: 5, good: at most 0.5, origin: common practice}

Fix: Write the value in the unit of the spec, and within `from` and `to`.
"""

from collections.abc import Iterator
from datetime import date

from builder.model.finding import Finding, Severity, edit_of
from builder.model.library import Library
from builder.model.vehicle_data import Connector, Good, Spec
from builder.rules.shared.rule import Family, Rule, as_warning
from builder.rules.shared.spec_units import is_out_of_reach
from builder.trade.wire_colors import in_our_codes

RULE = Rule(
    name="vehicle-value",
    family=Family.KNOWLEDGE,
    severity=Severity.ERROR,
    summary="A good range, a pin or a wire that can't be right.",
)
WHY = "the walk would compare every reading with a wrong limit"


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every value that can't be right."""
    for spec in library.specs.values():
        yield from _outside(spec, spec.good)
    for vehicle in library.vehicles.values():
        for name, own in vehicle.specs.items():
            if name in library.specs:
                yield from _outside(library.specs[name], own.good)
        for connector in vehicle.connectors.values():
            yield from _pins(connector)


def _outside(spec: Spec, good: Good) -> Iterator[Finding]:
    """Yield a finding where an end of a good range lies outside what can be read."""
    for row in good.by_load.values():
        yield from _outside(spec, row)
    if good.range is None:
        return
    if is_out_of_reach(spec, good.range):
        span = (
            f"{spec.low:f} to {'OL' if spec.high.is_infinite() else f'{spec.high:f}'} {spec.unit}"
        )
        yield RULE.finding(good.text.at, f"`{good.text}` can't be read: `{spec.id}` is {span}", WHY,
                           f"write it in {spec.unit}, within {span}")  # fmt: skip


def _pins(connector: Connector) -> Iterator[Finding]:
    drawn = [number for row in connector.face for number in row]
    for number, pin in connector.pins.items():
        if pin.wire and (codes := in_our_codes(pin.wire)):
            yield as_warning(RULE.finding(
                pin.wire.at, f"`{pin.wire}` isn't in the codes of wire colors",
                "the drawing of the connector would show no color", f"write `{codes}`",
                edit=edit_of(pin.wire, codes),
            ))  # fmt: skip
        if drawn and number not in drawn:
            yield RULE.finding(pin.number.at, f"connector `{connector.id}` has no pin {number}",
                               "the drawing of the connector would leave it out",
                               f"correct the number ({drawn[0]} to {drawn[-1]}) or the size",
                               )  # fmt: skip
