"""Text of authors made safe to print.

In: any text out of a file. Out: the same text with every sign that would move the cursor, colour
the terminal or turn the direction of writing shown as its number.
"""

import unicodedata

# Control signs, and format signs such as those that turn the direction of writing.
UNSEEN = {"Cc", "Cf", "Cs", "Zl", "Zp"}


def printable(text: str) -> str:
    """Return the text with signs that cannot be seen written as `\\u202e`."""
    if text.isprintable():
        return text
    return "".join(_shown(sign) for sign in text)


def _shown(sign: str) -> str:
    return f"\\u{ord(sign):04x}" if unicodedata.category(sign) in UNSEEN else sign
