"""Abbreviations spelled out where a reader first meets them, in the words of the glossary.

In: the glossary, texts in the order in which they are read. Out: `ABS (anti-lock brake system)`. An
abbreviation that no entry spells out is left as it is; so are units and DTCs.
"""

import re
from collections.abc import Callable, Iterator, Mapping

from builder.model.knowledge import Term
from builder.trade.codes import CODE_PATTERN
from builder.trade.units import UNITS
from builder.wording.sentences import uncapitalized

_SHORT = re.compile(r"(?<![\w/-])(?:A/C|NOx|[A-Z][A-Z0-9]*[A-Z][A-Z0-9]*?)(?P<many>s?)(?![\w/-])")
_CODE = re.compile(CODE_PATTERN)
_KNOWN_TO_ALL = frozenset({*UNITS, "OK"})


def spelled_at_first_use(glossary: Mapping[str, Term]) -> Callable[[str], str]:
    """Return what spells out a text; it remembers what it has spelled out before."""
    spelled: set[str] = set()

    def write(match: re.Match[str]) -> str:
        short = match[0].removesuffix(match["many"]) if match["many"] else match[0]
        if match.string[match.start() - 1 : match.end() + 1] == f"({match[0]})":
            spelled.add(short)  # its words stand before it
        words = "" if short in spelled else spelled_out(short, glossary)
        spelled.add(short)
        return f"{match[0]} ({words}{match['many']})" if words else match[0]

    return lambda text: _SHORT.sub(write, text)


def spelled_out(short: str, glossary: Mapping[str, Term]) -> str:
    """Return the words that an abbreviation stands for; "" where the glossary has none."""
    if short in _KNOWN_TO_ALL or _CODE.match(short):
        return ""
    fitting = (words for words in _candidates(short, glossary) if _fits(short, words))
    return next(fitting, "")


def _candidates(short: str, glossary: Mapping[str, Term]) -> Iterator[str]:
    for term in glossary.values():
        if short in (term.term, *term.also):
            first = re.split(r"[;.(]", term.means)[0]
            for text in (term.term, first.split(",")[0], first, *term.also):
                if text.casefold() != short.casefold():
                    yield uncapitalized(str(text).strip())


def _fits(short: str, words: str) -> bool:
    """Whether the letters stand in the words in their order: `MAF` in `mass airflow`."""
    letters = iter(words.casefold())
    wanted = re.sub(r"[^a-z]", "", short.casefold())
    return words[:1].casefold() == wanted[:1] and all(one in letters for one in wanted)
