"""A comment `# silence: ...` that silences nothing, names no rule that can be silenced, or gives no
reason.

Why: A silence that outlives its reason hides the next mistake.

Wrong:

    belt:
      check: Is the battery light off?
      results:
        - {result: yes, branch: all-good}  # silence: slang because our customers say so
        - {result: no, branch: repair}

Right:

    belt:
      check: Is the light marked dead battery off?  # silence: slang because it is printed there
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Delete the comment, or write the rule and `because` with the reason. It applies to its own
line, or on a line of its own to the next. In the text of an article, where `#` begins a heading,
write it as `[//]: # (silence: slang because ...)`. A text error can't be silenced.
"""

from collections.abc import Collection, Iterable, Iterator

from builder.model.finding import Finding, Severity
from builder.model.silence import Silence
from builder.rules.shared.close_names import suggestion
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="unused-silence",
    family=Family.UPKEEP,
    severity=Severity.WARNING,
    summary="A silencing comment that silences nothing or gives no reason.",
)
WHY = "a silence that outlives its reason hides the next mistake"


def not_silenced(
    findings: Iterable[Finding], silences: Iterable[Silence], judged: Collection[str]
) -> Iterator[Finding]:
    """Yield the findings that are not silenced, and a finding for every unused silence.

    `judged` are the rules that ran; a silence of any other rule doesn't count as unused here.
    """
    valid = {
        (silence.at.file, silence.line, silence.rule): silence
        for silence in silences
        if silence.reason
    }
    used: set[tuple[str, int, str]] = set()
    for finding in findings:
        key = (finding.at.file, finding.at.line, finding.rule)
        if key in valid:
            used.add(key)
        else:
            yield finding
    for key, silence in valid.items():
        if silence.rule in judged and key not in used:
            message = f"`{silence.rule}` finds nothing on line {silence.line}"
            yield RULE.finding(silence.at, message, WHY, "delete the comment")


def malformed(silences: Iterable[Silence], rules: Collection[str]) -> Iterator[Finding]:
    """Yield a finding for every silence without a reason, or of a rule that cannot be silenced."""
    for silence in silences:
        if silence.rule not in rules:
            hint = suggestion(silence.rule, rules, "name a rule that can be silenced")
            message = f"no rule `{silence.rule}` can be silenced"
            yield RULE.finding(silence.at, message, WHY, hint)
        elif not silence.reason:
            hint = f"write `# silence: {silence.rule} because` and the reason"
            message = "this silence gives no reason, so it has no effect"
            yield RULE.finding(silence.at, message, WHY, hint)
