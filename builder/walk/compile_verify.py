"""One test after a repair, as a row of the walk's table.

In: a `Verification` of a fix, its tree, the library for the procedures. Out: a `VerifyRow` with the
results that pass. A test that can never pass is told in words, for the tech to judge.
"""

from collections.abc import Iterator, Mapping

from builder.model.checks import Check, Result
from builder.model.ends import Verification
from builder.model.library import Library
from builder.model.text import Text
from builder.model.tree import Tree
from builder.walk.tree_rows import VerifyRow

_GOOD = "within spec"


def verify_row(tree: Tree, test: Verification, library: Library) -> VerifyRow:
    """Compile a test."""
    step = tree.steps.get(str(test.text)) if test.is_named else None
    if step and isinstance(step.body, Check):
        passes = [*_passing(step.body, test, library)]
        return {"step": str(test.text), "passes": passes} if passes else {"text": str(step.text)}
    procedure = library.procedures.get(str(test.text)) if test.is_named else None
    if procedure and procedure.returns:
        names = [str(one.name) for one in procedure.tree.asks]
        takes = {names[0]: str(test.passes[0])} if test.passes and names else {}
        return {
            "by": {"procedure": procedure.name, "takes": takes},
            "passes": [str(procedure.returns[0])],
        }
    return {"text": str(test.text)}


def _passing(check: Check, test: Verification, library: Library) -> Iterator[str]:
    """Yield the results that pass: those that the test names, else those within spec."""
    if test.passes:
        yield from map(str, test.passes)
    elif check.by:
        procedure = library.procedures.get(str(check.by))
        yield from map(str, procedure.returns[:1] if procedure else ())
    else:
        in_spec = {one.name: Text(_GOOD) for one in check.readings if one.spec}
        words = test.readings or in_spec
        yield from (str(one.text) for one in check.results if words and _agrees(one, words))


def _agrees(result: Result, words: Mapping[str, Text]) -> bool:
    """Whether a result is what a test names: by its spec, or in the words of the result."""
    own = str(result.text).split(", ")
    return all(
        result.compares.get(name) == word or f"{name}: {word}" in own
        for name, word in words.items()
    )
