"""Where a command works: the shop's folder, and paths as the user sees them.

In: the flag `--shop`, and the folder the user stands in. Out: paths.
"""

from argparse import Namespace
from pathlib import Path


def shop_of(options: Namespace) -> Path:
    """Find the shop: the folder given, or the nearest one upward that holds trees.

    Raises FileNotFoundError.
    """
    start = Path(options.shop or ".").resolve()
    for place in [start] if options.shop else [start, *start.parents]:
        if (place / "site_config").is_dir() or (place / "trees").is_dir():
            return place
    raise FileNotFoundError(f"no shop found: {start} has no trees/ and no site_config/ folder")


def from_here(path: Path) -> Path:
    """Return a path relative to the folder the user stands in, if it lies below that."""
    here = Path.cwd()
    return path.relative_to(here) if path.is_relative_to(here) else path
