"""Quotes of a word processor, which YAML takes for letters.

In: a phrase, or the items of a list in brackets. Out: the finding, with the edit that types the
straight quotes of YAML where they are needed, and the phrase that was meant.
"""

import re
from collections.abc import Sequence

from builder.model.finding import Edit, Finding, edit_of, with_edit
from builder.model.text import Text
from builder.reader.characters import quoted
from builder.reader.nodes import Node
from builder.reader.source import mistake

OPENING, CLOSING = ("“", "„", "«", "‘", "‚"), ("”", "“", "»", "’")
IN_CURLY_QUOTES = re.compile("[“”„«‘’‚][^“”„«»‘’‚]*[“”»‘’]")


def printed_quotes(text: Text) -> Finding:
    """Return the finding for quotes around a whole phrase."""
    inner = text[1:-1].strip()
    finding = mistake("bad-value", text.at, f"`{text[0]}` and `{text[-1]}` are printed with the "
                      "text: only straight quotes are quotes here",
                      "techs and customers read the quotes on the page and on the chart",
                      f"delete them: `{inner}`")  # fmt: skip
    return with_edit(finding, edit_of(text, inner))


def quoted_across(items: Sequence[Node]) -> tuple[int, int] | None:
    """Return the first and the last of the items between which quotes open and close, if any do."""
    for start, one in enumerate(items):
        if isinstance(one, Text) and one[:1] in OPENING and not IN_CURLY_QUOTES.fullmatch(one):
            for end in range(start + 1, len(items)):
                piece = items[end]
                if not isinstance(piece, Text):
                    break
                if piece[-1:] in CLOSING:
                    return start, end
    return None


def phrase_in_pieces(pieces: Sequence[Node], lines: Sequence[str]) -> tuple[Finding, Text]:
    """Return the finding for a phrase that a comma cuts inside such quotes, and the phrase."""
    texts = [one for one in pieces if isinstance(one, Text)]
    first, last = texts[0].at, texts[-1].at
    at = first._replace(end_line=last.end_line, end_column=last.end_column)
    whole = Text(", ".join(texts)[1:-1].strip(), at)
    finding = mistake("bad-value", at, f"`{texts[0][0]}` and `{texts[-1][-1]}` are no quotes here, "
                      "but letters, so the comma cuts the phrase in two",
                      "each half would be taken for a phrase, a check, or a name of its own",
                      f"type straight quotes: `{quoted(whole)}`")  # fmt: skip
    old = lines[at.line - 1][at.column - 1 : at.end_column - 1]
    edit = Edit(at, old, quoted(whole)) if at.line == at.end_line else None
    return with_edit(finding, edit), whole
