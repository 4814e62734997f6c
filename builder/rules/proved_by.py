"""A proof under `proved_by` that doesn't hold on every path to its fix.

On every path to the fix, the check that is named was last left by one of the results that are
named.

Why: The customer's sheet prints it as measured, and on that path nobody measured it.

Wrong:

    feed:
      check: Is the power good under load?
      results: {yes: answers, no: repair}
      cannot_test: answers
    answers:
      check: Does the horn relay answer?
      results: {yes: all-good, no: relay}
    relay:
      fix: Replace the relay
      cause: The relay is dead
      weight: 1
      parts: [{part: relay, price: 12}]
      proved_by: [{feed: yes}]
      verify: [horn sounds]

Right:

    feed:
      check: Is the power good under load?
      results: {yes: answers, no: repair}
    answers:
      check: Does the horn relay answer?
      results: {yes: all-good, no: relay}
    relay:
      fix: Replace the relay
      cause: The relay is dead
      weight: 1
      parts: [{part: relay, price: 12}]
      proved_by: [{feed: yes}]
      verify: [horn sounds]

Fix: Correct the path that skips the check, or the branch that is wrong at it. If another result
proves the fix, too, name both.
"""

from collections.abc import Iterator

from builder.graph.evidence import Arrival, arrivals
from builder.graph.routes import Exit
from builder.model.checks import Check
from builder.model.ends import Fix, Proof
from builder.model.finding import Finding, Related, Severity
from builder.model.tree import Step
from builder.rules.shared.close_names import slip_edit, suggestion
from builder.rules.shared.rule import Facts, Family, Rule
from builder.rules.shared.spec_words import is_missing_word

RULE = Rule(
    name="proved-by",
    family=Family.EVIDENCE,
    severity=Severity.ERROR,
    summary="A proof that doesn't hold on every path to its fix.",
)
WHY = "the customer's sheet would say it was measured, and on this path it wasn't"


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every proof that names nothing, or fails on a path."""
    for step in facts.steps:
        if isinstance(step.body, Fix):
            for proof in step.body.proved_by:
                if proof.step not in facts.tree.broken:
                    yield from _of_proof(facts, step, proof)


def _of_proof(facts: Facts, fix: Step, proof: Proof) -> Iterator[Finding]:
    checks = {name: s.body for name, s in facts.tree.steps.items() if isinstance(s.body, Check)}
    if proof.step not in checks:
        hint = suggestion(proof.step, checks, "name a check of this tree")
        yield RULE.finding(proof.step.at, f"check `{proof.step}` doesn't exist", WHY, hint,
                           edit=slip_edit(proof.step, checks))  # fmt: skip
        return
    known = {str(result.text) for result in checks[proof.step].results}
    for result in proof.results:
        if is_missing_word(facts, facts.tree.steps[proof.step], result):
            return  # `spec-result` asks for it
        if result not in known:
            hint = suggestion(result, known, "use a result of that check")
            yield RULE.finding(result.at, f"`{proof.step}` has no result `{result}`", WHY, hint,
                               edit=slip_edit(result, known))  # fmt: skip
            return
    if not facts.whole:
        return  # what can't be read might be on the way
    for arrival in arrivals(facts.graph, proof.step, fix.id):
        if not _holds(arrival.left_by, proof):
            yield _past_it(facts, fix, proof, arrival) or _not_on_this_path(fix, proof, arrival)
            return


def _holds(left_by: Exit | None, proof: Proof) -> bool:
    return bool(left_by and left_by.result and left_by.result.text in proof.results)


def _past_it(facts: Facts, fix: Step, proof: Proof, arrival: Arrival) -> Finding | None:
    """Return the finding at the one branch to a fix that goes past the check that leads to it."""
    moves = facts.graph.moves_into.get(str(fix.id), ())
    proving = [move for move in moves if move.source.step == proof.step]
    past = [move for move in moves if move.source.step in arrival.steps[-2:-1]]
    if arrival.left_by or not proving or len(past) != 1:
        return None
    exit_, path = past[0].route.exit, " -> ".join(arrival.steps)
    return RULE.finding(
        exit_.at,
        f"this goes to `{fix.id}` past `{proof.step}`, which it rests on: {path}",
        WHY,
        f"write `{proof.step}` here, so that it's done on this path too",
        Related(proof.step.at, f"`{fix.id}` is proved by `{proof.step}`"),
    )


def _not_on_this_path(fix: Step, proof: Proof, arrival: Arrival) -> Finding:
    left = arrival.left_by
    named = " or ".join(f"`{result}`" for result in proof.results)
    if left is None:
        how = f"was never done on the way to `{fix.id}`"
        hint = f"a branch goes past it: lead this path to `{proof.step}`"
    else:
        words = f"`{left.result.text}`" if left.result else left.kind.value
        how = f"was left by {words} on the way to `{fix.id}`, and {named} is its proof"
        hint = f"look at the branches of `{proof.step}`: only {named} may lead here"
        if left.result:
            both = ", ".join((*proof.results, left.result.text))
            hint += f"; if {words} proves it too, write `{{{proof.step}: [{both}]}}`"
    path = " -> ".join(arrival.steps)
    return RULE.finding(proof.step.at, f"`{proof.step}` {how}: {path}", WHY, hint)
