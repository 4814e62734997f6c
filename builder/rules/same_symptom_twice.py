"""The same words of a customer in two trees for the same vehicles, or twice in one tree. A tree
with most complaints of another one is reported once, as a copy.

Why: The search offers two trees for one complaint, and the tech can't tell which to start with.

Wrong:

    # trees/charging/first.yml
    symptom: {words: [battery light on while driving]}
    steps:
      belt:
        check: Is the belt tight?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}
    # trees/charging/second.yml
    symptom: {words: [Battery light on while driving]}
    steps:
      fuse:
        check: Is the fuse good?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Right:

    # trees/charging/first.yml
    symptom: {words: [battery light on while driving]}
    steps:
      belt:
        check: Is the belt tight?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}
    # trees/charging/second.yml
    symptom: {words: [battery light comes on in the morning and goes out]}
    steps:
      fuse:
        check: Is the fuse good?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Fix: Say how the complaints differ, narrow `applies_to`, or merge the two trees.
"""

from collections import Counter, defaultdict
from collections.abc import Container, Iterable, Iterator, Mapping
from datetime import date

from builder.model.finding import Finding, Related, Severity
from builder.model.library import Library
from builder.model.summary import TreeSummary, normalized
from builder.model.text import Text
from builder.model.tree import Scope, Status
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="same-symptom-twice",
    family=Family.KNOWLEDGE,
    severity=Severity.WARNING,
    summary="The same complaint in two trees for the same vehicles, or the same title.",
)

MANY = 3  # phrases in common, and half of all, make a tree look like a copy


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every complaint that an earlier tree has, and one for a copied tree."""
    ids_by_words: dict[str, list[str]] = defaultdict(list)
    for listing in library.listings.values():
        for words in listing.words if listing.status is not Status.RETIRED else ():
            ids_by_words[words].append(listing.id)
    repeated = {
        words: tuple(dict.fromkeys(ids)) for words, ids in ids_by_words.items() if len(ids) > 1
    }
    copies = _copies(library, repeated)
    for words, ids in repeated.items():
        if frozenset(ids) not in copies:
            yield from _repeated(words, [library.trees[id_] for id_ in ids])
    for pair, count in copies.items():
        yield _copied(library, pair, count)
    yield from _titles(library, copies)


def _copies(library: Library, repeated: Mapping[str, tuple[str, ...]]) -> dict[frozenset[str], int]:
    """Return the pairs of trees that share most complaints, with how many they share."""
    shared = Counter(frozenset(ids) for ids in repeated.values() if len(set(ids)) == 2)
    fewest = {pair: min(len(library.listings[id_].words) for id_ in pair) for pair in shared}
    return {
        pair: count
        for pair, count in shared.items()
        if count >= MANY
        and 2 * count >= fewest[pair]
        and _same_vehicles(*(library.trees[id_] for id_ in pair))
    }


def _copied(library: Library, pair: frozenset[str], count: int) -> Finding:
    """Return the finding at the copy: most likely it's named after the original, or is younger."""

    def age(id_: str) -> tuple[bool, str, str]:
        written = library.trees[id_].written
        after = any(id_.startswith(other) for other in pair - {id_})
        return after, str(written.date) if written else "", id_

    original, copy = (library.trees[id_] for id_ in sorted(pair, key=age))
    return RULE.finding(
        copy.title.at,
        f"`{copy.id}` has {count} phrases of customers that `{original.id}` has, too",
        "the search offers both, and the tech can't tell which to start with",
        "give it a title, complaints, and an `applies_to` of its own; if it's a copy that nobody "
        f"needs, delete {copy.file}",
        Related(original.title.at, "the other tree"),
    )


def _titles(library: Library, copies: Container[frozenset[str]]) -> Iterator[Finding]:
    """Yield a finding for every title that an earlier tree of the same folder has."""
    first: dict[tuple[str, str], str] = {}
    for listing in library.listings.values():
        place = listing.id.partition("/")[0], listing.title
        if listing.status is Status.RETIRED or first.setdefault(place, listing.id) == listing.id:
            continue
        if frozenset((listing.id, first[place])) in copies:
            continue
        tree, other = library.trees[listing.id], library.trees[first[place]]
        yield RULE.finding(
            tree.title.at, f"`{tree.title}` is also the title of `{other.id}`",
            "lists show the two alike, and the tech can't tell which to start with",
            "say in the title how the two differ, or merge the trees",
            Related(other.title.at, "first written here"),
        )  # fmt: skip


def _repeated(complaint: str, trees: Iterable[TreeSummary]) -> Iterator[Finding]:
    earlier: list[tuple[Text, TreeSummary]] = []
    for tree in trees:
        for words in (text for text in tree.symptom.words if normalized(text) == complaint):
            for first, other in earlier:
                if other is tree or _same_vehicles(tree, other):
                    yield _finding(words, first, other)
                    break
            earlier.append((words, tree))


def _finding(words: Text, first: Text, other: TreeSummary) -> Finding:
    return RULE.finding(
        words.at,
        f"`{words}` is already in `{other.id}`",
        "the search offers both, and the tech can't tell which to start with",
        "say how the complaints differ, narrow `applies_to`, or merge the trees",
        Related(first.at, "first written here"),
    )


def _same_vehicles(one: TreeSummary, other: TreeSummary) -> bool:
    if not one.applies_to or not other.applies_to:
        return True  # one of them is for any vehicle
    return any(_meet(a, b) for a in one.applies_to for b in other.applies_to)


def _meet(one: Scope, other: Scope) -> bool:
    if (one.make, one.model) != (other.make, other.model):
        return False
    if one.years is None or other.years is None:
        return True
    return one.years[0] <= other.years[1] and other.years[0] <= one.years[1]
