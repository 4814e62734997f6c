"""A comment by which an author silences a rule on one line, with a reason.

In: the text of a file. Out: `Silence`s. `# silence: slang because ...` at the end of a line counts
for that line; on a line of its own it counts for the next line that is no comment. In the text of
an article, where `#` begins a heading, it is `[//]: # (silence: slang because ...)`.
"""

import re
from collections.abc import Iterator

from builder.model.silence import Silence
from builder.model.text import Position

COMMENT = re.compile(r"# *\(?silence: *([a-z-]+)(?: +because +(\S.*))?")

COMMENTS = ("#", "[//]:")


def silences_in(file: str, text: str) -> tuple[Silence, ...]:
    """Find every silencing comment of a file."""
    return tuple(_silences(file, text.splitlines())) if "silence:" in text else ()


def _silences(file: str, lines: list[str]) -> Iterator[Silence]:
    for number, line in enumerate(lines, 1):
        if match := COMMENT.search(line):
            at = Position(file, number, match.start() + 1, number, match.end() + 1)
            alone = line.lstrip().startswith(COMMENTS)
            counts_for = _next(lines, number) if alone else number
            yield Silence(at, match[1], match[2] or "", counts_for)


def _next(lines: list[str], number: int) -> int:
    """Return the next line below that is no comment."""
    below = (n for n, line in enumerate(lines[number:], number + 1) if _says_something(line))
    return next(below, number)


def _says_something(line: str) -> bool:
    return bool(line.strip()) and not line.lstrip().startswith(COMMENTS)
