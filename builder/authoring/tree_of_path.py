"""A draft of a tree from the path that a job went.

In: a `WalkedPath`, the shop's trees and knowledge, the ID of the new tree, the date. Out: the text
of its file. What was done stands in its order, in the words of the trees that it came from; each
answer that the job never met leads to a step with a name like `not-written-1`, which the check
names as missing: a draft may have such gaps, a ready tree may not.
"""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from typing import Any

from builder.authoring.draft_step import DraftStep, comments_of, step_words
from builder.authoring.path_names import gap_names, names_of_visits
from builder.authoring.placed_visits import PlacedVisit, placed_visits
from builder.authoring.source_steps import SourceTrees
from builder.authoring.walked_path import WalkedPath
from builder.authoring.written_yaml import comment, flow, yaml_lines
from builder.model.library import Library
from builder.model.tree import Scope
from builder.wording.vehicle_words import part_name

_HEAD = """\
# yaml-language-server: $schema=../../.schemas/tree.schema.json
#
# Made from {origin}: what was done there, in its order.
# `{gap}` and the like stand for what follows an answer that the job never met: write that step,
# or name one that is here. `baytree check` lists those that are left. Comments say what was read
# and remarked on the job: use them for notes, then delete them.
"""


def tree_of_path(
    path: WalkedPath, trees: SourceTrees, library: Library, id_: str, today: date
) -> str:
    """Return the file of the draft; "" where nothing was done that it could tell."""
    visits = placed_visits(path, trees)
    if not visits:
        return ""
    names = names_of_visits([one.visit for one in visits], [one.exit for one in visits])
    gaps = next(gap_names(names))
    lines = [
        *yaml_lines(_head(id_)),
        *_complaint(path.complaint),
        *yaml_lines(_scope_and_drive(visits)),
        *_vehicle(path, visits, library),
        *yaml_lines({"written": {"by": "your name", "date": today.isoformat()}}),
        "",
        "steps:",
        *_steps(visits, names, library),
    ]
    return _HEAD.format(origin=path.origin, gap=gaps) + "".join(f"{line}\n" for line in lines)


def _head(id_: str) -> dict[str, Any]:
    system, name = id_.split("/")
    words = name.replace("-", " ")
    return {
        "title": words[0].upper() + words[1:],
        "status": "draft",
        "system": system,
        "symptom": {"words": [f"{system.replace('-', ' ')} {words}"]},
    }


def _complaint(complaint: str) -> Iterator[str]:
    if complaint:
        yield comment(f"The customer's words: {complaint}")


def _scope_and_drive(visits: Sequence[PlacedVisit]) -> dict[str, Any]:
    """Return for which vehicles the steps hold, and what the last tree says on driving."""
    known = [one.source.tree for one in visits if one.source]
    scopes = next((tree.applies_to for tree in known if tree.applies_to), ())
    last = known[-1] if known else None
    drive = {"drive": str(last.drive), "why": str(last.why)} if last and last.drive else {}
    return (drive if last and last.why else {}) | (
        {"applies_to": [_scope(one) for one in scopes]} if scopes else {})  # fmt: skip


def _vehicle(path: WalkedPath, visits: Sequence[PlacedVisit], library: Library) -> Iterator[str]:
    vehicle = library.vehicles.get(path.vehicle)
    if vehicle and not any(one.source and one.source.tree.applies_to for one in visits):
        yield f"# applies_to: [{flow(_scope(vehicle.scope))}]  # the vehicle of this job"


def _scope(scope: Scope) -> dict[str, str]:
    years = "-".join(dict.fromkeys(map(str, scope.years))) if scope.years else ""
    words = {"make": str(scope.make), "model": str(scope.model), "years": years}
    return {key: text for key, text in words.items() if text}


def _steps(visits: Sequence[PlacedVisit], names: Sequence[str], library: Library) -> Iterator[str]:
    places = {(one.visit.inside, one.visit.step): name
              for one, name in zip(visits, names, strict=True)}  # fmt: skip
    gaps = gap_names(names)
    parts = _part_names(library)
    for number, name in enumerate(dict.fromkeys(names)):
        step = DraftStep(
            visits=tuple(one for one, own in zip(visits, names, strict=True) if own == name),
            targets=_targets(visits, names, name),
            names=places,
            gaps=gaps,
            part_names=parts,
            goes_back=len(set(names)) < len(names),
        )
        yield from [""] if number else []
        yield f"  {name}:"
        yield from (f"    {text}" for text in comments_of(step))
        yield from yaml_lines(step_words(step), 4)


def _targets(visits: Sequence[PlacedVisit], names: Sequence[str], name: str) -> dict[str, str]:
    """Return by exit the step that came next."""
    pairs = zip(visits, names, names[1:], strict=False)
    return {one.exit: following for one, own, following in pairs if own == name}


def _part_names(library: Library) -> Mapping[str, str]:
    return {id_: part_name(id_, library) for id_ in (*library.parts, *library.modules)}
