"""A bar on the terminal while a command works.

In: nothing. Out: a `Progress` that draws the bar, or one that tells nobody where standard error is
no terminal.
"""

import sys
from collections.abc import Iterator
from contextlib import contextmanager

from builder.cores.progress import Progress, no_progress


@contextmanager
def progress_bar() -> Iterator[Progress]:
    """Show a bar on standard error; it is gone when the work is done."""
    if not sys.stderr.isatty():
        yield no_progress
        return
    from tqdm import tqdm

    with tqdm(
        desc="Starting", leave=False, bar_format="{desc} {n_fmt} of {total_fmt} {bar} {elapsed}"
    ) as bar:

        def show(what: str, done: int, total: int) -> None:
            if done == 0:
                bar.set_description_str(what, refresh=False)
                bar.reset(total)
            bar.update(done - bar.n)

        yield show
