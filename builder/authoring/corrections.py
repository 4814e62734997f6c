"""A file put right step by step: an edit is kept only if the file then reads better.

In: the text of a file and its findings. Out: texts to be checked, one at a time; for each the
findings of the file are sent back. At the end the corrected file.

What stops the reading is put right first, since it hides all that comes after it. A finding that
shows up then was there before; any other new one is a reason to leave the edit out. Where edits
lead from one mistake to the next and never to fewer, the text stays as the author wrote it.
"""

from collections.abc import Collection, Generator, Sequence
from dataclasses import dataclass, replace

from builder.authoring.edits import Span, apart, edited, line_after, span_in
from builder.authoring.hidden_findings import Stage, entry_line, stage_of, was_hidden
from builder.model.correction import CorrectedFile, Correction
from builder.model.finding import Finding

MOST_ROUNDS = 30  # each puts something right, or gives something up

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
    stages = [stage_of(finding) for finding in state.findings]
    return tuple(map(stages.count, Stage))


def _to_try(state: _State, given_up: Collection[Mark]) -> list[tuple[Finding, Span]]:
    """Return the edits to make at once: of what hides the most, and apart from each other."""
    spans = {
        span: finding
        for finding in reversed(_readable(state))
        if finding.edit and _mark(finding, finding.at.line) not in given_up
        and (span := span_in(state.text, finding.edit))
    }  # fmt: skip
    first = min(map(stage_of, spans.values()), default=Stage.YAML)
    return [(spans[span], span) for span in apart(one for one in spans
                                                  if stage_of(spans[one]) == first)]  # fmt: skip


def _readable(state: _State) -> list[Finding]:
    """Return the findings that none in their entry stands before: they may say wrong things."""
    lines = state.text.split("\n")
    entries = [(entry_line(lines, finding.at.line), finding) for finding in state.findings]
    first: dict[int, Stage] = {}
    for entry, finding in entries:
        first[entry] = min(first.get(entry, stage_of(finding)), stage_of(finding))
    return [finding for entry, finding in entries if stage_of(finding) == first[entry]]


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
    return all(any(was_hidden(lines, other, one) for one, _ in chosen) for other in new)


def _mark(finding: Finding, line: int) -> Mark:
    return finding.rule, finding.message, line


def _corrected(file: str, before: str, state: _State) -> CorrectedFile:
    lines = state.text.split("\n")
    made = sorted(state.made, key=lambda one: one[1])
    corrections = (Correction(finding, line, lines[line - 1].strip()) for finding, line in made)
    return CorrectedFile(file, before, state.text, tuple(corrections))
