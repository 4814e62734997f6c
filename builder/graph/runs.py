"""Steps that run a procedure, with all that the procedure does and takes.

In: a `Tree` and the shop's procedures, each with its `ProcedureRun`. Out: the tree with the `run`
of every such step, filled in with what the step hands over.
"""

from collections.abc import Iterator, Mapping
from dataclasses import replace

from builder.model.checks import Check
from builder.model.ends import Fix
from builder.model.library import Library
from builder.model.procedures import FOLDER, Procedure, Procedures
from builder.model.text import Text
from builder.model.tree import Deed, ProcedureRun, Step, Tree


def with_runs(tree: Tree, procedures: Procedures) -> Tree:
    """Return the tree with its runs filled in; a tree without any as it is."""
    filled = {
        name: replace(step, run=run)
        for name, step in tree.steps.items()
        if (run := run_of(step, procedures)) is not step.run
    }
    return replace(tree, steps={**tree.steps, **filled}) if filled else tree


def procedure_named(library: Library, id_: str) -> Procedure | None:
    """Return a procedure by the ID of its tree, `procedures/<name>`, if the shop has it."""
    folder, _, name = id_.partition("/")
    return library.procedures.get(name) if folder == FOLDER and id_ not in library.trees else None


def run_of(step: Step, procedures: Procedures) -> ProcedureRun | None:
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


def procedures_of(step: Step, procedures: Procedures) -> tuple[Procedure, ...]:
    """Return the procedures that a step runs, and those that these run, each once."""
    found: dict[str, Procedure] = {}
    steps = [step]
    while steps:
        procedure = procedure_of(steps.pop(), procedures)
        if procedure and procedure.name not in found:
            found[procedure.name] = procedure
            steps += [*procedure.tree.steps.values()][::-1]
    return tuple(found.values())


def with_inner_steps(step: Step, procedures: Procedures) -> tuple[Step, ...]:
    """Return a step, and the steps of all procedures that it runs."""
    inner = procedures_of(step, procedures)
    return (step, *(one for procedure in inner for one in procedure.tree.steps.values()))


def procedures_named(tree: Tree) -> Iterator[str]:
    """Yield the procedures that the steps of a tree run, and those that its fixes verify with."""
    for step in tree.steps.values():
        if isinstance(step.body, Check) and step.body.by:
            yield str(step.body.by)
        elif isinstance(step.body, Fix):
            names = (one.text for one in step.body.verify if one.is_named)
            yield from (str(name) for name in names if name not in tree.steps)


def handled_words(tree: Tree) -> Iterator[tuple[str, str]]:
    """Yield every procedure that a check runs, with each of the check's results."""
    for step in tree.steps.values():
        if isinstance(step.body, Check) and step.body.by:
            yield from ((str(step.body.by), str(result.text)) for result in step.body.results)


def values_of(check: Check, procedure: Procedure) -> dict[str, str]:
    """Return what a procedure takes, as a step hands it over or by its `else`."""
    taken = {str(one.name): one.default for one in procedure.tree.asks}
    defaults = {name: str(value) for name, value in taken.items() if value is not None}
    return defaults | {str(name): str(value) for name, value in check.with_.items()}


def with_values(text: str, values: Mapping[str, str]) -> str:
    """Write values in the places of their names: `<part>`."""
    for name, value in values.items():
        text = text.replace(f"<{name}>", value)
    return text


def _filled(run: ProcedureRun, values: Mapping[str, str], by: Text) -> ProcedureRun:
    def of(deeds: tuple[Deed, ...]) -> tuple[Deed, ...]:
        return tuple(_deed(deed, values, by) for deed in deeds)

    outcomes = {word: replace(one, does=of(one.does)) for word, one in run.outcomes.items()}
    return ProcedureRun(
        outcomes, of(run.may_do), {name: of(deeds) for name, deeds in run.unmet.items()}
    )


def _deed(deed: Deed, values: Mapping[str, str], by: Text) -> Deed:
    """Return a deed of a procedure as one of the step that runs it."""
    module = with_values(deed.module, values) if deed.module else None
    return Deed(Text(with_values(deed.text, values), by.at), deed.verb, module)
