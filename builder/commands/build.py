"""`baytree build`: check, then build the site and the prints."""

import argparse
import os
import sys
from functools import partial
from pathlib import Path
from time import monotonic

from builder.cache.database import opened
from builder.check.filled_knowledge import known_knowledge
from builder.check.verdict import verdict_of
from builder.commands.findings import add_today, print_findings, print_notes
from builder.commands.place import from_here, shop_of
from builder.commands.progress import progress_bar
from builder.model.library import self_contained
from builder.reader.schemas.schema_list import schema_texts

NAME = "build"
HELP = "check, then build the site and PDFs"
SOURCES = ("trees", "kb", "site_config")


def add_flags(parser: argparse.ArgumentParser) -> None:
    """Add the flags."""
    parser.add_argument("--out", metavar="DIR", help="output folder (default: site/)")
    parser.add_argument("--no-prints", action="store_true", help="skip the PDFs")
    add_today(parser)


def run(options: argparse.Namespace) -> int:
    """Check the shop; if it is sound, build the site."""
    from builder.check.filled_tree import kept_tree_of
    from builder.site.build_site import SiteInput, build_site

    start, shop = monotonic(), shop_of(options)
    out = _out(shop, options.out)
    with opened(shop) as cache, progress_bar() as progress:
        verdict = verdict_of(known_knowledge(shop), cache, options.today, progress, keep=True)
        if verdict.findings:
            print_findings(shop, verdict)
        if verdict.errors:
            print("Build failed; the previous site is unchanged.", file=sys.stderr)
            return 1
        library = self_contained(verdict.library)
        files = {f"schemas/{name}": text for name, text in schema_texts().items()}
        read_tree = partial(kept_tree_of, shop, verdict.packed, library)
        site = SiteInput(
            shop, cache, library, read_tree, not options.no_prints, files, progress=progress
        )
        built = build_site(site, out)
    print_notes(cache.notes)
    made = ", ".join((number_of(len(library.trees), "tree"), number_of(built.sheets, "sheet")))
    page = from_here(out / "index.html")
    print(f"{made}, {monotonic() - start:.1f} s; open {page}")
    return 0


def _out(shop: Path, wanted: str | None) -> Path:
    """Return the folder for the site. Raises FileExistsError where the shop itself is in it."""
    out = Path(wanted) if wanted else shop / "site"
    real = Path(os.path.realpath(out))
    for source in (shop / name for name in SOURCES):
        if source in (real, *real.parents) or real in source.parents:
            raise FileExistsError(
                f"{out} holds the shop's own files, and a build replaces the whole folder, so "
                "nothing was built\n  hint: give a folder for the site alone: `--out site`"
            )
    return out


def number_of(count: int, noun: str) -> str:
    """Count things: 1 tree, 2 trees."""
    return f"{count} {noun}" if count == 1 else f"{count} {noun}s"
