"""The cache of a shop: rows of bytes in one SQLite file.

In: rows under a kind and a name. Out: the rows of a kind, without those that are damaged.

What a run writes becomes valid with `commit`, so that a run that is killed leaves the rows of the
last one. A cache that can't be used is replaced by a temporary one, with a note for the command to
print: the work is done all the same.
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
    notes: list[str] = field(default_factory=list)  # what the user is told once, at the end


@contextmanager
def opened(shop: Path) -> Iterator[Cache]:
    """Open the cache of a shop; what is not committed by the end is dropped."""
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
    """Return where the cache of a shop lies. Raises RuntimeError where the user has no home."""
    return platformdirs.user_cache_path("baytree") / f"{digest(shop.resolve())}.sqlite"


def rows(cache: Cache, kind: str) -> Iterator[tuple[str, bytes]]:
    """Yield the name and content of every row of a kind; damaged rows are passed over."""
    select = "SELECT name, content, hash FROM row WHERE kind = ?"
    try:
        for name, content, hash_ in cache.connection.execute(select, (kind,)):
            if isinstance(content, bytes) and hash_ == digest(kind, name, content):
                yield str(name), content
    except sqlite3.Error as error:
        note(cache, error)


def row(cache: Cache, kind: str, name: str) -> bytes:
    """Return the content of one row; b"" where it is not there, or damaged."""
    select = "SELECT content, hash FROM row WHERE kind = ? AND name = ?"
    try:
        content, hash_ = cache.connection.execute(select, (kind, name)).fetchone() or (b"", "")
    except sqlite3.Error as error:
        note(cache, error)
        return b""
    whole = isinstance(content, bytes) and hash_ == digest(kind, name, content)
    return content if whole else b""


def put_row(cache: Cache, kind: str, name: str, content: bytes) -> None:
    """Write one row. Raises sqlite3.Error where that can't be done."""
    if not cache.connection.in_transaction:
        cache.connection.execute("BEGIN IMMEDIATE")
    new = (kind, name, content, digest(kind, name, content))
    cache.connection.execute("INSERT OR REPLACE INTO row VALUES (?, ?, ?, ?)", new)


def drop_row(cache: Cache, kind: str, name: str) -> None:
    """Delete one row, if it is there. Raises sqlite3.Error where that can't be done."""
    if not cache.connection.in_transaction:
        cache.connection.execute("BEGIN IMMEDIATE")
    cache.connection.execute("DELETE FROM row WHERE kind = ? AND name = ?", (kind, name))


@contextmanager
def transaction(cache: Cache) -> Iterator[None]:
    """Commit what is written; where it can't be, the rows of the last run stay, with a note."""
    try:
        yield
        if cache.connection.in_transaction:
            cache.connection.execute("COMMIT")
    except sqlite3.Error as error:
        note(cache, error)
        cache.connection.rollback()


def note(cache: Cache, error: Exception) -> None:
    """Note why the cache is of no use, for the command to print."""
    text = f"the cache can't be used ({error}): the next run does all its work again"
    if text not in cache.notes:
        cache.notes.append(text)


def _opened(shop: Path) -> Cache:
    try:
        file = cache_file(shop)
        file.parent.mkdir(parents=True, exist_ok=True)
        return Cache(_sound(file))
    except (OSError, RuntimeError, sqlite3.Error) as error:
        spare = Cache(_connected(":memory:"))
        note(spare, error)
        return spare


def _sound(file: Path) -> sqlite3.Connection:
    """Connect to a file; one that is no database is thrown away."""
    try:
        return _connected(str(file))
    except sqlite3.OperationalError:  # it is locked, or can't be written
        raise
    except sqlite3.DatabaseError:
        file.unlink()
        return _connected(str(file))


def _connected(file: str) -> sqlite3.Connection:
    """Connect, and drop all rows that another version of our code has written."""
    connection = sqlite3.connect(file, timeout=PATIENCE, isolation_level=None)
    try:
        # After a crash of the machine the rows may be damaged: their hashes tell.
        connection.execute("PRAGMA synchronous = OFF")
        connection.executescript(TABLES)
        columns = [column[1] for column in connection.execute("PRAGMA table_info(row)")]
        if columns != COLUMNS:
            raise sqlite3.DatabaseError("this is no cache of ours")
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
