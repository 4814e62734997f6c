"""How long a check takes beside bare composing of the same files, and what it remembers.

    python tests/bench/check.py [TREES [EVERY]]      10,000 by default: five minutes on two cores

Composing is PyYAML's own (`CSafeLoader`), every file once, on one core, in a process of its own.
Printed are the ratio of the whole `baytree check` to that, by the clock and in processor time, the
peak memory of its largest process, and what a second check costs after one file has changed. One
tree of every three names states of the vehicle and runs a procedure, or one of EVERY.
"""

import os
import platform
import resource
import subprocess
import sys
import tempfile
import time
from pathlib import Path
from typing import NamedTuple

from generate import shop

ROOT = Path(__file__).parents[2]
COMPOSE = """
import sys, yaml
from pathlib import Path
for file in sorted(Path(sys.argv[1]).glob("trees/*/*.yml")):
    yaml.compose(file.read_text("utf-8"), Loader=yaml.CSafeLoader)
"""


class Seconds(NamedTuple):
    """What a command took, the start of the interpreter included."""

    clock: float
    processor: float  # of all its processes


def timed(command: list[str], environment: dict[str, str]) -> Seconds:
    """Run a command to its end."""
    before, begun = resource.getrusage(resource.RUSAGE_CHILDREN), time.perf_counter()
    subprocess.run(command, check=True, env=environment, stdout=subprocess.DEVNULL)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    used = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    return Seconds(time.perf_counter() - begun, used)


def main(trees: int, states_in_every: int) -> None:
    """Measure once in a folder that is thrown away."""
    print(f"{platform.machine()}, {os.cpu_count()} cores, Python {platform.python_version()}")
    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder) / "shop"
        shop(place, trees, 1, states_in_every)
        environment = os.environ | {  # with compiled code, as an installed command has it
            "PYTHONPATH": str(ROOT),
            "XDG_CACHE_HOME": f"{folder}/cache",
            "PYTHONDONTWRITEBYTECODE": "",
        }
        check = [sys.executable, "-m", "builder.commands.main", "--shop", str(place), "check"]
        composing = timed([sys.executable, "-c", COMPOSE, str(place)], environment)
        first = timed(check, environment)
        most = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024
        file = sorted(place.glob("trees/*/*.yml"))[trees // 2]
        file.write_text(file.read_text("utf-8") + "# changed\n", "utf-8")
        second = timed(check, environment)
    ratios = [took / peer for took, peer in zip(first, composing, strict=True)]
    print(f"{trees} trees, states in one of {states_in_every}: "
          f"composing {composing.clock:.1f} s, check {first.clock:.1f} s, "
          f"ratio {ratios[0]:.2f} (at most 3.5)")  # fmt: skip
    print(f"in processor time: composing {composing.processor:.1f} s, "
          f"check {first.processor:.1f} s, ratio {ratios[1]:.2f}")  # fmt: skip
    print(f"largest process {most:.0f} MB (below 500)")
    share = second.clock / first.clock
    print(f"one file changed: {second.clock:.2f} s, {share:.1%} of the first (at most 5 %)")


if __name__ == "__main__":
    asked = [*map(int, sys.argv[1:])]
    main(*asked, *(10_000, 3)[len(asked) :])
