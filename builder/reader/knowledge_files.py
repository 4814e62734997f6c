"""Everything in a shop but its trees: its settings and the files in `kb/`.

In: a shop's folder. Out: a `Library` without trees, and the mistakes in its files. A record with a
mistake in it is left out.
"""

import os
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import lru_cache
from pathlib import Path
from typing import TypeVar

from builder.model.conditions import Condition
from builder.model.finding import Finding, Related, Severity
from builder.model.knowledge import Case, HowTo
from builder.model.library import Library
from builder.model.module_record import Module
from builder.model.procedures import Procedure
from builder.model.silence import Silence
from builder.model.text import Text
from builder.model.vehicle_data import Spec, Vehicle
from builder.reader import records, vehicle_records
from builder.reader.articles import article_from
from builder.reader.case_records import case_from, impossible_dates
from builder.reader.condition_records import condition_records
from builder.reader.file_names import shop_files
from builder.reader.lengths import too_long
from builder.reader.module_records import module_from, without_releaser
from builder.reader.nodes import EMPTY, Map, without_broken, without_keys
from builder.reader.picture_files import pictures
from builder.reader.procedure_files import procedure_from
from builder.reader.shop_settings import doubtful_settings, shop_settings
from builder.reader.silences import silences_in
from builder.reader.site_config import SITE_FILE, refusals, unused
from builder.reader.source import Source, mistake, read_source
from builder.reader.validate import validate
from builder.reader.yaml_text import read_yaml

Kept = TypeVar("Kept")
# What becomes of a text is remembered, so that after a save `serve` parses one file again, not all.
_REMEMBERED = 2000  # files
_parsed = lru_cache(_REMEMBERED)(read_yaml)
_procedure_of = lru_cache(_REMEMBERED)(procedure_from)
_article_of = lru_cache(_REMEMBERED)(article_from)


def read_knowledge(shop: Path) -> tuple[Library, tuple[Finding, ...]]:
    """Read the shop's settings and `kb/`; the trees are read one by one elsewhere."""
    files, findings = shop_files(shop)
    reading = _Reading(shop, files, [*findings])
    codes, words = _map(reading, "kb/codes.yml"), _map(reading, "kb/words.yml")
    sizes, bad_pictures = pictures(shop)
    reading.findings.extend(bad_pictures)
    settings = _shop_map(reading)
    specs = vehicle_records.specs(_map(reading, "kb/specs.yml"), reading.findings)
    reading.findings.extend(doubtful_settings(settings))
    library = Library(
        shop=shop_settings(settings, _site(reading)),
        systems=records.systems(_map(reading, "kb/systems.yml")),
        lamps=records.lamps(_map(reading, "kb/lamps.yml")),
        hazards=records.hazards(_map(reading, "kb/hazards.yml")),
        conditions=_conditions(reading),
        tools=records.tools(_map(reading, "kb/tools.yml")),
        procedures=_procedures(reading),
        specs=specs,
        parts=vehicle_records.vehicle_parts(_map(reading, "kb/parts.yml")),
        vehicles=_vehicles(reading, specs),
        codes=records.codes(codes),
        failure_types=records.failure_types(codes),
        glossary=records.glossary(_map(reading, "kb/glossary.yml")),
        words=records.slang(words),
        house_words=records.house_words(words),
        same_words=records.same_words(words),
        how_tos=_articles(reading),
        modules=_modules(reading),
        cases=_cases(reading),
        pictures=sizes,
        silences=tuple(_silences(reading)),
    )
    return library, tuple(reading.findings)


@dataclass(frozen=True, slots=True)
class _Reading:
    """The files to read, and the findings so far."""

    shop: Path
    files: tuple[str, ...]  # relative to the shop
    findings: list[Finding]
    sources: dict[str, Source | Finding] = field(default_factory=dict)

    def source(self, file: str) -> Source | Finding:
        """Return the text of a file; each is read once."""
        if file not in self.sources:
            self.sources[file] = read_source(self.shop, self.shop / file)
        return self.sources[file]


def _shop_map(reading: _Reading) -> Map:
    file = "site_config/shop.yml"
    if not os.path.lexists(reading.shop / file):
        reading.findings.append(mistake("missing-key", file, "the shop has no settings",
                                   "prices and prints need them",
                                   "create a shop with `baytree start DIR`"))  # fmt: skip
    return _map(reading, file)


def _map(reading: _Reading, file: str, kind: str = "") -> Map:
    """Read one file, by default of the kind in its name; broken records are left out."""
    return _valid(reading, _root(reading, file), kind or Path(file).stem)


def _root(reading: _Reading, file: str) -> Map:
    """Read a file of any kind; a missing one counts as empty."""
    if file not in reading.files:
        return EMPTY
    source = reading.source(file)
    if isinstance(source, Finding):
        reading.findings.append(source)
        return EMPTY
    root, findings = _parsed(source)
    reading.findings.extend(findings)
    if isinstance(root, Map):
        return root
    if root and not findings:
        reading.findings.append(mistake("wrong-type", root.at, "this file has no keys",
                                   "it can't be read this way",
                                   "write `key: value` on every line"))  # fmt: skip
    return EMPTY


def _valid(reading: _Reading, root: Map, kind: str) -> Map:
    """Return the records that match the schema of their kind."""
    if root is EMPTY:
        return EMPTY
    mistakes, broken = validate(root, kind)
    reading.findings.extend(mistakes)
    return without_broken(root, broken)


def _conditions(reading: _Reading) -> dict[str, Condition]:
    """Read the conditions; one with a mistake stays, since others name it."""
    root = _root(reading, "kb/conditions.yml")
    if root is EMPTY:
        return {}
    mistakes, broken = validate(root, "conditions")
    reading.findings.extend(mistakes)
    reading.findings.extend(too_long(root))
    return condition_records(root, broken)


def _site(reading: _Reading) -> Map:
    """Read the site's settings, and report everything in the folder that has no effect."""
    reading.findings.extend(unused(reading.shop))
    root = _root(reading, SITE_FILE)
    bad_keys = refusals(root)
    reading.findings.extend(bad_keys.values())
    return _valid(reading, without_keys(root, bad_keys), "site")


def _records(reading: _Reading, folder: str, kind: str) -> Iterator[tuple[str, Map]]:
    """Read every file of a folder; a file without its main key is left out."""
    for file in reading.files:
        if file.startswith(f"{folder}/"):
            before = len(reading.findings)
            root = _map(reading, file, kind)
            if root is EMPTY and len(reading.findings) == before:
                reading.findings.append(_empty(file, kind))
            if Text(kind) in root:
                yield file, root


def _empty(file: str, kind: str) -> Finding:
    return mistake("missing-key", file, "there is nothing in this file",
                   f"the {kind} is missing from every tree and page that names it",
                   "bring back its last saved version, or copy another file of this folder and "
                   "change it; or delete the file: the check then lists what names it")  # fmt: skip


def _modules(reading: _Reading) -> dict[str, Module]:
    files = _records(reading, "kb/modules", "module")
    modules = [module_from(Path(file).stem, file, root) for file, root in files]
    reading.findings.extend(filter(None, map(without_releaser, modules)))
    return {module.id: module for module in modules}


def _vehicles(reading: _Reading, specs: Mapping[str, Spec]) -> dict[str, Vehicle]:
    files = [file for file in reading.files if file.startswith("kb/vehicles/")]
    roots = {file: _map(reading, file, "vehicle") for file in files}
    vehicles = (
        vehicle_records.vehicle(file, root, specs, reading.findings)
        for file, root in roots.items()
        if Text("make") in root and Text("model") in root
    )
    return {str(vehicle.id): vehicle for vehicle in vehicles}


def _procedures(reading: _Reading) -> dict[str, Procedure]:
    read = (_procedure_of(source) for source in _sources(reading, "kb/procedures/"))
    return {one.name: one for one in _kept(reading, read)}


def _articles(reading: _Reading) -> dict[str, HowTo]:
    read = (_article_of(source) for source in _sources(reading, "kb/how-to/"))
    return {one.id: one for one in _kept(reading, read)}


def _sources(reading: _Reading, folder: str) -> Iterator[Source]:
    """Yield the files of a folder that can be read."""
    for source in (reading.source(file) for file in reading.files if file.startswith(folder)):
        if isinstance(source, Finding):
            reading.findings.append(source)
        else:
            yield source


def _kept(
    reading: _Reading, read: Iterable[tuple[Kept | None, Iterable[Finding]]]
) -> Iterator[Kept]:
    """Yield what could be made of files; their mistakes are added to the findings."""
    for made, findings in read:
        reading.findings.extend(findings)
        if made:
            yield made


def _cases(reading: _Reading) -> dict[str, Case]:
    cases: dict[str, Case] = {}
    for file, root in _records(reading, "kb/cases", "case"):
        case = case_from(file, root)
        reading.findings.extend(impossible_dates(case))
        first = cases.setdefault(case.id, case)
        if first is not case:
            reading.findings.append(_same_case(case, first))
    return cases


def _same_case(case: Case, first: Case) -> Finding:
    return Finding("duplicate-key", Severity.ERROR, case.at,
                   f"case `{case.id}` is already defined in `{first.file}`",
                   "only one of them would count, and you can't tell which",
                   "each job has its own number: correct one of them",
                   (Related(first.at, "first defined here"),))  # fmt: skip


def _silences(reading: _Reading) -> Iterator[Silence]:
    for source in (reading.source(file) for file in reading.files if file.startswith("kb/")):
        if not isinstance(source, Finding):
            yield from silences_in(source.file, source.text)
