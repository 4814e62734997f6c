"""The child process that runs the commands is replaced when it misbehaves."""

import os
import signal
import sys
import time
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parent))  # as `run.py` finds its own modules

import child
from child import Child

SHOP = Path(__file__).parents[1] / "shop"


@pytest.mark.parametrize("end", [lambda: os._exit(3), lambda: time.sleep(600)])
def test_a_child_that_misbehaves_is_reported_and_replaced(
    end: object, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A crash of the interpreter, and one that hears no alarm, are troubles like any other."""
    working = child.visited

    def misbehaving(shop: Path, touched: tuple[Path, ...], *rest: object) -> object:
        if touched:
            signal.alarm(0)
            end()  # type: ignore[operator]
        return working(shop, touched, *rest)  # type: ignore[arg-type]

    runner = Child(SHOP, slow=0)
    with monkeypatch.context() as patch:
        patch.setattr(child, "visited", misbehaving)
        patch.setattr(child, "SILENT", 5)
        assert runner.group(1).troubles
    again = runner.group(1)
    runner.end()
    assert again.mutants
    assert not again.troubles
