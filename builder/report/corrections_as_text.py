"""What was put right, for a person: a line for each correction, or the whole as a diff.

In: corrected files. Out: text.
"""

import difflib
from collections.abc import Iterable, Iterator, Sequence

from builder.model.correction import CorrectedFile
from builder.report.printable import printable

NO_END = "\\ No newline at end of file\n"


def corrections_as_text(files: Iterable[CorrectedFile]) -> str:
    """Write a line for each correction: where, what was wrong, and how the line reads now."""
    return "".join(
        f"{printable(one.file)}:{made.line}: fixed: {printable(made.finding.message)}; "
        f"now `{printable(made.now)}`\n"
        for one in files
        for made in one.corrections
    )


def corrections_as_diff(files: Iterable[CorrectedFile]) -> str:
    """Write what would change as a unified diff, which other tools can apply."""
    return "".join(line for one in files for line in _diff(one))


def _diff(one: CorrectedFile) -> Iterator[str]:
    before, after = _lines(one.before), _lines(one.after)
    name = printable(one.file)
    for line in difflib.unified_diff(before, after, f"a/{name}", f"b/{name}"):
        shown = printable(line, keep="\r\n\t")
        yield shown if shown.endswith("\n") else f"{shown}\n{NO_END}"


def _lines(text: str) -> Sequence[str]:
    """Split a text at its line ends alone, not at what else may look like one."""
    lines = text.split("\n")
    return [f"{line}\n" for line in lines[:-1]] + ([lines[-1]] if lines[-1] else [])
