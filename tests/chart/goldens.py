"""Drawings that a person has looked at, one file each beside the tests."""

import os
from pathlib import Path

HERE = Path(__file__).parent


def looks_as_it_did(drawn: str, name: str) -> None:
    """Compare mark by mark; a wanted change is kept with UPDATE_GOLDENS=1."""
    golden, lines = HERE / f"{name}.svg.html", drawn.replace("><", ">\n<") + "\n"
    if os.environ.get("UPDATE_GOLDENS"):
        golden.write_text(lines)
    assert lines == golden.read_text()
