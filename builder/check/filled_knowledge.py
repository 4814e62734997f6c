"""The knowledge of a shop as everything behind the reader gets it.

In: a shop's folder. Out: its `Library` without trees, the runs of its procedures computed.
"""

from pathlib import Path

from builder.model.finding import Finding
from builder.model.library import Library
from builder.plan.procedure_runs import with_procedure_runs
from builder.reader.knowledge_files import read_knowledge


def filled_knowledge(shop: Path) -> tuple[Library, tuple[Finding, ...]]:
    """Read the knowledge, and compute what its procedures do and take."""
    library, findings = read_knowledge(shop)
    return with_procedure_runs(library), findings
