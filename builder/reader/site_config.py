"""Site settings that a shop can't change: any that run code or publish a file from elsewhere.

In: the folder `site_config/` and the keys of `mkdocs.yml` in it. Out: findings. The few keys that
can be set are in the schema `site`; the site engine gets those and nothing else of the file.
"""

import os
from collections.abc import Iterator
from difflib import get_close_matches
from pathlib import Path

from builder.model.finding import Finding, Severity
from builder.model.text import Position
from builder.reader.nodes import Map
from builder.reader.schemas.shop_schemas import SITE
from builder.reader.source import leads_out, link_out

FOLDER = "site_config"
SITE_FILE = f"{FOLDER}/mkdocs.yml"
READ = ("shop.yml", "mkdocs.yml")  # a bad link in their place is reported where they are read
CAN_BE_SET = tuple(SITE["properties"])


def refusals(root: Map) -> dict[str, Finding]:
    """Return a finding for each key that isn't a setting, nor a misspelled one."""
    return {
        str(key): _engine_settings(
            key.at,
            f"`{key}` can't be set here",
            "the site engine's own settings can run code or call other hosts during a build",
            f"delete it; what you can set: {', '.join(f'`{name}`' for name in CAN_BE_SET)}",
        )
        for key in root
        if not get_close_matches(key, CAN_BE_SET, n=1, cutoff=0.6)
    }


def unused(shop: Path) -> Iterator[Finding]:
    """Yield links that lead out of the shop, and the folder of templates that has no effect."""
    for folder, inner, names in os.walk(shop / FOLDER):
        at_top = Path(folder) == shop / FOLDER
        for path in sorted(Path(folder, name) for name in (*inner, *names)):
            if path.is_symlink() and leads_out(shop, path) and not (at_top and path.name in READ):
                yield link_out(shop, path)
    if "overrides" in next(os.walk(shop / FOLDER), ("", [], []))[1]:
        yield _engine_settings(
            Position(f"{FOLDER}/overrides", 1, 1, 1, 1),
            "templates in `overrides` are not used",
            "a template is a program: it would run on the computer that builds the site",
            "delete the folder",
            Severity.WARNING,
        )


def _engine_settings(
    at: Position, message: str, why: str, hint: str, severity: Severity = Severity.ERROR
) -> Finding:
    return Finding("engine-settings", severity, at, message, why, hint)
