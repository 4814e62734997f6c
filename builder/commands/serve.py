"""`baytree serve`: preview the site; rebuilds on every save."""

import argparse
from datetime import date
from functools import partial
from pathlib import Path

from builder.cache.database import opened
from builder.check.verdict import check
from builder.commands.place import shop_of

NAME = "serve"
HELP = "preview the site; rebuilds on every save"


def add_flags(parser: argparse.ArgumentParser) -> None:
    """Add the flags."""
    parser.add_argument("--port", type=int, default=8000, metavar="N", help="port (default: 8000)")


def run(options: argparse.Namespace) -> int:
    """Serve the shop's site until interrupted."""
    from builder.site.serve import serve

    shop = shop_of(options)
    serve(shop, partial(rebuild, shop), options.port)
    return 0


def rebuild(shop: Path, out: Path) -> int:
    """Build the site with the findings on its pages; returns the number of errors."""
    from builder.reader.trees import tree_of
    from builder.site.build import SiteInput, build_site

    with opened(shop) as cache:
        verdict = check(shop, cache, date.today())
        read_tree = partial(tree_of, shop, verdict.library)
        findings = verdict.findings
        site = SiteInput(shop, cache, verdict.library, read_tree, prints=False, findings=findings)
        build_site(site, out)
    return verdict.errors
