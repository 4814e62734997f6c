"""A slip of the fingers is told from another name.

The rule of the first letter: common practice, no source at hand.
"""

import pytest

from builder.model.typing_slip import is_typing_slip, slip_of

SLIPS = [
    ("brnach", "branch"), ("redy", "ready"), ("park-swich", "park-switch"),
    ("wiper-arm", "wiper-arms"), ("not found", "not-found"), ("Check", "check"),
    ("parkswitch", "park-switch"), ("hron/silent", "horn/silent"), ("wiring", "wirring"),
]  # fmt: skip
OTHER_NAMES = [
    ("horn-1", "horn-2"), ("lf-speed", "rf-speed"), ("key-on", "key-off"), ("seat", "heat"),
    ("washer", "washer level"), ("plugged", "unplugged"), ("fuse-12", "fuse-13"), ("mAmps", "amps"),
    ("left", "right"), ("bank1", "bank2"), ("", "ask"), ("hot", "not"),
]  # fmt: skip


@pytest.mark.parametrize(("typed", "meant"), SLIPS)
def test_a_slip_is_known(typed: str, meant: str) -> None:
    """One letter missing, added, wrong or swapped in a longer word; case and hyphens anywhere."""
    assert is_typing_slip(typed, meant)


@pytest.mark.parametrize(("one", "other"), OTHER_NAMES)
def test_another_name_is_no_slip(one: str, other: str) -> None:
    """Numbers, short words and first letters tell names apart, whichever of them was typed."""
    assert not is_typing_slip(one, other)
    assert not is_typing_slip(other, one)


def test_a_slip_of_two_names_is_of_neither() -> None:
    """Where two names are as near, only the author knows."""
    assert slip_of("relays", ["relay", "relayed", "horn"]) == "relay"
    assert slip_of("fusse", ["fuse", "fusses"]) is None
