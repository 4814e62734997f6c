"""A cause of which not all was checked claims no power and no command."""

import pytest

from builder.wording.unproved_cause import without_claims


@pytest.mark.parametrize(
    ("cause", "left"),
    [
        ("The fuel pump has power and makes low pressure", "The fuel pump makes low pressure"),
        ("The starter is commanded, powered, and doesn't turn", "The starter doesn't turn"),
        ("The ABS module has power and ground but doesn't answer", "The ABS module doesn't answer"),
        ("The fuel pump quits with power on it", "The fuel pump quits"),
        ("The fuel pump has bad power or ground", "The fuel pump has bad power or ground"),
    ],
)
def test_what_nobody_measured_is_left_out(cause: str, left: str) -> None:
    """The fault itself stays."""
    assert without_claims(cause) == left
