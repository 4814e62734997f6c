"""`baytree serve`: preview the site; rebuilds on every save."""

import argparse
import re
from datetime import date
from functools import partial
from pathlib import Path

from builder.cache.database import opened
from builder.check.verdict import check
from builder.commands.findings import print_notes
from builder.commands.place import shop_of

NAME = "serve"
HELP = "preview the site; rebuilds on every save"


def add_flags(parser: argparse.ArgumentParser) -> None:
    """Add the flags."""
    parser.add_argument("--port", type=_port, default=8000, metavar="N",
                        help="port (default: 8000; 0 for any that is free)")  # fmt: skip


def run(options: argparse.Namespace) -> int:
    """Serve the shop's site until interrupted."""
    from builder.site.serve_site import serve_site

    shop = shop_of(options)
    serve_site(shop, partial(rebuild, shop, set()), options.port)
    return 0


def rebuild(shop: Path, printed: set[str], out: Path) -> int:
    """Build the site with the findings on its pages; returns the number of errors.

    `printed` are the notes that were printed before: each is printed once.
    """
    from builder.check.filled_tree import tree_of
    from builder.site.build_site import SiteInput, build_site

    with opened(shop) as cache:
        verdict = check(shop, cache, date.today())
        read_tree = partial(tree_of, shop, verdict.library)
        findings = verdict.findings
        site = SiteInput(shop, cache, verdict.library, read_tree, prints=False, findings=findings)
        build_site(site, out)
    print_notes(note for note in cache.notes if note not in printed)
    printed.update(cache.notes)
    return verdict.errors


def _port(text: str) -> int:
    if not re.fullmatch("[0-9]{1,5}", text) or int(text) > 65535:
        raise argparse.ArgumentTypeError(f"`{text}` is no port; write one from 1024 to 65535")
    return int(text)
