"""What a check of the demo found can be told as a statement, whatever was answered."""

import re

from builder.model.checks import Check
from builder.model.tree import Tree
from builder.wording.finding_text import finding_text
from builder.wording.placeholders import in_plain_words

QUESTION = re.compile(r"\?|^(?:Is|Are|Was|Were|Do|Does|Did|Has|Have) ")


def test_no_sheet_prints_a_question(trees: tuple[Tree, ...]) -> None:
    """A service writer hands over what was seen, not a form with its answers."""
    kept = {
        f"{tree.id} {step.id}: {told}"
        for tree in map(in_plain_words, trees)
        for step in tree.steps.values()
        if isinstance(step.body, Check)
        for result in step.body.results
        if QUESTION.search(told := finding_text(str(step.text), str(result.text)))
    }
    assert not kept
