"""Trees that are near to another: the same codes, lamps or rare words in their symptoms.

In: summaries of trees. Out: for each tree the ids of its nearest, best first.
"""

import re
from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Mapping

from builder.model.summary import Summary
from builder.model.tree import Status

MOST = 5
COMMON = 12  # what more trees than this share says little, and would cost much to compare
WEIGHTS = {"code": 3, "lamp": 2, "word": 1}
LEAST = 2
_WORD = re.compile(r"[^\W\d_]{4,}")


def related(trees: Iterable[Summary]) -> Mapping[str, tuple[str, ...]]:
    """Return the ids of the related trees of each tree; retired trees are related to none."""
    signs = {tree.id: set(_signs(tree)) for tree in trees if tree.status is not Status.RETIRED}
    sharing: dict[tuple[str, str], list[str]] = defaultdict(list)
    for id_ in sorted(signs):
        for sign in signs[id_]:
            sharing[sign].append(id_)
    return {id_: _nearest(id_, signs[id_], sharing) for id_ in signs}


def _signs(tree: Summary) -> Iterator[tuple[str, str]]:
    for code in tree.symptom.codes:
        yield "code", code.split("-")[0]
    for lamp in tree.symptom.lamps:
        yield "lamp", str(lamp)
    for phrase in tree.symptom.words:
        for word in _WORD.findall(phrase.lower()):
            yield "word", word


def _nearest(
    id_: str, signs: set[tuple[str, str]], sharing: Mapping[tuple[str, str], list[str]]
) -> tuple[str, ...]:
    scores: Counter[str] = Counter()
    for sign in signs:
        if len(sharing[sign]) <= COMMON:
            scores.update({other: WEIGHTS[sign[0]] for other in sharing[sign] if other != id_})
    best = sorted(scores, key=lambda other: (-scores[other], other))
    return tuple(other for other in best[:MOST] if scores[other] >= LEAST)
