"""A word of everyday speech among the shop's words, which makes half of what was written slang.

In: findings, and the library. Out: one finding at such a word in `kb/words.yml`, and those that it
caused, which wait.
"""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping

from builder.model.finding import Finding, Related
from builder.model.knowledge import Word
from builder.model.library import Library
from builder.rules import house_word, slang
from builder.rules.shared.rule import Rule

FEWEST = 10  # files; a small shop may well have a bad habit in a third of its trees
SHARE = 5  # the word is in one of five trees
SHOWN = 2  # of its places
RULES = {rule.name: rule for rule in (slang.RULE, house_word.RULE)}


def everyday_words(
    findings: Iterable[Finding], library: Library
) -> tuple[list[Finding], list[Finding]]:
    """Return the findings at words that most likely shouldn't be in the list, and what they cause.

    The rules quote the word as it's written: the first thing in backquotes.
    """
    of_word: dict[tuple[str, str], list[Finding]] = defaultdict(list)
    for one in findings:
        if one.rule in RULES:
            of_word[one.rule, _plain(one.message.split("`")[1])].append(one)
    causes: list[Finding] = []
    caused: list[Finding] = []
    for (rule, word), places in of_word.items():
        if entry := _entries(rule, library).get(word):
            files = {one.at.file for one in places}
            if len(files) >= max(FEWEST, len(library.listings) / SHARE):
                causes.append(_finding(RULES[rule], entry, places, len(files)))
                caused += places
    return causes, caused


def _entries(rule: str, library: Library) -> Mapping[str, Word]:
    words = library.words if rule == slang.RULE.name else library.house_words
    return {_plain(phrase): word for phrase, word in words.items()}


def _plain(phrase: str) -> str:
    return " ".join(phrase.casefold().replace("’", "'").split())


def _finding(rule: Rule, entry: Word, places: list[Finding], files: int) -> Finding:
    return rule.finding(
        entry.slang.at,
        f"`{entry.slang}` is in {len(places)} places of {files} files: that is everyday speech",
        f"each of them would be told to write {' or '.join(f'`{one}`' for one in entry.terms)}",
        "write the whole phrase that is wrong, or take this line out; "
        f"if every place is wrong, search these files for `{entry.slang}`",
        *_some(places),
    )


def _some(places: list[Finding]) -> Iterator[Related]:
    for one in places[:SHOWN]:
        yield Related(one.at, "one of the places")
