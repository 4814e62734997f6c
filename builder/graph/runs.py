"""Steps that run a procedure, with all that the procedure does and takes.

In: a `Tree` and the shop's procedures, each with its `Run`. Out: the tree with the `run` of every
such step, filled in with what the step hands over.
"""

from collections.abc import Iterator, Mapping
from dataclasses import replace

from builder.model.checks import Check
from builder.model.ends import Fix
from builder.model.procedures import Procedure, Procedures
from builder.model.text import Text
from builder.model.tree import Deed, Run, Step, Tree


def with_runs(tree: Tree, procedures: Procedures) -> Tree:
    """Return the tree with its runs filled in; a tree without any as it is."""
    runs = {name: run_of(step, procedures) for name, step in tree.steps.items()}
    if not any(run is not tree.steps[name].run for name, run in runs.items()):
        return tree
    steps = {name: replace(step, run=runs[name]) for name, step in tree.steps.items()}
    return replace(tree, steps=steps)


def run_of(step: Step, procedures: Procedures) -> Run | None:
    """Return what a step's procedure does; None where it runs none, or none that can be run."""
    procedure = procedure_of(step, procedures)
    if procedure is None or procedure.run is None:
        return None
    assert isinstance(step.body, Check)
    assert step.body.by is not None
    return _filled(procedure.run, values_of(step.body, procedure), step.body.by)


def procedure_of(step: Step, procedures: Procedures) -> Procedure | None:
    """Return the procedure that a step runs, if the shop has it."""
    by = step.body.by if isinstance(step.body, Check) else None
    return procedures.get(str(by)) if by else None


def procedures_named(tree: Tree) -> Iterator[str]:
    """Yield the procedures that the steps of a tree run, and those that its fixes verify with."""
    for step in tree.steps.values():
        if isinstance(step.body, Check) and step.body.by:
            yield str(step.body.by)
        elif isinstance(step.body, Fix):
            names = (one.text for one in step.body.verify if one.is_named)
            yield from (str(name) for name in names if name not in tree.steps)


def values_of(check: Check, procedure: Procedure) -> dict[str, str]:
    """Return what a procedure takes, as a step hands it over or by its `else`."""
    taken = {str(one.name): one.default for one in procedure.tree.asks}
    defaults = {name: str(value) for name, value in taken.items() if value is not None}
    return defaults | {str(name): str(value) for name, value in check.with_.items()}


def fill_in(text: str, values: Mapping[str, str]) -> str:
    """Write values in the places of their names: `<part>`."""
    for name, value in values.items():
        text = text.replace(f"<{name}>", value)
    return text


def _filled(run: Run, values: Mapping[str, str], by: Text) -> Run:
    def of(deeds: tuple[Deed, ...]) -> tuple[Deed, ...]:
        return tuple(_deed(deed, values, by) for deed in deeds)

    outcomes = {word: replace(one, does=of(one.does)) for word, one in run.outcomes.items()}
    return Run(outcomes, of(run.may_do), {name: of(deeds) for name, deeds in run.unmet.items()})


def _deed(deed: Deed, values: Mapping[str, str], by: Text) -> Deed:
    """Return a deed of a procedure as one of the step that runs it."""
    module = fill_in(deed.module, values) if deed.module else None
    return Deed(Text(fill_in(deed.text, values), by.at), deed.verb, module)
