"""Words that a procedure can return without a test behind them.

In: a `Procedure`, and the others of the shop. Out: the words that can be returned by `then`,
`spent` or `cannot_test`; a fix with parts must not rest on one of them.
"""

from collections.abc import Iterator

from builder.graph.routes import Exit, exits
from builder.graph.runs import procedure_of
from builder.model.checks import Branch
from builder.model.ends import Return
from builder.model.procedures import Procedure, Procedures
from builder.model.tree import Step, Tree


def words_without_proof(procedure: Procedure, procedures: Procedures) -> frozenset[str]:
    """Return the words that some path returns by `then`, `spent` or `cannot_test`.

    A step that runs another procedure proves nothing by a word that is one of these there.
    """
    return frozenset(_words(procedure, procedures, frozenset()))


def _words(procedure: Procedure, procedures: Procedures, outer: frozenset[str]) -> Iterator[str]:
    tree = procedure.tree
    if isinstance(tree.start.body, Return):
        yield str(tree.start.text)
    for step in tree.steps.values():
        unproved = _of_inner(step, procedures, outer | {procedure.name})
        for exit_ in exits(step):
            word = _returned(tree, exit_.branch)
            if word is not None and not _is_proved(exit_, unproved):
                yield word


def _of_inner(step: Step, procedures: Procedures, outer: frozenset[str]) -> frozenset[str]:
    inner = procedure_of(step, procedures)
    if inner is None or inner.name in outer:
        return frozenset()
    return frozenset(_words(inner, procedures, outer))


def _is_proved(exit_: Exit, unproved: frozenset[str]) -> bool:
    return exit_.result is not None and exit_.result.text not in unproved


def _returned(tree: Tree, branch: Branch) -> str | None:
    """Return the word that a branch returns, by itself or by the step that it leads to."""
    if branch.returns:
        return str(branch.text)
    step = tree.steps.get(str(branch.step)) if branch.step else None
    return str(step.text) if step and isinstance(step.body, Return) else None
