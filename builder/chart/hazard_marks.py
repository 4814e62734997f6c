"""Small signs for hazards, so that a box can name every one of them.

In: the hazards of a tree. Out: a `HazardMark` each, and the polygons it is drawn with. A triangle
with a picture as ISO 7010 has it for warnings, a disc for a NOTICE; the pictures are our own. The
picture goes by the words of the hazard; where two hazards have one picture, each has a letter.
"""

import re
from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Mapping
from math import cos, pi, sin
from typing import NamedTuple

from builder.graph.runs import with_inner_steps
from builder.model.knowledge import Hazard, Signal
from builder.model.library import Library
from builder.model.tree import Step
from builder.wording.hazards import by_severity

Point = tuple[float, float]
Polygon = tuple[Point, ...]

WIDE, HIGH = 24.0, 21.0  # the field in which the pictures are drawn, y downwards
LETTERS = "abcdefghijklmnopqrstuvwxyz"
WORDS = (  # the first that fits counts: a hazard that is hot and under pressure burns
    ("bag", "airbag|pretensioner"),
    ("burst", "explode|burst"),
    ("bolt", "volt|short|shock"),
    ("heat", "hot|heat"),
    ("jet", "pressure|pressurized|spray|jet"),
    ("flame", "ignite|fire|vapor|flammable"),
    ("cloud", "monoxide|dust|gas|fume|lung"),
    ("gear", "belt|pulley|fan|rotat|spin"),
    ("load", "raised|lift|fall"),
    ("car", "vehicle|driv|brakes|steer"),
    ("drop", "fluid|acid|skin"),
)


class HazardMark(NamedTuple):
    """The sign of one hazard on one chart."""

    picture: str
    letter: str = ""


def hazards_of(step: Step, library: Library) -> list[Hazard]:
    """Return the hazards of a step, most severe first: ANSI Z535.4 asks for its signal word.

    Those of a procedure that it runs are its own.
    """
    steps = with_inner_steps(step, library.procedures)
    names = dict.fromkeys(hazard for one in steps for hazard in one.hazards)
    return by_severity(library.hazards[name] for name in names if name in library.hazards)


def hazards_of_needs(step: Step, library: Library) -> list[Hazard]:
    """Return the hazards of the states that a step needs, and those of its procedure.

    A box doesn't repeat them, as they stay over many steps; the head of a sheet has them.
    """
    steps = with_inner_steps(step, library.procedures)
    states = (need.condition for one in steps for need in one.needs)
    kinds = (library.conditions[name] for name in states if name in library.conditions)
    names = dict.fromkeys(hazard for one in kinds for hazard in one.hazards)
    return [library.hazards[name] for name in names if name in library.hazards]


def hazard_marks(hazards: Iterable[Hazard]) -> Mapping[str, HazardMark]:
    """Give each hazard a sign that no other has, by its id."""
    pictures = {str(hazard.id): picture_of(hazard) for hazard in hazards}
    count = Counter(pictures.values())
    letters: dict[str, Iterator[str]] = defaultdict(lambda: iter(LETTERS))
    return {
        name: HazardMark(picture, next(letters[picture], "") if count[picture] > 1 else "")
        for name, picture in pictures.items()
    }


def picture_of(hazard: Hazard) -> str:
    """Return the picture for a hazard by its words; "general" where none fits."""
    if hazard.signal is Signal.NOTICE:
        return "notice"
    words = f"{hazard.id} {hazard.hazard}".replace("-", " ").lower()
    found = (name for name, known in WORDS if re.search(rf"\b(?:{known})", words))
    return next(found, "general")


def mark_polygons(picture: str) -> Iterator[tuple[str, Polygon]]:
    """Yield what a sign is drawn with, from the ground up: `ink` or `ground`, and a polygon."""
    if picture == "notice":
        yield "ink", disc(12, 10.5, 10.5)
        yield "ground", disc(12, 10.5, 9)
    else:
        yield "ink", ((12, 0), (24, 21), (0, 21))
        yield "ground", ((12, 3.2), (21.2, 19.4), (2.8, 19.4))
    for shape in PICTURES[picture]:
        yield "ink", shape
    for hole in HOLES.get(picture, ()):
        yield "ground", hole


def disc(x: float, y: float, r: float, points: int = 16, inner: float = 1) -> Polygon:
    """Return a disc; with `inner`, every other point is so much nearer: a star, a gear."""
    return tuple(
        (x + r * part * cos(2 * pi * at / points), y + r * part * sin(2 * pi * at / points))
        for at, part in enumerate([1, inner] * (points // 2))
    )


def _bar(x: float, y: float, width: float, height: float) -> Polygon:
    return (x, y), (x + width, y), (x + width, y + height), (x, y + height)


def _wave(x: float) -> Polygon:
    """Return a line that rises in waves."""
    line = [(x, 15.5), (x + 1.2, 13.8), (x - 0.6, 12), (x + 0.8, 9.8)]
    return (*line, *((at + 1.3, y) for at, y in reversed(line)))


def _gear() -> Polygon:
    """Return a disc with eight teeth."""
    turns = [
        (2 * pi * (at + shift) / 8, r)
        for at in range(8)
        for shift, r in ((0, 4.8), (0.35, 4.8), (0.5, 3.4), (0.85, 3.4))
    ]
    return tuple((12 + r * cos(turn), 14 + r * sin(turn)) for turn, r in turns)  # fmt: skip


PICTURES: Mapping[str, tuple[Polygon, ...]] = {
    "general": (((10.9, 8), (13.1, 8), (12.6, 14.6), (11.4, 14.6)), disc(12, 17, 1.3)),
    "notice": (((10.7, 4.5), (13.3, 4.5), (12.7, 12), (11.3, 12)), disc(12, 15, 1.6)),
    "bag": (disc(14, 14, 4), disc(8, 12.2, 1.7),
            ((6.4, 14.4), (9, 14.2), (9.6, 18.4), (6.4, 18.4))),
    "burst": (disc(12, 14.2, 5.4, 18, 0.45),),
    "bolt": (((13.4, 7.4), (8.6, 14.2), (11.5, 14.2), (10.2, 18.8), (15.4, 12.2), (12.5, 12.2)),),
    "heat": (_wave(8.3), _wave(11.3), _wave(14.3), _bar(7, 17, 10, 1.5)),
    "jet": (((6.2, 17.8), (6.2, 13.8), (10, 15.2), (10, 16.4)), _bar(11, 15.4, 6.4, 0.9),
            ((11, 14.6), (15.8, 11.2), (16.3, 12), (11.4, 15)),
            ((11, 16.8), (16.6, 18.6), (16.4, 19), (11, 17.4))),
    "flame": (((12.2, 7.6), (15.6, 12.2), (15.9, 15.8), (14, 18.6), (10, 18.6), (8.1, 15.8),
               (8.8, 12.6), (10.4, 14), (11, 11)),),
    "cloud": (disc(8.9, 15.8, 2.7), disc(12, 13.4, 3.4), disc(15.2, 15.8, 2.7),
              _bar(8.9, 15.5, 6.3, 3)),
    "gear": (_gear(),),
    "load": (_bar(9, 8.8, 6, 4.6), _bar(7, 17.4, 10, 1.4),
             ((10.3, 14.2), (13.7, 14.2), (12, 16.8))),
    "car": (((6, 16.8), (6.2, 14), (8.4, 13.4), (9.8, 10.8), (14, 10.8), (15.8, 13.4), (18, 14),
             (18.2, 16.8)), disc(9, 17, 1.7), disc(15.2, 17, 1.7)),
    "drop": (((12, 8), (15, 13.4), (15, 16.4), (13.5, 18.4), (10.5, 18.4), (9, 16.4), (9, 13.4)),),
}  # fmt: skip
HOLES: Mapping[str, tuple[Polygon, ...]] = {
    "gear": (disc(12, 14, 1.6),),
    "flame": (((12, 14.4), (13.4, 16.4), (12, 18), (10.6, 16.4)),),
    "burst": (disc(12, 14.2, 1.3, 8),),
}
