"""The site for the days without a network: a service worker with the list of every file.

In: the folder of a finished site, without its manifest. Out: `worker.js` beside `index.html`, and how
much the site holds, for the page that offers to keep it.
"""

import hashlib
import json
from pathlib import Path

from builder.site.manifest import folder_state, sha256_of
from builder.web import WEB

WORKER = "worker.js"
SIZE_SCRIPT = "assets/offline-data.js"


def write_offline(site: Path) -> None:
    """Write the worker and the size of the site; the same files give the same worker."""
    stamps = folder_state(site)
    size = sum(stamp.size for stamp in stamps.values())
    (site / SIZE_SCRIPT).write_text(f'globalThis.baytreeOffline = {{"bytes":{size}}};\n', "utf-8")
    files = {name: sha256_of(site / name) for name in sorted({*stamps, SIZE_SCRIPT})}
    listed = json.dumps(files, ensure_ascii=False, indent=0)
    version = hashlib.sha256(listed.encode()).hexdigest()[:12]
    head = f"const VERSION = {json.dumps(version)};\nconst FILES = {listed};\n"
    (site / WORKER).write_text(head + (WEB / WORKER).read_text("utf-8"), "utf-8", newline="\n")
