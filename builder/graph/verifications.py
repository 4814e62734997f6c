"""What proves a repair, one check or procedure after another.

In: a tree, one of its fixes, and the shop's procedures. Out: `VerifyingRun`s in their order. Each
verification begins with the vehicle in normal state, as the customer gets it: after the repair, and
after each one before it, everything goes back to normal. What is proved in free text isn't
followed.
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
    from_normal: bool = True  # false for what comes after a step of its `after`
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
            yield from _of_check(tree, one.text)
        elif name in procedures:
            with_ = _with(procedures[name], one)
            yield VerifyingRun(name, one.text, is_step=False, with_=with_)


def _of_check(tree: Tree, name: Text) -> Iterator[VerifyingRun]:
    before = [str(one) for one in tree.steps[name].after if one in tree.steps]
    for number, step in enumerate((*before, str(name))):
        yield VerifyingRun(
            step, name, is_step=True, from_normal=not number, may_fail=number == len(before)
        )


def _with(procedure: Procedure, one: Verification) -> dict[str, str]:
    """Return the one thing that a procedure takes."""
    taken = procedure.tree.asks
    return {str(taken[0].name): str(one.passes[0])} if taken and one.passes else {}
