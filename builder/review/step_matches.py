"""Which step of the old tree is which of the new one.

In: two `PlainTree`s. Out: the new name of every old step that is still there. Steps are matched by
name; what is left by what they say, and by what is around them.
"""

from difflib import SequenceMatcher
from itertools import product

from builder.review.plain_tree import PlainStep, PlainTree

SAME = 0.6  # likeness from which a step counts as the same under another name


def match_steps(old: PlainTree, new: PlainTree) -> dict[str, str]:
    """Return the new name of every old step that is still there."""
    names = {name: name for name in old.steps if name in new.steps}
    gone = [step for name, step in old.steps.items() if name not in names]
    added = [step for name, step in new.steps.items() if name not in names]
    scored = [
        (_likeness(a, b, old, new, names), -i, -j)
        for (i, a), (j, b) in product(enumerate(gone), enumerate(added))
        if a.kind == b.kind
    ]
    for score, i, j in sorted(scored, reverse=True):
        before, after = gone[-i].name, added[-j].name
        if score >= SAME and before not in names and after not in names.values():
            names[before] = after
    return names


def _likeness(
    a: PlainStep, b: PlainStep, old: PlainTree, new: PlainTree, names: dict[str, str]
) -> float:
    """Return how alike two steps are, from 0 to 1: half by their text, half by all the rest."""
    text = SequenceMatcher(None, a.says, b.says, autojunk=False).ratio()
    around_a = {names.get(name, "?") for name in (*a.leads_to, *_callers(a.name, old))}
    around_b = {*b.leads_to, *_callers(b.name, new)}
    words_a = {(key, word.value) for key, word in a.words.items()}
    words_b = {(key, word.value) for key, word in b.words.items()}
    results_a = {result.text for result in a.results}
    results_b = {result.text for result in b.results}
    pairs = ((around_a, around_b), (words_a, words_b), (results_a, results_b))
    shares = [len(x & y) / len(x | y) for x, y in pairs if x or y]
    return (text + sum(shares) / len(shares)) / 2 if shares else text


def _callers(name: str, tree: PlainTree) -> list[str]:
    return [step.name for step in tree.steps.values() if name in step.leads_to]
