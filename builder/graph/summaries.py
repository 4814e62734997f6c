"""What other trees need to know of a tree once it has been judged.

In: a `Tree`, and the shop's procedures. Out: its `TreeSummary`, with the requirements a walk may
lack at each handoff.
"""

from collections.abc import Iterable, Iterator
from sys import intern

from builder.graph.deeds import all_deeds
from builder.graph.moves import Moves, moves_of, steps_leading_to
from builder.graph.precedence import affect, unmet_origins, unmet_predecessors
from builder.graph.requirements import REQUIREMENTS, Requirement
from builder.graph.runs import handled_words, procedures_named
from builder.graph.vehicle_lookups import lookups_of, spec_results
from builder.graph.work_lines import judged_of, labor_of, minutes_of, prices_of, work_of
from builder.model.checks import Result
from builder.model.ends import Fix
from builder.model.procedures import Procedures
from builder.model.summary import Handoff, TreeSummary
from builder.model.text import Text
from builder.model.tree import Step, Tree

NO_PROCEDURES: Procedures = {}


def summary_of(tree: Tree, procedures: Procedures = NO_PROCEDURES) -> TreeSummary:
    """Keep of a tree what other trees need to know."""
    steps = tree.steps.values()
    moves = moves_of(tree)
    return TreeSummary(
        id=tree.id,
        file=tree.file,
        at=tree.at,
        title=tree.title,
        status=tree.status,
        system=tree.system,
        symptom=tree.symptom,
        applies_to=tree.applies_to,
        steps=tuple(tree.steps),
        handoffs=tuple(_handoffs(tree, moves)),
        how_tos=frozenset(str(step.how_to) for step in steps if step.how_to),
        tools=frozenset(str(tool) for step in steps for tool in step.tools),
        modules=frozenset(module for step in steps for module in _modules(step)),
        written=tree.written,
        reviewed=tree.reviewed,
        replaced_by=tree.replaced_by,
        revision=tree.revision,
        silences=tree.silences,
        procedures=frozenset(procedures_named(tree)),
        spec_results=frozenset(spec_results(tree)),
        lookups=tuple(dict.fromkeys(lookups_of(tree, procedures))),
        handled=frozenset(handled_words(tree)),
        asks=tuple(str(question.name) for question in tree.asks),
        led_to_by_none=tuple(_led_to_by_none(tree, moves)),
        work=tuple(work_of(tree)),
        labor=tuple(labor_of(tree)),
        prices=tuple(prices_of(tree)),
        minutes=tuple(minutes_of(tree)),
        judged=tuple(judged_of(tree)),
    )


def _led_to_by_none(tree: Tree, moves: Moves) -> Iterator[str]:
    led_to = {tree.start.id, *moves.previous_steps()}
    yield from (str(name) for name in tree.steps if name not in led_to)


def _handoffs(tree: Tree, moves: Moves) -> Iterator[Handoff]:
    leaving = [(step, exit_) for step, exit_ in moves.exits if exit_.branch.tree]
    if not leaving:
        return
    previous = moves.previous_steps()
    predecessors = {
        requirement: unmet_predecessors(moves, tree.steps, requirement)
        for requirement in _affected(tree)
    }
    copies: dict[tuple[str, ...], tuple[str, ...]] = {}

    def shared(names: Iterable[str]) -> tuple[str, ...]:
        """Keep one copy of what handoffs of a tree have in common, and of every name."""
        ordered = tuple(sorted(intern(str(name)) for name in names))
        return copies.setdefault(ordered, ordered)

    for step, exit_ in leaving:
        unmet = {
            requirement.key: unmet_origins(before, step, exit_, requirement)
            for requirement, before in predecessors.items()
        }
        yield Handoff(
            at=exit_.at,
            from_step=step.id,
            tree=str(exit_.branch.tree),
            step=exit_.branch.step,
            from_tree=tree.id,
            reached_from=shared(steps_leading_to(step.id, previous)),
            without={name: shared(origins) for name, origins in unmet.items()},
            gives=_names_given(exit_.result),
        )


def _names_given(result: Result | None) -> tuple[Text, ...]:
    """Return the names of what a result hands over, where their values are written."""
    given = result.with_.items() if result else ()
    return tuple(Text(name, value.at) for name, value in given)


def _affected(tree: Tree) -> Iterator[Requirement]:
    """Yield what the tree meets or undoes, of the vehicle and of every part that a deed names."""
    deeds = [deed for step in tree.steps.values() for deed in all_deeds(step)]
    for requirement in REQUIREMENTS:
        parts = {deed.module for deed in deeds if deed.module and deed.verb == requirement.met_by}
        every = (requirement, *(requirement.at(part) for part in sorted(parts)))
        yield from (one for one in every if affect(deeds, one))


def _modules(step: Step) -> Iterator[str]:
    yield from (deed.module for deed in all_deeds(step) if deed.module and deed.is_setup)
    if isinstance(step.body, Fix) and step.body.replaces:
        yield str(step.body.replaces.module)
