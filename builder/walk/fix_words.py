"""What is told at an end: whether the vehicle may be driven, quoted readings, torques, tests.

In: the tables, the state. Out: texts and rows for the screen.
"""

import re

from builder.graph.runs import with_values
from builder.walk.job_state import JobState, RecordedStep, WalkFrame, steps_before_repair
from builder.walk.told import named, row_of
from builder.walk.tree_rows import VerifyRow, WalkStepRow
from builder.walk.walk_tables import WalkTables

_SEVERITY = ("yes", "with care", "no")
_QUOTE = re.compile(r"<([^<>]+)>")


def drive_of(tables: WalkTables, state: JobState) -> tuple[str, str]:
    """Return whether the vehicle may be driven, and why not; "" where no tree says so.

    The most severe of the trees entered holds, each until that tree's own end.
    """
    here = tables[state.frames[0].inside]
    own = row_of(tables, state.frames[0])  # only an end has words of its own
    said = [(own.get("drive") or here.get("drive", ""), own.get("why") or here.get("why", ""))]
    for frame in state.left:
        tree = tables[frame.inside]
        said.append((tree.get("drive", ""), tree.get("why", "")))
    known = [one for one in said if one[0] in _SEVERITY]
    return max(known, key=lambda one: _SEVERITY.index(one[0]), default=("", ""))


def quoting(tables: WalkTables, state: JobState, text: str) -> str:
    """Return a text with the readings that it quotes, as last read before the repair.

    `<cable>`, `<slack.play>`: what is measured after the repair is no reason for it.
    """
    frame = state.frames[0]
    values: dict[str, str] = {}
    for entry in steps_before_repair(state):
        if entry.inside == frame.inside:
            values |= _values(entry)
    text = _QUOTE.sub(lambda match: values.get(match[1], match[0]), text)
    return with_values(text, named(tables, frame))


def _values(entry: RecordedStep) -> dict[str, str]:
    names = {name: f"{entry.step}.{name}" if name else entry.step for name in entry.readings}
    return {
        names[name]: f"{reading.value} {reading.unit}".strip()
        for name, reading in entry.readings.items()
    }


def torque_rows(tables: WalkTables, state: JobState, row: WalkStepRow) -> list[dict[str, str]]:
    """Return the torques of a fix, with the figures of the vehicle where they are known."""
    vehicle = tables.shop["vehicles"].get(state.vehicle)
    known = vehicle.get("torques", {}) if vehicle else {}
    return [
        {"name": name, **{key: str(value) for key, value in known.get(name, {}).items()}}
        for name in row.get("torques", ())
    ]


def test_texts(tables: WalkTables, state: JobState, row: WalkStepRow) -> list[str]:
    """Return in words what will verify a repair, one check or procedure after another."""
    frame = state.frames[-1]
    texts = (_test_text(tables, frame, test) for test in row.get("verify", ()))
    return [with_values(text, named(tables, frame)) for text in texts]


def _test_text(tables: WalkTables, frame: WalkFrame, test: VerifyRow) -> str:
    if "step" in test:
        return tables[frame.inside]["steps"][test["step"]]["text"]
    if "by" in test:
        procedure = tables.shop["procedures"].get(test["by"]["procedure"])
        return procedure["title"] if procedure else test["by"]["procedure"]
    return test["text"]
