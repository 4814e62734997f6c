"""Amounts and model years whose ends are the wrong way around.

In: their texts, which have passed the schema. Out: a finding with the two ends in order.
"""

from collections.abc import Iterator

from builder.model.finding import Finding, edit_of, with_edit
from builder.model.text import Text
from builder.reader.nodes import Map
from builder.reader.source import mistake
from builder.reader.values import maps, money, scope, text


def turned_amount(words: Text | None) -> Iterator[Finding]:
    """Yield the finding for a range of amounts whose higher end comes first."""
    amount = money(words)
    if words and amount and amount.low > amount.high:
        message = f"`{words}` runs from the higher amount down to the lower one"
        why = "the customer's estimate adds up these amounts"
        yield _turned(words, message, why, f"{amount.high} to {amount.low}")


def turned_prices(node: Map) -> Iterator[Finding]:
    """Yield the same for the parts of a fix."""
    for part in maps(node, "parts"):
        yield from turned_amount(text(part, "price"))


def turned_years(node: Map) -> Iterator[Finding]:
    """Yield the finding for model years of a vehicle whose later end comes first."""
    words, years = text(node, "years"), scope(node).years
    if words and years and years[0] > years[1]:
        message = f"`{words}` runs from the later model year back to the earlier one"
        why = "no vehicle is from these years, so nothing here would be used"
        yield _turned(words, message, why, f"{years[1]}-{years[0]}")


def _turned(words: Text, message: str, why: str, right: str) -> Finding:
    finding = mistake("bad-value", words.at, message, why, f"write `{right}`")
    return with_edit(finding, edit_of(words, right))
