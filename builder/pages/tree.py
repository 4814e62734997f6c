"""The page of a tree.

In: a tree, the library, its analysis. Out: `Page`.
"""

from collections.abc import Iterable, Iterator
from typing import NamedTuple
from urllib.parse import quote

from builder.graph.runs import with_inner_steps
from builder.model.ends import Fix, Stop
from builder.model.knowledge import Hazard
from builder.model.library import Library
from builder.model.summary import TreeSummary
from builder.model.tree import Question, Step, Tree
from builder.pages import addresses
from builder.pages.analysis import TreeAnalysis
from builder.pages.branches import TreeContext, tree_context
from builder.pages.closed_jobs import closed_jobs_of
from builder.pages.codes import code_meaning
from builder.pages.fixes import FixView, fix_view, stop_text
from builder.pages.lamps import lamp_drawing, lamp_record
from builder.pages.page import Page, TreePrint
from builder.pages.render import render
from builder.pages.steps import StepView, step_cautions, step_views
from builder.pages.systems import system_name
from builder.pages.walk_scripts import WALK_SCRIPTS
from builder.wording.hazards import by_severity
from builder.wording.placeholders import in_plain_words
from builder.wording.sentences import joined, module_name
from builder.wording.value_text import duration_text, scope_text
from builder.wording.vehicle_words import driving_text


class StepCard(NamedTuple):
    """What the card of a step shows."""

    step: StepView
    fix: FixView | None  # where the step is a fix
    end: str  # where it is a stop: what that means


def tree_page(
    tree: Tree,
    library: Library,
    analysis: TreeAnalysis,
    related: Iterable[TreeSummary] = (),
    prints: Iterable[TreePrint] = (),
) -> Page:
    """Write the page of one tree."""
    tree = in_plain_words(tree)
    context = tree_context(tree, library, analysis.numbers)
    cards = tuple(step_cards(context, analysis))
    path = addresses.tree_path(tree.id)
    body = render(
        "tree.html",
        path,
        tree=tree,
        chart=analysis.chart,
        cards=cards,
        fixes=sorted((card.fix for card in cards if card.fix), key=lambda fix: fix.number),
        hazards=all_cautions(context),
        system=system_name(library, tree.system),
        applies=joined(map(scope_text, tree.applies_to), "or") or "Any vehicle",
        lamps=[lamp_record(library, id_) for id_ in tree.symptom.lamps],
        lamp_drawing=lamp_drawing,
        start=cards[0].step.id if cards else "",
        codes=[(code, code_meaning(library, code)) for code in tree.symptom.codes],
        replaced=[(id_, module_name(id_, library)) for id_ in tree.symptom.fitted_elsewhere],
        questions=[_question(asked, library) for asked in tree.asks],
        tools=list(all_tools(tree, library)),
        time=time_text(analysis),
        driving=driving_text(tree.drive, tree.why),
        related=tuple(related),
        jobs=closed_jobs_of(library, tree.id),
        prints=print_links(tree, prints),
    )
    return Page(path, tree.title, body, joined(tree.symptom.words[:3]), WALK_SCRIPTS)


def print_links(tree: Tree, prints: Iterable[TreePrint]) -> list[tuple[str, str]]:
    """Return the name and the file of each print of a tree or a procedure."""
    return [(one.name, quote(addresses.print_path(tree.id, one.suffix))) for one in prints]


def step_cards(context: TreeContext, analysis: TreeAnalysis) -> Iterator[StepCard]:
    """Yield the card of each step, in reading order."""
    for view in step_views(context):
        step = context.tree.steps[view.id]
        fix, end = None, ""
        if isinstance(step.body, Fix):
            fix = fix_view(context, step, step.body, analysis)
        if isinstance(step.body, Stop):
            end = stop_text(step.body)
        yield StepCard(view, fix, end)


def steps_with_procedures(tree: Tree, library: Library) -> Iterator[Step]:
    """Yield the steps of a tree and of the procedures that they run."""
    for step in tree.steps.values():
        yield from with_inner_steps(step, library.procedures)


def all_cautions(context: TreeContext) -> list[Hazard]:
    """Return every caution of a tree and its procedures, most severe first.

    Of those with one signal word the tree's own come first, as they are about its subject.
    """
    hazards: dict[str, Hazard] = {}
    for step in steps_with_procedures(context.tree, context.library):
        hazards |= {hazard.id: hazard for hazard in step_cautions(context, step)}
    own = {str(name) for step in context.tree.steps.values() for name in step.hazards}
    return by_severity(sorted(hazards.values(), key=lambda one: (one.id not in own, one.id)))


def _question(asked: Question, library: Library) -> str:
    """Write a question with its answers, each with the DTCs that answer it."""
    codes: dict[str, list[str]] = {str(answer): [] for answer in asked.one_of}
    for code, answer in asked.codes.items():
        codes.setdefault(str(answer), []).append(str(code))
    answers = [
        module_name(answer, library) + (f" ({', '.join(by)})" if by else "")
        for answer, by in codes.items()
    ]
    return f"{asked.ask}: {joined(answers, 'or')}" if answers else str(asked.ask)


def all_tools(tree: Tree, library: Library) -> Iterator[tuple[str, str]]:
    """Yield every tool that a tree or its procedures need: its ID and its name."""
    steps = steps_with_procedures(tree, library)
    ids = dict.fromkeys(id_ for step in steps for id_ in step.tools)
    for id_ in ids:
        tool = library.tools.get(id_)
        yield id_, str(tool.name) if tool else id_


def time_text(analysis: TreeAnalysis) -> str:
    """Write how long a tree or a procedure takes."""
    times = analysis.minutes
    if not times.longest:
        return ""
    expected, shortest, longest, wait = map(
        duration_text, (times.expected, times.shortest, times.longest, times.wait)
    )
    waits = f", plus {wait} waiting" if times.wait >= 1 else ""
    return f"About {expected} ({shortest} to {longest}){waits}"
