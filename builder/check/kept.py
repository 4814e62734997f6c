"""What is kept of a tree's file from one check to the next.

In: a file's content, and what was found out about it. Out: `KeptTree`, and its rows in the cache.
What is in the file depends on the file alone; its findings depend on more, see `dependencies`.
"""

import json
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from typing import Any

from builder.cache.digest import digest
from builder.check.pickled import from_bytes, to_bytes
from builder.model.finding import Finding
from builder.model.summary import Summary, TreeListing, listing_of
from builder.model.tree import Status

Findings = tuple[Finding, ...]
HEAD, SUMMARY, FINDINGS = "tree", "summary", "findings"  # the kinds of rows
NO_FINDINGS = b"none"  # mostly so; an empty row is a damaged one


@dataclass(frozen=True, slots=True)
class KeptTree:
    """One file and what is known of it; as bytes what few ask for, so that it is seldom made."""

    content: str  # hash of the file's content
    listing: TreeListing | None = None  # None where nothing could be made of the file
    shape: str = ""  # hash of what other trees' findings may depend on
    used: tuple[tuple[str, str], ...] = ()  # kind and id of the knowledge looked up while judging
    inputs: str = ""  # hash of all that the findings depend on; "" while it has not been judged
    numbers: tuple[tuple[str, int], ...] = ()  # of the steps that other trees lead into
    findings: bytes = NO_FINDINGS  # mistakes of text, and what the rules found
    summary: bytes = field(default=b"", compare=False)  # b"" where it still lies in the cache


def kept_tree(content: str, summary: Summary | None, mistakes: Findings) -> KeptTree:
    """Keep what was read in a file."""
    return KeptTree(
        content=content,
        listing=listing_of(summary) if summary else None,
        shape=_shape(summary) if summary else "",
        findings=_findings_bytes(mistakes, ()),
        summary=to_bytes(summary) if summary else b"",
    )


def judged_tree(
    kept: KeptTree, findings: Findings, used: set[tuple[str, str]], numbers: dict[str, int]
) -> KeptTree:
    """Keep what the rules found, and what they looked up for it."""
    return replace(
        kept,
        findings=_findings_bytes(mistakes_of(kept), findings),
        used=tuple(sorted(used)),
        numbers=tuple(sorted(numbers.items())),
    )


def mistakes_of(kept: KeptTree) -> Findings:
    """Return the mistakes of a file's text."""
    return _both(kept)[0]


def findings_of(kept: KeptTree) -> Findings:
    """Return what the rules found in a tree."""
    return _both(kept)[1]


def rows_of(kept: KeptTree) -> Iterator[tuple[str, bytes]]:
    """Yield the rows in which a file is kept: their kind and content."""
    yield HEAD, json.dumps(_head(kept)).encode()
    yield FINDINGS, kept.findings
    if kept.summary:
        yield SUMMARY, kept.summary


def kept_in(content: bytes, findings: bytes) -> KeptTree:
    """Make the kept tree of its rows; its summary stays in the cache until it is asked for.

    Raises any error where the rows hold something else.
    """
    hash_, listing, shape, used, inputs, numbers = json.loads(content)
    kept = KeptTree(
        content=hash_,
        listing=_listing(listing) if listing else None,
        shape=shape,
        used=tuple([(kind, id_) for kind, id_ in used]),
        inputs=inputs,
        numbers=tuple([(step, number) for step, number in numbers]),
        findings=findings,
    )
    if not all(isinstance(one, Finding) for one in (*mistakes_of(kept), *findings_of(kept))):
        raise TypeError("these are no findings")
    return kept


def _head(kept: KeptTree) -> list[Any]:
    return [kept.content, kept.listing, kept.shape, kept.used, kept.inputs, kept.numbers]


def _listing(fields: list[Any]) -> TreeListing:
    """Make of JSON's lists what the listing was: they stand for tuples throughout."""
    listing = TreeListing._make(map(_tuples, fields))
    return listing._replace(status=Status(listing.status))


def _tuples(value: Any) -> Any:
    return tuple([_tuples(one) for one in value]) if isinstance(value, list) else value


def _findings_bytes(mistakes: Findings, findings: Findings) -> bytes:
    return to_bytes((mistakes, findings)) if mistakes or findings else NO_FINDINGS


def _both(kept: KeptTree) -> tuple[Findings, Findings]:
    if kept.findings == NO_FINDINGS:
        return (), ()
    mistakes, findings = from_bytes(kept.findings, tuple)
    return mistakes, findings


def _shape(summary: Summary) -> str:
    """Hash what other trees' findings may depend on, without what they never look at."""
    handoffs = [
        (*handoff.at, handoff.from_step, handoff.tree, handoff.step, handoff.reached_from,
         *handoff.without.items())
        for handoff in summary.handoffs
    ]  # fmt: skip
    one = summary
    return digest(
        one.id, one.file, one.title, one.status, one.symptom, one.steps, one.replaced_by, handoffs
    )
