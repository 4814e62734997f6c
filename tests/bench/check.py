"""How long a check takes beside bare composing of the same files, and what it remembers.

    python tests/bench/check.py [TREES]        10,000 by default; about five minutes on two cores

Composing is PyYAML's own (`CSafeLoader`), every file once, on one core, in a process of its own.
Printed are the ratio of the whole `baytree check` to that, the peak memory of its largest process,
and what a second check costs after one file has changed.
"""

import os
import platform
import resource
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from generate import shop

ROOT = Path(__file__).parents[2]
COMPOSE = """
import sys, yaml
from pathlib import Path
for file in sorted(Path(sys.argv[1]).glob("trees/*/*.yml")):
    yaml.compose(file.read_text("utf-8"), Loader=yaml.CSafeLoader)
"""


def timed(command: list[str], environment: dict[str, str]) -> float:
    """Run a command and return its seconds, start of the interpreter included."""
    begun = time.perf_counter()
    subprocess.run(command, check=True, env=environment, stdout=subprocess.DEVNULL)
    return time.perf_counter() - begun


def main(trees: int) -> None:
    """Measure once in a folder that is thrown away."""
    print(f"{platform.machine()}, {os.cpu_count()} cores, Python {platform.python_version()}")
    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder) / "shop"
        shop(place, trees, seed=1)
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
    print(f"{trees} trees: composing {composing:.1f} s, check {first:.1f} s, "
          f"ratio {first / composing:.2f} (at most 3.5)")  # fmt: skip
    print(f"largest process {most:.0f} MB (below 500)")
    print(f"one file changed: {second:.2f} s, {second / first:.1%} of the first (at most 5 %)")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 10_000)
