"""The shop's words."""

from builder.find.phrasebook import concepts, phrasebook, shop_words, slang_said
from builder.find.words import surfaces

BOOK = phrasebook(
    slang=[("won't crank", ("no crank",)), ("brake", ("stopper",)), ("mushy", ("low",))],
    same=[("tire", ("tyre",)), ("turn over", ("crank",)), ("e-brake", ("parking brake",))],
)


def alternatives(text: str) -> list[list[str]]:
    """Return the alternatives of each concept of a text."""
    parts = concepts(shop_words(surfaces(text), BOOK.same), BOOK)
    return [[" ".join(words) for words in part.alternatives] for part in parts]


def test_one_word_takes_the_place_of_another() -> None:
    """`tire` is `tyre` from the start."""
    assert alternatives("tire") == [["tyr"]]


def test_the_longest_phrase_goes_first() -> None:
    """An e-brake is no brake."""
    assert alternatives("e-brake") == [["e brak", "park brak"]]
    assert alternatives("brake") == [["brak", "stopper"]]


def test_a_no_goes_with_the_phrase() -> None:
    """What does not turn over does not crank, however it is said."""
    assert alternatives("won't turn over") == [["!turn over", "!crank"]]
    assert alternatives("doesn't crank") == [["!crank"]]


def test_stop_words_may_stand_inside_a_phrase() -> None:
    """`turns it over` is `turns over`; other words between are not passed over."""
    assert alternatives("turns it over") == [["turn over", "crank"]]
    assert alternatives("turns slowly over") == [["turn"], ["slow"], ["over"]]


def test_a_phrase_keeps_its_own_words() -> None:
    """Nothing is lost: the words as typed are the first alternative."""
    assert alternatives("turn over")[0] == ["turn over", "crank"]


def test_only_slang_that_was_typed_is_told() -> None:
    """Proper words that mean the same as a slang word are not called slang."""
    book = phrasebook(
        slang=[("mushy pedal", ("low pedal",)), ("spongy pedal", ("low pedal",))],
        same=[("mushy", ("soft",)), ("spongy", ("soft",))],
    )

    def told(text: str) -> list[str]:
        words = surfaces(text)
        parts = concepts(shop_words(words, book.same), book)
        return [phrase for phrase, _ in slang_said(parts, words, book)]

    assert told("spongy pedal") == ["spongy pedal"]
    assert told("soft pedal") == []
