"""A result that a reading can have by its spec and that has no branch, or one that it can't have.

The good range says which results are possible: `at most 0.5` has nothing below it. It is proved for
the spec itself and for every vehicle that the tree covers. `none`, for nothing shown, is never
needed.

Why: A tech who gets that result is stuck.

Wrong:

    # kb/specs.yml
    ripple: {text: AC ripple, unit: V, from: 0, to: 5, good: at most 0.5, origin: common practice}
    # trees/charging/case.yml
    steps:
      running:
        check: Measure AC voltage at the battery posts
        when: [engine at idle]
        spec: ripple
        results: {within spec: all-good, below spec: repair}

Right:

    # kb/specs.yml
    ripple: {text: AC ripple, unit: V, from: 0, to: 5, good: at most 0.5, origin: common practice}
    # trees/charging/case.yml
    steps:
      running:
        check: Measure AC voltage at the battery posts
        when: [engine at idle]
        spec: ripple
        results: {within spec: all-good, above spec: repair}

Fix: Give each possible result a branch, and delete those that can't happen.
"""

from collections.abc import Iterator

from builder.model.checks import Check, Reading
from builder.model.ends import Fix
from builder.model.figures import NOTHING_SHOWN
from builder.model.finding import Finding, Related, Severity
from builder.model.text import Text
from builder.model.tree import Step
from builder.model.vehicle_data import Spec
from builder.rules.shared.rule import Facts, Family, Rule
from builder.rules.shared.spec_words import possible_words, words_without_result

RULE = Rule(
    name="spec-result",
    family=Family.READINGS,
    severity=Severity.ERROR,
    summary="A result of a spec that has no branch, or that can't happen.",
)

OTHER_SIDE = {"below spec": "above spec", "above spec": "below spec"}
TURNED = {"least": "most", "most": "least", "above": "below", "below": "above"}


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every result that is missing or impossible, for any vehicle or one."""
    for step in facts.steps:
        if isinstance(step.body, Check):
            for reading in step.body.readings:
                spec = facts.library.specs.get(str(reading.spec)) if reading.spec else None
                if spec:
                    yield from _of_reading(facts, step, reading, spec)


def _of_reading(facts: Facts, step: Step, reading: Reading, spec: Spec) -> Iterator[Finding]:
    assert isinstance(step.body, Check)
    lacking = words_without_result(facts, step, reading)
    possible = possible_words(facts, step, spec)
    words = (result.compares.get(reading.name) for result in step.body.results)
    odd = [word for word in words if word and word != NOTHING_SHOWN and word not in possible]
    if len(odd) == 1 and [*lacking] == [OTHER_SIDE.get(odd[0])]:
        yield _turned_around(odd[0], next(iter(lacking)), spec)
        return
    for missing, good in lacking.items():
        yield RULE.finding(
            step.text.at, f"no result covers `{missing}` ({good})",
            "a tech who gets that reading is stuck", f"add `{missing}` and its branch",
            *_named_by(facts, step, missing),
        )  # fmt: skip
    for word in odd:
        yield RULE.finding(
            word.at, f"a reading can't be `{word}`: good is {spec.good.text}",
            "a branch that can't be taken hides a mistake",
            f"if another spec is meant, write its name in place of `{spec.id}`; else take this "
            "result out",
            Related(spec.good.text.at, "the limits"),
        )  # fmt: skip


def _turned_around(word: Text, missing: str, spec: Spec) -> Finding:
    """Return the one finding for a result on the wrong side of the only limit."""
    limit = str(spec.good.text)
    turned = " ".join(TURNED.get(one, one) for one in limit.split(" "))
    return RULE.finding(
        word.at, f"a reading can't be `{word}`: good is {limit}",
        "one of the two is turned around, and a good part would be called bad",
        f"if `{word}` is the bad side, write `good: {turned}` for `{spec.id}` in kb/specs.yml; "
        f"if the limit is right, write `{missing}` here",
        Related(spec.good.text.at, "the limit"),
    )  # fmt: skip


def _named_by(facts: Facts, check_: Step, word: str) -> Iterator[Related]:
    """Point at the proofs that name the result."""
    for step in facts.steps:
        for proof in step.body.proved_by if isinstance(step.body, Fix) else ():
            for result in proof.results:
                if proof.step == check_.id and result == word:
                    yield Related(result.at, f"`{step.id}` rests on it")
