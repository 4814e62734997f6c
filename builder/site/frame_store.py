"""The frames of a running preview: each is made by the engine once.

In: forms of frames, the engine's settings. Out: frames, and the engine's other files.
"""

import threading
from collections.abc import Iterable, Mapping
from typing import Any

from builder.site.engine import frame_pages
from builder.site.page_frames import FrameForm


class FrameStore:
    """Frames by their form, for one state of the shop's settings."""

    def __init__(self, settings: dict[str, Any]) -> None:
        """Begin without frames; `settings` are the engine's."""
        self.settings = settings
        self.engine_files: Mapping[str, bytes] = {}  # that all frames use
        self._frames: dict[FrameForm, bytes] = {}
        self._lock = threading.Lock()  # the engine changes what all threads share

    def prepare(self, forms: Iterable[FrameForm]) -> None:
        """Make the frames that are missing, in one run of the engine."""
        with self._lock:
            missing = [form for form in dict.fromkeys(forms) if form not in self._frames]
            files = dict(frame_pages(dict(missing), self.settings))
            self._frames |= {form: files.pop(f"{form.path}.html") for form in missing}
            self.engine_files = files or self.engine_files

    def frame(self, form: FrameForm) -> bytes:
        """Return a frame."""
        self.prepare([form])
        return self._frames[form]
