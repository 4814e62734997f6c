"""The minutes of every tree beside the average of many random walks: `walks.py --walks 100000`.

In: a shop. Out: for each tree the minutes of the plan, the average of the walks, the difference in
standard errors, whether loops of several steps share tries (which the plan ignores), and the
largest difference. The walker is in `tests/plan/walker.py`. This is not part of the test suite,
which walks a thousand times.
"""

import argparse
import sys
from math import sqrt
from pathlib import Path
from random import Random
from statistics import fmean, pstdev

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT))

from builder.plan.minutes import tree_minutes  # noqa: E402
from builder.reader.trees import read_tree, tree_files  # noqa: E402
from tests.plan.walker import Walker  # noqa: E402


def main() -> None:
    """Walk and print."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--walks", type=int, default=100_000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--shop", type=Path, default=ROOT)
    options = parser.parse_args()
    print(f"{'tree':38} {'plan':>8} {'walked':>8} {'error':>7} {'errors apart':>12}  tries")
    worst = 0.0
    for path in tree_files(options.shop):
        tree, _ = read_tree(options.shop, path)
        if tree is None:
            continue
        walker = Walker(tree, Random(f"{options.seed} {tree.id}"))
        lengths = [walker.walk() for _ in range(options.walks)]
        plan, walked = float(tree_minutes(tree).expected), fmean(lengths)
        error = pstdev(lengths) / sqrt(options.walks)
        apart = abs(walked - plan) / error if error else 0.0
        worst = max(worst, apart)
        tries = "shared" if walker.shares_tries() else ""
        print(
            f"{tree.id:38} {plan:8.2f} {walked:8.2f} {error:7.3f} {apart:12.1f}  {tries}",
            flush=True,
        )
    print(f"the worst is {worst:.1f} standard errors apart")


if __name__ == "__main__":
    main()
