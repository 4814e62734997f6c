"""The state that an author may have meant.

In: words that name no state, and the shop's conditions. Out: the states to offer, by what they mean
before how they are spelled; never the opposite, and never one with other hazards than the nearest:
who writes `engine-of` must not be offered a running engine.
"""

from collections.abc import Iterable, Iterator
from difflib import SequenceMatcher
from functools import lru_cache

from builder.model.conditions import POWER, Conditions
from builder.model.knowledge import Tool
from builder.rules.shared.opposites import is_opposite, spaced_words, words_of_name

CLOSE = 0.75  # how much of the spelling is the same; one slip in a short word, two in a long one
SAME = 2.0  # nearer than any spelling: the words mean the state


def states_meant(words: str, conditions: Conditions) -> list[str]:
    """Return up to three states that the words may mean, the nearest first."""
    every = [(_nearness(words, name, one.text or ""), name) for name, one in conditions.items()]
    near = sorted((pair for pair in every if pair[0] >= CLOSE), key=lambda pair: -pair[0])
    if not near:
        return []
    if near[0][0] == SAME:
        return [near[0][1]]
    hazards = set(map(str, conditions[near[0][1]].hazards))
    same_danger = (name for _, name in near if set(map(str, conditions[name].hazards)) == hazards)
    return [*same_danger][:3]


def power_states(conditions: Conditions) -> Conditions:
    """Return the states that the key is turned to, but the normal one."""
    return {name: one for name, one in conditions.items() if one.group == POWER and not one.normal}


def state_named(words: str, conditions: Conditions) -> str | None:
    """Return the first state that a sentence has all words of."""
    named = (
        str(name) for name, one in conditions.items() if _has_all_words(words, name, one.text or "")
    )
    return next(named, None)


def states_with_tool(tool: Tool, conditions: Conditions) -> list[str]:
    """Return the states whose text names a tool: `battery support (power supply) on`."""
    words = words_of_name(str(tool.id))
    return [
        name for name, one in conditions.items() if one.text and words <= words_of_name(one.text)
    ]


def offer_of(names: Iterable[str], otherwise: str) -> str:
    """Offer some states, or say what else to do."""
    offered = " or ".join(f"`{name}`" for name in names)
    return f"did you mean {offered}?" if offered else otherwise


@lru_cache(maxsize=20_000)  # the trees of a shop share most of their conditions in words
def _nearness(words: str, name: str, text: str) -> float:
    """Return how near words are to a state with a name and a text; 0 to its opposite."""
    if words_of_name(words) in _meanings(name, text):
        return SAME
    if is_opposite(words, name):
        return 0
    spellings = [name, text] if text else [name]
    return max(_alike(spaced_words(words), spaced_words(spelling)) for spelling in spellings)


@lru_cache(maxsize=20_000)  # and most of their tests in words
def _has_all_words(words: str, name: str, text: str) -> bool:
    spoken = words_of_name(words)
    return any(len(meaning) > 1 and meaning <= spoken for meaning in _meanings(name, text))


def _meanings(name: str, text: str) -> Iterator[frozenset[str]]:
    yield words_of_name(name)
    if text:
        yield words_of_name(text)
        yield words_of_name(text.split(",")[0])


def _alike(one: str, other: str) -> float:
    """Return how much of the spelling is the same; 0 where it can't be close, at no cost."""
    matcher = SequenceMatcher(None, one, other)
    can_be = matcher.real_quick_ratio() >= CLOSE and matcher.quick_ratio() >= CLOSE
    return matcher.ratio() if can_be else 0
