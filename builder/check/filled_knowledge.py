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
from builder.check.dependencies import Used, knowledge_digest, observed, points_elsewhere
from builder.model.finding import Finding
from builder.model.library import Library
from builder.model.procedures import Procedure
from builder.plan.procedure_runs import with_procedure_runs
from builder.reader.knowledge_files import read_knowledge
from builder.rules.shared.judge import judge

Findings = tuple[Finding, ...]
Entry = tuple[str, str]  # kind and ID
HashOf = Callable[[Iterable[Entry]], str]


class ProcedureRuns(NamedTuple):
    """The procedures with their runs, and what these were computed from."""

    procedures: Mapping[str, Procedure]
    used: tuple[Entry, ...]  # of the other knowledge
    inputs: str  # hash of the procedures' files and of those entries


class JudgedProcedure(NamedTuple):
    """What the rules say of a procedure, and what that depends on besides its own file."""

    findings: Findings
    revision: str
    used: tuple[Entry, ...]
    inputs: str  # hash of those entries


@dataclass(frozen=True, slots=True)
class Knowledge:
    """The knowledge of a shop, and what follows from it whatever the trees are."""

    shop: Path
    library: Library  # without trees
    mistakes: Findings
    hash_of: HashOf
    of_procedures: Callable[[], Findings]  # what the rules say of them; judged when asked for
    runs: ProcedureRuns
    judged: dict[str, JudgedProcedure]  # by name, as far as they have been


def filled_knowledge(shop: Path) -> tuple[Library, Findings]:
    """Read the knowledge, and compute what its procedures do and take."""
    library, findings = read_knowledge(shop)
    return with_procedure_runs(library), findings


def known_knowledge(shop: Path, before: Knowledge | None = None) -> Knowledge:
    """Read the knowledge for a check."""
    read, mistakes = read_knowledge(shop)
    runs = _runs(read, before.runs if before else None)
    library = replace(read, procedures=runs.procedures)
    hash_of, judged = knowledge_digest(library), dict(before.judged if before else {})
    of_procedures = cache(partial(_of_procedures, library, hash_of, judged))
    return Knowledge(shop, library, mistakes, hash_of, of_procedures, runs, judged)


def _of_procedures(
    library: Library, hash_of: HashOf, judged: dict[str, JudgedProcedure]
) -> Findings:
    """Judge the procedures whose findings are unknown or depend on something that has changed."""
    for name, procedure in library.procedures.items():
        last, revision = judged.get(name), procedure.tree.revision
        if (
            not last
            or (last.revision, last.inputs) != (revision, hash_of(last.used))
            or points_elsewhere(procedure.tree.file, last.findings)
        ):
            looked_up: Used = set()
            findings = judge(procedure.tree, observed(library, looked_up))
            used = (*looked_up, ("procedures", name))
            judged[name] = JudgedProcedure(findings, revision, used, hash_of(used))
    return tuple(one for name in library.procedures for one in judged[name].findings)


def _runs(library: Library, before: ProcedureRuns | None) -> ProcedureRuns:
    """Compute the runs of the procedures, unless they depend on nothing that has changed."""
    hash_of = knowledge_digest(library)
    files = [(name, one.tree.revision) for name, one in library.procedures.items()]
    if before and before.inputs == digest(files, hash_of(before.used)):
        return before
    used: Used = set()
    procedures = with_procedure_runs(observed(library, used)).procedures
    others = tuple(entry for entry in used if entry[0] != "procedures")
    return ProcedureRuns(procedures, others, digest(files, hash_of(others)))
