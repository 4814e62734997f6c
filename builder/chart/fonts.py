"""The faces that charts and sheets are set in, and the widths of text.

In: the font files shipped in `faces/`, the same that the PDF embeds and the page serves. Out:
widths in points, so that a line measured here fits wherever it is drawn.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path

FACES = Path(__file__).parent / "faces"
FAMILY = "Baytree Sans"
LEADING = 1.15  # from baseline to baseline, in ems


@dataclass(frozen=True, slots=True)
class Face:
    """One weight of the family; widths and heights are fractions of the em."""

    name: str
    file: Path
    advances: Mapping[str, float]
    missing: float  # advance of the hollow box drawn for a character that the face lacks
    capital: float  # height of a capital letter
    ascent: float
    descent: float  # below the baseline, positive

    def width(self, text: str, size: float) -> float:
        """Width of one line in points, without kerning."""
        advances, missing = self.advances, self.missing
        return size * sum([advances.get(sign, missing) for sign in text])


@cache
def face(style: str) -> Face:
    """Read the advance widths of `Medium` or `Bold`."""
    from fontTools.ttLib import TTFont  # type: ignore[import-untyped]  # slow to import

    file = FACES / f"BaytreeSans-{style}.ttf"
    with TTFont(file, lazy=True) as font:
        em = font["head"].unitsPerEm
        metrics = font["hmtx"].metrics
        advances = {chr(code): metrics[glyph][0] / em for code, glyph in font.getBestCmap().items()}
        return Face(
            name=f"BaytreeSans-{style}",
            file=file,
            advances=advances,
            missing=metrics[".notdef"][0] / em,
            capital=font["OS/2"].sCapHeight / em,
            ascent=font["hhea"].ascent / em,
            descent=-font["hhea"].descent / em,
        )


def medium() -> Face:
    """The face of running text."""
    return face("Medium")


def bold() -> Face:
    """The face of numbers, results and signal words."""
    return face("Bold")
