"""Authors' text made safe to print.

In: any text out of a file. Out: the same text with every character that would move the cursor,
color the terminal, end a line, or turn the writing direction shown as its number.
"""

import unicodedata

# Control characters, format characters such as those that turn the writing direction, halves of
# surrogate pairs, line and paragraph separators.
INVISIBLE_CATEGORIES = {"Cc", "Cf", "Cs", "Zl", "Zp"}


def printable(text: str, keep: str = "") -> str:
    """Return the text with invisible characters written as `\\u202e`; those in `keep` stay."""
    if text.isprintable():
        return text
    return "".join(one if one in keep else _visible(one) for one in text)


def _visible(character: str) -> str:
    if unicodedata.category(character) not in INVISIBLE_CATEGORIES:
        return character
    number = ord(character)
    return f"\\u{number:04x}" if number <= 0xFFFF else f"\\U{number:08x}"
