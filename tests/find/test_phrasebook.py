"""The shop's words."""

from builder.find.phrasebook import find_concepts, make_phrasebook, shop_tokens, slang_in
from builder.find.search_table import WordRow
from builder.find.word_forms import split_words

BOOK = make_phrasebook(
    slang=[
        WordRow("won't crank", ("no crank",)),
        WordRow("brake", ("stopper",)),
        WordRow("brake grabs", ("brake catches",)),
        WordRow("mushy", ("low",)),
    ],
    same=[
        WordRow("tire", ("tyre",)),
        WordRow("turn over", ("crank",)),
        WordRow("e-brake", ("parking brake",)),
        WordRow("kicker", ("starter motor relay",)),
    ],
)


def alternatives(text: str) -> list[list[str]]:
    """Return the alternatives of each concept of a text."""
    parts = find_concepts(shop_tokens(split_words(text), BOOK.synonyms), BOOK)
    return [[" ".join(words) for words in part.alternatives] for part in parts]


def test_one_word_takes_the_place_of_another() -> None:
    """`tire` is `tyre` from the start."""
    assert alternatives("tire") == [["tyr"]]


def test_the_longest_phrase_goes_first() -> None:
    """An e-brake is no brake, and a brake that grabs is more than a brake."""
    assert alternatives("brake grabs") == [["brak grab", "brak catch"]]
    assert alternatives("e-brake") == [["e brak", "park brak"]]
    assert alternatives("brake") == [["brak", "stopper"]]


def test_a_no_goes_with_the_phrase() -> None:
    """What does not turn over does not crank, however it is said."""
    assert alternatives("won't turn over") == [["!turn over", "!crank"]]
    assert alternatives("doesn't crank") == [["!crank"]]


def test_a_no_stands_before_a_term_of_several_words() -> None:
    """And none of them is lost."""
    assert alternatives("no kicker") == [["!starter"], ["motor"], ["relay"]]


def test_stop_words_may_stand_inside_a_phrase() -> None:
    """`turns it over` is `turns over`, up to two of them; other words are not passed over."""
    assert alternatives("turns it over") == [["turn over", "crank"]]
    assert alternatives("turns it is over") == [["turn over", "crank"]]
    assert alternatives("turns it is on over") == [["turn"], ["over"]]
    assert alternatives("turns slowly over") == [["turn"], ["slow"], ["over"]]


def test_a_phrase_keeps_its_own_words() -> None:
    """Nothing is lost: the words as typed are the first alternative."""
    assert alternatives("turn over")[0] == ["turn over", "crank"]


def test_only_slang_that_was_typed_is_told() -> None:
    """Proper words that mean the same as a slang word are not called slang."""
    book = make_phrasebook(
        slang=[WordRow("mushy pedal", ("low pedal",)), WordRow("spongy pedal", ("low pedal",))],
        same=[WordRow("mushy", ("soft",)), WordRow("spongy", ("soft",))],
    )

    def told(text: str) -> list[str]:
        words = split_words(text)
        concepts = find_concepts(shop_tokens(words, book.synonyms), book)
        return [row.phrase for row in slang_in(concepts, words)]

    assert told("spongy pedal") == ["spongy pedal"]
    assert told("soft pedal") == []


def test_words_that_mean_nothing_are_left_out() -> None:
    """A phrase of stop words alone, for stop words alone, leads nowhere and harms nothing."""
    book = make_phrasebook(slang=[WordRow("it is on", ("is",))], same=[WordRow("no", ("not",))])
    assert find_concepts(shop_tokens(split_words("it is on"), book.synonyms), book) == []


def test_a_subject_stands_as_it_is() -> None:
    """A car that hesitates when stopped at lights has nothing wrong with its stop light."""
    book = make_phrasebook(slang=[], same=[], subjects=["stop light"])
    together, apart = (find_concepts(shop_tokens(split_words(text), book.synonyms), book)
                       for text in ("stop light", "stopped at lights"))  # fmt: skip
    assert [one.alternatives for one in together] == [(("stop", "light"),)]
    assert [one.alternatives for one in apart] == [(("stop",),), (("light",),)]


def test_a_subject_that_says_nothing_is_no_phrase() -> None:
    """`stay up` is made of words that every complaint has."""
    book = make_phrasebook([], [], ["stay up", "dome light"])
    assert find_concepts(shop_tokens(split_words("it won't stay up"), book.synonyms), book) == []
    assert find_concepts(["dome", "light"], book) != []
