"""Whether the vehicle may be driven as it is, before the repair.

In: a tree and one of its ends. Out: a `DriveAdvice`, the one source of all that is said on safety
to drive. On a walk through several trees the most severe holds; `walk/fix_words.py` finds it.
"""

from dataclasses import dataclass

from builder.model.ends import Drive, Fix, Stop
from builder.model.tree import Tree


@dataclass(frozen=True, slots=True)
class DriveAdvice:
    """Whether it may be driven, and why, in words for the customer."""

    drive: Drive
    why: str = ""


def drive_advice(tree: Tree, step_id: str) -> DriveAdvice | None:
    """Return the advice of an end; what it doesn't say is said at the head, or by nobody: None."""
    body = tree.steps[step_id].body
    own = body if isinstance(body, Fix | Stop) else tree
    drive, why = own.drive or tree.drive, own.why or tree.why
    return DriveAdvice(drive, str(why or "")) if drive else None
