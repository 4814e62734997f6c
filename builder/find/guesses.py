"""What somebody guesses, apart from what they tell.

In: a query as typed. Out: what is told, without the parts of the sentence that only blame something
(`master cylinder bad?`, `must be the alternator`); "" where there is no guess, or too little beside
it. Who blames a part and tells what happens is helped by what happens. The page does the same with
the patterns from here (`search-query.js`).
"""

import re

# Where one part of a sentence ends; the mark stays with what it ends.
PARTS = r"[^,;:.?!()]*[,;:.?!()]?"
# A number with a point in it is one thing.
POINT = r"([0-9])[.,]([0-9])"
GUESS = (
    r"(?:^|[^a-z])(?:bad|blamed?|blames|faulty|guess(?:ed)?|guessing|maybe|might be|must be"
    r"|needs an?|needs new"
    r"|probably|shot|suspect|think|thinks|thought|toast|junk|told|said|worn out|tired|weak"
    r"|going out|going bad|i bet|possibly|sounds like the|died|packed up|is done|must have"
    r"|wants a)(?:[^a-z]|$)|^(?:needs|need an?|need new) "
)
ASKED = r"^[^?]{3,32}[?]$"  # short, and with a question mark
LONGEST_GUESS = 7  # words
LEAST_TOLD = 4  # words beside it
_PARTS, _POINT = re.compile(PARTS), re.compile(POINT)
_GUESS, _ASKED = re.compile(GUESS), re.compile(ASKED)


def without_guesses(asked: str) -> str:
    """Return what is told beside a guess, or ""."""
    parts = [part.strip() for part in _PARTS.findall(_POINT.sub(r"\1_\2", asked.lower()))]
    parts = [part for part in parts if part]
    told = [part for part in parts if not _is_guess(part)]
    text = " ".join(told)
    is_enough = len(text.split()) >= LEAST_TOLD
    return text.replace("_", ".") if is_enough and len(told) < len(parts) else ""


def _is_guess(part: str) -> bool:
    is_short = len(part.split()) <= LONGEST_GUESS
    return is_short and bool(_GUESS.search(part) or _ASKED.search(part))
