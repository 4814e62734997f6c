"""Abbreviations for those who don't know them."""

from builder.model.knowledge import Term
from builder.model.text import Text
from builder.wording.abbreviations import spelled_at_first_use


def term(id_: str, words: str, means: str, *also: str) -> Term:
    """Return an entry of a glossary."""
    return Term(Text(id_), Text(words), Text(means), (), tuple(map(Text, also)))


GLOSSARY = {
    one.id: one
    for one in (
        term("abs", "ABS", "Anti-lock brake system; it keeps the wheels turning.", "antilock"),
        term("evap", "Evaporative emission system", "Holds fuel vapor.", "EVAP"),
        term("hvac", "HVAC", "Heating, ventilation, and air conditioning."),
        term("lin", "LIN", "A slow network."),
    )
}


def test_an_abbreviation_is_spelled_out_once() -> None:
    """At its first use, from the entry that has it; codes, units and others stay."""
    spelled = spelled_at_first_use(GLOSSARY)
    assert spelled("The ABS is off") == "The ABS (anti-lock brake system) is off"
    assert spelled("ABS and EVAP") == "ABS and EVAP (evaporative emission system)"
    assert spelled("P0420 on LIN, 12 V") == "P0420 on LIN, 12 V"
    assert spelled("the HVAC") == "the HVAC (heating, ventilation, and air conditioning)"


def test_what_is_spelled_out_already_is_left() -> None:
    """A name with its abbreviation behind it needs no other."""
    text = "Anti-lock brake system (ABS) module"
    assert spelled_at_first_use(GLOSSARY)(text) == text
