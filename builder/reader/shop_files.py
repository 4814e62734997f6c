"""The shop but its trees: its settings and its knowledge.

In: a shop's folder. Out: a `Library` without trees, and the mistakes in its files. A record with a
mistake in it is left out.
"""

import os
from collections.abc import Callable, Iterable, Iterator
from decimal import Decimal
from pathlib import Path
from typing import TypeVar

from builder.model.finding import Finding
from builder.model.knowledge import Case, HowTo, Module
from builder.model.library import Library
from builder.model.shop import Shop, SiteSettings
from builder.model.silence import Silence
from builder.model.text import Text
from builder.reader import knowledge
from builder.reader.articles import article_from
from builder.reader.nodes import EMPTY, Map
from builder.reader.pictures import pictures
from builder.reader.silences import silences_in
from builder.reader.site_config import SITE_FILE, refusals, unused
from builder.reader.source import mistake, read_source
from builder.reader.validate import validate
from builder.reader.values import map_, money, named_texts, number, text, the_text
from builder.reader.yaml_text import read_yaml

T = TypeVar("T")
Notes = list[Finding]


def read_knowledge(shop: Path) -> tuple[Library, tuple[Finding, ...]]:
    """Read the shop's settings and `kb/`; the trees are left to be read one by one."""
    notes: Notes = []
    kb = shop / "kb"
    codes = _map(shop, kb / "codes.yml", "codes", notes)
    sizes, unfit = pictures(shop)
    notes += unfit
    words = _map(shop, kb / "words.yml", "words", notes)
    settings = _map(shop, shop / "site_config" / "shop.yml", "shop", notes, needed=True)
    library = Library(
        shop=_settings(settings, _site(shop, notes)),
        systems=knowledge.systems(_map(shop, kb / "systems.yml", "systems", notes)),
        lamps=knowledge.lamps(_map(shop, kb / "lamps.yml", "lamps", notes)),
        hazards=knowledge.hazards(_map(shop, kb / "hazards.yml", "hazards", notes)),
        tools=knowledge.tools(_map(shop, kb / "tools.yml", "tools", notes)),
        vehicles=knowledge.vehicles(_map(shop, kb / "vehicles.yml", "vehicles", notes)),
        codes=knowledge.codes(codes),
        failure_types=knowledge.failure_types(codes),
        glossary=knowledge.glossary(_map(shop, kb / "glossary.yml", "glossary", notes)),
        words=knowledge.slang(words),
        same_words=knowledge.same_words(words),
        how_tos=_articles(shop, notes),
        modules=_modules(shop, notes),
        cases=_cases(shop, notes),
        pictures=sizes,
        silences=tuple(_silences(shop)),
    )
    return library, tuple(notes)


def _map(shop: Path, path: Path, kind: str, notes: Notes, *, needed: bool = False) -> Map:
    """Read one file of a kind; what is broken in it is told and left out."""
    if needed and not os.path.lexists(path):
        notes.append(mistake("missing-key", path.relative_to(shop).as_posix(),
                             "the shop has no settings", "prices and prints need them",
                             "make a shop with `baytree start DIR`"))  # fmt: skip
    return _sound(_root(shop, path, notes), kind, notes)


def _root(shop: Path, path: Path, notes: Notes) -> Map:
    """Read what stands in a file, of whatever kind; no file is as good as an empty one."""
    if not os.path.lexists(path):  # a link to nothing is there, and is told
        return EMPTY
    source = read_source(shop, path)
    if isinstance(source, Finding):
        notes.append(source)
        return EMPTY
    root, findings = read_yaml(source)
    notes += findings
    if isinstance(root, Map):
        return root
    if root and not findings:
        notes.append(mistake("wrong-type", source.file, "this file holds no keys",
                             "it cannot be understood as it stands",
                             "write `key: value` on every line", root.at))  # fmt: skip
    return EMPTY


def _sound(root: Map, kind: str, notes: Notes) -> Map:
    """Return what holds against the schema of its kind; what is broken is told and left out."""
    if root is EMPTY:
        return EMPTY
    mistakes, broken = validate(root, kind)
    notes += mistakes
    return _without(root, {str(path[0]) for path in broken if path})


def _site(shop: Path, notes: Notes) -> Map:
    """Read what the shop sets of its site, and tell of all in the folder that has no effect."""
    notes += unused(shop)
    root = _root(shop, shop / SITE_FILE, notes)
    refused = refusals(root)
    notes += refused.values()
    return _sound(_without(root, set(refused)), "site", notes)


def _without(root: Map, names: set[str]) -> Map:
    left = Map((key, value) for key, value in root.items() if key not in names)
    left.at = root.at
    return left


def _folder(
    shop: Path, files: Iterable[Path], kind: str, required: str, make: Callable[[str, Map], T],
    notes: Notes,
) -> list[T]:  # fmt: skip
    """Read every file of a folder; a file that lacks what it is about is left out."""
    made: list[T] = []
    for path in sorted(files):
        root = _map(shop, path, kind, notes)
        if Text(required) in root:
            made.append(make(path.relative_to(shop).as_posix(), root))
    return made


def _modules(shop: Path, notes: Notes) -> dict[str, Module]:
    def make(file: str, root: Map) -> Module:
        return knowledge.module(Path(file).stem, file, root)

    files = (shop / "kb" / "modules").glob("*.yml")
    return {one.id: one for one in _folder(shop, files, "module", "module", make, notes)}


def _cases(shop: Path, notes: Notes) -> dict[str, Case]:
    files = (shop / "kb" / "cases").glob("*.yml")
    made = _folder(shop, files, "case", "case", knowledge.case, notes)
    return {one.id: one for one in made}


def _articles(shop: Path, notes: Notes) -> dict[str, HowTo]:
    made: dict[str, HowTo] = {}
    for path in sorted((shop / "kb" / "how-to").glob("*.md")):
        source = read_source(shop, path)
        if isinstance(source, Finding):
            notes.append(source)
            continue
        article, findings = article_from(source)
        notes += findings
        if article:
            made[article.id] = article
    return made


def _silences(shop: Path) -> Iterator[Silence]:
    files = [*(shop / "kb").rglob("*.yml"), *(shop / "kb" / "how-to").glob("*.md")]
    for path in sorted(files):
        source = read_source(shop, path)
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
