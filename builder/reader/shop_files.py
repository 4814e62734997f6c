"""The shop but its trees: its settings and its knowledge.

In: a shop's folder. Out: a `Library` without trees, and the mistakes in its files. A record with a
mistake in it is left out.
"""

import os
from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from pathlib import Path

from builder.model.finding import Finding, Related, Severity
from builder.model.knowledge import Case, HowTo, Module
from builder.model.library import Library
from builder.model.shop import Shop, SiteSettings
from builder.model.silence import Silence
from builder.model.text import Text
from builder.reader import records
from builder.reader.articles import article_from
from builder.reader.astray import shop_files
from builder.reader.nodes import EMPTY, Map
from builder.reader.picture_files import pictures
from builder.reader.silences import silences_in
from builder.reader.site_config import SITE_FILE, refusals, unused
from builder.reader.source import mistake, read_source
from builder.reader.validate import validate
from builder.reader.values import map_, money, named_texts, number, text, the_text
from builder.reader.yaml_text import read_yaml


def read_knowledge(shop: Path) -> tuple[Library, tuple[Finding, ...]]:
    """Read the shop's settings and `kb/`; the trees are left to be read one by one."""
    files, astray = shop_files(shop)
    known = _Known(shop, files, [*astray])
    codes, words = _map(known, "kb/codes.yml"), _map(known, "kb/words.yml")
    sizes, unfit = pictures(shop)
    known.notes.extend(unfit)
    library = Library(
        shop=_settings(_shop_map(known), _site(known)),
        systems=records.systems(_map(known, "kb/systems.yml")),
        lamps=records.lamps(_map(known, "kb/lamps.yml")),
        hazards=records.hazards(_map(known, "kb/hazards.yml")),
        tools=records.tools(_map(known, "kb/tools.yml")),
        vehicles=records.vehicles(_map(known, "kb/vehicles.yml")),
        codes=records.codes(codes),
        failure_types=records.failure_types(codes),
        glossary=records.glossary(_map(known, "kb/glossary.yml")),
        words=records.slang(words),
        same_words=records.same_words(words),
        how_tos=_articles(known),
        modules=_modules(known),
        cases=_cases(known),
        pictures=sizes,
        silences=tuple(_silences(known)),
    )
    return library, tuple(known.notes)


@dataclass(frozen=True, slots=True)
class _Known:
    """What is read, and what has been told on the way."""

    shop: Path
    files: tuple[str, ...]  # relative to the shop
    notes: list[Finding]


def _shop_map(known: _Known) -> Map:
    file = "site_config/shop.yml"
    if not os.path.lexists(known.shop / file):
        known.notes.append(mistake("missing-key", file, "the shop has no settings",
                                   "prices and prints need them",
                                   "make a shop with `baytree start DIR`"))  # fmt: skip
    return _map(known, file)


def _map(known: _Known, file: str, kind: str = "") -> Map:
    """Read one file of the kind that its name says; what is broken in it is left out."""
    return _sound(known, _root(known, file), kind or Path(file).stem)


def _root(known: _Known, file: str) -> Map:
    """Read what stands in a file, of whatever kind; no file is as good as an empty one."""
    if file not in known.files:
        return EMPTY
    source = read_source(known.shop, known.shop / file)
    if isinstance(source, Finding):
        known.notes.append(source)
        return EMPTY
    root, findings = read_yaml(source)
    known.notes.extend(findings)
    if isinstance(root, Map):
        return root
    if root and not findings:
        known.notes.append(mistake("wrong-type", source.file, "this file holds no keys",
                                   "it cannot be understood as it stands",
                                   "write `key: value` on every line", root.at))  # fmt: skip
    return EMPTY


def _sound(known: _Known, root: Map, kind: str) -> Map:
    """Return what agrees with the schema of its kind; what is broken is left out."""
    if root is EMPTY:
        return EMPTY
    mistakes, broken = validate(root, kind)
    known.notes.extend(mistakes)
    return _without(root, {str(path[0]) for path in broken if path})


def _site(known: _Known) -> Map:
    """Read what the shop sets of its site, and report all in the folder that has no effect."""
    known.notes.extend(unused(known.shop))
    root = _root(known, SITE_FILE)
    refused = refusals(root)
    known.notes.extend(refused.values())
    return _sound(known, _without(root, set(refused)), "site")


def _without(root: Map, names: set[str]) -> Map:
    left = Map((key, value) for key, value in root.items() if key not in names)
    left.at = root.at
    return left


def _records(known: _Known, folder: str, kind: str) -> Iterator[tuple[str, Map]]:
    """Read every file of a folder; a file that lacks what it is about is left out."""
    for file in known.files:
        if file.startswith(f"{folder}/"):
            root = _map(known, file, kind)
            if Text(kind) in root:
                yield file, root


def _modules(known: _Known) -> dict[str, Module]:
    found = _records(known, "kb/modules", "module")
    made = (records.module(Path(file).stem, file, root) for file, root in found)
    return {one.id: one for one in made}


def _cases(known: _Known) -> dict[str, Case]:
    made: dict[str, Case] = {}
    for file, root in _records(known, "kb/cases", "case"):
        one = records.case(file, root)
        first = made.setdefault(one.id, one)
        if first is not one:
            known.notes.append(_same_case(one, first))
    return made


def _same_case(one: Case, first: Case) -> Finding:
    return Finding("duplicate-key", Severity.ERROR, one.at,
                   f"the case `{one.id}` stands in `{first.file}` already",
                   "only one of the two would count, and nobody sees which",
                   "each job has a number of its own: put it right in one of the two",
                   (Related(first.at, "first written here"),))  # fmt: skip


def _articles(known: _Known) -> dict[str, HowTo]:
    made: dict[str, HowTo] = {}
    for file in known.files:
        if not file.startswith("kb/how-to/"):
            continue
        source = read_source(known.shop, known.shop / file)
        if isinstance(source, Finding):
            known.notes.append(source)
            continue
        article, findings = article_from(source)
        known.notes.extend(findings)
        if article:
            made[article.id] = article
    return made


def _silences(known: _Known) -> Iterator[Silence]:
    for file in known.files:
        if file.startswith("kb/"):
            source = read_source(known.shop, known.shop / file)
            if not isinstance(source, Finding):
                yield from silences_in(source.file, source.text)


def _settings(root: Map, site: Map) -> Shop:
    months = the_text(root, "review_good_for", "12").split()[0]
    return Shop(
        name=the_text(root, "shop", "The shop"),
        site_address=the_text(root, "site_address", "https://charts.example/"),
        labour_rate=number(root, "labour_rate") or Decimal(0),
        currency=the_text(root, "currency", "USD"),
        tax_percent=number(root, "tax_percent") or Decimal(0),
        tax_base=str(text(root, "tax_base") or "parts"),
        tow=money(text(root, "tow")),
        units={name: str(unit) for name, unit in named_texts(root, "units").items()},
        decimal_mark=str(text(root, "decimal_mark") or "point"),
        paper=str(text(root, "paper") or "a4"),
        review_months=int(months),
        stuck=named_texts(root, "stuck") if map_(root, "stuck") else {},
        longest_path=int(number(root, "longest_path") or 40),
        site=SiteSettings(str(text(site, "copyright") or ""), str(text(site, "site_author") or "")),
    )
