"""Comments that silence a rule on one line, with a reason.

In: the text of a file. Out: `Silence`s. `# silence: slang because ...` at the end of a line applies
to that line; on a line of its own it applies to the next line that isn't a comment. In an article,
where `#` begins a heading, it is `[//]: # (silence: slang because ...)`.
"""

import re
from collections.abc import Iterator

from builder.model.silence import Silence
from builder.model.text import Position

COMMENT = re.compile(r"# *\(?silence: *([a-z-]+)(?: +because +(\S.*))?")

COMMENTS = ("#", "[//]:")


def silences_in(file: str, text: str) -> tuple[Silence, ...]:
    """Find every silencing comment of a file."""
    if "silence:" not in text:
        return ()
    lines = text.replace("\r\n", "\n").split("\n")  # as editors count them
    return tuple(_silences(file, lines))


def _silences(file: str, lines: list[str]) -> Iterator[Silence]:
    below = _next_below(lines)
    for number, line in enumerate(lines, 1):
        if match := COMMENT.search(line):
            at = Position(file, number, match.start() + 1, number, match.end() + 1)
            alone = line.lstrip().startswith(COMMENTS)
            yield Silence(at, match[1], match[2] or "", below[number - 1] if alone else number)


def _next_below(lines: list[str]) -> list[int]:
    """Return for each line the next one below with content; itself where there is none."""
    lines_below: list[int] = []
    following = 0
    for number in range(len(lines), 0, -1):
        lines_below.append(following or number)
        if _has_content(lines[number - 1]):
            following = number
    return lines_below[::-1]


def _has_content(line: str) -> bool:
    return bool(line.strip()) and not line.lstrip().startswith(COMMENTS)
