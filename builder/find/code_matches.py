"""Which entries list the codes that were asked for, and what the codes mean.

In: codes and the index. Out: points of each entry; the shop's own words for the codes. The page
does the same (`search-rank.js`).
"""

from collections.abc import Sequence

from builder.find.asked_codes import AskedCode
from builder.find.symptom_index import ListedCode, SymptomIndex
from builder.trade.codes import SYSTEM_LETTERS

CODE_POINTS = 1_000_000  # more than all words together can gain
# For the code that a tree lists first; half for the second, a third for the third ...
PLACE_POINTS = 1000


def score_codes(index: SymptomIndex, codes: Sequence[AskedCode]) -> dict[int, int]:
    """Points of each entry for the codes that were asked for; those it lists first tell most."""
    points: dict[int, int] = {}
    for code in codes:
        best: dict[int, int] = {}
        for name in code_names(index, code):
            for listed in index.codes.get(name, ()):
                worth = CODE_POINTS * _type_points(code, listed) + PLACE_POINTS // (
                    1 + listed.place
                )
                best[listed.entry] = max(worth, best.get(listed.entry, worth))
        for entry, worth in best.items():
            points[entry] = points.get(entry, 0) + worth
    return points


def _type_points(code: AskedCode, listed: ListedCode) -> int:
    """Three for what was asked for, two if the tree leaves the type open, one for another type."""
    if code.failure_type in ("", listed.failure_type):
        return 3
    return 1 if listed.failure_type else 2


def code_names(index: SymptomIndex, code: AskedCode) -> tuple[str, ...]:
    """The codes that were meant: without a letter, all known ones that have these digits."""
    if code.letter:
        return (code.letter + code.digits,)
    names = (letter + code.digits for letter in SYSTEM_LETTERS)
    return tuple(name for name in names if name in index.codes or name in index.code_meanings)


def code_meanings(index: SymptomIndex, codes: Sequence[AskedCode]) -> tuple[tuple[str, str], ...]:
    """Each code that was meant with the shop's own words for it; "" if there are none."""
    return tuple(
        (
            f"{name}-{code.failure_type}" if code.failure_type else name,
            index.code_meanings.get(name, ""),
        )
        for code in codes
        for name in code_names(index, code) or (code.digits,)
    )
