"""The state of the vehicle in which a box begins, as it prints it.

In: a step and the library. Out: words. A procedure's box has the state of the procedure's first
step: paper can't know which way the reader came.
"""

from dataclasses import replace

from builder.graph.runs import procedure_of, values_of, with_values
from builder.model.checks import Check
from builder.model.library import Library
from builder.model.text import Text
from builder.model.tree import Need, Step
from builder.wording.results import tied
from builder.wording.vehicle_words import condition_texts, need_text


def begun_state(step: Step, library: Library) -> tuple[str, ...]:
    """Write the states in which a step begins; those of a procedure it runs come last."""
    own = [*condition_texts(step, library)]
    if step.hook_up:
        own.append(f"hooked up with {need_text(Need(step.hook_up), library)}")
    first = _first_of_procedure(step, library)
    inner = begun_state(first, library) if first else ()
    return tuple(dict.fromkeys((*map(tied, own), *inner)))


def _first_of_procedure(step: Step, library: Library) -> Step | None:
    """Return the first step of the procedure that a step runs, with the values handed over."""
    procedure = procedure_of(step, library.procedures)
    if procedure is None or procedure.run is None or not isinstance(step.body, Check):
        return None
    values = values_of(step.body, procedure)

    def filled(text: Text) -> Text:
        return Text(with_values(text, values), text.at)

    first = procedure.tree.start
    needs = (replace(need, value=need.value and filled(need.value)) for need in first.needs)
    return replace(first, needs=tuple(needs), when=tuple(map(filled, first.when)))
