"""A word in `returns` that no step of the procedure returns.

Why: Every step that runs the procedure must have a result for it, and nobody ever gets there.

Wrong:

    # kb/procedures/first-stop.yml
    title: First stop in the lot
    returns: [good, not good, pulls]
    steps:
      stop:
        check: Does it stop straight and firm?
        results:
          - {result: yes, return: good}
          - {result: no, return: not good}
    # trees/charging/case.yml
    steps:
      stop:
        check: Does it stop?
        by: first-stop
        results: {good: all-good, not good: repair, pulls: repair}

Right:

    # kb/procedures/first-stop.yml
    title: First stop in the lot
    returns: [good, not good]
    steps:
      stop:
        check: Does it stop straight and firm?
        results:
          - {result: yes, return: good}
          - {result: no, return: not good}
    # trees/charging/case.yml
    steps:
      stop:
        check: Does it stop?
        by: first-stop
        results:
          - {result: good, branch: all-good}
          - {result: not good, branch: repair}

Fix: Delete the word from `returns`, or return it where it is found.
"""

from collections.abc import Iterator
from datetime import date

from builder.graph.routes import exits
from builder.graph.tree_graph import graph_of
from builder.model.ends import Return
from builder.model.finding import Finding, Related, Severity
from builder.model.library import Library
from builder.model.tree import Tree
from builder.rules.shared.renamed_word import RenamedWord, renamed_word, returned_words
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="never-returned",
    family=Family.PROCEDURES,
    severity=Severity.ERROR,
    summary="A word in `returns` that the procedure never returns.",
)


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every listed word that no path returns."""
    for procedure in library.procedures.values():
        if procedure.tree.broken:
            continue  # a step with a text error may be the one that returns it
        if renamed := renamed_word(library, procedure):
            yield _renamed(renamed)
            continue
        returned = _returned(procedure.tree) | _as_branches(procedure.tree)
        if not {*map(str, returned_words(procedure))} <= {*map(str, procedure.returns)}:
            continue  # one of these may be meant: `no-such-word` says so
        for word in procedure.returns:
            if word not in returned:
                yield RULE.finding(
                    word.at,
                    f"no step of `{procedure.name}` returns `{word}`",
                    "every tree must have a result for it, and nobody ever gets there",
                    f"write `return: {word}` at the result that means it; if none does, take it "
                    "out here",
                )


def _renamed(renamed: RenamedWord) -> Finding:
    old, new = renamed.old[0], renamed.new
    callers = ", ".join(f"`{one}`" for one in renamed.callers)
    return RULE.finding(
        new.at,
        f"`{new}` is in `returns` only: the steps still return `{old}`",
        "the tech comes back with a word that the trees don't know",
        f"write `{old}` here again; or write `{new}` in all places: after `return:` and "
        f"at the results of {callers}",
        *(Related(word.at, f"returns `{old}`") for word in renamed.old),
    )


def _as_branches(tree: Tree) -> set[str]:
    """Return the words after `branch:` that are no step: `branch-to-nowhere` asks for `return:`."""
    branches = (exit_.branch for step in tree.steps.values() for exit_ in exits(step))
    named = {str(branch.text) for branch in branches if not branch.leaves}
    return named - tree.steps.keys()


def _returned(tree: Tree) -> set[str]:
    graph = graph_of(tree, ())
    branches = (move.route.exit.branch for move in graph.moves)
    ends = (tree.steps[name] for name in graph.reachable)
    words = {str(step.text) for step in ends if isinstance(step.body, Return)}
    return words | {str(branch.text) for branch in branches if branch.returns}
