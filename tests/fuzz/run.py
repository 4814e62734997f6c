"""Fuzz a shop, on demand: `python tests/fuzz/run.py --mutants 100000 --seed N`.

In: how many mutants, a seed, a shop. Out: how many mutants were tried, and what went wrong by its
kind with the first example of each; the status is 1 if anything did.
"""

import argparse
import os
import random
import shutil
import sys
import tempfile
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

from guard import QUICK, SLOW, Trouble, watched
from mutate import mutate

SHOP = Path(__file__).parents[1] / "shop"


def fuzz(shop: Path, mutants: int, seed: int, slow: float) -> Iterator[tuple[int, str, Trouble]]:
    """Yield every trouble with the seed of its mutant and what was done to the shop."""
    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder) / "shop"
        os.environ["XDG_CACHE_HOME"] = str(Path(folder) / "cache")
        for number in range(seed, seed + mutants):
            chance = random.Random(number)
            shutil.rmtree(place, ignore_errors=True)
            for name in ("trees", "kb", "site_config"):
                shutil.copytree(shop / name, place / name)
            done = mutate(place, chance)
            commands = QUICK + (SLOW if chance.random() < slow else ())
            for trouble in watched(place, commands):
                yield number, done, trouble


def main() -> int:
    """Count and tell."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("--mutants", type=int, default=1000)
    asked.add_argument("--seed", type=int, default=0, help="of the first; each next has the next")
    asked.add_argument("--shop", type=Path, default=SHOP)
    asked.add_argument("--slow", type=float, default=0.02, help="share that is built and printed")
    options = asked.parse_args()
    kinds: Counter[tuple[str, str]] = Counter()
    for number, done, trouble in fuzz(options.shop, options.mutants, options.seed, options.slow):
        kind = (trouble.command, trouble.kind)
        if kind not in kinds:
            print(f"\nseed {number}, {done}\n{trouble.detail}", flush=True)
        kinds[kind] += 1
    print(f"{options.mutants} mutants from seed {options.seed}, {kinds.total()} troubles")
    for (command, what), count in kinds.most_common():
        print(f"{count:6}  {command}: {what}")
    return 1 if kinds else 0


if __name__ == "__main__":
    sys.exit(main())
