"""What the others need to know of a tree once it has been judged.

In: a `Tree`. Out: its `Summary`, with what a walk may lack at
each handoff.
"""

from collections.abc import Iterable, Iterator
from sys import intern

from builder.graph.order import leading_unmet, touches, unmet_before
from builder.graph.paths import paths
from builder.graph.requirements import ALL
from builder.graph.routes import exits
from builder.model.summary import HandOver, Summary
from builder.model.tree import Fix, Step, Tree


def summary_of(tree: Tree) -> Summary:
    """Keep of a tree what the others need to know."""
    steps = tree.steps.values()
    return Summary(
        id=tree.id,
        file=tree.file,
        at=tree.at,
        title=tree.title,
        status=tree.status,
        system=tree.system,
        symptom=tree.symptom,
        applies_to=tree.applies_to,
        steps=tuple(tree.steps),
        hand_overs=tuple(_hand_overs(tree)),
        how_tos=frozenset(str(step.how_to) for step in steps if step.how_to),
        tools=frozenset(str(tool) for step in steps for tool in step.tools),
        modules=frozenset(module for step in steps for module in _modules(step)),
        written=tree.written,
        reviewed=tree.reviewed,
        replaced_by=tree.replaced_by,
        revision=tree.revision,
        silences=tree.silences,
    )


def _hand_overs(tree: Tree) -> Iterator[HandOver]:
    found = [(step, way) for step in tree.steps.values() for way in exits(step)]
    leaving = [(step, way) for step, way in found if way.branch.tree]
    if not leaving:
        return
    ways = paths(tree)
    touched = [one for one in ALL if touches(tree.steps, one)]
    leading = {one.name: leading_unmet(ways, tree.steps, one) for one in touched}
    known: dict[tuple[str, ...], tuple[str, ...]] = {}

    def shared(names: Iterable[str]) -> tuple[str, ...]:
        """Keep one copy of what hand-overs of a tree have in common, and of every name."""
        found = tuple(sorted(intern(str(name)) for name in names))
        return known.setdefault(found, found)

    for step, way in leaving:
        yield HandOver(
            at=way.at,
            from_step=step.id,
            tree=str(way.branch.tree),
            step=way.branch.step,
            from_tree=tree.id,
            reached_from=shared(ways.before(step.id)),
            without={
                one.name: shared(unmet_before(leading[one.name], tree.steps, step, way, one))
                for one in touched
            },
        )


def _modules(step: Step) -> Iterator[str]:
    yield from (deed.module for deed in step.does if deed.module)
    if isinstance(step.body, Fix) and step.body.replaces:
        yield str(step.body.replaces.module)
