"""What a shop may set of the site engine, in `site_config/mkdocs.yml`.

In: that file. Out: its settings, and a finding for each that the build does not pass on.
"""

from collections.abc import Mapping
from pathlib import Path
from typing import Any

import yaml

from builder.model.finding import Finding, Severity
from builder.model.text import Position

FILE = "site_config/mkdocs.yml"
PASSED_ON = ("theme", "extra", "copyright", "site_author")


def own_settings(shop: Path) -> tuple[Mapping[str, Any], tuple[Finding, ...]]:
    """Read the shop's settings of the engine; no file is no settings."""
    file = shop / FILE
    if not file.is_file():
        return {}, ()
    try:
        settings = yaml.safe_load(file.read_text("utf-8-sig")) or {}
    except (yaml.YAMLError, UnicodeDecodeError) as error:
        return {}, (unusable(_reason(error), _line(error)),)
    if not isinstance(settings, dict):
        return {}, (unusable("this is not a list of settings"),)
    passed = {name: value for name, value in settings.items() if name in PASSED_ON}
    return passed, tuple(_ignored(str(name)) for name in settings if name not in PASSED_ON)


def unusable(reason: str, line: int = 1) -> Finding:
    """Make the finding that stops the build: the engine cannot use the file."""
    return Finding(
        rule="engine-settings",
        severity=Severity.ERROR,
        at=Position(FILE, line, 1, line, 2),
        message=f"the site engine cannot use this file: {reason}",
        why="no page could be made",
        hint="put it right, or delete the file: the site then gets the usual settings",
    )


def _ignored(name: str) -> Finding:
    return Finding(
        rule="engine-settings",
        severity=Severity.WARNING,
        at=Position(FILE, 1, 1, 1, 2),
        message=f"`{name}` is not passed on to the site engine",
        why="the build sets it itself, so that every site works from a folder and asks no host",
        hint=f"delete it; what can be set here: {', '.join(PASSED_ON)}",
    )


def _reason(error: yaml.YAMLError | UnicodeDecodeError) -> str:
    if isinstance(error, yaml.MarkedYAMLError) and error.problem:
        return error.problem
    return "it is not YAML in UTF-8"


def _line(error: yaml.YAMLError | UnicodeDecodeError) -> int:
    mark = getattr(error, "problem_mark", None)
    return mark.line + 1 if mark else 1
