"""A query taken apart: what a reading means."""

import pytest

from builder.find.search_query import parse_query
from builder.find.search_table import SearchTable, TreeRow
from builder.find.symptom_index import SymptomIndex, build_symptom_index

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
    corrected = parse_query(f"battery {volts} ", small_index).spelled.corrected
    assert [meant for written, meant in corrected if written == volts] == [words] * bool(words)


def test_words_of_plain_english_are_not_run_together() -> None:
    """Nobody who writes two words that everybody writes means the one that they'd make."""
    titles = ("goodthings sticker", "itis lamp", "gearbox")
    trees = tuple(TreeRow(title, title, -1, (), (), (), (), False) for title in titles)
    everyday = frozenset({"good", "things"})
    index = build_symptom_index(SearchTable((), (), (), (), (), (), trees, (), everyday=everyday))
    asked = "good things it is gear box "
    assert parse_query(asked, index).spelled.words == ("good", "things", "it", "is", "gearbox")
