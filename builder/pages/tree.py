"""The page of a tree.

In: a tree, the library, the figures. Out: `Page`.
"""

import html
import json
from collections.abc import Iterable, Iterator
from urllib.parse import quote

from markupsafe import Markup

from builder.model.knowledge import Hazard
from builder.model.library import Library
from builder.model.summary import Summary
from builder.model.tree import Asked, Fix, Stop, Tree
from builder.pages import addresses
from builder.pages.codes import meaning
from builder.pages.facts import Facts
from builder.pages.fixes import FixView, end_words, fix_view
from builder.pages.lamps import drawing, lamp_of
from builder.pages.page import Page, Print
from builder.pages.render import render
from builder.pages.steps import StepView, cautions, step_views
from builder.pages.systems import system_name
from builder.pages.ways import Plan, plan_of
from builder.walk.rows import Table
from builder.walk.table import walk_table
from builder.wording import phrases
from builder.wording.asked import in_plain_words
from builder.wording.hazards import by_severity

Row = tuple[StepView, FixView | None, str]
WALK_SCRIPTS = ("trade-data.js", "exact.js", "quantities.js", "follow.js", "walk.js")


def tree_page(
    tree: Tree,
    library: Library,
    facts: Facts,
    related: Iterable[Summary] = (),
    prints: Iterable[Print] = (),
) -> Page:
    """Write the page of one tree."""
    tree = in_plain_words(tree)
    plan = plan_of(tree, library, facts.numbers)
    rows = tuple(_rows(plan, facts))
    path = addresses.tree(tree.id)
    walk = walk_table(tree, library)
    body = render(
        "tree.html",
        path,
        tree=tree,
        facts=facts,
        steps=rows,
        fixes=sorted((fix for _, fix, _ in rows if fix), key=lambda fix: fix.number),
        hazards=_hazards(plan),
        system=system_name(library, tree.system),
        applies=phrases.joined(map(phrases.scope, tree.applies_to), "or") or "Any vehicle",
        lamps=[lamp_of(library, id_) for id_ in tree.symptom.lamps],
        drawing=drawing,
        start=rows[0][0].id if rows else "",
        codes=[(code, meaning(library, code)) for code in tree.symptom.codes],
        fitted=[(id_, phrases.module_name(id_, library)) for id_ in tree.symptom.fitted_elsewhere],
        asked=[_asked(asked, library) for asked in tree.asks],
        tools=list(_tools(tree, library)),
        time=_time(facts),
        related=tuple(related),
        prints=[(one.name, quote(addresses.print_(tree.id, one.suffix))) for one in prints],
        walk=_as_text(walk),
    )
    scripts = WALK_SCRIPTS if walk["steps"] else ()
    return Page(path, tree.title, body, phrases.joined(tree.symptom.words[:3]), scripts)


def _as_text(walk: Table) -> Markup:
    """Write the walk table as the text of an element; quotation marks need no escaping there."""
    text = json.dumps(walk, ensure_ascii=False, separators=(",", ":"))
    return Markup(html.escape(text, quote=False)) if walk["steps"] else Markup()


def _rows(plan: Plan, facts: Facts) -> Iterator[Row]:
    for view in step_views(plan):
        step = plan.tree.steps[view.id]
        fix = end = None
        if isinstance(step.body, Fix):
            fix = fix_view(plan, step, step.body, facts)
        if isinstance(step.body, Stop):
            end = end_words(step.body)
        yield view, fix, end or ""


def _hazards(plan: Plan) -> list[Hazard]:
    met: dict[str, Hazard] = {}
    for step in plan.tree.steps.values():
        met |= {hazard.id: hazard for hazard in cautions(plan, step)}
    return by_severity(sorted(met.values(), key=lambda hazard: hazard.id))


def _asked(asked: Asked, library: Library) -> str:
    """Write a question with its answers, each with the codes that give it."""
    codes: dict[str, list[str]] = {str(answer): [] for answer in asked.one_of}
    for code, answer in asked.codes.items():
        codes.setdefault(str(answer), []).append(str(code))
    answers = [
        phrases.module_name(answer, library) + (f" ({', '.join(by)})" if by else "")
        for answer, by in codes.items()
    ]
    return f"{asked.ask}: {phrases.joined(answers, 'or')}" if answers else str(asked.ask)


def _tools(tree: Tree, library: Library) -> Iterator[tuple[str, str]]:
    seen = dict.fromkeys(id_ for step in tree.steps.values() for id_ in step.tools)
    for id_ in seen:
        tool = library.tools.get(id_)
        yield id_, str(tool.name) if tool else id_


def _time(facts: Facts) -> str:
    found = facts.minutes
    if not found.longest:
        return ""
    expected, shortest, longest, wait = map(
        phrases.minutes, (found.expected, found.shortest, found.longest, found.wait)
    )
    waits = f"; about {wait} of waiting beside it" if found.wait >= 1 else ""
    return f"about {expected} of work, from {shortest} to {longest}{waits}"
