"""The texts of an index, packed for the page so that it need not take them apart.

In: the phrases of an index. Out: `PackedTexts`: a list of words, and each text as the numbers of
its words. A word of the list is written as in its texts (`Crank,`) and carries the tokens of what
it means there, if that is more than its stem: `Crank, !crank` behind a "no", or `turns
turn+over+crank` at the head of a phrase of the shop. As text is most of what is sent, a number is
written with as few characters as it can be.
"""

from collections import Counter
from collections.abc import Mapping, Sequence, Set
from dataclasses import dataclass

from builder.find.phrasebook import Tokens, shop_tokens
from builder.find.symptom_index import IndexedPhrase, SymptomIndex
from builder.find.word_forms import split_words, stem_word, without_no

NO_MEANING = "-"  # stands where the tokens would, of a word that means nothing by itself

# Characters that write numbers; none that a script would have to escape, and no blank.
NUMBER_CHARACTERS = "".join(chr(code) for code in range(33, 127) if chr(code) not in '"\\<')
LEADING_CHARACTERS = 30  # so many of them are followed by another; the others end a number

MarkedWord = tuple[str, str]  # as written; the tokens of its concepts, or NO_MEANING


@dataclass(frozen=True, slots=True)
class PackedTexts:
    """The words of an index, and the text of each of its phrases as numbers of them."""

    words: tuple[str, ...]  # each with its tokens behind it, if they are not the word itself
    texts: tuple[str, ...]


def pack_texts(index: SymptomIndex) -> PackedTexts:
    """Number the words of an index, the most used first, so that most numbers are short."""
    written = {word for phrase in index.phrases for word in phrase.text.split()}
    tokens = {
        word: {without_no(token) for token in shop_tokens(split_words(word), index.book.synonyms)}
        for word in written
    }
    marked = [_mark_words(phrase, tokens) for phrase in index.phrases]
    uses = Counter(word for words in marked for word in words)
    words = sorted(uses, key=lambda word: (-uses[word], word))
    numbers = {word: pack_number(at) for at, word in enumerate(words)}
    return PackedTexts(
        tuple(word if _is_stem(word, meaning) else f"{word} {meaning}" for word, meaning in words),
        tuple("".join(numbers[word] for word in text) for text in marked),
    )


def pack_number(number: int) -> str:
    """Write a number from 0 on: any number of leading digits, and one that ends it."""
    ending = len(NUMBER_CHARACTERS) - LEADING_CHARACTERS
    rest, last = divmod(number, ending)
    packed = NUMBER_CHARACTERS[LEADING_CHARACTERS + last]
    while rest:
        rest, digit = divmod(rest - 1, LEADING_CHARACTERS)
        packed = NUMBER_CHARACTERS[digit] + packed
    return packed


def _is_stem(written: str, meaning: str) -> bool:
    return [stem_word(word) for word in split_words(written)] == [meaning]


def _mark_words(phrase: IndexedPhrase, tokens: Mapping[str, Set[str]]) -> tuple[MarkedWord, ...]:
    """Put each concept beside the word that begins it."""
    words = phrase.text.split()
    concepts: list[list[str]] = [[] for _ in words]
    for concept in phrase.concepts:
        concepts[_place_of(concept, words, tokens)].append("+".join(concept))
    meanings = ("&".join(each) or NO_MEANING for each in concepts)
    return tuple(zip(words, meanings, strict=True))


def _place_of(concept: Tokens, words: Sequence[str], tokens: Mapping[str, Set[str]]) -> int:
    """The first word that has the first token of a concept; else the first of all."""
    first = without_no(concept[0])
    return next((at for at, word in enumerate(words) if first in tokens[word]), 0)
