"""What the index of a shop has of each tree, worked out by hand."""

from builder.find.search_table import LampRow, NamedRow, SearchTable, TreeRow, WordRow
from builder.find.symptom_index import UNSAID, build_symptom_index, lamp_weight


def table(*trees: TreeRow) -> SearchTable:
    """Make the rows of a shop with two systems, two lamps and an article."""
    return SearchTable(
        systems=(NamedRow("brakes", "Brakes"), NamedRow("cooling", "Cooling")),
        lamps=(LampRow("abs", "ABS lamp", "yellow circle"), LampRow("hot", "Heat lamp", "red")),
        vehicles=(),
        synonyms=(WordRow("fizz", ("hiss",)),),
        slang=(),
        codes=(),
        trees=trees,
        articles=(NamedRow("drop", "Voltage drop"),),
    )


def titled(title: str) -> TreeRow:
    """Make a tree that has nothing but a title."""
    return TreeRow(title, title, -1, (), (), (), (), False)


def test_a_tree_says_most_by_its_own_words() -> None:
    """Its title and its symptom count in full, its lamps and its system less."""
    low = TreeRow("low", "Pedal low", 0, (0,), (), ("soft pedal",), (), False)
    hot = TreeRow("hot", "Runs hot", 1, (0, 1), (), (), (), draft=True)
    index = build_symptom_index(table(low, hot, titled("Horn quiet")))
    assert [(one.entry, one.text, one.weight) for one in index.phrases] == [
        (0, "Pedal low", 100),
        (0, "soft pedal", 100),
        (0, "ABS lamp", 80),
        (0, "yellow circle", 60),
        (0, "Brakes", 60),
        (1, "Runs hot", 100),
        (1, "ABS lamp", 70),
        (1, "yellow circle", 50),
        (1, "Heat lamp", 70),
        (1, "red", 50),
        (1, "Cooling", 60),
        (2, "Horn quiet", 100),
        (3, "Voltage drop", 100),
    ]
    assert [one.id for one in index.entries if one.draft] == ["hot"]
    titles = [one.text for one in index.phrases if one.is_title]
    assert titles == ["Pedal low", "Runs hot", "Horn quiet"]


def test_a_lamp_among_many_still_tells_something() -> None:
    """From five lamps on, each counts the same."""
    assert [lamp_weight(lamps) for lamps in (3, 4, 5, 6, 9)] == [60, 50, 40, 40, 40]


def test_a_word_is_known_by_how_often_trees_say_it() -> None:
    """A word that only the shop's list has is said by none; one of the trade may be in neither."""
    trees = map(titled, ("crank", "cranks", "cranks"))
    words = build_symptom_index(table(*trees)).vocabulary
    assert (words.known["cranks"], words.known["fizz"]) == (2, 0)
    assert words.known["sunroof"] == UNSAID
    assert (words.stems["crank"], words.stem_uses["crank"]) == ("cranks", 2)
