"""A copy of the small sound shop that a test may spoil."""

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from builder.check.unchecked_library import read_library
from builder.model.finding import Finding

SHOP = Path(__file__).parents[1] / "shop"
Reports = Callable[[], set[tuple[str, str]]]


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """Copy the shop of the tests."""
    return Path(shutil.copytree(SHOP, tmp_path / "shop"))


@pytest.fixture
def reports(shop: Path) -> Reports:
    """Return the rule and the file of each finding in the shop."""

    def read() -> set[tuple[str, str]]:
        findings: tuple[Finding, ...] = read_library(shop)[1]
        assert all(one.message and one.why and one.hint for one in findings)
        return {(one.rule, one.at.file) for one in findings}

    return read
