"""Findings for code scanning, as SARIF 2.1.0 (OASIS standard).

In: findings, and the folder of the shop inside its repository. Out: one SARIF text. Every rule is
listed with its page as help; paths are relative to the repository, so that a shop in a subfolder is
shown on the right files.
"""

import json
from collections import Counter
from collections.abc import Iterable, Sequence
from hashlib import sha256
from typing import Any
from urllib.parse import quote

from builder import __version__
from builder.model.finding import Edit, Finding, Related
from builder.model.text import Position
from builder.rules.shared.documentation import RulePage, documented_rules

SARIF_SCHEMA = (
    "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
)
SARIF_ROOT = (
    "%SRCROOT%"  # the name by which the standard's examples call the root of the repository
)


def findings_as_sarif(findings: Sequence[Finding], prefix: str = "") -> str:
    """Write the findings; `prefix` is the shop's folder in its repository, such as `shop/`."""
    rules = list(documented_rules())
    places = {page.rule.name: place for place, page in enumerate(rules)}
    driver = {"name": "baytree", "version": __version__, "rules": [_rule(page) for page in rules]}
    run = {
        "tool": {"driver": driver},
        "columnKind": "unicodeCodePoints",
        "results": list(_results(findings, places, prefix)),
    }
    report = {"$schema": SARIF_SCHEMA, "version": "2.1.0", "runs": [run]}
    return json.dumps(report, ensure_ascii=False, indent=1) + "\n"


def _rule(page: RulePage) -> dict[str, Any]:
    rule = page.rule
    return {
        "id": rule.name,
        "shortDescription": {"text": rule.summary},
        "fullDescription": {"text": f"{page.finds} {page.why}"},
        "help": {"text": _help(page), "markdown": _help(page)},
        "defaultConfiguration": {"level": str(rule.severity)},
        "properties": {"tags": [rule.family]},
    }


def _help(page: RulePage) -> str:
    wrong, right = (f"```yaml\n{block}```" for block in (page.wrong, page.right))
    return f"{page.finds}\n\n{page.why}\n\nWrong:\n\n{wrong}\n\nRight:\n\n{right}\n\n{page.fix}\n"


def _results(
    findings: Iterable[Finding], places: dict[str, int], prefix: str
) -> Iterable[dict[str, Any]]:
    seen: Counter[str] = Counter()
    for one in findings:
        # What stays the same when lines move: the rule, the file, the message, and which of
        # several identical ones it is.
        words = "\n".join((one.rule, one.at.file, one.message))
        seen[words] += 1
        counted = f"{words}\n{seen[words]}".encode(errors="surrogatepass")
        fingerprint = sha256(counted).hexdigest()[:32]
        result: dict[str, Any] = {
            "ruleId": one.rule,
            "level": str(one.severity),
            "message": {"text": _sentences(one.message, one.why, one.hint)},
            "locations": [_location(one.at, prefix)],
            "partialFingerprints": {"ruleFileAndMessage/v1": fingerprint},
        }
        if one.rule in places:
            result["ruleIndex"] = places[one.rule]
        if one.edit and (region := _edited_region(one.edit)):
            result["fixes"] = [_fix(one, one.edit, region, prefix)]
        if one.related:
            result["relatedLocations"] = [_related(other, prefix) for other in one.related]
        yield result


def _fix(finding: Finding, edit: Edit, region: dict[str, int], prefix: str) -> dict[str, Any]:
    """Return what `check --fix` would write, as a fix (section 3.55 of the standard)."""
    place = _location(edit.at, prefix)["physicalLocation"]["artifactLocation"]
    replacement = {"deletedRegion": region, "insertedContent": {"text": edit.new}}
    return {
        "description": {"text": _sentences(finding.hint or finding.message)},
        "artifactChanges": [{"artifactLocation": place, "replacements": [replacement]}],
    }


def _edited_region(edit: Edit) -> dict[str, int] | None:
    """Return the part of the line that an edit replaces; None where quotes would break.

    The position of a value in quotes has them in it, its text hasn't.
    """
    at, quotes = edit.at, edit.at.end_column - edit.at.column - len(edit.old)
    if at.line != at.end_line or quotes not in (0, 2) or (quotes and set(edit.new) & set("'\"\\")):
        return None
    return {
        "startLine": at.line,
        "startColumn": at.column + quotes // 2,
        "endLine": at.end_line,
        "endColumn": at.end_column - quotes // 2,
    }


def _sentences(*texts: str) -> str:
    ended = (text if text[-1] in ".?!" else f"{text}." for text in texts if text)
    return " ".join(text[0].upper() + text[1:] for text in ended)


def _related(other: Related, prefix: str) -> dict[str, Any]:
    return _location(other.at, prefix) | {"message": {"text": other.note}}


def _location(at: Position, prefix: str) -> dict[str, Any]:
    region = {
        "startLine": at.line,
        "startColumn": at.column,
        "endLine": at.end_line,
        "endColumn": at.end_column,
    }
    artifact = {"uri": quote(prefix + at.file, errors="surrogateescape"), "uriBaseId": SARIF_ROOT}
    return {"physicalLocation": {"artifactLocation": artifact, "region": region}}
