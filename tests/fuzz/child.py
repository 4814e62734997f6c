"""A child process that spoils its copy of a shop and runs the commands on it, for long.

In: the numbers of mutants to try together. Out: what was tried, and the troubles. A child that
doesn't answer is killed and replaced; so is each after a while, for what it has grown.
"""

import multiprocessing as mp
import os
import random
import resource
import signal
import tempfile
from collections.abc import Callable
from dataclasses import dataclass
from itertools import count
from multiprocessing.connection import Connection
from pathlib import Path

from guard import Trouble
from mutate import Mutant, mutate
from shop_copy import ShopCopy, cache_bytes, copy_of, differences, put_cache, restore
from visit import QUICK, SLOW, visited

LARGEST = 6 * 1024**3  # bytes of addresses; more end in a MemoryError
SILENT = 60  # seconds; the guard itself should have ended a command long before
START = "start"  # what a child does that has not told of a command yet
LIFE = 400  # groups
LOOK = 20  # groups after which the copy is compared with how it was
COLD = 0.1  # share of the groups that are checked from nothing
# How many files are spoiled together: trees are judged one by one, all else is done once.
TREES = (1, 1, 2, 4, 6, 8)
OTHERS = (1, 1, 1, 2, 2, 3)


@dataclass(frozen=True, slots=True)
class Group:
    """Mutants that were tried together."""

    mutants: tuple[Mutant, ...]
    troubles: tuple[tuple[tuple[Mutant, ...], Trouble], ...] = ()
    slow: bool = False


class Child:
    """A child with its shop, replaced where needed."""

    def __init__(self, shop: Path, slow: float) -> None:
        """Remember the shop; the first group starts the child."""
        self.shop, self.slow = shop, slow
        self.process: mp.process.BaseProcess | None = None

    def group(self, seed: int) -> Group:
        """Try the mutants of a seed."""
        if self.process is None:
            self._start()
        self.pipe.send(seed)
        mutants, at = (), START
        while True:
            try:
                answer = self.pipe.recv() if self.pipe.poll(_patience(at)) else None
            except (EOFError, ConnectionResetError):
                answer = None
            match answer:
                case str():
                    at = answer
                case tuple():
                    mutants = answer
                case Group():
                    self.age += 1
                    if self.age == LIFE:
                        self.end()
                    return answer
                case _:
                    code = self.end()
                    if at == START and not mutants:
                        raise ChildProcessError("the first check of the shop itself fails")
                    what = (
                        f"no answer in {SILENT} s" if code == -signal.SIGKILL else f"died, {code}"
                    )
                    return Group(mutants, ((mutants, Trouble(at, what, "")),))

    def end(self) -> int | None:
        """End the child and all of its own, and return its code."""
        if self.process is None:
            return None
        self.process.join(1)  # one that has died may not be reaped yet
        if self.process.exitcode is None:
            os.killpg(self.process.pid or 0, signal.SIGKILL)
            self.process.join()
        code, self.process = self.process.exitcode, None
        self.folder.cleanup()
        return code

    def _start(self) -> None:
        self.age = 0
        self.folder = tempfile.TemporaryDirectory()
        self.pipe, there = mp.Pipe()
        self.process = mp.get_context("fork").Process(
            target=_serve, args=(there, self.shop, Path(self.folder.name), self.slow)
        )
        self.process.start()
        there.close()


def _patience(at: str) -> int:
    """How long to wait for an answer, in s; the first check of a new child reads everything."""
    return 6 * SILENT if at == START else SILENT


def _serve(pipe: Connection, shop: Path, folder: Path, slow: float) -> None:
    os.setsid()
    signal.signal(signal.SIGTERM, signal.SIG_DFL)
    resource.setrlimit(resource.RLIMIT_AS, (LARGEST, LARGEST))
    os.environ["XDG_CACHE_HOME"] = str(folder / "cache")
    copy = copy_of(shop, folder / "shop")
    first = SLOW[:1] if slow else QUICK[:1]
    unsound = [trouble.detail for trouble in visited(copy.place, (), first, lambda _: None)]
    assert not unsound, unsound
    warm = cache_bytes(copy)
    for number in count(1):
        group = _tried(copy, pipe.recv(), slow, warm, pipe.send)
        if number % LOOK == 0 and (left := differences(copy)):
            raise AssertionError(f"not restored: {left}")
        pipe.send(group)


def _tried(
    copy: ShopCopy, seed: int, slow: float, warm: bytes, tell: Callable[[object], None]
) -> Group:
    chance = random.Random(f"group {seed}")
    cold, is_slow = chance.random() < COLD, chance.random() < slow
    files = _chosen(copy, chance)[: 1 if is_slow else None]
    names = QUICK + SLOW if is_slow else QUICK
    start = b"" if cold else warm

    def run(some: dict[int, str]) -> tuple[tuple[Mutant, ...], list[Trouble]]:
        put_cache(copy, start)
        mutants = tuple(
            mutate(copy.place, file, random.Random(n), may_move=file == files[-1])
            for n, file in some.items()
        )
        tell(mutants)
        touched = tuple(path for mutant in mutants for path in mutant.touched)
        troubles = list(visited(copy.place, touched, names, tell))
        restore(copy, touched)
        return mutants, troubles

    numbered = dict(enumerate(files, start=seed))
    mutants, troubles = run(numbered)
    alone = [run({n: file}) for n, file in numbered.items()] if troubles and len(files) > 1 else []
    blamed = [(one, trouble) for one, its in alone for trouble in its]
    return Group(mutants, tuple(blamed or [(mutants, trouble) for trouble in troubles]), is_slow)


def _chosen(copy: ShopCopy, chance: random.Random) -> list[str]:
    """Choose some trees, or some other files."""
    files = sorted(path.as_posix() for path in copy.files)
    trees = [file for file in files if file.startswith("trees/")]
    some, sizes = chance.choice(((trees, TREES), ([*set(files) - set(trees)], OTHERS)))
    return chance.sample(sorted(some), min(len(some), chance.choice(sizes)))
