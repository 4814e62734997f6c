"""Control modules: one table of what each needs when it is set up, and the record of each.

In: the catalogue. Out: `Page`s. "Not known" and "not needed" are shown as they are written.
"""

from collections.abc import Iterator
from decimal import Decimal

from builder.model.knowledge import Hazard, Module, SetUpStep
from builder.pages import addresses, words
from builder.pages.catalogue import Catalogue
from builder.pages.page import Page
from builder.pages.render import render

HOURS = {"fit": "fit", "set_up": "set up", "verify": "verify"}


def module_pages(catalogue: Catalogue) -> Iterator[Page]:
    """Yield the set-up table and the record of each module."""
    modules = sorted(catalogue.library.modules.values(), key=lambda module: module.name.casefold())
    body = render("modules.html", "modules/index", modules=modules, need=need, cell=cell)
    yield Page("modules/index", "Set-up", body, summary="What each control module needs")
    for module in modules:
        yield _module_page(catalogue, module)


def cell(module: Module, verb: str) -> str:
    """Say in a word or two if a module needs a step of set-up."""
    step = next((step for step in module.set_up if step.verb == verb), None)
    return need(step) if step else "not known"


def need(step: SetUpStep) -> str:
    """Say if a step of set-up is needed, and how long it takes."""
    if step.needed != "needed":
        return str(step.needed)
    return f"{words.number(step.minutes)} min" if step.minutes is not None else "yes"


def _module_page(catalogue: Catalogue, module: Module) -> Page:
    library = catalogue.library
    path = addresses.module(module.id)
    body = render(
        "module.html",
        path,
        module=module,
        need=need,
        needs=lambda step: [_need_name(catalogue, text) for text in step.needs],
        hazards=_hazards(catalogue, module),
        applies=words.joined(map(words.scope, module.applies_to), "or") or "Any vehicle",
        price=words.money(module.price, library.shop) if module.price else "not known",
        hours=[(HOURS.get(name, name), hours(value)) for name, value in module.hours.items()],
        trees=catalogue.by_module.get(module.id, ()),
        codes=[entry for entry in library.codes.values() if entry.module == module.id],
    )
    return Page(path, str(module.name), body, summary=f"Set-up record: {module.name}")


def hours(value: Decimal) -> str:
    """Write hours of work."""
    return f"{words.number(value)} h"


def _need_name(catalogue: Catalogue, text: str) -> str:
    tool = catalogue.library.tools.get(text)
    return str(tool.name) if tool else str(text)


def _hazards(catalogue: Catalogue, module: Module) -> list[Hazard]:
    ids = dict.fromkeys(id_ for step in module.set_up for id_ in step.hazards)
    found = [catalogue.library.hazards[id_] for id_ in ids if id_ in catalogue.library.hazards]
    return sorted(found, key=lambda hazard: words.SIGNALS.index(hazard.signal))
