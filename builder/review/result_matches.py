"""Which result of a check is which after a change.

In: the results of a step before and after. Out: pairs, one side None where a result is new or gone.
"""

from collections.abc import Callable, Iterator

from builder.review.plain_tree import PlainResult

Pair = tuple[PlainResult | None, PlainResult | None]
_Likeness = Callable[[PlainResult], object]


def match_results(old: tuple[PlainResult, ...], new: tuple[PlainResult, ...]) -> Iterator[Pair]:
    """Pair results by their text, then by what they mean and where they lead."""
    before, after = list(old), list(new)
    for likeness in (_whole, _text, _rest, _branch, _meaning):
        yield from _taken(before, after, likeness)
    if len(before) == len(after) == 1:
        yield before.pop(), after.pop()
    yield from ((one, None) for one in before)
    yield from ((None, one) for one in after)


def _taken(
    before: list[PlainResult], after: list[PlainResult], likeness: _Likeness
) -> Iterator[Pair]:
    """Take out the pairs that are alike in one way."""
    for one in tuple(before):
        wanted = likeness(one)
        other = next((other for other in after if likeness(other) == wanted), None)
        if wanted is not None and other is not None:
            before.remove(one)
            after.remove(other)
            yield one, other


def _words(result: PlainResult) -> frozenset[tuple[str, object]]:
    return frozenset((key, word.value) for key, word in result.words.items())


def _whole(result: PlainResult) -> object:
    return result.text, result.branch, _words(result)


def _text(result: PlainResult) -> object:
    return result.text


def _rest(result: PlainResult) -> object:
    return result.branch, _words(result)


def _branch(result: PlainResult) -> object:
    return result.branch


def _meaning(result: PlainResult) -> object:
    return result.words["means"].value if "means" in result.words else None
