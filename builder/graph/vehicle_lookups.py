"""What a tree takes from the vehicle's file: pins, fuses, good ranges, torques.

In: a `Tree` and the shop's procedures. Out: its `Lookup`s, those of the procedures it runs too; and
which results of specs it has branches for.
"""

from collections.abc import Iterator, Mapping

from builder.graph.runs import procedure_of, values_of, with_values
from builder.graph.spec_readings import load_of
from builder.model.checks import Check
from builder.model.ends import Fix
from builder.model.procedures import Procedures
from builder.model.summary import Lookup
from builder.model.tree import Step, Tree, Where


def lookups_of(tree: Tree, procedures: Procedures) -> Iterator[Lookup]:
    """Yield everything that a tree takes from the vehicle's file; what is asked, by each answer."""
    answers = {f"<{one.name}>": tuple(map(str, one.one_of)) for one in tree.asks}
    for step in tree.steps.values():
        for lookup in _of_step(step, {}, procedures):
            yield from (lookup._replace(of=of) for of in answers.get(lookup.of, (lookup.of,)))


def spec_results(tree: Tree) -> Iterator[tuple[str, str]]:
    """Yield every spec that a tree reads with each of its results that has a branch."""
    for step in tree.steps.values():
        if isinstance(step.body, Check):
            specs = {one.name: str(one.spec) for one in step.body.readings if one.spec}
            for result in step.body.results if specs else ():
                words = result.compares.items()
                yield from ((specs[name], str(word)) for name, word in words if name in specs)


def _of_step(
    step: Step, values: Mapping[str, str], procedures: Procedures, inside: tuple[str, ...] = ()
) -> Iterator[Lookup]:
    """Yield the lookups of a step; `inside` are the procedures it is in, as one may run itself."""
    if step.where:
        yield from _of_place(step.where, values)
    if isinstance(step.body, Fix):
        yield from (Lookup("torque", str(name)) for name in step.body.torques)
    if not isinstance(step.body, Check):
        return
    load = with_values(load_of(step), values)
    specs = (str(one.spec) for one in step.body.readings if one.spec)
    yield from (Lookup("spec", with_values(spec, values), load) for spec in specs)
    procedure = procedure_of(step, procedures)
    if procedure and procedure.name not in inside:
        handed = values_of(step.body, procedure).items()
        inner = {name: with_values(value, values) for name, value in handed}
        for one in procedure.tree.steps.values():
            yield from _of_step(one, inner, procedures, (*inside, procedure.name))


def _of_place(where: Where, values: Mapping[str, str]) -> Iterator[Lookup]:
    kind, of = ("number", where.connector) if where.connector else ("role", where.part)
    for pin in where.pins:
        yield Lookup(kind, with_values(str(of), values), with_values(str(pin), values))
    if where.fuse:
        yield Lookup("fuse", with_values(str(where.fuse), values))
