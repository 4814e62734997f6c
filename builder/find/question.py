"""A query taken apart: codes, vehicle, words.

In: what was typed, and the index. Out: `Question`, with what was corrected on the way. Codes and
vehicle numbers are exact and never guessed. Mirrored by `web/search-index.js`.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from builder.find.codes import AskedCode, bare_codes_and_years, written_codes
from builder.find.index import Index
from builder.find.spelling import distance, nearest, parted
from builder.find.vehicles import AskedVehicle, named_in, number_in
from builder.find.words import stem, surfaces

LONGEST = 30  # words of a query that are looked at
VOLTS = re.compile(r"(?<![\w.,-])(\d{1,2}(?:[.,]\d{1,2})?) ?v(?:olts?)?(?![a-z])", re.IGNORECASE)
# Of a 12 V battery, at rest or on charge; common practice, no source.
LOW, HIGH = 12.3, 15.0
LOWEST, HIGHEST = 8.0, 20.0  # beyond, it is another circuit that is spoken of
NOMINAL = "12"  # a 12 V socket is no reading


@dataclass(frozen=True, slots=True)
class Spelt:
    """Words of a query after correction."""

    words: tuple[str, ...]
    started: tuple[str, ...] = ()  # known words that begin with the last one, still being typed
    corrected: tuple[tuple[str, str], ...] = ()
    unknown: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Question:
    """A query taken apart; `spelt` has no vehicle and no code among its words."""

    codes: tuple[AskedCode, ...]
    vehicle: AskedVehicle
    spelt: Spelt


def question(asked: str, index: Index) -> Question:
    """Take a query apart: vehicle number, codes, spelling, then vehicle, year and bare codes."""
    vehicle, rest = number_in(asked)
    codes, rest = written_codes(rest)
    volts, rest = _volts_in_words(rest)
    spelt = _spelt(surfaces(rest)[:LONGEST], index, finished=rest != rest.rstrip())
    make, model, words = named_in(spelt.words, index.table.vehicles, index.spoken)
    named = bool(make or model or vehicle)
    bare, years, words = bare_codes_and_years(words, index.digits, vehicle_named=named)
    vehicle = replace(vehicle, make=make, model=model, years=tuple(years) or vehicle.years)
    unknown = tuple(word for word in spelt.unknown if word in words)
    corrected = (*volts, *spelt.corrected)
    spelt = replace(spelt, words=tuple(words), unknown=unknown, corrected=corrected)
    return Question((*codes, *bare), vehicle, spelt)


def _volts_in_words(asked: str) -> tuple[list[tuple[str, str]], str]:
    """Put words in the place of low and high voltages; return each with its words, and the text."""
    taken: list[tuple[str, str]] = []

    def in_words(match: re.Match[str]) -> str:
        says = _says(match[1])
        if says:
            taken.append((match[0], says))
        return says or match[0]

    rest = VOLTS.sub(in_words, asked)
    return taken, rest


def _says(volts: str) -> str:
    """Say in words what a battery's voltage means; "" where it is neither low nor high."""
    figure = float(volts.replace(",", "."))
    if HIGH <= figure < HIGHEST:
        return "charging voltage too high"
    return "low voltage" if LOWEST <= figure < LOW and volts != NOMINAL else ""


def _spelt(typed: Sequence[str], index: Index, *, finished: bool) -> Spelt:
    """Correct what nobody knows; the last word may be the beginning of one."""
    words = _joined(typed, index)
    started = () if finished else _started(words, index)
    taken: list[str] = []
    corrected: list[tuple[str, str]] = []
    unknown: list[str] = []
    for at, word in enumerate(words):
        sure = is_known(word, index) or (bool(started) and at == len(words) - 1)
        better = () if sure else _corrected(word, index)
        taken += better or (word,)
        if better:
            corrected.append((word, " ".join(better)))
        elif not sure:
            unknown.append(word)
    return Spelt(tuple(taken), started, tuple(corrected), tuple(unknown))


def is_known(word: str, index: Index) -> bool:
    """Whether a word, or one with another ending, stands anywhere in the index or its words."""
    return word in index.known or word in index.everyday or stem(word) in index.stems


def _joined(typed: Sequence[str], index: Index) -> list[str]:
    """Join neighbours that are one known word, if one of them alone is none."""
    made: list[str] = []
    for word in typed:
        last = made[-1] if made else ""
        both = is_known(last, index) and is_known(word, index)
        if last and not both and last + word in index.known:
            made[-1] = last + word
        else:
            made.append(word)
    return made


def _started(words: Sequence[str], index: Index) -> tuple[str, ...]:
    """Known words that the last one is the beginning of; () if it is a word by itself."""
    last = words[-1] if words else ""
    if len(last) < 2 or is_known(last, index):
        return ()
    return tuple(sorted(known for known in index.known if known.startswith(last)))


def _corrected(word: str, index: Index) -> tuple[str, ...]:
    """What was likely meant: two words, the nearest word or stem, or what the word is short for.

    A word one edit away comes before two: `missfires` is no `miss fires`.
    """
    near = nearest(word, index.known)
    two = None if near and distance(word, near, 1) == 1 else parted(word, index.spoken)
    if two:
        return two
    one = near or index.stems.get(nearest(stem(word), index.stem_uses) or "")
    one = one or _short_for(word, index)
    return (one,) if one else ()


def _short_for(word: str, index: Index) -> str | None:
    """The most used word that begins so; four letters at least."""
    longer = [known for known in index.known if known.startswith(word)] if len(word) > 3 else []
    return min(longer, key=lambda known: (-index.known[known], known), default=None)
