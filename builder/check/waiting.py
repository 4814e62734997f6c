"""Findings that wait until something that they rest on can be read.

In: findings, and what was looked up while they were made. Out: those to show now, and those that
may only follow from a mistake in `kb/`: one slip there must not look like thirty in the trees.
"""

import re
from collections.abc import Callable, Collection, Iterable, Iterator
from functools import cache
from pathlib import Path, PurePosixPath

from builder.check.dependencies import ALL
from builder.model.finding import Finding, Severity
from builder.reader.file_names import meant_name
from builder.rules.catalog import RULES
from builder.rules.shared.rule import Family

Entry = tuple[str, str]  # kind and ID, as in `dependencies`
Findings = tuple[Finding, ...]
KINDS = {"how-to": "how_tos"}  # by folder, where they differ
# The rules compute on them.
FOLLOWED = ("conditions", "specs", "procedures", "vehicles", "modules", "tools")
KEY = re.compile(r"['\"]?([^\s#'\"-][^:'\"]*)['\"]?\s*:")
ALONE = {rule.RULE.name for rule in RULES if rule.RULE.family is Family.FLOW}  # rest on trees only


def doubtful_entries(shop: Path, findings: Iterable[Finding]) -> frozenset[Entry]:
    """Return the entries of `kb/` in which one of the findings is an error."""

    @cache
    def lines(file: str) -> list[str]:
        path = shop / file
        return path.read_text("utf-8", "replace").split("\n") if path.is_file() else []

    errors = (one for one in findings if one.severity is Severity.ERROR)
    return frozenset(entry for one in errors for entry in _entries(one, lines))


def _entries(finding: Finding, lines: Callable[[str], list[str]]) -> Iterator[Entry]:
    path = PurePosixPath(finding.at.file)
    if finding.rule == "file-name":  # what it's called in the trees
        folder, _, name = meant_name(finding.at.file).rpartition("/")
        kind = "procedures" if folder.startswith("trees/") else folder.removeprefix("kb/")
        yield KINDS.get(kind, kind), name
    if path.parts[:1] != ("kb",) or len(path.parts) < 2:
        return
    if len(path.parts) > 2:
        yield KINDS.get(path.parts[1], path.parts[1]), path.stem
        return
    above = reversed(lines(finding.at.file)[: finding.at.line])
    key = next((match[1] for line in above if (match := KEY.match(line))), ALL)
    yield path.stem, key.strip()


def misnamed_trees(findings: Iterable[Finding]) -> frozenset[str]:
    """Return the IDs that the trees in files with a wrong name most likely have."""
    files = (meant_name(one.at.file) for one in findings if one.rule == "file-name")
    return frozenset(name.removeprefix("trees/") for name in files if name.startswith("trees/"))


def in_kinds_followed(findings: Iterable[Finding]) -> Iterator[Finding]:
    """Yield the findings of rules in the knowledge that other rules compute on."""
    for one in findings:
        match PurePosixPath(one.at.file).parts:
            case ("kb", kind, *_) if kind.removesuffix(".yml") in FOLLOWED:
                yield one


def rests_on(used: Collection[Entry], doubtful: Collection[Entry]) -> bool:
    """Whether one of the entries that were looked up is in doubt."""
    looked_up = set(used)
    return any(
        entry in looked_up or (entry[0], ALL) in looked_up or
        (entry[1] == ALL and any(kind == entry[0] for kind, _ in looked_up))
        for entry in doubtful
    )  # fmt: skip


def waits(of_shop: Finding, mistakes: Findings, doubtful: Collection[Entry]) -> bool:
    """Whether a finding about the whole shop waits until `kb/` can be read.

    What the rules say of a procedure also waits for the states and the specs that it may need.
    """
    in_doubt = any(
        one.severity is Severity.ERROR and one.at.file.startswith("kb/") for one in mistakes
    )
    is_procedure = of_shop.at.file.startswith("kb/procedures/")
    is_early = is_procedure and any(kind in ("conditions", "specs") for kind, _ in doubtful)
    return (in_doubt and of_shop.rule not in ALONE) or is_early
