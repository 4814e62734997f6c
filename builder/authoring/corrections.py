"""A file put right step by step: an edit is kept only if the file then reads better.

In: the text of a file and its findings. Out: texts to be checked, one at a time; for each the
findings of the file are sent back. At the end the corrected file.

What stops the reading is put right first, since it hides all that comes after it. A finding that
shows up then was there before; any other new one is a reason to leave the edit out.
"""

from collections.abc import Collection, Generator, Sequence
from dataclasses import dataclass, replace

from builder.authoring.edits import Span, apart, edited, line_after, span_in
from builder.model.correction import CorrectedFile, Correction
from builder.model.finding import Finding

MOST_ROUNDS = 30  # each puts something right, or gives something up
# What hides what: a slip of YAML hides every slip of the format below it, and both hide the rules.
YAML_RULES = frozenset((
    "alias", "depth", "documents", "duplicate-key", "encoding", "lost-text", "merge-conflict",
    "syntax", "tab", "tag",
))  # fmt: skip
FORMAT_RULES = frozenset(("bad-value", "missing-key", "unknown-key", "wrong-type"))
ENTRY = 2  # columns: what starts further right belongs to the step or the entry above it

Findings = Sequence[Finding]
Correcting = Generator[str, Findings, CorrectedFile]
Chosen = Sequence[tuple[Finding, Span]]
Mark = tuple[str, str, int]  # rule, message and line of a finding: what it says once only


@dataclass(frozen=True, slots=True)
class _State:
    text: str
    findings: Findings
    made: tuple[tuple[Finding, int], ...] = ()  # what was put right, and on which line it is now


def correcting(file: str, text: str, findings: Findings) -> Correcting:
    """Yield texts to be checked, take the findings of each, and return the corrected file."""
    state = kept = _State(text, findings)
    given_up: set[Mark] = set()
    for _ in range(MOST_ROUNDS):
        chosen = _to_try(state, given_up)
        if not chosen and state is kept:
            break
        if chosen:
            state = yield from _after(state, chosen, given_up)
            kept = state if _weight(state) < _weight(kept) else kept
        else:  # an edit that only led to the next mistake: the author's own text is better
            given_up |= {_mark(one, one.at.line) for one, _ in state.made[len(kept.made) :]}
            state = kept
    return _corrected(file, text, kept)


def _after(state: _State, chosen: Chosen, given_up: set[Mark]) -> Generator[str, Findings, _State]:
    """Make edits all at once, or else one by one; those that are no good are given up."""
    if tried := (yield from _tried(state, chosen)):
        return tried
    for one in reversed(chosen):  # the spans above stay where they are
        tried = (yield from _tried(state, [one])) if len(chosen) > 1 else None
        state = tried or state
        if not tried:
            given_up.add(_mark(one[0], one[0].at.line))
    return state


def _weight(state: _State) -> tuple[int, ...]:
    """Return how many findings of each stage a text has: what hides others counts first."""
    stages = [_stage(finding) for finding in state.findings]
    return tuple(stages.count(stage) for stage in range(3))


def _to_try(state: _State, given_up: Collection[Mark]) -> list[tuple[Finding, Span]]:
    """Return the edits to make at once: of what hides the most, and apart from each other."""
    spans = {
        span: finding
        for finding in reversed(_readable(state))
        if finding.edit and _mark(finding, finding.at.line) not in given_up
        and (span := span_in(state.text, finding.edit))
    }  # fmt: skip
    first = min(map(_stage, spans.values()), default=0)
    return [(spans[span], span) for span in apart(one for one in spans
                                                  if _stage(spans[one]) == first)]  # fmt: skip


def _readable(state: _State) -> list[Finding]:
    """Return the findings that none in their entry stands before: they may say wrong things."""
    lines = state.text.split("\n")
    entries = [(_entry(lines, finding.at.line), finding) for finding in state.findings]
    first: dict[int, int] = {}
    for entry, finding in entries:
        first[entry] = min(first.get(entry, _stage(finding)), _stage(finding))
    return [finding for entry, finding in entries if _stage(finding) == first[entry]]


def _tried(state: _State, chosen: Chosen) -> Generator[str, Findings, _State | None]:
    """Make edits, have the text checked, and return the state after them if it is better."""
    spans = [span for _, span in chosen]
    text = edited(state.text, spans)
    findings = yield text
    if not _is_better(state, findings, chosen):
        return None
    moved = [(finding, line_after(line, spans)) for finding, line in state.made]
    new = [(finding, line_after(span.line, spans)) for finding, span in chosen]
    return replace(state, text=text, findings=findings, made=(*moved, *new))


def _is_better(before: _State, after: Findings, chosen: Chosen) -> bool:
    """Whether the findings put right are gone, and no other is new but those that they hid."""
    spans = [span for _, span in chosen]
    known = {_mark(one, line_after(one.at.line, spans)) for one in before.findings}
    left = {_mark(one, one.at.line) for one in after}
    if any(_mark(one, line_after(one.at.line, spans)) in left for one, _ in chosen):
        return False
    lines = edited(before.text, spans).split("\n")
    new = [one for one in after if _mark(one, one.at.line) not in known]
    return all(any(_hides(lines, one, other) for one, _ in chosen) for other in new)


def _hides(lines: Sequence[str], one: Finding, other: Finding) -> bool:
    """Whether a mistake kept the check from finding another one, rather than its edit made it."""
    stages = _stage(one), _stage(other)
    new_lines = one.edit.new.count("\n") if one.edit else 0
    same_line = one.at.line <= other.at.line <= one.at.line + new_lines
    same_entry = _entry(lines, one.at.line) == _entry(lines, other.at.line)
    match stages:
        case (0, 0):
            return other.edit is not None and not same_line
        case (0, 1):
            return other.edit is not None or not same_entry
        case (1, 1):
            return same_entry and (other.edit is not None or not same_line)
        case _:
            return stages[0] < stages[1]


def _stage(finding: Finding) -> int:
    return 0 if finding.rule in YAML_RULES else 1 if finding.rule in FORMAT_RULES else 2


def _entry(lines: Sequence[str], line: int) -> int:
    """Return the line on which the step or the entry of a line starts."""
    starts = (at for at in range(min(line, len(lines)), 0, -1) if _starts_entry(lines[at - 1]))
    return next(starts, 0)


def _starts_entry(line: str) -> bool:
    words = line.lstrip()
    return bool(words) and words[0] != "#" and len(line) - len(words) <= ENTRY


def _mark(finding: Finding, line: int) -> Mark:
    return finding.rule, finding.message, line


def _corrected(file: str, before: str, state: _State) -> CorrectedFile:
    lines = state.text.split("\n")
    made = sorted(state.made, key=lambda one: one[1])
    corrections = (Correction(finding, line, lines[line - 1].strip()) for finding, line in made)
    return CorrectedFile(file, before, state.text, tuple(corrections))
