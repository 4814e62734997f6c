"""What a rule is, and what it gets.

In: nothing. Out: `Rule`, the name and severity of its findings, and `Facts`, all that a rule may
ask about one tree. A rule is a module with a `RULE` and a `check`; `catalog.py` lists them.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date
from enum import StrEnum
from functools import cache, partial
from typing import Protocol, runtime_checkable

from builder.graph.moves import leads_nowhere
from builder.graph.routes import Exit
from builder.graph.runs import with_runs
from builder.graph.sound_conditions import conditions_for
from builder.graph.space import Space, space_of
from builder.graph.spec_readings import with_specs
from builder.graph.tree_graph import TreeGraph, graph_of
from builder.graph.tree_paths import paths_of
from builder.graph.vehicle_paths import VehiclePaths
from builder.model.checks import Check
from builder.model.conditions import Conditions
from builder.model.finding import Edit, Finding, Related, Severity
from builder.model.library import Library
from builder.model.text import Position, Text
from builder.model.tree import Step, Tree
from builder.rules.shared.published_text import texts_of


class Family(StrEnum):
    """What the rules under one heading are about."""

    TEXT = "text"
    FLOW = "flow"
    READINGS = "readings"
    ORDER = "order"
    EVIDENCE = "evidence"
    DRIVE = "drive"
    STATES = "states"
    SETUP = "setup"
    KNOWLEDGE = "knowledge"
    WORDS = "words"
    LENGTH = "length"
    PROCEDURES = "procedures"
    UPKEEP = "upkeep"


@dataclass(frozen=True, slots=True)
class Rule:
    """One rule as technicians know it."""

    name: str  # also the name of its module, with `_` for `-`
    family: Family
    severity: Severity
    summary: str  # one sentence: what it finds

    def finding(
        self,
        at: Position,
        message: str,
        why: str,
        hint: str,
        *related: Related,
        edit: Edit | None = None,
    ) -> Finding:
        """Make a finding of this rule."""
        return Finding(self.name, self.severity, at, message, why, hint, related, edit)


def as_warning(finding: Finding) -> Finding:
    """Return the finding as a warning, which doesn't stop a build."""
    return replace(finding, severity=Severity.WARNING)


@dataclass(frozen=True, slots=True)
class Facts:
    """A tree, the library around it, and what is computed from it once for all rules."""

    tree: Tree
    library: Library
    graph: TreeGraph
    whole: bool  # whether every step could be read and every branch leads somewhere
    steps: tuple[Step, ...]  # those without a text error
    exits: tuple[tuple[Step, Exit], ...]  # every exit of those
    spaces: Mapping[str, Space]  # by step, of the checks that measure
    texts: tuple[Text, ...]  # what a reader of the page and the prints sees
    paths: Callable[[], VehiclePaths | None]  # with the states along them; computed when asked for
    conditions: Callable[[], Conditions]  # of the shop, if all could be read; likewise


def facts_of(tree: Tree, library: Library) -> Facts:
    """Compute what the rules share."""
    tree = with_runs(with_specs(tree, library.specs), library.procedures)
    callers = library.callers.get(tree.id, ())
    entered = dict.fromkeys(step for _, step in callers if step)
    steps = tuple(step for step in tree.steps.values() if step.id not in tree.broken)
    checks = ((str(step.id), step.body) for step in steps if isinstance(step.body, Check))
    spaces = {name: space for name, body in checks if (space := space_of(body))}
    graph = graph_of(tree, entered)
    return Facts(
        tree=tree,
        library=library,
        graph=graph,
        whole=not tree.broken and not any(leads_nowhere(tree, *pair) for pair in graph.exits),
        steps=steps,
        exits=tuple(pair for pair in graph.exits if pair[0].id not in tree.broken),
        spaces=spaces,
        texts=tuple(texts_of(tree, steps)),
        paths=cache(partial(paths_of, tree, library, tuple(entered))),
        conditions=cache(partial(conditions_for, library)),
    )


class DocumentedRule(Protocol):
    """A module with a rule and, in its docstring, the page of that rule."""

    RULE: Rule
    __doc__: str | None


@runtime_checkable
class TreeRule(DocumentedRule, Protocol):
    """A module that judges one tree."""

    def check(self, facts: Facts, /) -> Iterator[Finding]:
        """Yield what is wrong."""


@runtime_checkable
class LibraryRule(DocumentedRule, Protocol):
    """A module that judges the knowledge and all trees in summary."""

    def check_library(self, library: Library, today: date, /) -> Iterator[Finding]:
        """Yield what is wrong."""
