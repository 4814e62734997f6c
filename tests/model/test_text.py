"""A text and a number keep their place in the author's file when they are packed and unpacked."""

import pickle

import pytest

from builder.model.text import Number, Position, Text

AT = Position("trees/horn/silent.yml", 7, 12, 7, 15)


@pytest.mark.parametrize("value", [Text("1.4", AT), Number("1.40", AT)], ids=["text", "number"])
def test_a_value_keeps_its_position(value: Text | Number) -> None:
    """Trees are packed between reading and judging; a finding must still point at the line."""
    again = pickle.loads(pickle.dumps(value))
    assert (type(again), str(again), again.at) == (type(value), str(value), AT)
