"""Steps that no path leads to any more.

In: a tree before and after, and the new names of its steps. Out: names of steps that are still
there, and their effects: one for each fix, one for all other steps.
"""

from collections.abc import Iterable, Iterator

from builder.graph.tree_graph import graph_of
from builder.model.ends import Fix
from builder.model.tree import Tree
from builder.review.plain_values import Names
from builder.review.remark import Remark, in_code


def steps_out_of_reach(old: Tree, new: Tree, names: Names) -> list[str]:
    """Return the steps of the new tree that a walk reached before and doesn't now."""
    was, now = (graph_of(tree, ()).reachable for tree in (old, new))
    kept = [names[name] for name in old.steps if name in was and name in names]
    return [name for name in kept if name in new.steps and name not in now]


def told_out_of_reach(lost: Iterable[str], new: Tree) -> Iterator[Remark]:
    """Yield what follows for each fix, then for the other steps."""
    others = []
    for name in lost:
        if isinstance(new.steps[name].body, Fix):
            message = f"no path leads to the fix {in_code(name)} any more"
            yield Remark("fix out of reach", name, message)
        else:
            others.append(name)
    if others:
        listed = ", ".join(map(in_code, others))
        yield Remark("step out of reach", others[0], f"no path leads to {listed} any more")
