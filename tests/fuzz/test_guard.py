"""The watch over the commands notices what it is there for."""

from collections.abc import Callable

import pytest

from . import guard
from .guard import watch


def broken() -> int:
    """End in a traceback."""
    raise KeyError("x")


def endless() -> int:
    """Swallow every error, and never end."""
    while True:
        try:
            sum(range(1000))
        except Exception:
            continue


def flood() -> int:
    """Take much memory for a moment."""
    return len(b"x" * (guard.MEGABYTES + 200) * 1024 * 1024) * 0


BAD: dict[str, Callable[[], int]] = {
    "KeyError in": broken, "hang in": endless, "memory": flood, "status 3": lambda: 3
}  # fmt: skip


@pytest.mark.parametrize("kind", BAD)
def test_a_command_that_ends_badly_is_noticed(kind: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """A traceback, a hang, a flood of memory and a status that means nothing."""
    monkeypatch.setattr(guard, "SECONDS", 2 if kind.startswith("hang") else 60)
    found = watch("check", BAD[kind])
    assert found
    assert found.kind.startswith(kind)


@pytest.mark.parametrize("status", [0, 1, 2])
def test_a_command_that_ends_well_is_none(status: int) -> None:
    """Sound, with findings, and not run."""
    assert watch("check", lambda: status) is None
