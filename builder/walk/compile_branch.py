"""Where a branch leads, as the walk's table has it.

In: a branch of a tree or a procedure. Out: a `Target`.
"""

from builder.graph.routes import list_step
from builder.model.checks import Branch, Check
from builder.model.tree import Action, Step, Tree
from builder.walk.tree_rows import Target


def target_of(tree: Tree, branch: Branch | None) -> Target:
    """Return where a branch leads; "" where there is no such step."""
    if branch is None:
        return ""
    if branch.returns:
        return f"return: {branch.text}"
    known = branch.back or branch.next_item or branch.tree or branch.step in tree.steps
    return str(branch.text) if known else ""


def target_of_next(tree: Tree, step: Step) -> str:
    """Return the step that `next` goes to, where a branch of the step is `next`."""
    match step.body:
        case Check(results=results):
            branches = [result.branch for result in results]
        case Action(then=then):
            branches = [then] if then else []
        case _:
            branches = []
    return list_step(tree, step) or "" if any(branch.next_item for branch in branches) else ""
