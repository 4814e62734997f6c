"""The trouble codes that were written down on a walk, each with its status.

In: the tables, the steps as they were taken. Out: lines. A code without a status word beside it
says so: current and history lead to different work.
"""

import re
from collections.abc import Iterator, Sequence

from builder.walk.steps_taken import StepTaken
from builder.walk.walk_tables import WalkTables

_CODE = re.compile(r"\b([PCBU][0-3][0-9A-F]{3}(?:-[0-9A-F]{2})?)\b", re.IGNORECASE)
_STATUS = re.compile(
    r"\b(current|active|present|pending|confirmed|permanent|stored|history|historic|intermittent)\b",
    re.IGNORECASE,
)


def code_lines(tables: WalkTables, taken: Sequence[StepTaken]) -> list[str]:
    """Return every code with its status and the step at which it was written down."""
    return [*dict.fromkeys(_lines(tables, taken))]


def _lines(tables: WalkTables, taken: Sequence[StepTaken]) -> Iterator[str]:
    for one in taken:
        step = tables[one.entry.inside]["steps"][one.entry.step]["text"]
        for text in (*one.entry.wrote.values(), one.entry.seen):
            for code, status in codes_in(text):
                yield f"{code}: {status or 'status not recorded'} (at: {step})"


def codes_in(text: str) -> Iterator[tuple[str, str]]:
    """Yield each code of a text with the status words up to the next code."""
    found = [*_CODE.finditer(text)]
    for at, match in enumerate(found):
        end = found[at + 1].start() if at + 1 < len(found) else len(text)
        words = _STATUS.findall(text[match.end() : end])
        yield match[1].upper(), ", ".join(dict.fromkeys(word.lower() for word in words))
