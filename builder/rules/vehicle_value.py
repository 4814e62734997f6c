"""A value in `kb/specs.yml` or a vehicle's file that can't be right: a good range outside what can
be read, a pin outside its connector or with the fuse of another part, a wire whose color has
another code, or a torque or a limit far from that of all other vehicles.

Why: The walk compares a reading with a limit it can never reach, and every reading passes.

Wrong:

    # kb/specs.yml
    ripple: {text: AC ripple, unit: V, from: 0, to: 5, good: at most 50, origin: common practice}

Right:

    # kb/specs.yml
    ripple: {text: AC ripple, unit: V, from: 0, to: 5, good: at most 0.5, origin: common practice}

Fix: Write the value in the unit of the spec, and within `from` and `to`.
"""

from collections import defaultdict
from collections.abc import Iterator
from datetime import date
from decimal import Decimal

from builder.model.finding import Finding, Related, Severity, edit_of
from builder.model.library import Library
from builder.model.ranges import Range
from builder.model.text import Text
from builder.model.vehicle_data import Connector, Good, Spec, Torque, Vehicle
from builder.rules.shared.fed_parts import fuses_of
from builder.rules.shared.rule import Family, Rule, as_warning
from builder.rules.shared.spec_units import is_out_of_reach
from builder.trade.wire_colors import WIRE_COLORS, colors_like, in_our_codes, wire_of

RULE = Rule(
    name="vehicle-value",
    family=Family.KNOWLEDGE,
    severity=Severity.ERROR,
    summary="A good range, a pin or a wire that can't be right.",
)
ENOUGH, FAR = 2, 4  # other vehicles; how many times as much or as little
FAR_FROM_ONE = 8  # a lost decimal point is 10
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
        yield from _fuses(vehicle, library)
    yield from _torques(library)
    for spec in library.specs.values():
        yield from _far_off(spec, library)


def _outside(spec: Spec, good: Good) -> Iterator[Finding]:
    """Yield a finding where an end of a good range lies outside what can be read."""
    for row in good.by_load.values():
        yield from _outside(spec, row)
    if good.range is None or good.range.empty:
        return  # `reversed-range` speaks
    if is_out_of_reach(spec, good.range):
        span = (
            f"{spec.low:f} to {'OL' if spec.high.is_infinite() else f'{spec.high:f}'} {spec.unit}"
        )
        yield RULE.finding(good.text.at, f"`{good.text}` can't be read: `{spec.id}` is {span}", WHY,
                           f"write it in {spec.unit}, within {span}",
                           Related(spec.id.at, f"`{spec.id}`: its unit and its span"),
                           )  # fmt: skip
    elif (step := spec.resolution) and (limit := _too_small(good.range, step)):
        yield RULE.finding(good.text.at, f"no reading of `{spec.id}` can be as small as {limit:f}: "
                           f"its resolution is {step:f} {spec.unit}", WHY,
                           f"correct the limit, or the `resolution` of `{spec.id}`",
                           Related(step.at, "the resolution"))  # fmt: skip


def _too_small(span: Range, resolution: Decimal) -> Decimal | None:
    """Return a limit that lies between 0 and the first reading."""
    return next((end for end, _ in span if 0 < abs(end) < resolution), None)


def _no_color(wire: Text) -> Finding:
    """Return the finding for a wire that the drawing can't color."""
    like = [f"`{code}` ({WIRE_COLORS[code].name})" for code in colors_like(wire)]
    hint = f"did you mean {' or '.join(like)}?" if like else (
        f"write one code or two, and the size: {', '.join(f'`{code}`' for code in WIRE_COLORS)}, "
        "with a stripe `RD/WH`, with its size `RD/WH 0.8 mm2`")  # fmt: skip
    codes = in_our_codes(wire)
    return as_warning(RULE.finding(
        wire.at, f"`{wire}` isn't in the codes of wire colors",
        "the drawing of the connector would show no color", f"write `{codes}`" if codes else hint,
        edit=edit_of(wire, codes) if codes else None,
    ))  # fmt: skip


def _pins(connector: Connector) -> Iterator[Finding]:
    drawn = [number for row in connector.face for number in row]
    for number, pin in connector.pins.items():
        if pin.wire and not wire_of(pin.wire):
            yield _no_color(pin.wire)
        if drawn and number not in drawn:
            yield RULE.finding(pin.number.at, f"connector `{connector.id}` has no pin {number}",
                               "the drawing of the connector would leave it out",
                               f"correct the number ({drawn[0]} to {drawn[-1]}) or the size",
                               )  # fmt: skip


def _fuses(vehicle: Vehicle, library: Library) -> Iterator[Finding]:
    """Yield a finding for a pin with the fuse of another part, while no pin names that of its own.

    What a fuse feeds is free text, so one that names neither part says nothing.
    """
    every = [(one, pin) for one in vehicle.connectors.values() for pin in one.pins.values()]
    named = {str(pin.fuse) for _, pin in every if pin.fuse}
    fed = {str(one.of): fuses_of(vehicle, str(one.of), library) for one, _ in every}
    for connector, pin in every:
        own = fed[str(connector.of)]
        free = [name for name in own if name not in named]
        others = [part for part, names in fed.items() if pin.fuse and pin.fuse in names]
        if pin.fuse and pin.fuse not in own and others and free:
            yield RULE.finding(
                pin.fuse.at,
                f"pin {pin.number} is on `{connector.of}`, and fuse `{pin.fuse}` feeds "
                f"{vehicle.fuses[str(pin.fuse)].feeds}",
                "the tech tests a fuse that has nothing to do with this pin",
                f"write `fuse: {free[0]}`: it feeds {vehicle.fuses[free[0]].feeds}, and no pin "
                "names it",
            )  # fmt: skip


def _torques(library: Library) -> Iterator[Finding]:
    """Yield a warning for a torque that is far from that of all other vehicles: a digit is lost."""
    by_name: dict[str, list[Torque]] = defaultdict(list)
    for vehicle in library.vehicles.values():
        for torque in vehicle.torques.values():
            by_name[str(torque.id)].append(torque)
    for name, every in by_name.items():
        for torque in every if len(every) > ENOUGH else ():
            here, others = torque.newton_meters, sorted(
                one.newton_meters for one in every if one is not torque)  # fmt: skip
            if here * FAR <= others[0] or here >= others[-1] * FAR:
                yield as_warning(RULE.finding(
                    here.at,
                    f"{here:f} Nm for `{name}`: the other vehicles have {others[0]:f} to "
                    f"{others[-1]:f} Nm",
                    "what is torqued by it comes loose, or breaks",
                    "look it up again in the maker's service information",
                ))  # fmt: skip


def _far_off(spec: Spec, library: Library) -> Iterator[Finding]:
    """Yield a warning for a limit of one vehicle that is far from all others: a point is lost."""
    every = (one.specs[spec.id].good for one in library.vehicles.values() if spec.id in one.specs)
    own = [good for good in every if not any(_outside(spec, good))]
    for good in own:
        others = [end for other in (spec.good, *own) if other is not good for end in _ends(other)]
        few = len(own) < ENOUGH or len(others) < ENOUGH
        times = FAR_FROM_ONE if few else FAR + 1
        for end in _ends(good) if others else ():
            if end * times <= min(others) or end >= max(others) * times:
                yield as_warning(RULE.finding(
                    good.text.at,
                    f"`{good.text}` {spec.unit} for `{spec.id}`: elsewhere it's {_span(others)}",
                    "the walk would compare every reading with a wrong limit",
                    f"look it up again, in {spec.unit}: is the decimal point in the right place?",
                    Related(spec.id.at, f"`{spec.id}`: its unit, and what is good elsewhere"),
                ))  # fmt: skip
                break


def _span(ends: list[Decimal]) -> str:
    low, high = min(ends), max(ends)
    return f"{low:f}" if low == high else f"{low:f} to {high:f}"


def _ends(good: Good) -> list[Decimal]:
    """Return the limits of a range that aren't 0; a range around 0 has none."""
    ends = [end for end, _ in good.range or ()]
    return [end for end in ends if end.is_finite() and end > 0]
