"""The record of a tree's file that is cached from one check to the next.

In: a file's content, and the findings about it. Out: a `TreeRecord`, and its rows in the cache. The
mistakes depend on the file alone; the findings of the rules depend on more, see `dependencies`.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from builder.cache.digest import digest
from builder.check.dependencies import points_elsewhere
from builder.check.serialization import from_bytes, to_bytes
from builder.model.finding import Finding
from builder.model.summary import TreeListing, TreeSummary, listing_of

Findings = tuple[Finding, ...]
RECORD, SUMMARY = "tree", "summary"  # the kinds of rows


@dataclass(frozen=True, slots=True)
class TreeRecord:
    """A tree's file; the summary is bytes, as it is large and seldom unpacked."""

    content: str  # hash of the file's content
    listing: TreeListing | None = None  # None where the file has no readable tree
    shape: str = ""  # hash of the parts that other trees' findings may depend on
    used: tuple[tuple[str, str], ...] = ()  # kind and id of the knowledge looked up while judging
    inputs: str = ""  # hash of everything the findings depend on; "" until the rules have run
    numbers: tuple[tuple[str, int], ...] = ()  # of the steps that other trees lead into
    runs: tuple[str, ...] = ()  # hashes of the procedures that the listing names
    mistakes: Findings = ()  # of the file's text
    findings: Findings = ()  # of the rules
    summary: bytes = field(default=b"", compare=False)  # b"" where it is only in the cache


def new_record(content: str, summary: TreeSummary | None, mistakes: Findings) -> TreeRecord:
    """Return the record of a file that was just read."""
    return TreeRecord(
        content=content,
        listing=listing_of(summary) if summary else None,
        shape=_shape(summary) if summary else "",
        mistakes=mistakes,
        summary=to_bytes(summary) if summary else b"",
    )


def with_findings(
    record: TreeRecord, findings: Findings, used: set[tuple[str, str]], numbers: dict[str, int]
) -> TreeRecord:
    """Add the findings of the rules and their lookups to a record."""
    return replace(
        record,
        findings=findings,
        used=tuple(sorted(used)),
        numbers=tuple(numbers.items()),
    )


def cache_rows(record: TreeRecord) -> Iterator[tuple[str, bytes]]:
    """Yield the kind and content of each cache row of a record.

    A tree whose findings show a line of another file is judged again the next time.
    """
    inputs = "" if _points_elsewhere(record) else record.inputs
    hashes = record.content, record.shape, inputs
    lists = record.used, record.numbers, record.runs, record.mistakes, record.findings
    yield RECORD, to_bytes((hashes, record.listing, lists))
    if record.summary:
        yield SUMMARY, record.summary


def record_from_row(row: bytes) -> TreeRecord:
    """Rebuild a record from its row; its summary stays in the cache until it is needed.

    Raises any exception where the row holds something else.
    """
    (content, shape, inputs), listing, lists = from_bytes(row, tuple)
    used, numbers, runs, mistakes, findings = lists
    if not all(isinstance(finding, Finding) for finding in (*mistakes, *findings)):
        raise TypeError("these aren't findings")
    return TreeRecord(content, listing, shape, used, inputs, numbers, runs, mistakes, findings)


def _points_elsewhere(record: TreeRecord) -> bool:
    return record.listing is not None and points_elsewhere(record.listing.file, record.findings)


def _shape(summary: TreeSummary) -> str:
    """Hash the parts of a tree that other trees' findings may depend on."""
    handoffs = [
        (*handoff.at, handoff.from_step, handoff.tree, handoff.step, handoff.reached_from,
         *handoff.without.items())
        for handoff in summary.handoffs
    ]  # fmt: skip
    head = summary.id, summary.file, summary.title, summary.status, summary.symptom
    return digest(*head, summary.steps, summary.replaced_by, handoffs)
