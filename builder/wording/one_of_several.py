"""Words that name several things, cut down to the one that the record of a job knows.

In: `A hose, duct, or cap let air in`, and what was answered or typed: `Replaced the intake duct`.
Out: `A duct let air in`. Where none or several of the things are known, or where it can't be seen
which words belong together, the text stays as it is: a paper says rather too much than a wrong
thing.
"""

import re
from collections.abc import Collection, Sequence

from builder.wording.answer_parts import answer_parts
from builder.wording.past_tense import PAST

# The last thing ends at its first word only where one of these follows: no part of its name.
_ENDS = (
    "of|in|at|on|to|from|for|after|inside|behind|the|its|a|an|and|is|are|was|has|have|let|lets|"
    "leaks|sticks|binds|opens|failed|fails|reads|holds|keeps|reaches|that|circuit|circuits"
)
_SEVERAL = re.compile(
    rf"(?P<article>\b[Aa]n? )?(?P<first>\w+(?:(?:, \w+)+,(?= or))?) or (?P<last>\w+)"
    rf"(?=[,.;]|$| (?:{_ENDS})\b)"
)
_FINITE = frozenset(("binds", "draws", "is", "keeps", "leaks", "sticks", "swells"))
_ALSO_STATES = frozenset(("clean", "clear", "close", "cut", "dry", "free", "open", "set"))
_VERBS: tuple[Collection[str], ...] = (PAST, _FINITE)
_OPEN = frozenset(("out",))  # what follows belongs to it
_VOWEL = re.compile(r"[aeiou]", re.IGNORECASE)
_ENDING = re.compile(r"(?:es|ed|e|s)$")


def narrowed(text: str, known: Sequence[str]) -> str:
    """Return a text with the one thing that is known in place of each list of several."""
    return _SEVERAL.sub(lambda match: _one(match, known), text)


def narrowed_name(name: str, known: Sequence[str]) -> str:
    """Return the one thing of a name that is known: of `caliper or wheel cylinder`, the caliper."""
    return only_known(answer_parts(name), known) or name


def only_known(things: Sequence[str], known: Sequence[str]) -> str:
    """Return the only thing of several that is named in a text; "" for none or several."""
    named = [thing for thing in things if _is_named(thing, known)]
    return named[0] if len(named) == 1 else ""


def _one(match: re.Match[str], known: Sequence[str]) -> str:
    things = [*match["first"].rstrip(",").split(", "), match["last"]]
    thing = only_known(things, known)
    if not thing or _are_unlike(things):
        return match[0]
    if match["article"]:
        begins = match["article"][0]
        return f"{begins}{'n' if _VOWEL.match(thing) else ''} {thing}"
    return thing[:1].upper() + thing[1:] if match.start() == 0 else thing


def _are_unlike(things: Sequence[str]) -> bool:
    """Whether these are no words of one kind, as in `the grounds, or replace the sensor`."""
    words = [thing.casefold() for thing in things]
    if not _OPEN.isdisjoint(words):
        return True
    return any(
        any(word in verbs and word not in _ALSO_STATES for word in words)
        and not all(word in verbs for word in words)
        for verbs in _VERBS
    )


def _is_named(thing: str, known: Sequence[str]) -> bool:
    """Whether a text names it, in any form of the word: `replaced` of `replace`."""
    stem = thing.casefold() if " " in thing else _ENDING.sub("", thing.casefold())
    names = re.compile(rf"\b{re.escape(stem)}(?:e|s|d|es|ed)?\b")
    return any(names.search(text.casefold()) for text in known)
