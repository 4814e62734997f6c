"""The symptom index as the page gets it: one script with one value.

In: the rows of a shop. Out: the text of `search-data.js`, loaded at the first use of the search. A
script and not a data file, so that it loads from a folder (`file://`) too. Same shop, same bytes.
All that can be worked out beforehand is in it; `search-index.js` unpacks it.
"""

import json
from collections.abc import Mapping, Sequence
from itertools import groupby
from typing import Any

from builder.find.common_words import NEGATIONS, STOP_WORDS
from builder.find.packed_texts import LEADING_CHARACTERS, NUMBER_CHARACTERS, pack_texts
from builder.find.page_rules import page_rules
from builder.find.phrasebook import BookPhrase
from builder.find.search_table import SearchTable, TreeRow
from builder.find.symptom_index import UNSAID, SymptomIndex, build_symptom_index

PageData = Mapping[str, Any]
WeightedText = tuple[str, int]


def search_script(table: SearchTable) -> str:
    """Write the script."""
    data = json.dumps(search_data(table), ensure_ascii=False, separators=(",", ":"))
    return f"globalThis.baytreeSearchData = {data};\n"


def search_data(table: SearchTable) -> PageData:
    """Pack the index of a shop as lists and maps."""
    index = build_symptom_index(table)
    packed = pack_texts(index)
    book = index.book
    known = index.vocabulary.known
    unsaid = {word for word, uses in known.items() if uses == UNSAID}
    other_words = known.keys() - index.vocabulary.spoken - unsaid
    return {
        "rules": page_rules(table.everyday),
        "digits": [NUMBER_CHARACTERS, LEADING_CHARACTERS],
        "words": packed.words,
        "otherWords": " ".join(sorted(other_words - STOP_WORDS - NEGATIONS)),
        "synonyms": {token: " ".join(words) for token, words in sorted(book.synonyms.items())},
        "phrases": [
            _phrase_row(phrase)
            for first in book.starts.values()
            for phrase in first
            if phrase.terms  # the others are subjects of several words
        ],
        "vehicles": table.vehicles,
        "trade": [", ".join(words) for words in table.trade],
        "codeMeanings": index.code_meanings,
        **_entry_rows(table, index, packed.texts),
    }


def _phrase_row(phrase: BookPhrase) -> Sequence[Any]:
    """A phrase with its terms and its slang."""
    terms = [" ".join(term) for term in phrase.terms]
    slang = (phrase.slang,) if phrase.slang else ()
    return (" ".join(phrase.tokens), terms, *slang)


def _entry_rows(table: SearchTable, index: SymptomIndex, texts: Sequence[str]) -> PageData:
    """Trees and articles with their texts.

    A context is what system and lamps lend to a tree; it stands once for all trees that share it.
    """
    weighted = [(text, phrase.weight) for text, phrase in zip(texts, index.phrases, strict=True)]
    of_entry = groupby(range(len(weighted)), lambda at: index.phrases[at].entry)
    entries = [[weighted[at] for at in places] for _, places in of_entry]
    contexts: dict[tuple[str, tuple[WeightedText, ...]], int] = {}
    trees = []
    for tree, each in zip(table.trees, entries, strict=False):
        own, lent = each[: 1 + len(tree.words)], tuple(each[1 + len(tree.words) :])
        context = contexts.setdefault((_system_name(table, tree), lent), len(contexts))
        codes = " ".join(tree.codes)
        trees.append([tree.id, _joined(own), context, codes, tree.vehicles, int(tree.draft)])
    articles = [
        [article.id, _joined(each)]
        for article, each in zip(table.articles, entries[len(table.trees) :], strict=True)
    ]
    return {"contexts": list(contexts), "trees": trees, "articles": articles}


def _joined(texts: Sequence[WeightedText]) -> str:
    return " ".join(text for text, _ in texts)


def _system_name(table: SearchTable, tree: TreeRow) -> str:
    return table.systems[tree.system].name if tree.system >= 0 else ""
