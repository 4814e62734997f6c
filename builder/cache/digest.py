"""The one hash by which anything is compared with what it was.

In: bytes, values that are compared by their text, files. Out: a short hexadecimal string.
"""

import hashlib
from pathlib import Path


def digest(*parts: object) -> str:
    """Return a short hash; the parts are kept apart."""
    digester = hashlib.sha256()
    for part in parts:
        content = part if isinstance(part, bytes) else str(part).encode(errors="surrogatepass")
        digester.update(content)
        digester.update(b"\0")
    return digester.hexdigest()[:20]


def file_digest(file: Path) -> str:
    """Return a short hash of a file's name and content, as far as that can be read.

    A large file is never held whole.
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
