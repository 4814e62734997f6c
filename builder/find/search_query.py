"""A query taken apart: codes, vehicle, words.

In: what was typed, and the index. Out: `SearchQuery`, with what was corrected on the way. Codes and
vehicle numbers are exact and never guessed. The page does the same (`search-query.js`).
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from builder.find.asked_codes import AskedCode, read_bare_codes_and_years, read_written_codes
from builder.find.asked_vehicles import AskedVehicle, read_vehicle_name, read_vehicle_number
from builder.find.code_matches import code_names
from builder.find.common_words import NEGATIONS, STOP_WORDS
from builder.find.phrasebook import Concept, Tokens, find_concepts, shop_tokens
from builder.find.shorthand import write_out
from builder.find.spelling import edit_distance, is_usual_slip, nearest_word, split_run_together
from builder.find.symptom_index import SymptomIndex, Vocabulary
from builder.find.word_forms import (
    ORDINARY_STEMS,
    drop_stop_words,
    opposite,
    split_words,
    stem_word,
)

LONGEST_QUERY = 30  # words of a query; the rest is left out
VOLTS = r"(?<![a-z0-9_.,-])([0-9]{1,2}(?:[.,][0-9]{1,2})?) ?v(?:olts?)?(?![a-z])"
# What the voltage of a 12 V battery means, at rest or on charge: from, below, in words; common
# practice, no source. Beyond, it is another circuit that is spoken of.
VOLTAGES = ((8.0, 12.3, "low voltage"), (15.0, 20.0, "charging voltage too high"))
NOMINAL = "12"  # a 12 V socket is no reading
# Other readings, and what each means; common practice, no source. Milliamps are read on a parked
# car, temperatures from 110 C or 230 F on a hot engine; fuel trims beyond ten percent are too far.
_TRIM = r"(?<![a-z])(?:(?:long|short)(?: term)? )?(?:fuel )?(?:trims?|ltft|stft)[a-z ]{0,20}?"
# What an alternator puts out while it runs, without its unit; no bolt and no current.
_CHARGE = r"1[5-9][.,][0-9]{1,2}(?![0-9]| ?(?:a|amps?|mm|k|l)(?![a-z]))"
_ALTERNATOR = r"(?:alternat[eo]r|alt|gen|generator|dynamo|regulator)"
READINGS = (
    (rf"(?<![a-z]){_ALTERNATOR}[a-z ]{{0,20}} {_CHARGE}", "charging voltage too high"),
    (
        rf"(?<![0-9.,]){_CHARGE} (?:at|on|from|out of) (?:the )?{_ALTERNATOR}(?: stud)?",
        "charging voltage too high",
    ),
    (r"(?<![a-z0-9_.,-])[0-9]{2,4} ?(?:ma|milli ?amps?)(?![a-z])", "parasitic drain"),
    (r"(?<![a-z0-9_.,-])1[1-4][0-9] ?(?:deg(?:rees)? )?c(?![a-z0-9])", "overheats"),
    (r"(?<![a-z0-9_.,-])2[3-7][0-9] ?(?:deg(?:rees)? )?f(?![a-z0-9])", "overheats"),
    (
        r"(?<![a-z0-9_.,-])(?:0?[.,][0-9]{1,2}|1[.,][0-9]) ?a(?:mp(?:ere)?s?)?(?![a-z])",
        "parasitic drain",
    ),
    (r"vents?[a-z ]{0,20}[6-9][0-9] ?(?:deg(?:rees)? )?f(?![a-z])", "vent blows warm"),
    (
        r"(?<![a-z])(?:coolant|temp|temperature|gauge|needle)[a-z ]{0,20}2[3-7][0-9](?![0-9])",
        "overheats",
    ),
    (
        r"(?<![a-z])(?:every|due at|due in) -?[0-9]+(?:,000)? ?(?:k|miles?|mi|km)(?![a-z])",
        "interval",
    ),
    (_TRIM + r"(?:[-−–]|minus) ?[1-9][0-9](?![0-9])", "running rich"),
    (_TRIM + r"(?:[+]|plus) ?[1-9][0-9](?![0-9])", "running lean"),
)
FRACTION = r"([0-9]*[.,][0-9]{2})[0-9]+"  # more digits than two might be taken for a code
_FRACTION = re.compile(FRACTION)
_VOLTS = re.compile(VOLTS, re.IGNORECASE)
_READINGS = tuple((re.compile(pattern, re.IGNORECASE), words) for pattern, words in READINGS)

Correction = tuple[str, str]  # as typed, as searched


@dataclass(frozen=True, slots=True)
class SpelledWords:
    """Words of a query after correction."""

    words: tuple[str, ...]
    completions: tuple[str, ...] = ()  # known words that begin with the last one, still being typed
    corrected: tuple[Correction, ...] = ()
    unknown: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class SearchQuery:
    """A query taken apart; `spelled` has no vehicle and no code among its words."""

    codes: tuple[AskedCode, ...]
    vehicle: AskedVehicle
    spelled: SpelledWords


def parse_query(asked: str, index: SymptomIndex) -> SearchQuery:
    """Take a query apart: vehicle number, codes, spelling, then vehicle, year and bare codes."""
    vehicle, rest = read_vehicle_number(asked)
    codes, rest = read_written_codes(rest)
    readings, rest = _put_readings_in_words(rest)
    typed = write_out(split_words(rest))[:LONGEST_QUERY]
    spelled = _spell(typed, index.vocabulary, finished=rest != rest.rstrip())
    make, model, words = read_vehicle_name(spelled.words, index.vehicles, index.vocabulary.spoken)
    bare, years, words = read_bare_codes_and_years(
        words,
        lambda digits: bool(code_names(index, AskedCode("", digits))),
        vehicle_named=bool(make or model or vehicle),
    )
    vehicle = replace(vehicle, make=make, model=model, years=tuple(years) or vehicle.years)
    unknown = tuple(word for word in spelled.unknown if word in words)
    corrected = (*readings, *spelled.corrected)
    spelled = replace(spelled, words=tuple(words), unknown=unknown, corrected=corrected)
    return SearchQuery((*codes, *bare), vehicle, spelled)


def _put_readings_in_words(asked: str) -> tuple[list[Correction], str]:
    """Put words in the place of readings; return each with its words, and the text."""
    corrected: list[Correction] = []

    def put(written: str, words: str) -> str:
        if words:
            corrected.append((written, words))
        return words or written

    short = _FRACTION.sub(r"\1", asked)
    rest = _VOLTS.sub(lambda match: put(match[0], _voltage_words(match[1])), short)
    for pattern, words in _READINGS:
        corrected += [(written, words) for written in pattern.findall(rest)]
        rest = pattern.sub(words, rest)
    return corrected, rest


def _voltage_words(volts: str) -> str:
    """Say in words what a battery's voltage means; "" where it is neither low nor high."""
    value = float(volts.replace(",", "."))
    meanings = (words for low, high, words in VOLTAGES if low <= value < high)
    return "" if volts == NOMINAL else next(meanings, "")


def _spell(typed: Sequence[str], vocabulary: Vocabulary, *, finished: bool) -> SpelledWords:
    """Correct unknown words; the last word may be the beginning of one."""
    whole = _join_parts(typed, vocabulary)
    completions = () if finished else _complete_last(whole, vocabulary)
    words: list[str] = []
    corrected: list[Correction] = []
    unknown: list[str] = []
    for at, word in enumerate(whole):
        sure = is_known(word, vocabulary) or (bool(completions) and at == len(whole) - 1)
        better = () if sure else _correct_word(word, vocabulary)
        words += better or (word,)
        if better:
            corrected.append((word, " ".join(better)))
        elif not sure:
            unknown.append(word)
    return SpelledWords(tuple(words), completions, tuple(corrected), tuple(unknown))


def is_known(word: str, vocabulary: Vocabulary) -> bool:
    """Whether a word, or one with another ending, is in the index, its words, or plain English."""
    return word in vocabulary.known or any(
        stem_word(word) in stems for stems in (vocabulary.little, ORDINARY_STEMS, vocabulary.stems)
    )


def _is_said(word: str, vocabulary: Vocabulary) -> bool:
    """Whether trees or plain English say a word; that the trade has it isn't enough."""
    is_plain = word in STOP_WORDS or word in NEGATIONS or word in vocabulary.everyday
    return is_plain or vocabulary.stem_uses.get(stem_word(word), 0) > 0


def _join_parts(typed: Sequence[str], vocabulary: Vocabulary) -> list[str]:
    """Join neighbors that are one known word, if one of them alone is in no tree."""
    words: list[str] = []
    for word in typed:
        last = words[-1] if words else ""
        both = _is_said(last, vocabulary) and _is_said(word, vocabulary)
        if last and not both and last + word in vocabulary.known:
            words[-1] = last + word
        else:
            words.append(word)
    return words


def _complete_last(words: Sequence[str], vocabulary: Vocabulary) -> tuple[str, ...]:
    """Known words that the last one is the beginning of; () if it is a word by itself."""
    last = words[-1] if words else ""
    if len(last) < 2 or is_known(last, vocabulary):
        return ()
    return tuple(known for known in vocabulary.known if known.startswith(last))


def _correct_word(word: str, vocabulary: Vocabulary) -> tuple[str, ...]:
    """What was likely meant: two words, the nearest word or stem, or what the word is short for.

    A word one edit away comes before two: `missfires` is no `miss fires`. A usual slip in a word of
    plain English is no word of the trade: `buit` is `built`, and no `butt`.
    """
    near = nearest_word(word, vocabulary.known)
    plain = nearest_word(word, vocabulary.plain)
    if plain and _is_likely(word, plain) and not (near and _is_likely(word, near)):
        return (plain,)
    is_close = near is not None and edit_distance(word, near, 1) < 2
    two = None if is_close else split_run_together(word, vocabulary.spoken)
    if two:
        return two
    near_stem = nearest_word(stem_word(word), vocabulary.stem_uses)
    one = near or vocabulary.stems.get(near_stem or "") or _lengthen(word, vocabulary)
    return (one,) if one else ()


def _is_likely(word: str, meant: str) -> bool:
    return edit_distance(word, meant, 1) < 2 and is_usual_slip(word, meant)


def _lengthen(word: str, vocabulary: Vocabulary) -> str | None:
    """The most used word that begins so; four letters at least."""
    uses = vocabulary.known
    longer = [known for known in uses if known.startswith(word)] if len(word) > 3 else []
    return min(longer, key=lambda known: (-uses[known], known), default=None)


def query_concepts(query: SearchQuery, index: SymptomIndex) -> list[Concept]:
    """The concepts of a query; the last may be any word that begins as it does."""
    tokens = shop_tokens(query.spelled.words, index.book.synonyms)
    concepts = find_concepts(tokens, index.book)
    if query.spelled.completions and concepts:
        negated = tokens[-1].startswith("!")
        words = (_completed(word, index, negated=negated) for word in query.spelled.completions)
        wordings = tuple(dict.fromkeys(word for word in words if word))
        # Of a word that can only become a stop word, nothing is asked.
        return [*concepts[:-1], *([Concept(wordings)] if wordings else [])]
    return concepts


def _completed(word: str, index: SymptomIndex, *, negated: bool) -> Tokens:
    tokens = drop_stop_words(shop_tokens([word], index.book.synonyms))
    return tuple(opposite(token) for token in tokens) if negated else tokens
