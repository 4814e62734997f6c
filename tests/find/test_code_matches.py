"""What a code counts for the trees that list it, worked out by hand."""

import pytest

from builder.find.asked_codes import AskedCode
from builder.find.code_matches import CODE_POINTS, PLACE_POINTS, code_meanings, score_codes
from builder.find.search_table import CodeRow, SearchTable, TreeRow
from builder.find.symptom_index import SymptomIndex, build_symptom_index

LISTS = (("P0562", "U0121-87"), ("U0121", "C0121", "U0121-11"), ("B1999",))


@pytest.fixture(scope="module")
def index() -> SymptomIndex:
    """Return the index of trees that list these codes."""
    trees = tuple(TreeRow(str(at), "Lamp", -1, (), codes, (), (), False)
                  for at, codes in enumerate(LISTS))  # fmt: skip
    codes = (CodeRow("U0121", "No messages"), CodeRow("P0121", "Pedal sensor"))
    return build_symptom_index(SearchTable((), (), (), (), (), codes, trees, ()))


@pytest.mark.parametrize(
    ("codes", "points"),
    [
        # any type will do: full points, and more for the first place of the list
        (["U0121"], {0: (3, 2), 1: (3, 1)}),
        # that type 3, no type 2, another 1; of a code listed twice the better counts
        (["U0121-87"], {0: (3, 2), 1: (2, 1)}),
        (["U0121-11"], {0: (1, 2), 1: (3, 3)}),
        (["U0121-22"], {0: (1, 2), 1: (2, 1)}),
        # without a letter, the best of all codes that have these digits
        (["0121"], {0: (3, 2), 1: (3, 1)}),
        # several add up
        (["P0562", "U0121"], {0: (6, 1, 2), 1: (3, 1)}),
        (["P0999"], {}),
    ],
)
def test_what_a_tree_lists_first_and_exactly_counts_most(
    codes: list[str], points: dict[int, tuple[int, ...]], index: SymptomIndex
) -> None:
    """Times the points of a code, and a share of the points of a place for each place."""
    expected = {
        entry: CODE_POINTS * times + sum(PLACE_POINTS // place for place in places)
        for entry, (times, *places) in points.items()
    }
    assert score_codes(index, list(map(asked, codes))) == expected


def asked(text: str) -> AskedCode:
    """Write a code as asked for."""
    name, _, failure_type = text.partition("-")
    letter = name[:-4]
    return AskedCode(letter, name[-4:], failure_type)


def test_a_code_is_told_in_the_words_of_the_shop(index: SymptomIndex) -> None:
    """All that the digits can mean; as typed, where the shop has no such code."""
    told = code_meanings(index, list(map(asked, ("0121-11", "B1999", "0777"))))
    assert told == (
        ("P0121-11", "Pedal sensor"),
        ("C0121-11", ""),
        ("U0121-11", "No messages"),
        ("B1999", ""),
        ("0777", ""),
    )
