"""What people type short is written out before it is searched."""

import pytest

from builder.find.shorthand import SHORTHAND, short_forms, write_out
from builder.find.word_forms import split_words


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("brk ped low", ["brake", "pedal", "low"]),
        ("n/s w/o key", ["no", "start", "without", "key"]),
        ("RF hdlp inop", ["right", "front", "headlight", "not", "working"]),
        ("click n nothing lol", ["click", "and", "nothing"]),
        ("a/c", ["ac"]),
        ("left/right", ["left", "right"]),
    ],
)
def test_a_short_form_is_what_it_stands_for(typed: str, meant: list[str]) -> None:
    """Shop notes and phone language read as the words in full; letters about a slash are one."""
    assert write_out(split_words(typed)) == meant


def test_a_form_stands_for_one_thing() -> None:
    """No form is listed twice, and none is what another stands for."""
    forms = [form for each in SHORTHAND.values() for form in each.split()]
    assert len(forms) == len(set(forms))
    assert not {word for meant in SHORTHAND for word in meant.split()} & short_forms().keys()
