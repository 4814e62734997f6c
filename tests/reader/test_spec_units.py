"""A good range in another unit than its spec is converted, or no number is offered."""

import pytest

from builder.reader.spec_units import unit_written_out


@pytest.mark.parametrize(
    ("words", "unit", "of_spec", "hint"),
    [
        # 1 psi is 6.894757 kPa: NIST Special Publication 811, appendix B.8.
        ("55 to 62 psi", "psi", "kPa", "write `379 to 427`"),
        ("55 - 62 psi", "psi", "kPa", "write `379 to 427`"),
        ("below 100 °C", "°C", "°F", "write `below 212`"),
        ("at least 400 ohm", "ohm", "kohm", "write `at least 0.4`"),
        ("at most 5 V", "V", "V", "write `at most 5`"),
        ("at most 5 m", "m", "mm", "write `at most 5000`"),
        (
            "at least 400 ohm/V", "ohm/V", "kohm",
            "`ohm/V` can't be converted into `kohm`: look the value up in `kohm`",
        ),
        (
            "at least 400 ohm", "ohm", "",
            "write it without `ohm`, in the unit that the spec has in kb/specs.yml",
        ),
    ],
)  # fmt: skip
def test_a_unit_is_converted_or_refused(words: str, unit: str, of_spec: str, hint: str) -> None:
    """The hint is in the unit of the spec, and has a number only where it is sure."""
    message, offered = unit_written_out(words, unit, of_spec)
    assert offered == hint
    assert f"`{words}`" in message
