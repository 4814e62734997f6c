"""A shop that is checked again after every save.

In: the times of its files. Out: a `Saved`: the preview, and the report for the terminal. Only what
a save changed is read and judged again.
"""

import os
import sys
from collections.abc import Mapping
from datetime import date
from functools import cache as once
from functools import partial
from pathlib import Path
from typing import Any

from builder.cache.database import opened
from builder.check.filled_knowledge import Knowledge, known_knowledge
from builder.check.filled_tree import saved_tree_of
from builder.check.verdict import Verdict, verdict_of
from builder.commands.findings import file_lines, print_notes
from builder.model.library import Library, self_contained
from builder.reader.file_names import is_tree, shop_files
from builder.reader.source import Source, read_source
from builder.report.as_text import color_wanted, counted_findings, finding_line, marked_lines
from builder.site.preview import Preview, PreviewInput
from builder.site.serve_site import Saved
from builder.site.watch import FileTimes


class SavedShop:
    """What is kept of a shop from one save to the next."""

    def __init__(self, shop: Path) -> None:
        """Begin with nothing known."""
        self.shop = shop
        self._files: FileTimes = {}  # as they were when the texts below were read
        self._texts: Mapping[str, Source] = {}  # of trees, by file
        self._knowledge: Knowledge | None = None
        self._knowledge_state: Any = None  # what it was read from
        self._preview: Preview | None = None
        self._printed: set[str] = set()  # notes: each is printed once

    def check(self, files: FileTimes) -> Saved:
        """Check the shop; `files` were polled before anything is read.

        Raises OSError where a file was saved again meanwhile; the next check has it.
        """
        knowledge, texts = self._read_knowledge(files), self._read_texts(files)
        with opened(self.shop) as cache:
            verdict = verdict_of(knowledge, cache, date.today())
            library = self_contained(verdict.library)
        print_notes(note for note in cache.notes if note not in self._printed)
        self._printed.update(cache.notes)
        self._refuse_others(library, texts)
        read_tree = partial(saved_tree_of, texts, library)
        lines = partial(marked_lines, sources=once(partial(file_lines, self.shop)))
        source = PreviewInput(
            self.shop, library, read_tree, verdict.findings, verdict.waiting, lines
        )
        self._files, self._texts = files, texts
        self._preview = Preview(source, self._preview)
        return Saved(self._preview, verdict.errors, report_of(verdict))

    def _read_knowledge(self, files: FileTimes) -> Knowledge:
        """Read `kb/` and the settings, if a file there or the list of all files has changed."""
        others = {path: time for path, time in files.items() if not _is_tree(self.shop, path)}
        state = (others, shop_files(self.shop))
        if self._knowledge is None or state != self._knowledge_state:
            self._knowledge = known_knowledge(self.shop, self._knowledge)
            self._knowledge_state = state
        return self._knowledge

    def _read_texts(self, files: FileTimes) -> dict[str, Source]:
        """Read the trees that were saved."""
        texts = {}
        for path, time in files.items():
            name = path.relative_to(self.shop).as_posix()
            if is_tree(name):
                is_same = name in self._texts and self._files.get(path) == time
                source = self._texts[name] if is_same else read_source(self.shop, path)
                if isinstance(source, Source):
                    texts[name] = source
        return texts

    def _refuse_others(self, library: Library, texts: Mapping[str, Source]) -> None:
        """Raise OSError where a tree that was checked isn't the text that would be shown."""
        for tree in library.trees.values():
            text = texts.get(tree.file)
            if text is None or text.revision != tree.revision:
                self._files = {}  # the next check reads every text again, whatever its time
                raise FileNotFoundError(f"{tree.file} was changed while it was being checked")


def report_of(verdict: Verdict) -> str:
    """Write how many findings there are, and each in a line."""
    color = color_wanted(sys.stdout.isatty(), os.environ)
    lines = (f"  {finding_line(one, color=color)}" for one in verdict.findings)
    head = counted_findings(verdict.findings) if verdict.findings else "no findings"
    return "\n".join((head, *lines))


def _is_tree(shop: Path, path: Path) -> bool:
    return is_tree(path.relative_to(shop).as_posix())
