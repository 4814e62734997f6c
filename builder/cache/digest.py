"""The one hash function for detecting changes.

In: bytes, other values (by their text), files. Out: a short hexadecimal string.
"""

import hashlib
from pathlib import Path


def digest(*parts: object) -> str:
    """Return a short hash; `("ab", "c")` and `("a", "bc")` differ."""
    digester = hashlib.sha256()
    for part in parts:
        content = part if isinstance(part, bytes) else str(part).encode(errors="surrogatepass")
        digester.update(content)
        digester.update(b"\0")
    return digester.hexdigest()[:20]


def file_digest(file: Path) -> str:
    """Return a short hash of a file's name and, if it can be read, its content.

    A large file is never in memory as a whole.
    """
    try:
        with file.open("rb") as stream:
            return digest(file, hashlib.file_digest(stream, "sha256").hexdigest())
    except OSError:
        return digest(file)


def files_in(folder: Path) -> list[Path]:
    """Return every file below a folder, in order, without compiled code."""
    files = (file for file in folder.rglob("*") if "__pycache__" not in file.parts)
    return sorted(file for file in files if file.is_file())
