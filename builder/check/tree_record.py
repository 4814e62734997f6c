"""The record of a tree's file that is cached from one check to the next.

In: a file's content, and the findings about it. Out: a `TreeRecord`, and its rows in the cache. The
mistakes depend on the file alone; the findings of the rules depend on more, see `dependencies`.
"""

import json
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from typing import Any

from builder.cache.digest import digest
from builder.check.serialization import from_bytes, to_bytes
from builder.model.finding import Finding
from builder.model.summary import TreeListing, TreeSummary, listing_of
from builder.model.tree import Status

Findings = tuple[Finding, ...]
HEAD, SUMMARY, FINDINGS = "tree", "summary", "findings"  # the kinds of rows
NO_FINDINGS = b"none"  # most trees have none; an empty row is a damaged one


@dataclass(frozen=True, slots=True)
class TreeRecord:
    """A tree's file; rarely used parts are bytes, so that they are seldom unpacked."""

    content: str  # hash of the file's content
    listing: TreeListing | None = None  # None where the file has no readable tree
    shape: str = ""  # hash of the parts that other trees' findings may depend on
    used: tuple[tuple[str, str], ...] = ()  # kind and id of the knowledge looked up while judging
    inputs: str = ""  # hash of everything the findings depend on; "" until the rules have run
    numbers: tuple[tuple[str, int], ...] = ()  # of the steps that other trees lead into
    findings: bytes = NO_FINDINGS  # mistakes of text, and findings of the rules
    summary: bytes = field(default=b"", compare=False)  # b"" where it is only in the cache


def new_record(content: str, summary: TreeSummary | None, mistakes: Findings) -> TreeRecord:
    """Return the record of a file that was just read."""
    return TreeRecord(
        content=content,
        listing=listing_of(summary) if summary else None,
        shape=_shape(summary) if summary else "",
        findings=_findings_bytes(mistakes, ()),
        summary=to_bytes(summary) if summary else b"",
    )


def with_findings(
    record: TreeRecord, findings: Findings, used: set[tuple[str, str]], numbers: dict[str, int]
) -> TreeRecord:
    """Add the findings of the rules and their lookups to a record."""
    return replace(
        record,
        findings=_findings_bytes(mistakes_of(record), findings),
        used=tuple(sorted(used)),
        numbers=tuple(sorted(numbers.items())),
    )


def mistakes_of(record: TreeRecord) -> Findings:
    """Return the mistakes of a file's text."""
    return _mistakes_and_findings(record)[0]


def findings_of(record: TreeRecord) -> Findings:
    """Return the findings of the rules in a tree."""
    return _mistakes_and_findings(record)[1]


def cache_rows(record: TreeRecord) -> Iterator[tuple[str, bytes]]:
    """Yield the kind and content of each cache row of a record."""
    yield HEAD, json.dumps(_head(record)).encode()
    yield FINDINGS, record.findings
    if record.summary:
        yield SUMMARY, record.summary


def record_from_rows(content: bytes, findings: bytes) -> TreeRecord:
    """Rebuild a record from its rows; its summary stays in the cache until it is needed.

    Raises any exception where the rows hold something else.
    """
    hash_, shape, inputs, listing, used, numbers = json.loads(content)
    record = TreeRecord(
        content=hash_,
        listing=_listing(listing) if listing else None,
        shape=shape,
        used=tuple([(kind, id_) for kind, id_ in used]),
        inputs=inputs,
        numbers=tuple([(step, number) for step, number in numbers]),
        findings=findings,
    )
    if not all(
        isinstance(finding, Finding) for finding in (*mistakes_of(record), *findings_of(record))
    ):
        raise TypeError("these aren't findings")
    return record


def _head(record: TreeRecord) -> list[Any]:
    hashes = record.content, record.shape, record.inputs
    return [*hashes, record.listing, record.used, record.numbers]


def _listing(fields: list[Any]) -> TreeListing:
    """Rebuild a listing: JSON turned its tuples into lists."""
    listing = TreeListing._make(map(_tuples, fields))
    return listing._replace(status=Status(listing.status))


def _tuples(value: Any) -> Any:
    return tuple([_tuples(one) for one in value]) if isinstance(value, list) else value


def _findings_bytes(mistakes: Findings, findings: Findings) -> bytes:
    return to_bytes((mistakes, findings)) if mistakes or findings else NO_FINDINGS


def _mistakes_and_findings(record: TreeRecord) -> tuple[Findings, Findings]:
    if record.findings == NO_FINDINGS:
        return (), ()
    mistakes, findings = from_bytes(record.findings, tuple)
    return mistakes, findings


def _shape(summary: TreeSummary) -> str:
    """Hash the parts of a tree that other trees' findings may depend on."""
    handoffs = [
        (*handoff.at, handoff.from_step, handoff.tree, handoff.step, handoff.reached_from,
         *handoff.without.items())
        for handoff in summary.handoffs
    ]  # fmt: skip
    head = summary.id, summary.file, summary.title, summary.status, summary.symptom
    return digest(*head, summary.steps, summary.replaced_by, handoffs)
