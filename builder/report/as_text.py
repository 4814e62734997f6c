"""Findings for a person at a terminal.

In: findings in their order, a function that gives the lines of a file, and whether to color. Out:
text: the place, the line with a mark under it, why it matters, what to write, related places, and
a summary line.
"""

import unicodedata
from collections.abc import Callable, Collection, Iterable, Mapping, Sequence

from builder.model.finding import Finding, Severity
from builder.model.text import Position
from builder.report.printable import printable
from builder.rules.catalog import RULES

Sources = Callable[[str], list[str]]

WIDEST_SOURCE_LINE = 100  # columns of a source line that are shown; around the mark if it is longer
BOLD, RED, YELLOW, DIM, RESET = "\033[1m", "\033[31m", "\033[33m", "\033[2m", "\033[0m"
SEVERITY_STYLES = {Severity.ERROR: RED, Severity.WARNING: YELLOW}


def color_wanted(is_terminal: bool, environment: Mapping[str, str]) -> bool:
    """Return whether to color: on a terminal only, and never where NO_COLOR is set."""
    return is_terminal and not environment.get("NO_COLOR") and environment.get("TERM") != "dumb"


def findings_as_text(
    findings: Sequence[Finding],
    sources: Sources,
    trees: int,
    *,
    color: bool = False,
    drafts: Collection[str] = (),
) -> str:
    """Write every finding, then how many there are; `drafts` are files of trees."""
    paint = _painted if color else _unpainted
    blocks = ["\n".join(_finding(one, sources, paint)) for one in findings]
    summary = "".join(
        f"{line}\n" for line in (_summary(findings, trees), *_later(findings, drafts))
    )
    return "\n\n".join([*blocks, summary])


Paint = Callable[[str, str], str]


def _painted(text: str, style: str) -> str:
    return f"{style}{text}{RESET}"


def _unpainted(text: str, _style: str) -> str:
    return text


def finding_line(finding: Finding, *, color: bool = False) -> str:
    """Write a finding in one line: the place, the severity, what is wrong, the rule."""
    return _head(finding, _painted if color else _unpainted)


def marked_lines(at: Position, sources: Sources) -> str:
    """Return the source line with a mark under the range, as at a terminal; "" without one."""
    return "\n".join(_line(at, sources, _unpainted, ""))


def counted_findings(findings: Sequence[Finding]) -> str:
    """Count findings: 1 error, 2 warnings."""
    errors = sum(one.severity is Severity.ERROR for one in findings)
    counts = ((errors, "error"), (len(findings) - errors, "warning"))
    return ", ".join(f"{count} {word}{'' if count == 1 else 's'}" for count, word in counts)


def _head(finding: Finding, paint: Paint) -> str:
    at, style = finding.at, SEVERITY_STYLES[finding.severity]
    place = paint(f"{printable(at.file)}:{at.line}:{at.column}:", BOLD)
    severity = paint(f"{finding.severity}:", BOLD + style)
    return f"{place} {severity} {printable(finding.message)} {paint(f'[{finding.rule}]', DIM)}"


def _finding(finding: Finding, sources: Sources, paint: Paint) -> Iterable[str]:
    yield _head(finding, paint)
    yield from _line(finding.at, sources, paint, SEVERITY_STYLES[finding.severity])
    if finding.why:
        yield f"  {paint('why:', BOLD)}  {printable(finding.why)}"
    if finding.hint:
        yield f"  {paint('hint:', BOLD)} {printable(finding.hint)}"
    for other in finding.related:
        place = f"{printable(other.at.file)}:{other.at.line}:{other.at.column}:"
        yield f"  {paint('see:', BOLD)}  {place} {printable(other.note)}"
        yield from _line(other.at, sources, paint, DIM)


def _line(at: Position, sources: Sources, paint: Paint, style: str) -> Iterable[str]:
    """Yield the source line with a mark under the range; nothing where there is no such line."""
    lines = sources(at.file)
    if not 0 < at.line <= len(lines):
        return
    line = lines[at.line - 1].rstrip("\r\n").replace("\t", " ")
    start = min(at.column - 1, len(line))
    end = at.end_column - 1 if at.end_line == at.line else len(line.rstrip())
    start_shown = (
        max(0, min(start - WIDEST_SOURCE_LINE // 3, len(line) - WIDEST_SOURCE_LINE))
        if len(line) > WIDEST_SOURCE_LINE
        else 0
    )
    shown = line[start_shown : start_shown + WIDEST_SOURCE_LINE]
    shown = f"…{shown[1:]}" if start_shown else shown
    mark = line[start : max(start + 1, min(end, start_shown + WIDEST_SOURCE_LINE))]
    gutter = f"{at.line:>6} | "
    yield paint(gutter, DIM) + printable(shown)
    blanks = " " * _columns(line[start_shown:start])
    yield paint(" " * 6 + " | ", DIM) + blanks + paint("^" * max(1, _columns(mark)), style)


def _columns(text: str) -> int:
    """Return how many columns a terminal needs; East Asian ones may take two each."""
    return sum(
        0 if unicodedata.combining(one) else 1 + (unicodedata.east_asian_width(one) in "WF")
        for one in printable(text)
    )


def waiting_note(count: int) -> str:
    """Write a line on the findings that may only follow from those shown; "" without one."""
    what = "1 more finding waits" if count == 1 else f"{count} more findings wait"
    return f"{what} until this is right: it may be their cause\n" if count else ""


def elsewhere_note(count: int) -> str:
    """Write a line on the findings in files that nobody asked for; "" without one."""
    what = "1 more finding is" if count == 1 else f"{count} more findings are"
    return f"{what} in other files: `baytree check` shows all\n" if count else ""


def _later(findings: Sequence[Finding], drafts: Collection[str]) -> Iterable[str]:
    """Yield a line on the findings that count as warnings only while their tree is a draft."""
    severities = {rule.RULE.name: rule.RULE.severity for rule in RULES}
    files = [one.at.file for one in findings
             if one.at.file in drafts and one.severity is Severity.WARNING
             and severities.get(one.rule) is Severity.ERROR]  # fmt: skip
    if files:
        names = ", ".join(printable(file) for file in dict.fromkeys(files))
        count = "1 of the warnings becomes an error" if len(files) == 1 else (
            f"{len(files)} of the warnings become errors")  # fmt: skip
        yield f"{count} once the draft is `status: ready`: {names}"


def _summary(findings: Sequence[Finding], trees: int) -> str:
    return f"{trees} tree{'' if trees == 1 else 's'}, {counted_findings(findings)}"
