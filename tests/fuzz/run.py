"""Fuzz a shop, on demand: `python tests/fuzz/run.py --mutants 100000 --seed N`.

In: how many mutants, a seed, a shop. Out: how many mutants were tried of each kind, and what went
wrong by its kind with the first example of each; the status is 1 if anything did. A trouble is seen
again with `--mutants 1` and its seed. Stopped early, it tells what was tried until then.
"""

import argparse
import signal
import sys
import time
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

from child import Child, Group

SHOP = Path(__file__).parents[1] / "shop"


@dataclass(slots=True)
class _Counts:
    """What was tried so far."""

    tried: int = 0
    slow: int = 0
    kinds: Counter[str] = field(default_factory=Counter)
    troubles: Counter[tuple[str, str]] = field(default_factory=Counter)


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
    signal.signal(signal.SIGTERM, _stop)
    counts, begun = _Counts(), time.monotonic()
    try:
        for seed, group in fuzz(options.shop, options.mutants, options.seed, options.slow):
            _count(counts, seed, group)
    except KeyboardInterrupt:
        pass
    finally:
        _tell(counts, options.seed, time.monotonic() - begun)
    return 1 if counts.troubles else 0


def _stop(number: int, _frame: object) -> None:
    """Stop once: a second signal must not disturb the end of the child."""
    signal.signal(number, signal.SIG_IGN)
    raise KeyboardInterrupt


def _count(counts: _Counts, seed: int, group: Group) -> None:
    """Add a group, and show the first trouble of each kind at once."""
    counts.tried += len(group.mutants)
    counts.slow += group.slow
    counts.kinds.update(kind for mutant in group.mutants for kind in set(mutant.kinds))
    for mutants, trouble in group.troubles:
        like = trouble.command, trouble.kind
        if like not in counts.troubles:
            done = "; ".join(map(str, mutants))
            print(f"\nseed {seed}, {done}\n{trouble.command}: {trouble.detail}", flush=True)
        counts.troubles[like] += 1


def _tell(counts: _Counts, seed: int, seconds: float) -> None:
    print(f"{counts.tried} mutants from seed {seed}, {counts.slow} of them built and printed, "
          f"{counts.tried / seconds:.1f} a second, {counts.troubles.total()} troubles")  # fmt: skip
    for kind, count in counts.kinds.most_common():
        print(f"{count:8}  {kind.strip('_').replace('_', ' ')}")
    for (command, what), count in counts.troubles.most_common():
        print(f"{count:8}  TROUBLE in {command}: {what}")


if __name__ == "__main__":
    sys.exit(main())
