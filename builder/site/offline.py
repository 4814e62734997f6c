"""The site for the days without a network: a service worker with the list of every file.

In: the folder of a finished site, without its manifest. Out: `worker.js` beside `index.html`, and
how much the site holds, for the page that offers to keep it.
"""

import hashlib
import json
from collections.abc import Mapping
from pathlib import Path

from builder.site.manifest import digests_of
from builder.web import WEB

WORKER = "worker.js"
SIZE_SCRIPT = "assets/offline-data.js"


def write_offline(site: Path, known: Mapping[str, str]) -> dict[str, str]:
    """Write the worker and the size of the site; return the SHA-256 of every file but the worker.

    The same files give the same worker.
    """
    digests = digests_of(site, known)
    size = sum((site / name).stat().st_size for name in digests)
    (site / SIZE_SCRIPT).write_text(f'globalThis.baytreeOffline = {{"bytes":{size}}};\n', "utf-8")
    digests = digests_of(site, digests)
    listed = json.dumps(digests, ensure_ascii=False, indent=0)
    version = hashlib.sha256(listed.encode()).hexdigest()[:12]
    head = f"const VERSION = {json.dumps(version)};\nconst FILES = {listed};\n"
    text = head + (WEB / WORKER).read_text("utf-8")
    (site / WORKER).write_text(text, "utf-8", newline="\n")
    return digests
