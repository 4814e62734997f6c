"""The steps of a draft along the path that was walked.

In: the visits of a path, and by which result each was left. Out: the name of the draft's step for
each visit. A step that was done again is one step of the draft, as long as each of its results
leads one way; otherwise each visit is a step of its own, and the draft tells it as it was.
"""

from collections.abc import Iterable, Iterator, Sequence
from difflib import get_close_matches
from itertools import count

from builder.authoring.walked_path import Visit
from builder.reader.trees import NO_NAME

GAP_NAMES = ("not-written", "gap", "to-write")  # the first that no step's name is close to
_TAKEN = ("next", "back")  # words of the format where a branch is
_Place = tuple[str, str, str]  # tree, step, item


def names_of_visits(visits: Sequence[Visit], exits: Sequence[str]) -> list[str]:
    """Return the name of the draft's step for each visit."""
    apart: set[_Place] = set()
    while torn := set(_torn(exits, _steps(visits, apart))):
        apart |= torn
    names: dict[tuple[_Place, int], str] = {}
    for visit, step in zip(visits, _steps(visits, apart), strict=True):
        if step not in names:
            names[step] = _free_name(visit.step, names.values())
    return [names[step] for step in _steps(visits, apart)]


def gap_names(names: Sequence[str]) -> Iterator[str]:
    """Yield names for steps that are still to be written: `not-written-1`, `not-written-2`.

    They look like no other step, so that no message takes one for a slip in another's name.
    """
    prefix = next((one for one in GAP_NAMES if not get_close_matches(f"{one}-1", names)), "x-gap")
    yield from (f"{prefix}-{number}" for number in count(1))


def _place(visit: Visit) -> _Place:
    return visit.inside, visit.step, visit.item


def _steps(visits: Sequence[Visit], apart: set[_Place]) -> list[tuple[_Place, int]]:
    """Return the step of each visit: its place, and which visit it is where those are apart."""
    seen: dict[_Place, int] = {}
    steps = []
    for visit in visits:
        place = _place(visit)
        seen[place] = seen.get(place, 0) + 1
        steps.append((place, seen[place] if place in apart else 1))
    return steps


def _torn(exits: Sequence[str], steps: Sequence[tuple[_Place, int]]) -> Iterator[_Place]:
    """Yield places that one exit leaves to two steps."""
    leads: dict[tuple[tuple[_Place, int], str], tuple[_Place, int]] = {}
    for step, exit_, following in zip(steps, exits, steps[1:], strict=False):
        if leads.setdefault((step, exit_), following) != following:
            yield step[0]


def _free_name(step: str, taken: Iterable[str]) -> str:
    plain = NO_NAME.sub("-", step).strip("-") or "step"
    plain = f"{plain}-step" if plain in _TAKEN else plain
    used = {*taken}
    numbered = (f"{plain}-{number}" for number in count(2))
    return plain if plain not in used else next(one for one in numbered if one not in used)
