"""Values of the model as bytes, and back.

In: findings and summaries. Out: bytes. They are unpacked into values of the model and nothing
else, so a cache that was tampered with can't run code.
"""

import io
import pickle
from decimal import Decimal
from typing import Any, TypeVar

from builder.model import finding, silence, summary, text, tree

CLASSES = (
    *(finding.Finding, finding.Edit, finding.Related, finding.Severity),
    *(summary.TreeSummary, summary.TreeListing, summary.Handoff, summary.Lookup),
    *(summary.Work, summary.Labor, summary.JudgedBy, Decimal),
    silence.Silence,
    *(text.Text, text.Number, text.Position),
    *(tree.Scope, tree.Signed, tree.Status, tree.Symptom),
)
T = TypeVar("T")
BY_NAME = {(class_.__module__, class_.__qualname__): class_ for class_ in CLASSES}


class _Reader(pickle.Unpickler):
    def find_class(self, module: str, name: str) -> Any:
        """Return a class of the model by its name."""
        if known := BY_NAME.get((module, name)):
            return known
        raise pickle.UnpicklingError(f"{module}.{name} isn't a value of the model")


def to_bytes(value: object) -> bytes:
    """Return a value as bytes."""
    return pickle.dumps(value, 5)


def from_bytes(content: bytes, kind: type[T]) -> T:
    """Return the value. Raises UnpicklingError where it isn't of this type."""
    value = _Reader(io.BytesIO(content)).load()
    if not isinstance(value, kind):
        raise pickle.UnpicklingError(f"expected {kind.__name__}, not {type(value).__name__}")
    return value
