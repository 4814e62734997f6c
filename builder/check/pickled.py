"""Values of the model as bytes, and back.

In: findings, summaries, trees. Out: bytes; read back by a reader that makes values of the model and
nothing else, so that a cache somebody has tampered with can run nothing.
"""

import io
import pickle
from typing import Any, TypeVar

from builder.model import finding, silence, summary, text, tree

CLASSES = (
    *(finding.Finding, finding.Related, finding.Severity),
    *(summary.Summary, summary.Handoff, silence.Silence),
    *(text.Text, text.Number, text.Position),
    *(tree.Scope, tree.Signed, tree.Status, tree.Symptom),
)
T = TypeVar("T")
BY_NAME = {(one.__module__, one.__qualname__): one for one in CLASSES}


class _Reader(pickle.Unpickler):
    def find_class(self, module: str, name: str) -> Any:
        """Return a class of the model by its name."""
        if known := BY_NAME.get((module, name)):
            return known
        raise pickle.UnpicklingError(f"{module}.{name} is no value of the model")


def to_bytes(value: object) -> bytes:
    """Return a value as bytes."""
    return pickle.dumps(value, 5)


def from_bytes(content: bytes, kind: type[T]) -> T:
    """Return the value. Raises UnpicklingError where it is not of the kind."""
    value = _Reader(io.BytesIO(content)).load()
    if not isinstance(value, kind):
        raise pickle.UnpicklingError(f"a {type(value).__name__} is no {kind.__name__}")
    return value
