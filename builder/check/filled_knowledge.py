"""The knowledge of a shop as everything behind the reader gets it.

In: a shop's folder. Out: its `Library` without trees, the runs of its procedures computed; and for
a check a `Knowledge`, with what follows from the library alone. A process that checks a shop again
and again hands over the last one: what follows from the same files is taken from there.
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from functools import cache, partial
from pathlib import Path
from typing import NamedTuple

from builder.cache.digest import digest
from builder.check.dependencies import Used, knowledge_digest, observed
from builder.model.finding import Finding
from builder.model.library import Library
from builder.model.procedures import Procedure
from builder.plan.procedure_runs import with_procedure_runs
from builder.reader.knowledge_files import read_knowledge
from builder.rules.shared.judge import judge_procedures

Findings = tuple[Finding, ...]
Entry = tuple[str, str]  # kind and ID


class ProcedureRuns(NamedTuple):
    """The procedures with their runs, and what these were computed from."""

    procedures: Mapping[str, Procedure]
    used: tuple[Entry, ...]  # of the other knowledge
    inputs: str  # hash of the procedures' files and of those entries


@dataclass(frozen=True, slots=True)
class Knowledge:
    """The knowledge of a shop, and what follows from it whatever the trees are."""

    library: Library  # without trees
    mistakes: Findings
    hash_of: Callable[[Iterable[Entry]], str]
    of_procedures: Callable[[], Findings]  # what the rules say of them; judged when asked for
    runs: ProcedureRuns


def filled_knowledge(shop: Path) -> tuple[Library, Findings]:
    """Read the knowledge, and compute what its procedures do and take."""
    library, findings = read_knowledge(shop)
    return with_procedure_runs(library), findings


def known_knowledge(shop: Path, before: Knowledge | None = None) -> Knowledge:
    """Read the knowledge for a check."""
    read, mistakes = read_knowledge(shop)
    runs = _runs(read, before.runs if before else None)
    library = replace(read, procedures=runs.procedures)
    of_procedures = cache(partial(judge_procedures, library))
    return Knowledge(library, mistakes, knowledge_digest(library), of_procedures, runs)


def _runs(library: Library, before: ProcedureRuns | None) -> ProcedureRuns:
    """Compute the runs of the procedures, unless they depend on nothing that has changed."""
    hash_of = knowledge_digest(library)
    files = [(name, one.tree.revision) for name, one in library.procedures.items()]
    if before and before.inputs == digest(files, hash_of(before.used)):
        return before
    used: Used = set()
    procedures = with_procedure_runs(observed(library, used)).procedures
    others = tuple(sorted(entry for entry in used if entry[0] != "procedures"))
    return ProcedureRuns(procedures, others, digest(files, hash_of(others)))
