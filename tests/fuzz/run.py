"""Fuzz a shop, on demand: `python tests/fuzz/run.py --mutants 100000 --seed N`.

In: how many mutants, a seed, a shop. Out: how many mutants were tried of each kind, and what went
wrong by its kind with the first example of each; the status is 1 if anything did. A trouble is seen
again with `--mutants 1` and its seed.
"""

import argparse
import sys
import time
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

from child import Child, Group

SHOP = Path(__file__).parents[1] / "shop"


def fuzz(shop: Path, mutants: int, seed: int, slow: float) -> Iterator[tuple[int, Group]]:
    """Yield group after group with its seed; the last may be some mutants more."""
    child, number = Child(shop, slow), seed
    try:
        while number < seed + mutants:
            group = child.group(number)
            yield number, group
            number += max(1, len(group.mutants))
    finally:
        child.end()


def main() -> int:
    """Count and tell."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("--mutants", type=int, default=1000)
    asked.add_argument("--seed", type=int, default=0, help="of the first; each next has the next")
    asked.add_argument("--shop", type=Path, default=SHOP)
    asked.add_argument("--slow", type=float, default=0.02, help="share of groups built and printed")
    options = asked.parse_args()
    kinds, troubles, slow = Counter[str](), Counter[tuple[str, str]](), 0
    tried, begun = 0, time.monotonic()
    for seed, group in fuzz(options.shop, options.mutants, options.seed, options.slow):
        tried += len(group.mutants)
        slow += group.slow
        kinds.update(kind for mutant in group.mutants for kind in set(mutant.kinds))
        for mutants, trouble in group.troubles:
            like = trouble.command, trouble.kind
            if like not in troubles:
                done = "; ".join(map(str, mutants))
                print(f"\nseed {seed}, {done}\n{trouble.command}: {trouble.detail}", flush=True)
            troubles[like] += 1
    pace = tried / (time.monotonic() - begun)
    print(f"{tried} mutants from seed {options.seed}, {slow} of them built and printed, "
          f"{pace:.1f} a second, {troubles.total()} troubles")  # fmt: skip
    for kind, count in kinds.most_common():
        print(f"{count:8}  {kind.strip('_').replace('_', ' ')}")
    for (command, what), count in troubles.most_common():
        print(f"{count:8}  TROUBLE in {command}: {what}")
    return 1 if troubles else 0


if __name__ == "__main__":
    sys.exit(main())
