"""Codes in a query: every spelling, never a guess."""

from hypothesis import given
from hypothesis import strategies as st

from builder.find.asked_codes import AskedCode, read_bare_codes_and_years, read_written_codes
from builder.trade.codes import Code, parse_code

NUMBERS = st.integers(0, 0xFFFF).map(lambda number: str(Code(number)))
TYPES = st.sampled_from(["", "-00", "-87", "-1A"])


@given(code=NUMBERS, failure_type=TYPES, between=st.sampled_from(["", " ", "-", ".", "_"]))
def test_every_spelling_of_a_code_is_that_code(code: str, failure_type: str, between: str) -> None:
    """Any of the 65,536 codes, in small letters, apart, with a failure type: one code, no rest."""
    if sum(sign.isdigit() for sign in code[1:]) < 2:
        return  # `P3FFF`: three letters of four, could be a word; asked for as a word
    written = code[0].lower() + between + code[1:].lower() + failure_type.lower()
    codes, rest = read_written_codes(f"lamp {written}, on")
    assert [str(found) for found in codes] == [code + failure_type]
    assert rest.split() == ["lamp", ",", "on"]


@given(code=NUMBERS)
def test_the_search_and_the_trade_read_the_same_code(code: str) -> None:
    """What the trade's reader takes for a code, the search writes the same way."""
    for found in read_written_codes(code)[0]:
        assert parse_code(str(found)) == parse_code(code)


def test_the_letter_o_is_read_as_the_digit() -> None:
    """O, I and L never occur in a code, so they are mended; words with few figures stay words."""
    assert [str(code) for code in read_written_codes("PO42O")[0]] == ["P0420"]
    assert [str(code) for code in read_written_codes("UOOI2")[0]] == ["U0012"]
    assert [str(code) for code in read_written_codes("UOO1A")[0]] == ["U001A"]
    for text in ("cocoa", "cold u joint b1 c3"):
        assert read_written_codes(text) == ([], text)


def test_four_signs_alone_are_a_code_a_year_or_a_number() -> None:
    """A nought in front is a code; a year is a year beside a vehicle or if no tree has the code."""
    known = {"2015", "1450"}

    def read(words: str, *, named: bool = False) -> tuple[list[AskedCode], list[int], list[str]]:
        return read_bare_codes_and_years(words.split(), known.__contains__, vehicle_named=named)

    assert read("0420") == ([AskedCode("", "0420")], [], [])
    assert read("2015") == ([AskedCode("", "2015")], [], [])
    assert read("2015", named=True) == ([], [2015], [])
    assert read("2019") == ([], [2019], [])
    assert read("1979 1980 2049 2050") == ([], [1980, 2049], ["1979", "2050"])
    assert read("1450") == ([AskedCode("", "1450")], [], [])
    assert read("1500 rpm") == ([], [], ["1500", "rpm"])
