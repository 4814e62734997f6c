"""A text of the template for a new tree that nobody has replaced, in a tree that is ready.

Why: The page would tell a tech to check "What do you look at or listen for?".

Wrong:

    status: ready
    steps:
      belt:
        check: What do you look at or listen for?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Right:

    status: ready
    steps:
      belt:
        check: Is the belt tight and dry?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Fix: Write what a tech does at this step, or delete the step.
"""

from collections.abc import Iterator

from builder.model.finding import Finding, Related, Severity
from builder.model.tree import Status
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="template-text",
    family=Family.WORDS,
    severity=Severity.ERROR,
    summary="A text of the template that nobody has replaced.",
)
# Of `authoring/templates/tree.yml`; a test holds the two equal.
TEMPLATE_TEXTS = frozenset({
    "The title", "words of the customer", "your name", "another name",
    "What do you look at or listen for?", "what is wrong with it",
    "Measure between which points?", "say where the limit comes from",
    "What you repair", "What was wrong", "what proves the repair, measured as before",
    "What else you repair", "What else was wrong", "Why that is so, for the customer",
    "What you tell the customer, in plain words.",
})  # fmt: skip


def check(facts: Facts) -> Iterator[Finding]:
    """Yield one finding that points at every text of the template."""
    tree = facts.tree
    if tree.status is not Status.READY:
        return
    signed = [one.by for one in (tree.written, tree.reviewed) if one]
    texts = (*signed, *tree.symptom.words, *facts.texts)
    left = sorted((text for text in texts if text in TEMPLATE_TEXTS), key=lambda text: text.at)
    if left:
        first, *others = left
        these = f"these {len(left)} are" if others else "it is"
        more = f", and {len(others)} more" if others else ""
        yield RULE.finding(
            first.at,
            f"`{first}` is still the template's text{more}",
            "a tech would read it on the page, and know no more than before",
            f"set `status` back to `draft` until {these} written",
            *(Related(text.at, f"`{text}`") for text in others),
        )
