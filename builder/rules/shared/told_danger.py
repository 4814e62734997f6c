"""Whether the lines of a step tell of what a caution warns of.

In: a `Step` and a `Hazard`. Out: yes or no. `Let it cool, open the cap` tells of the caution that
says `Let it cool before opening any cap`: they share three words that mean something.
"""

import re
from functools import lru_cache

from builder.model.knowledge import Hazard
from builder.model.tree import Step

ENOUGH = 3  # words in common; two are chance: `battery`, `negative`
SHORT = 3  # letters; shorter words mean nothing alone
EMPTY = re.compile(
    "the|and|for|with|off|are|can|never|keep|under|any|not|when|let|you|your|that|this|from|over"
    "|only|one|two|its|out|away|per"
)
ENDINGS = ("ing", "ed", "es", "s")


def tells_of(step: Step, hazard: Hazard) -> bool:
    """Whether a step's lines have enough words of a caution."""
    warned = _stems(f"{hazard.hazard} {hazard.avoid}")
    done = _stems(" ".join((*step.do, step.put_back or "")))
    return len(warned & done) >= ENOUGH


@lru_cache(maxsize=4096)  # each caution is held against many steps
def _stems(text: str) -> frozenset[str]:
    words = re.findall(r"[a-z]+", text.casefold())
    return frozenset(
        _stem(word) for word in words if len(word) >= SHORT and not EMPTY.fullmatch(word)
    )


def _stem(word: str) -> str:
    for ending in ENDINGS:
        if word.endswith(ending) and len(word) - len(ending) >= SHORT:
            return word.removesuffix(ending)
    return word
