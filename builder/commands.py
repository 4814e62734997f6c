"""Each command as one short pipeline; read this first.

In: a shop's folder and what the command line asked for. Out: values for `cli` to print, or files
written by the last room of the pipeline. Rooms that only some commands go through are imported by
those: an editor runs a check at every save, and must not wait for what prints sheets.
"""

import json
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from datetime import date
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from builder.authoring.refused import Refused as Refused
from builder.checking import checking, findings, known_library, sound_tree
from builder.flags import Wanted
from builder.memory import cache_of
from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.reader.library import read_knowledge
from builder.reader.schemas import KINDS, named_schema, schema
from builder.reader.trees import the_tree
from builder.rules.documentation import RulePage, pages

if TYPE_CHECKING:
    from builder.find.ranking import SearchAnswer
    from builder.plan.minutes import Minutes
    from builder.site.build import Input


@dataclass(frozen=True, slots=True)
class Checked:
    """What a check found."""

    library: Library
    findings: tuple[Finding, ...]  # by file, line and column

    @property
    def errors(self) -> int:
        """How many findings stop a build."""
        return sum(finding.severity is Severity.ERROR for finding in self.findings)


def check(shop: Path, files: Iterable[Path], today: date) -> Checked:
    """Judge every tree and the shop as a whole; with files, keep what concerns those."""
    with checking(shop, today) as under_way:
        found = findings(under_way)
    wanted = {path.resolve(strict=True).relative_to(shop).as_posix() for path in files}
    kept = (one for one in found if not wanted or one.at.file in wanted)
    return Checked(under_way.library, in_order(kept))


def in_order(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Sort findings as a reader goes through the files; the same one is kept once."""
    return tuple(
        sorted(dict.fromkeys(findings), key=lambda one: (*one.at[:3], one.rule, one.message))
    )


def build(shop: Path, out: Path, today: date, *, prints: bool = True) -> Checked:
    """Check, then write the site; on errors nothing is written and the old site stays."""
    from builder.site.build import build_site

    with checking(shop, today) as under_way:
        given = replace(
            _input(shop, under_way.library, prints=prints),
            read_tree=partial(sound_tree, under_way),
            approved=lambda: not Checked(under_way.library, findings(under_way)).errors,
        )
        built = build_site(given, out)
        found = findings(under_way)
    return Checked(under_way.library, in_order((*found, *built.findings)))


def serve(shop: Path, port: int) -> None:
    """Serve the site while an author is at work; what is broken shows on its page."""
    from builder.site.build import build_site
    from builder.site.serve import serve as serve_site

    def rebuild(out: Path) -> int:
        checked = check(shop, (), date.today())
        given = replace(_input(shop, checked.library, prints=False), findings=checked.findings)
        build_site(replace(given, cache=cache_of(shop) / "serve"), out)
        return checked.errors

    serve_site(shop, rebuild, port)


def _input(shop: Path, library: Library, *, prints: bool) -> "Input":
    from builder.plan.entries import with_entries
    from builder.site.build import Input

    files = {f"schemas/{name}": text for name, text in schemas(None).items()}
    cache = cache_of(shop) / "build"
    read = partial(the_tree, shop)
    return Input(shop, cache, with_entries(library, read), read, prints, files)


def print_sheets(shop: Path, wanted: Wanted, out: Path) -> Iterator[tuple[Path, int]]:
    """Print one sheet after another; yields each file and how many there are in all."""
    from builder.printing import jobs

    library = known_library(shop)
    made = jobs(wanted, library, partial(the_tree, shop))
    for name, make in made:
        path = out / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(make())
        yield path, len(made)


def start_shop(folder: Path) -> tuple[Path, ...] | Refused:
    """Make a new, empty shop that checks and builds."""
    from builder.authoring.start import start

    made = start(folder)
    if not isinstance(made, Refused):
        write_schemas(folder, folder / ".schemas")
    return made


def new_tree(shop: Path, id_: str, today: date) -> Path | Refused:
    """Begin a tree: its first check, a fix and a stop, to be filled in."""
    from builder.authoring.new_tree import new_tree as begin

    return begin(shop, id_, today)


def write_schemas(shop: Path, folder: Path, kind: str | None = None) -> tuple[Path, ...]:
    """Write the schemas with the shop's own names where an editor finds them."""
    made = schemas(kind, read_knowledge(shop)[0])
    folder.mkdir(parents=True, exist_ok=True)
    for name, text in made.items():
        (folder / name).write_text(text, "utf-8")
    return tuple(folder / name for name in made)


def find(shop: Path, query: str) -> "SearchAnswer":
    """Rank the trees and articles for the words of a customer."""
    from builder.find.ranking import answer_query
    from builder.find.search_table import search_table
    from builder.find.symptom_index import build_symptom_index

    return answer_query(build_symptom_index(search_table(known_library(shop))), query)


def tree_minutes(shop: Path, id_: str) -> "Minutes":
    """Work out what following a tree takes."""
    from builder.plan.minutes import minutes

    return minutes(the_tree(shop, id_))


def rules(name: str | None) -> tuple[RulePage, ...]:
    """Return the pages of the rules, or of the one named."""
    return tuple(page for page in pages() if name in (None, page.rule.name))


def schemas(kind: str | None, library: Library | None = None) -> dict[str, str]:
    """Return the schemas as JSON by file name; with a library, with the shop's own names."""
    return {
        f"{name}.schema.json": json.dumps(
            named_schema(name, library) if library else schema(name), indent=2, ensure_ascii=False
        )
        + "\n"
        for name in KINDS
        if kind in (None, name)
    }
