"""Related trees: those that share DTCs, warning lights or rare words of their symptoms.

In: summaries of trees. Out: for each tree the IDs of its related trees, best first.
"""

import re
from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Mapping

from builder.model.summary import TreeSummary
from builder.model.tree import Status

_MOST_SHOWN = 5
_COMMON = 12  # a feature that more trees share says little and is slow to compare
_WEIGHTS = {"code": 3, "lamp": 2, "word": 1}
_LEAST_SCORE = 2
_WORD = re.compile(r"[^\W\d_]{4,}")


def related_trees(trees: Iterable[TreeSummary]) -> Mapping[str, tuple[str, ...]]:
    """Return the IDs of the related trees of each tree; retired trees have none and are in none."""
    features = {
        tree.id: set(_features(tree)) for tree in trees if tree.status is not Status.RETIRED
    }
    sharing: dict[tuple[str, str], list[str]] = defaultdict(list)
    for id_ in sorted(features):
        for feature in features[id_]:
            sharing[feature].append(id_)
    return {id_: _nearest(id_, features[id_], sharing) for id_ in features}


def _features(tree: TreeSummary) -> Iterator[tuple[str, str]]:
    for code in tree.symptom.codes:
        yield "code", code.split("-")[0]
    for lamp in tree.symptom.lamps:
        yield "lamp", str(lamp)
    for phrase in tree.symptom.words:
        for word in _WORD.findall(phrase.lower()):
            yield "word", word


def _nearest(
    id_: str, features: set[tuple[str, str]], sharing: Mapping[tuple[str, str], list[str]]
) -> tuple[str, ...]:
    scores: Counter[str] = Counter()
    for feature in features:
        if len(sharing[feature]) <= _COMMON:
            weight = _WEIGHTS[feature[0]]
            scores.update({other: weight for other in sharing[feature] if other != id_})
    best = sorted(scores, key=lambda other: (-scores[other], other))
    return tuple(other for other in best[:_MOST_SHOWN] if scores[other] >= _LEAST_SCORE)
