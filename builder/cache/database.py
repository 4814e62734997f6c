"""The cache of a shop: rows of bytes in one SQLite file.

In: rows with a kind and a name. Out: the rows of a kind, without the damaged ones.

Rows become valid when a transaction commits, so a killed run leaves the rows of the last one. A
cache that can't be used is replaced by a temporary one, with a note for the command to print.
"""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from functools import cache as cached
from pathlib import Path

import platformdirs

from builder.cache.digest import digest

PACKAGE = Path(__file__).parents[1]
PATIENCE = 5.0  # seconds to wait for another run that is writing
TABLES = """
    CREATE TABLE IF NOT EXISTS written_by (code TEXT);
    CREATE TABLE IF NOT EXISTS row (
        kind TEXT, name TEXT, content BLOB, hash TEXT, PRIMARY KEY (kind, name)
    );
"""
COLUMNS = ["kind", "name", "content", "hash"]


@dataclass(frozen=True, slots=True)
class Cache:
    """An open cache of one shop."""

    connection: sqlite3.Connection
    notes: list[str] = field(default_factory=list)  # for the user, printed once at the end


@contextmanager
def opened(shop: Path) -> Iterator[Cache]:
    """Open the cache of a shop; uncommitted rows are dropped at the end."""
    cache = _opened(shop)
    try:
        yield cache
    finally:
        cache.connection.close()


@contextmanager
def temporary() -> Iterator[Cache]:
    """Open an empty cache that is gone at the end."""
    cache = Cache(_connected(":memory:"))
    try:
        yield cache
    finally:
        cache.connection.close()


def cache_file(shop: Path) -> Path:
    """Return the path of a shop's cache. Raises RuntimeError where the user has no home."""
    return platformdirs.user_cache_path("baytree") / f"{digest(shop.resolve())}.sqlite"


def rows(cache: Cache, kind: str) -> Iterator[tuple[str, bytes]]:
    """Yield the name and content of every row of a kind; damaged rows are skipped."""
    select = "SELECT name, content, hash FROM row WHERE kind = ?"
    try:
        for name, content, hash_ in cache.connection.execute(select, (kind,)):
            if isinstance(content, bytes) and hash_ == digest(kind, name, content):
                yield str(name), content
    except sqlite3.Error as error:
        note(cache, error)


def row(cache: Cache, kind: str, name: str) -> bytes:
    """Return the content of one row; b"" where it is missing or damaged."""
    select = "SELECT content, hash FROM row WHERE kind = ? AND name = ?"
    try:
        content, hash_ = cache.connection.execute(select, (kind, name)).fetchone() or (b"", "")
    except sqlite3.Error as error:
        note(cache, error)
        return b""
    undamaged = isinstance(content, bytes) and hash_ == digest(kind, name, content)
    return content if undamaged else b""


def put_row(cache: Cache, kind: str, name: str, content: bytes) -> None:
    """Write one row. Raises sqlite3.Error if that fails."""
    if not cache.connection.in_transaction:
        cache.connection.execute("BEGIN IMMEDIATE")
    new = (kind, name, content, digest(kind, name, content))
    cache.connection.execute("INSERT OR REPLACE INTO row VALUES (?, ?, ?, ?)", new)


def drop_row(cache: Cache, kind: str, name: str) -> None:
    """Delete one row, if it exists. Raises sqlite3.Error if that fails."""
    if not cache.connection.in_transaction:
        cache.connection.execute("BEGIN IMMEDIATE")
    cache.connection.execute("DELETE FROM row WHERE kind = ? AND name = ?", (kind, name))


@contextmanager
def transaction(cache: Cache) -> Iterator[None]:
    """Commit the rows written; if that fails, the rows of the last run stay, with a note."""
    try:
        yield
        if cache.connection.in_transaction:
            cache.connection.execute("COMMIT")
    except sqlite3.Error as error:
        note(cache, error)
        cache.connection.rollback()


def note(cache: Cache, error: Exception) -> None:
    """Add a note that says why the cache can't be used."""
    text = f"the cache can't be used ({error}): the next run does all its work again"
    if text not in cache.notes:
        cache.notes.append(text)


def _opened(shop: Path) -> Cache:
    try:
        file = cache_file(shop)
        file.parent.mkdir(parents=True, exist_ok=True)
        return Cache(_connected_to(file))
    except (OSError, RuntimeError, sqlite3.Error) as error:
        spare = Cache(_connected(":memory:"))
        note(spare, error)
        return spare


def _connected_to(file: Path) -> sqlite3.Connection:
    """Connect to a file; one that isn't a database is deleted."""
    try:
        return _connected(str(file))
    except sqlite3.OperationalError:  # it is locked, or can't be written
        raise
    except sqlite3.DatabaseError:
        file.unlink()
        return _connected(str(file))


def _connected(file: str) -> sqlite3.Connection:
    """Connect, and delete all rows that another version of the code has written."""
    connection = sqlite3.connect(file, timeout=PATIENCE, isolation_level=None)
    try:
        # A power failure may damage rows: their hashes show it.
        connection.execute("PRAGMA synchronous = OFF")
        connection.executescript(TABLES)
        columns = [column[1] for column in connection.execute("PRAGMA table_info(row)")]
        if columns != COLUMNS:
            raise sqlite3.DatabaseError("this isn't a cache of this program")
        if connection.execute("SELECT code FROM written_by").fetchall() != [(_our_code(),)]:
            connection.execute("BEGIN IMMEDIATE")
            connection.execute("DELETE FROM row")
            connection.execute("DELETE FROM written_by")
            connection.execute("INSERT INTO written_by VALUES (?)", (_our_code(),))
            connection.execute("COMMIT")
    except sqlite3.Error:
        connection.close()
        raise
    return connection


@cached
def _our_code() -> str:
    return digest(*(code.read_bytes() for code in sorted(PACKAGE.rglob("*.py"))))
