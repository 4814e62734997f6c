"""Makes the faces that the charts are set in, from Barlow Semi Condensed 1.408.

In: the folder with BarlowSemiCondensed-Medium.ttf and -Bold.ttf. Out: BaytreeSans-*.ttf and .woff2
beside this file. Run by hand when the faces change, never by the tool itself:
`python builder/chart/faces/make_faces.py FOLDER` (needs fonttools with brotli).

Barlow lacks the signs a chart uses (arrows, tick, box, warning sign), so they are drawn here and
added. The licence (OFL.txt) has no reserved name; the family is renamed all the same, so that a
changed copy is never taken for the original.
"""

import sys
from collections.abc import Callable, Sequence
from itertools import pairwise
from pathlib import Path

from fontTools.pens.ttGlyphPen import TTGlyphPen  # type: ignore[import-untyped]
from fontTools.ttLib import TTFont  # type: ignore[import-untyped]

Point = tuple[float, float]
FAMILY = "Baytree Sans"
DROPPED = ("GSUB", "GPOS", "GDEF", "kern", "DSIG", "fpgm", "prep", "cvt ", "gasp")
EPOCH = 3_500_000_000  # seconds since 1904, so that the same input gives the same bytes


def arrow(turn: Callable[[float, float], Point]) -> list[list[Point]]:
    """An arrow of 760 by 500 units that points right before it is turned."""
    shape = [(60, 315), (520, 315), (520, 130), (800, 350), (520, 570), (520, 385), (60, 385)]
    return [[turn(x, y) for x, y in shape]]


def stroke(points: Sequence[Point], half: float) -> list[list[Point]]:
    """A line of even thickness along the points, as quadrilaterals."""
    shapes = []
    for (x1, y1), (x2, y2) in pairwise(points):
        length = ((x2 - x1) ** 2 + (y2 - y1) ** 2) ** 0.5
        dx, dy = (x2 - x1) / length * half, (y2 - y1) / length * half
        shapes.append(
            [
                (x1 - dx - dy, y1 - dy + dx),
                (x2 + dx - dy, y2 + dy + dx),
                (x2 + dx + dy, y2 + dy - dx),
                (x1 - dx + dy, y1 - dy - dx),
            ]
        )
    return shapes


SIGNS: dict[str, tuple[int, list[list[Point]]]] = {
    "→": (860, arrow(lambda x, y: (x, y))),
    "←": (860, arrow(lambda x, y: (860 - x, 700 - y))),
    "↓": (640, arrow(lambda x, y: (320 + (y - 350), 780 - x))),
    "↑": (640, arrow(lambda x, y: (320 - (y - 350), x - 80))),
    "✓": (760, stroke([(110, 330), (300, 110), (660, 600)], 45)),
    "✗": (700, stroke([(120, 120), (580, 580)], 45) + stroke([(120, 580), (580, 120)], 45)),
    "☐": (
        820,
        [
            [(70, 0), (70, 680), (750, 680), (750, 0)],
            [(120, 50), (700, 50), (700, 630), (120, 630)],
        ],
    ),
    "⚠": (
        900,
        [
            [(30, 0), (450, 740), (870, 0)],
            [(150, 70), (750, 70), (450, 600)],
            [(410, 430), (490, 430), (475, 230), (425, 230)],
            [(415, 190), (485, 190), (485, 115), (415, 115)],
        ],
    ),
    "▲": (760, [[(60, 0), (380, 640), (700, 0)]]),
    "▼": (760, [[(60, 640), (700, 640), (380, 0)]]),
    "■": (760, [[(80, 30), (80, 630), (680, 630), (680, 30)]]),
    "◆": (760, [[(60, 340), (380, 680), (700, 340), (380, 0)]]),
}


def add_signs(font: TTFont) -> None:
    """Draw each missing sign and map its character to it."""
    cmap = font.getBestCmap()
    for sign, (advance, shapes) in SIGNS.items():
        if ord(sign) in cmap:
            continue
        pen = TTGlyphPen(None)
        for shape in shapes:
            pen.moveTo(shape[0])
            for point in shape[1:]:
                pen.lineTo(point)
            pen.closePath()
        name = f"uni{ord(sign):04X}"
        font.setGlyphOrder([*font.getGlyphOrder(), name])
        font["glyf"][name] = pen.glyph(dropImpliedOnCurves=False)
        left = round(min(x for shape in shapes for x, _ in shape))
        font["hmtx"][name] = (advance, left)
        for table in font["cmap"].tables:
            if table.isUnicode():
                table.cmap[ord(sign)] = name


def rename(font: TTFont, style: str) -> None:
    """Give the changed face its own name; copyright and licence stay."""
    names = font["name"]
    for number in (*range(1, 13), 16, 17, 21, 22, 25):  # 0, 13 and 14 are copyright and licence
        names.removeNames(nameID=number)
    version = "Version 1.408; signs added"
    plain = FAMILY.replace(" ", "")
    for name, text in ((1, FAMILY), (2, style), (4, f"{FAMILY} {style}"), (5, version),
                       (6, f"{plain}-{style}"), (3, f"{plain}-{style} 1.408")):  # fmt: skip
        names.setName(text, name, 3, 1, 0x409)


def make(source: Path, style: str, target: Path) -> None:
    """Write one face as TrueType and as WOFF2."""
    font = TTFont(source, recalcTimestamp=False)
    for tag in DROPPED:
        if tag in font:
            del font[tag]
    for glyph in font["glyf"].glyphs.values():
        glyph.expand(font["glyf"])
        if hasattr(glyph, "program"):
            glyph.removeHinting()
    add_signs(font)
    rename(font, style)
    font["head"].created = font["head"].modified = EPOCH
    font.save(target.with_suffix(".ttf"))
    font.flavor = "woff2"
    font.save(target.with_suffix(".woff2"))


if __name__ == "__main__":
    here = Path(__file__).parent
    for style in ("Medium", "Bold"):
        make(Path(sys.argv[1]) / f"BarlowSemiCondensed-{style}.ttf", style,
             here / f"BaytreeSans-{style}")  # fmt: skip
