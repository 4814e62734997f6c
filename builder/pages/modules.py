"""Control modules: one table of what each needs when it is set up, and the record of each.

In: the catalogue. Out: `Page`s. "Not known" and "not needed" are shown as they are written.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from decimal import Decimal

from builder.model.knowledge import Hazard, Module, SetUpStep
from builder.model.library import Library
from builder.pages import addresses
from builder.pages.catalogue import Catalogue
from builder.pages.page import Page
from builder.pages.render import render
from builder.trade.mistake import Mistake
from builder.trade.refusal_codes import NEXT_STEPS
from builder.trade.refusals import parse_refusal
from builder.wording import phrases
from builder.wording.hazards import by_severity

HOURS = {"fit": "fit", "set_up": "set up", "verify": "verify"}
MORE_KINDS = {"configuration": "configure first, or configure with what this vehicle really has"}


def module_pages(catalogue: Catalogue) -> Iterator[Page]:
    """Yield the set-up table and the record of each module."""
    modules = sorted(catalogue.library.modules.values(), key=lambda module: module.name.casefold())
    body = render("modules.html", "modules/index", modules=modules, cell=cell)
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
    return f"{phrases.number(step.minutes)} min" if step.minutes is not None else "yes"


def _module_page(catalogue: Catalogue, module: Module) -> Page:
    library = catalogue.library
    path = addresses.module(module.id)
    body = render(
        "module.html",
        path,
        module=module,
        steps=[_step_row(library, step) for step in module.set_up],
        refusals=[_refusal(said, kind) for said, kind in module.refusals.items()],
        hazards=_hazards(library, dict.fromkeys(h for step in module.set_up for h in step.hazards)),
        applies=phrases.joined(map(phrases.scope, module.applies_to), "or") or "Any vehicle",
        price=phrases.money(module.price, library.shop) if module.price else "not known",
        hours=[(HOURS.get(name, name), hours(value)) for name, value in module.hours.items()],
        trees=catalogue.by_module.get(module.id, ()),
        codes=[entry for entry in library.codes.values() if entry.module == module.id],
    )
    return Page(path, str(module.name), body, summary=f"Set-up record: {module.name}")


def hours(value: Decimal) -> str:
    """Write hours of work."""
    return f"{phrases.number(value)} h"


@dataclass(frozen=True, slots=True)
class StepRow:
    """One step of set-up as it is laid out."""

    name: str
    needed: str
    needs: tuple[tuple[str, str], ...]  # words, and the anchor of a tool or ""
    cautions: tuple[Hazard, ...]


def _step_row(library: Library, step: SetUpStep) -> StepRow:
    return StepRow(
        phrases.SET_UP.get(step.verb, step.verb),
        need(step),
        tuple(_need(library, text) for text in step.needs),
        tuple(_hazards(library, step.hazards)),
    )


def _need(library: Library, text: str) -> tuple[str, str]:
    tool = library.tools.get(text)
    return (str(tool.name), f"tool-{text}") if tool else (str(text), "")


def _hazards(library: Library, ids: Iterable[str]) -> list[Hazard]:
    """Return the cautions that have a record, most severe first."""
    found = [library.hazards[id_] for id_ in ids if id_ in library.hazards]
    return by_severity(found)


def _refusal(said: str, kind: str) -> tuple[str, str, str]:
    """Return what the tool says, what that is about, and what to do.

    Where it says a name of the standard, its number goes with it, and what the standard means
    counts; else the kind that the record gives.
    """
    found = parse_refusal(said)
    if isinstance(found, Mistake):
        return said, str(kind), NEXT_STEPS.get(kind, MORE_KINDS.get(kind, ""))
    return f"{said} ({found.number:02X})", str(kind), NEXT_STEPS[found.kind]
