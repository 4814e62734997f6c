"""Records of walks for the commands that read one: checked, played again, told.

In: the shop's folder, the path of a record. Out: a `PlayedJob`. Raises NotThereError with what is
wrong: a file that is no record, of another shop or revision, or whose steps don't follow.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from builder.commands.shop_tables import tables_of_shop
from builder.graph.runs import with_values
from builder.model.ends import Fix
from builder.model.library import Library, NotThereError
from builder.model.text import Text
from builder.model.tree import Tree
from builder.plan.drive_advice import DriveAdvice
from builder.plan.estimate_options import estimate_options
from builder.reader.record_file import read_record
from builder.walk.closed_record import played_record
from builder.walk.diagnosis import Diagnosis, diagnosis_of
from builder.walk.job_state import JobState, Refused
from builder.walk.noted_codes import named_codes
from builder.walk.ruled_out import good_names
from builder.walk.steps_taken import steps_taken
from builder.walk.story import Story, story_of
from builder.walk.walk_tables import WalkTables

SAVED = 'the button "Record" at the end of a walk saves one'


@dataclass(frozen=True, slots=True)
class PlayedJob:
    """A record that holds: the walk in the tables of the shop, and the tree in which it ended."""

    record: Mapping[str, Any]
    tables: WalkTables
    state: JobState
    tree: Tree
    library: Library


def played_job(shop: Path, file: Path) -> PlayedJob:
    """Read a record and play it again. Raises NotThereError, OSError."""
    if not file.exists():
        raise NotThereError(f"there is no file `{file}`: {SAVED}")
    record = read_record(file)
    if isinstance(record, str):
        raise NotThereError(f"{file}: {record}")
    tables, trees = tables_of_shop(shop, str(record["tree"]))
    state = played_record(tables, record)
    if isinstance(state, Refused):
        raise NotThereError(f"{file}: {state.message}")
    tree = trees.tree(state.frames[0].inside)
    return PlayedJob(record, tables, state, _with_module(tree, state), trees.library)


def found_by(job: PlayedJob) -> Diagnosis | Refused:
    """Return what the walk found, with what the record says of the job."""
    found = diagnosis_of(job.tables, job.state, job.library)
    if not isinstance(found, Diagnosis):
        return found
    taken = steps_taken(job.tables, job.state)
    good = good_names(job.tables, job.state, taken, job.library)
    details = _details(job)
    texts = (details.get("codes", ""), found.own_words.get("codes", ""))
    codes = named_codes(taken, texts, job.library)
    return replace(found, job=details, good=good, codes=codes)


def story_by(job: PlayedJob) -> Story:
    """Return the story of the walk."""
    found = diagnosis_of(job.tables, job.state, job.library)
    advice: DriveAdvice | None = found.advice if isinstance(found, Diagnosis) else None
    end = job.state.end
    is_fix = end is not None and end.kind == "fix"
    options = estimate_options(job.tree, end.step, job.library, advice) if end and is_fix else ()
    return story_of(job.tables, job.state, job.library, options, _details(job))


def _details(job: PlayedJob) -> Mapping[str, str]:
    details: Mapping[str, str] = job.record.get("job", {})
    return details


def _with_module(tree: Tree, state: JobState) -> Tree:
    """Return the tree with the module that was asked for in the fix that replaces it."""
    if state.end is None or state.end.kind != "fix":
        return tree
    step = tree.steps[state.end.step]
    if not isinstance(step.body, Fix) or step.body.replaces is None:
        return tree
    module = with_values(step.body.replaces.module, state.frames[0].filled)
    replaces = replace(step.body.replaces, module=Text(module, step.body.replaces.module.at))
    body = replace(step.body, replaces=replaces)
    return replace(tree, steps={**tree.steps, str(step.id): replace(step, body=body)})
