"""The one hash by which anything is compared with what it was.

In: bytes, or values that are compared by their text. Out: a short hexadecimal string.
"""

import hashlib


def digest(*parts: object) -> str:
    """Return a short hash; the parts are kept apart."""
    digester = hashlib.sha256()
    for part in parts:
        text = part if isinstance(part, bytes) else str(part).encode(errors="surrogatepass")
        digester.update(text)
        digester.update(b"\0")
    return digester.hexdigest()[:20]
