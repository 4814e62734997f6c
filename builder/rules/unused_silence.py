"""A comment `# silence: ...` that silences nothing, names no rule that can be silenced, or gives no
reason.

Why: A silence outlives what it was for, and then hides the next mistake.

Wrong:

    belt:
      check: Lamp marked battery out
      results:
        - {result: yes, branch: all-good}  # silence: slang because our customers say so
        - {result: no, branch: repair}

Right:

    belt:
      check: Lamp marked dead battery out  # silence: slang because it is printed there
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Delete the comment, or write the rule and `because` with the reason. It counts for its own
line, or on a line of its own for the next. In the text of an article, where `#` begins a heading,
write it as `[//]: # (silence: slang because ...)`. A mistake of text cannot be silenced.
"""

from collections.abc import Collection, Iterable, Iterator

from builder.model.finding import Finding, Severity
from builder.model.silence import Silence
from builder.rules.shared.rule import Family, Rule
from builder.rules.shared.suggestions import suggestion

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
    """Yield the findings that are not silenced, and those about the silences.

    `judged` are the rules that were asked; a silence of another rule is not told as unused here.
    """
    valid = {(one.at.file, one.line, one.rule): one for one in silences if one.reason}
    used: set[tuple[str, int, str]] = set()
    for finding in findings:
        key = (finding.at.file, finding.at.line, finding.rule)
        if key in valid:
            used.add(key)
        else:
            yield finding
    for key, one in valid.items():
        if one.rule in judged and key not in used:
            message = f"`{one.rule}` finds nothing on line {one.line}"
            yield RULE.finding(one.at, message, WHY, "delete the comment")


def malformed(silences: Iterable[Silence], rules: Collection[str]) -> Iterator[Finding]:
    """Yield a finding for every silence without a reason, or of a rule that cannot be silenced."""
    for one in silences:
        if one.rule not in rules:
            hint = suggestion(one.rule, rules, "name a rule that can be silenced")
            yield RULE.finding(one.at, f"no rule `{one.rule}` can be silenced", WHY, hint)
        elif not one.reason:
            hint = f"write `# silence: {one.rule} because` and the reason"
            yield RULE.finding(one.at, "this silence gives no reason, so it counts for nothing",
                               WHY, hint)  # fmt: skip
