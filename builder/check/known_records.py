"""What the last check found out, kept in the cache: read, compared with the files, stored.

In: the cache. Out: the records of trees by the names of their files, each only if neither the file
nor what its summary tells of has changed since.
"""

from collections.abc import Callable, Mapping
from contextlib import suppress
from pathlib import Path

from builder.cache.database import Cache, drop_row, put_row, rows, transaction
from builder.check.examine import content_of
from builder.check.filled_knowledge import HashOf
from builder.check.tree_record import RECORD, SUMMARY, TreeRecord, cache_rows, record_from_row

Records = Mapping[str, TreeRecord]  # by the name of the file


def known_records(cache: Cache) -> Records:
    """Return the records of the last check; unreadable ones are skipped."""
    known = {}
    for file, content in rows(cache, RECORD):
        with suppress(Exception):  # a cache may hold anything
            known[file] = record_from_row(content)
    return known


RunHashes = Callable[[TreeRecord], tuple[str, ...]]


def run_hashes(hash_of: HashOf) -> RunHashes:
    """Return a function that hashes the procedures that a tree names."""

    def hashes(record: TreeRecord) -> tuple[str, ...]:
        names = record.listing.procedures if record.listing else ()
        return tuple(hash_of([("procedures", name)]) for name in names)

    return hashes


def unchanged_record(shop: Path, before: Records, runs: RunHashes, file: str) -> TreeRecord | None:
    """Return the record of a file, if neither it nor what its summary tells of has changed."""
    record = before.get(file)
    if record is None or record.content != content_of(shop / file):
        return None
    return record if record.runs == runs(record) else None


def store_records(cache: Cache, before: Records, now: Records) -> None:
    """Store the records that have changed, and drop those of files that are gone."""
    with transaction(cache):
        for file, record in now.items():
            if before.get(file) != record:
                for kind, content in cache_rows(record):
                    put_row(cache, kind, file, content)
        for file in before.keys() - now.keys():
            for kind in (RECORD, SUMMARY):
                drop_row(cache, kind, file)
