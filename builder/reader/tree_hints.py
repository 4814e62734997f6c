"""Hints that need the rest of the tree: what an empty list asks for, what a share is in jobs.

In: the root of the file, and the key. Out: the hint, or None where the tree doesn't tell.
"""

import re
from collections.abc import Iterator
from decimal import Decimal, InvalidOperation

from builder.reader.nodes import Map, Node, NodePath, node_at

SHARE = re.compile(r"(\d{1,2}) ?(?:%|percent)")
MOST_NAMED = 6


def hint_of_empty_list(root: Map, name: str) -> str:
    """Say what belongs into an empty list; of `verify` with the checks of this tree."""
    if name != "verify":
        return f"write what belongs into `{name}`, or delete the line"
    checks = [f"`{key}`" for key, step in _steps(root) if step.value("check")]
    named = f" ({', '.join(checks[:MOST_NAMED])})" if checks else ""
    return f"nothing proves the repair yet: name a check of this tree{named}, or write a sentence"


def jobs_of_share(root: Map, path: NodePath, value: str) -> str | None:
    """Say how many jobs a percentage is beside the other weights of the tree."""
    match = SHARE.fullmatch(value)
    if path[-1:] != ("weight",) or not match or match[1] in ("0", "00"):
        return None
    own = node_at(root, path[:-1])
    others = sum(_weight(step) for _, step in _steps(root) if step is not own)
    if not others:
        return "write how many jobs end this way, beside the others that you know of"
    share = Decimal(match[1])
    jobs = max(round(share * others / (100 - share)), 1)
    return (
        f"weights are compared with each other, and the others here make {others:f}: "
        f"for {share} % write `weight: {jobs}`"
    )


def _steps(root: Map) -> Iterator[tuple[str, Map]]:
    steps = root.value("steps")
    every: list[tuple[str, Node]] = list(steps.items()) if isinstance(steps, Map) else []
    yield from ((str(key), step) for key, step in every if isinstance(step, Map))


def _weight(step: Map) -> Decimal:
    try:
        return max(Decimal(str(step.value("weight"))), Decimal(0))
    except InvalidOperation:
        return Decimal(0)
