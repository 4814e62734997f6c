"""A verification that names no check, no procedure, or a result that it doesn't have.

An entry without a blank is a check of this tree or a procedure; with a blank it is free text.
`{check: result}` names the result that passes, `{check: [none, not run yet]}` several; a check
whose readings all have a spec passes at `within spec`, a procedure at the first word that it
returns.

Why: The walk can't ask for the reading after the repair, so nobody proves that it helped.

Wrong:

    drive: with care
    why: It may stall.
    steps:
      horn:
        check: Does the horn sound?
        results: {yes: all-good, no: dead}
      dead:
        fix: Replace the horn
        cause: The horn is dead
        weight: 1
        verify: [{horn: loud}]

Right:

    drive: with care
    why: It may stall.
    steps:
      horn:
        check: Does the horn sound?
        results: {yes: all-good, no: dead}
      dead:
        fix: Replace the horn
        cause: The horn is dead
        weight: 1
        verify: [{horn: yes}]

Fix: Name a check of this tree with the result that passes, or a procedure, or write a sentence.
"""

import re
from collections.abc import Iterator, Sequence

from builder.model.checks import Check
from builder.model.ends import Fix, Verification
from builder.model.finding import Finding, Severity
from builder.model.procedures import Procedure
from builder.rules.shared.close_names import slip_edit, suggestion
from builder.rules.shared.rule import Facts, Family, Rule
from builder.rules.shared.spec_words import is_missing_word

RULE = Rule(
    name="no-such-verification",
    family=Family.EVIDENCE,
    severity=Severity.ERROR,
    summary="A verification that names no check, no procedure, or no result.",
)
LIKE_A_RESULT = re.compile(r"([\w-]+) ?(?:==?|->|→) ?(.+)")
WHY = "the walk can't ask for the reading after the repair"


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every named verification that can't be carried out."""
    for step in facts.steps:
        if isinstance(step.body, Fix):
            for one in step.body.verify:
                named = one.is_named or one.passes or one.readings
                if not named and (match := LIKE_A_RESULT.fullmatch(one.text)):
                    yield from _in_one_phrase(facts, one, match)
                if named and one.text not in facts.tree.broken:
                    yield from _of_name(facts, one)


def _in_one_phrase(facts: Facts, one: Verification, match: re.Match[str]) -> Iterator[Finding]:
    """Yield a finding for `fuse = both`, which would be a sentence for the tech to judge."""
    if match[1] in facts.tree.steps:
        hint = f"write the check and its result: `{{{match[1]}: {match[2]}}}`"
        yield RULE.finding(one.text.at, f"`{one.text}` is read as a sentence", WHY, hint)


def _of_name(facts: Facts, one: Verification) -> Iterator[Finding]:
    step = facts.tree.steps.get(one.text)
    procedure = facts.library.procedures.get(one.text)
    if step and isinstance(step.body, Check):
        if not any(is_missing_word(facts, step, result) for result in one.passes):
            yield from _of_check(one, step.body)  # else `spec-result` asks for the result
    elif procedure:
        yield from _of_procedure(one, procedure)
    else:
        checks = [n for n, other in facts.tree.steps.items() if isinstance(other.body, Check)]
        known = (*checks, *facts.library.procedures)
        listed = ", ".join(f"`{name}`" for name in checks)
        hint = suggestion(one.text, known, f"name a check ({listed}), or write a sentence")
        edit = slip_edit(one.text, known)
        if " " in one.text and one.passes:  # a sentence with a colon in it
            hint, edit = f'put the sentence in quotes: `"{one.text}: {one.passes[0]}"`', None
        yield RULE.finding(one.text.at, f"`{one.text}` is no check and no procedure", WHY, hint,
                           edit=edit)  # fmt: skip


def _of_check(one: Verification, check: Check) -> Iterator[Finding]:
    known = [str(result.text) for result in check.results]
    names = {reading.name for reading in check.readings}
    for result in (result for result in one.passes if result not in known):
        hint = suggestion(result, known, "use a result of that check")
        yield RULE.finding(result.at, f"`{one.text}` has no result `{result}`", WHY, hint,
                           edit=slip_edit(result, known))  # fmt: skip
    for name, words in one.readings.items():
        if name not in names:
            yield RULE.finding(words.at, f"`{one.text}` has no reading `{name}`", WHY,
                               suggestion(name, names, "use a reading of that check"))  # fmt: skip
    by_itself = check.by or (check.readings and all(reading.spec for reading in check.readings))
    if not (one.passes or one.readings or by_itself):
        yield RULE.finding(one.text.at, f"`{one.text}` doesn't say which result passes", WHY,
                           _with_result(one, known))  # fmt: skip


def _with_result(one: Verification, known: Sequence[str]) -> str:
    """Return how to name the result that passes: only the author knows which it is."""
    listed = ", ".join(f"`{result}`" for result in known) or "`good`"
    return f"write `{{{one.text}: RESULT}}` with the result of a repaired vehicle: {listed}"


def _of_procedure(one: Verification, procedure: Procedure) -> Iterator[Finding]:
    needed = [str(asked.name) for asked in procedure.tree.asks if asked.default is None]
    if one.passes and not procedure.tree.asks:
        yield RULE.finding(one.passes[0].at, f"`{one.text}` takes nothing", WHY,
                           f"write `{one.text}` alone")  # fmt: skip
    elif len(needed) > 1 or (needed and not one.passes):
        listed = " and ".join(f"`{name}`" for name in needed)
        yield RULE.finding(one.text.at, f"`{one.text}` takes {listed}", WHY,
                           f"write `{{{one.text}: ...}}`, or name a check")  # fmt: skip
