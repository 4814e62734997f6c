"""Which answers to a question the DTCs stand for that were typed on a walk.

In: the DTCs of a question, each with its answer; a text, or the state. Out: answers, each once. A
DTC with a failure type counts as the same DTC without it where the question has only that.
"""

import re
from collections.abc import Iterator, Mapping

from builder.walk.job_state import JobState

# As the page's script has it: a letter, four characters, perhaps a failure type.
DTC = re.compile(r"\b([PCBU][0-3][0-9A-F]{3})(?:[-:]?([0-9A-F]{2}))?\b")


def answers_of_codes(codes: Mapping[str, str], text: str) -> list[str]:
    """Return the answers that the DTCs in a text stand for."""
    found = (match.groups() for match in DTC.finditer(text.upper()))
    answers = (codes.get(f"{code}-{kind}") or codes.get(code, "") for code, kind in found)
    return [*dict.fromkeys(filter(None, answers))]


def answers_read(codes: Mapping[str, str], state: JobState) -> list[str]:
    """Return the answers that the DTCs stand for which were read on the walk so far."""
    return answers_of_codes(codes, " ".join(_texts(state))) if codes else []


def _texts(state: JobState) -> Iterator[str]:
    yield state.complaint
    for entry in state.steps:
        yield entry.seen
        yield from entry.wrote.values()
