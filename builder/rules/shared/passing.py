"""Which results of a check pass as the proof of a repair, and which one is known to be good.

In: the `Facts` of a tree and a `Verification`, or a check. Out: the passing `Result`s; the words of
the good result, where the format says which it is: within all specs, or the first word that a
procedure returns. Of a phrase or a range of its own nobody but the author knows.
"""

from builder.graph.runs import procedure_of
from builder.model.checks import Check, Result
from builder.model.ends import Verification
from builder.model.tree import Step
from builder.rules.shared.rule import Facts


def passing_results(facts: Facts, one: Verification) -> tuple[Result, ...]:
    """Return the results at which a verification passes; none where it names no check."""
    step = facts.tree.steps.get(one.text)
    if step is None or not isinstance(step.body, Check):
        return ()
    good = good_result(facts, step)
    return tuple(result for result in step.body.results if _passes(one, result, good))


def _passes(one: Verification, result: Result, good: str | None) -> bool:
    if one.passes:
        return result.text in one.passes
    if one.readings:
        return all(result.compares.get(name) == words for name, words in one.readings.items())
    return result.text == good


def good_result(facts: Facts, step: Step) -> str | None:
    """Return the words of the result that a good vehicle gives, where the format says so."""
    if not isinstance(step.body, Check):
        return None
    if procedure := procedure_of(step, facts.library.procedures):
        return str(procedure.returns[0]) if procedure.returns else None
    results = (one for one in step.body.results if one.compares)
    within = (one for one in results if {*one.compares.values()} == {"within spec"})
    return next((str(one.text) for one in within), None)
