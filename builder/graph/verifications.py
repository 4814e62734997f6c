"""What proves a repair, one check or procedure after another.

In: a tree, one of its fixes, and the shop's procedures. Out: `VerifyingRun`s in their order. What
is proved in free text isn't followed.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from builder.model.ends import Fix, Verification
from builder.model.procedures import Procedure
from builder.model.text import Text
from builder.model.tree import Step, Tree


@dataclass(frozen=True, slots=True)
class VerifyingRun:
    """One step of the tree, or one procedure, that is run to prove a repair."""

    name: str
    text: Text  # where it is asked for
    is_step: bool
    may_fail: bool = True  # false for a step that only comes before, by `after`
    with_: Mapping[str, str] = field(default_factory=dict)  # what the procedure gets


def verifying_runs(
    tree: Tree, fix: Step, procedures: Mapping[str, Procedure]
) -> Iterator[VerifyingRun]:
    """Yield what is run; before each check the steps in its `after`."""
    assert isinstance(fix.body, Fix)
    for one in fix.body.verify:
        name = str(one.text)
        if not one.is_named:
            continue
        if name in tree.steps:
            for before in tree.steps[name].after:
                if before in tree.steps:
                    yield VerifyingRun(str(before), one.text, is_step=True, may_fail=False)
            yield VerifyingRun(name, one.text, is_step=True)
        elif name in procedures:
            with_ = _with(procedures[name], one)
            yield VerifyingRun(name, one.text, is_step=False, with_=with_)


def _with(procedure: Procedure, one: Verification) -> dict[str, str]:
    """Return the one thing that a procedure takes."""
    taken = procedure.tree.asks
    return {str(taken[0].name): str(one.passes)} if taken and one.passes else {}
