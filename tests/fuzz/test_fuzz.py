"""A few mutants of a shop, always the same; `run.py` tries as many as are asked for."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

RUN = Path(__file__).parent / "run.py"
IN_ONE = 30
SHOPS = ("shop", "samples")  # the trees of the samples run procedures


@pytest.mark.parametrize("seed", range(0, 90, IN_ONE))
def test_no_mutant_of_a_shop_ends_a_command_badly(seed: int) -> None:
    """No traceback, no hang, no flood of memory, whatever happened to one of its files."""
    run = subprocess.run(
        [sys.executable, RUN, "--mutants", str(IN_ONE), "--seed", str(seed),
         "--shop", RUN.parents[1] / SHOPS[seed // IN_ONE % 2]],
        env=os.environ | {"PYTHONPATH": str(RUN.parents[2])},
        capture_output=True, text=True, timeout=600, check=False,
    )  # fmt: skip
    assert run.returncode == 0, run.stdout + run.stderr
    assert int(run.stdout.split(" mutants")[0]) >= IN_ONE
