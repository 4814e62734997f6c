"""Module setup: one table of what each module needs, and the record of each.

In: the catalog of trees. Out: `Page`s. A table cell is never empty.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from builder.model.knowledge import Hazard
from builder.model.library import Library
from builder.model.module_record import Module, SetUpStep
from builder.pages import addresses
from builder.pages.page import Page
from builder.pages.render import render
from builder.pages.tree_catalog import TreeCatalog
from builder.trade.mistake import Mistake
from builder.trade.refusal_codes import NEXT_STEPS
from builder.trade.refusals import parse_refusal
from builder.wording.hazards import by_severity
from builder.wording.labels import SETUP_LABELS
from builder.wording.sentences import joined
from builder.wording.value_text import money_text, number_text, scope_text

_HOURS = {"fit": "fit", "set_up": "set up", "verify": "verify"}
_MORE_NEXT_STEPS = {
    "configuration": "configure first, or configure with what this vehicle really has"
}


def module_pages(catalog: TreeCatalog) -> Iterator[Page]:
    """Yield the table of all modules and the record of each."""
    modules = sorted(catalog.library.modules.values(), key=lambda module: module.name.casefold())
    body = render(
        "modules.html", "modules/index", modules=modules, need_of=module_need, or_unknown=or_unknown
    )
    yield Page("modules/index", "Module setup", body, summary="What each module needs")
    for module in modules:
        yield _module_page(catalog, module)


def module_need(module: Module, verb: str) -> str:
    """Return whether a module needs a setup step, in a word or two."""
    step = next((step for step in module.set_up if step.verb == verb), None)
    return step_need(step) if step else "unknown"


def step_need(step: SetUpStep) -> str:
    """Return whether a setup step is needed, or its minutes."""
    if step.needed != "needed":
        return or_unknown(step.needed)
    return f"{number_text(step.minutes)} min" if step.minutes is not None else "yes"


def _module_page(catalog: TreeCatalog, module: Module) -> Page:
    library = catalog.library
    path = addresses.module_path(module.id)
    body = render(
        "module.html",
        path,
        module=module,
        steps=[_setup_row(library, step) for step in module.set_up],
        refusals=[_refusal(message, kind) for message, kind in module.refusals.items()],
        hazards=_hazards(library, dict.fromkeys(h for step in module.set_up for h in step.hazards)),
        applies=joined(map(scope_text, module.applies_to), "or") or "Any vehicle",
        price=money_text(module.price, library.shop) if module.price else "unknown",
        hours=[
            (_HOURS.get(name, name), f"{number_text(hours)} h")
            for name, hours in module.hours.items()
        ],
        trees=catalog.by_module.get(module.id, ()),
        codes=[entry for entry in library.codes.values() if entry.module == module.id],
    )
    return Page(path, str(module.name), body, summary=f"Module setup: {module.name}")


def or_unknown(answer: str) -> str:
    """Return an answer as a page shows it: records say `not known`."""
    return "unknown" if answer == "not known" else str(answer)


@dataclass(frozen=True, slots=True)
class SetupRow:
    """One setup step, ready to be laid out."""

    name: str
    needed: str
    needs: tuple[tuple[str, str], ...]  # text, and the anchor of a tool or ""
    cautions: tuple[Hazard, ...]


def _setup_row(library: Library, step: SetUpStep) -> SetupRow:
    return SetupRow(
        SETUP_LABELS.get(step.verb, step.verb),
        step_need(step),
        tuple(_need(library, text) for text in step.needs),
        tuple(_hazards(library, step.hazards)),
    )


def _need(library: Library, text: str) -> tuple[str, str]:
    tool = library.tools.get(text)
    return (str(tool.name), f"tool-{text}") if tool else (str(text), "")


def _hazards(library: Library, ids: Iterable[str]) -> list[Hazard]:
    """Return the hazards that have a record, most severe first."""
    return by_severity(library.hazards[id_] for id_ in ids if id_ in library.hazards)


def _refusal(message: str, kind: str) -> tuple[str, str, str]:
    """Return the tool's message, what it's about, and what to do.

    A name of ISO 14229-1 gets its number, and the standard's meaning decides what to do; for any
    other message the kind in the record decides.
    """
    refusal = parse_refusal(message)
    if isinstance(refusal, Mistake):
        return message, str(kind), NEXT_STEPS.get(kind, _MORE_NEXT_STEPS.get(kind, ""))
    return f"{message} ({refusal.number:02X})", str(kind), NEXT_STEPS[refusal.kind]
