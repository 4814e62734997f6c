"""A query taken apart: what a reading means, and what was meant by a misspelled word."""

from collections.abc import Iterable

import pytest

from builder.find.search_query import parse_query
from builder.find.search_table import SearchTable, TreeRow
from builder.find.symptom_index import SymptomIndex, build_symptom_index
from builder.find.word_forms import split_words

LOW, HIGH = "low voltage", "charging voltage too high"


@pytest.mark.parametrize(
    ("volts", "words"),
    [
        ("7.9 V", ""),
        ("8 V", LOW),
        ("12.2 V", LOW),
        ("12.3 V", ""),
        ("14.9 V", ""),
        ("15 V", HIGH),
        ("19.9 V", HIGH),
        ("20 V", ""),  # a circuit of another voltage
        ("12 V", ""),  # a socket
    ],
)
def test_a_voltage_of_the_battery_means_low_or_high(
    volts: str, words: str, small_index: SymptomIndex
) -> None:
    """Common practice, no source: below 12.3 V it is low, from 15 V charged too high."""
    spelled = parse_query(f"battery {volts} ", small_index).spelled
    meanings = [meant for written, meant in spelled.corrected if written == volts]
    assert meanings == [words] * bool(words)
    assert spelled.words == ("battery", *split_words(words or volts))


def index_of(*titles: str, everyday: Iterable[str]) -> SymptomIndex:
    """Index trees that have nothing but a title."""
    trees = tuple(TreeRow(title, title, -1, (), (), (), (), False) for title in titles)
    table = SearchTable((), (), (), (), (), (), trees, (), everyday=frozenset(everyday))
    return build_symptom_index(table)


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("buit", "built"),  # a letter left out; for `butt` one would be wrong
        ("wether", "weather"),  # a letter left out of either, and the trees say `weather`
    ],
)
def test_a_usual_slip_in_plain_english_stays_plain_english(typed: str, meant: str) -> None:
    """Unless it is as usual a slip in a word that trees say."""
    index = index_of("butt connector", "weather strip loose", everyday=["built", "whether"])
    assert parse_query(f"{typed} ", index).spelled.words == (meant,)


def test_two_slips_in_plain_english_are_not_usual() -> None:
    """A word of the trees that is one edit away comes before."""
    index = index_of("carpuly loose", everyday=["carefully"])
    assert parse_query("carfuly ", index).spelled.words == ("carpuly",)


@pytest.mark.parametrize(
    ("near", "words"), [("beltclamp", ("beltclamp",)), ("boltclamp", ("belt", "lamp"))]
)
def test_a_word_one_edit_away_comes_before_two(near: str, words: tuple[str, ...]) -> None:
    """One that is two edits away comes behind them."""
    index = index_of("belt lamp", f"{near} loose", everyday=())
    assert parse_query("beltlamp ", index).spelled.words == words


def test_words_of_plain_english_are_not_run_together() -> None:
    """Nobody who writes two words that everybody writes means the one that they'd make."""
    titles = ("goodthings sticker", "itis lamp", "gearbox")
    index = index_of(*titles, everyday=["good", "things"])
    asked = "good things it is gear box "
    assert parse_query(asked, index).spelled.words == ("good", "things", "it", "is", "gearbox")
