"""Every mutant of a sound tree or article is caught, by its rule, on its line."""

import shutil
from collections.abc import Iterable, Iterator
from dataclasses import replace
from itertools import islice
from pathlib import Path

import pytest

from builder.check.unchecked_library import read_library
from builder.graph.summaries import summary_of
from builder.graph.vehicle_paths import names_states
from builder.model.finding import Finding
from builder.plan.procedure_runs import with_procedure_runs
from builder.reader.articles import article_from
from builder.reader.knowledge_files import read_knowledge
from builder.reader.procedure_files import procedure_from
from builder.reader.source import Source
from builder.reader.trees import tree_files, tree_from
from builder.rules.catalog import RULES
from builder.rules.shared.judge import LIBRARY_ONLY_NAMES, TREE_RULE_NAMES, judge, judge_library
from builder.rules.shared.rule import Family

from .conftest import TODAY
from .mutators import MUTATORS, OF_ARTICLES, OF_CONDITIONS, OF_PROCEDURES, OF_RUNS, OF_STATES, needs
from .mutators.procedures import SoundProcedure
from .mutators.sound import Mutant, Sound, SoundArticle
from .mutators.states import SoundConditions

SHOP = Path(__file__).parents[1] / "shop"
SAMPLES = Path(__file__).parents[1] / "samples"  # their trees run procedures
CONDITIONS = "kb/conditions.yml"
A_TREE = 5  # mutants of each kind: enough to meet every shape, few enough to wait for
AN_ARTICLE = 3


@pytest.fixture(scope="module")
def trees() -> list[Sound]:
    """Return the trees that are in use."""
    return trees_of_shop(SHOP)


@pytest.fixture(scope="module")
def trees_with_states() -> list[Sound]:
    """Return the samples of the format that name states, and have no finding about them."""
    named = [one for one in trees_of_shop(SAMPLES) if names_states(one.tree)]
    states = {rule.RULE.name for rule in RULES if rule.RULE.family is Family.STATES}
    for sound in named:
        assert not states & {finding.rule for finding in judge(sound.tree, sound.library)}
    return named


def trees_of_shop(shop: Path) -> list[Sound]:
    """Return the trees of a shop that are in use."""
    library, _ = read_library(shop)
    sound = []
    for path in tree_files(shop):
        source = Source(path.relative_to(shop).as_posix(), path.read_text("utf-8"), "")
        tree, _ = tree_from(source)
        if tree and tree.status == "ready" and not tree.broken:
            sound.append(Sound(tree, source.text, library))
    return sound


@pytest.fixture(scope="module")
def articles(trees: list[Sound]) -> list[SoundArticle]:
    """Return the articles."""
    library = trees[0].library
    return [
        SoundArticle(one, (SHOP / one.file).read_text("utf-8"), library)
        for one in library.how_tos.values()
    ]


def judged(sound: Sound, text: str, rule: str) -> Iterator[Finding]:
    """Judge the text of a tree by a rule, alone or with the others as the rule asks."""
    tree, findings = tree_from(Source(sound.tree.file, text, ""))
    yield from findings
    if tree and rule not in LIBRARY_ONLY_NAMES:
        yield from judge(tree, sound.library)
    if tree and rule not in TREE_RULE_NAMES:
        trees = {**sound.library.trees, tree.id: summary_of(tree)}
        yield from judge_library(replace(sound.library, trees=trees), TODAY)


def judged_article(sound: SoundArticle, text: str, _rule: str) -> Iterator[Finding]:
    """Judge the text of an article."""
    article, findings = article_from(Source(sound.article.file, text, ""))
    yield from findings
    if article:
        how_tos = {**sound.library.how_tos, article.id: article}
        yield from judge_library(replace(sound.library, how_tos=how_tos), TODAY)


def caught(findings: Iterable[Finding], mutant: Mutant, file: str, rule: str) -> bool:
    """Whether a finding of the rule is on one of the lines of the fault."""
    spots = {(file, line) for line in mutant.lines} | mutant.elsewhere
    places = (
        place
        for finding in findings
        if finding.rule == rule
        for place in (finding.at, *(other.at for other in finding.related if mutant.elsewhere))
    )
    return any((place.file, place.line) in spots for place in places)


def spread(mutants: Iterable[Mutant], count: int) -> list[Mutant]:
    """Return a few mutants from all over a file."""
    every = list(mutants)
    step = max(1, len(every) // count)
    return list(islice(every[::step], count))


@pytest.mark.parametrize("rule", MUTATORS)
def test_every_mutant_is_caught_on_its_line(rule: str, trees: list[Sound]) -> None:
    """No mistake in a good tree gets through."""
    mutants = [
        (sound, mutant) for sound in trees for mutant in spread(MUTATORS[rule](sound), A_TREE)
    ]
    missed = [
        (sound.tree.id, sorted(mutant.lines))
        for sound, mutant in mutants
        if not caught(judged(sound, mutant.text, rule), mutant, sound.tree.file, rule)
    ]
    assert missed == []
    assert mutants, "no tree can be broken this way"


@pytest.mark.parametrize("rule", OF_STATES)
def test_every_mutant_of_a_tree_with_states_is_caught_on_its_line(
    rule: str, trees_with_states: list[Sound]
) -> None:
    """No mistake in what a step needs gets through."""
    broken = OF_STATES[rule]
    mutants = [(one, bad) for one in trees_with_states for bad in spread(broken(one), A_TREE)]
    missed = [
        (sound.tree.id, sorted(mutant.lines))
        for sound, mutant in mutants
        if not caught(judged(sound, mutant.text, rule), mutant, sound.tree.file, rule)
    ]
    assert missed == []
    assert len(mutants) > AN_ARTICLE


def test_a_state_that_can_never_be_entered_is_caught(trees_with_states: list[Sound]) -> None:
    """A slip in the conditions shows at the steps that need the state."""
    mutants = [one for sound in trees_with_states for one in needs.never_changed(sound)]
    missed = [
        (sound.tree.id, sorted(mutant.lines))
        for sound, mutant in mutants
        if not caught(judge(sound.tree, sound.library), mutant, sound.tree.file, "impossible-state")
    ]
    assert missed == []
    assert len(mutants) > AN_ARTICLE


@pytest.mark.parametrize("rule", OF_ARTICLES)
def test_every_mutant_of_an_article_is_caught_on_its_line(
    rule: str, articles: list[SoundArticle]
) -> None:
    """No mistake in a good article gets through."""
    broken = OF_ARTICLES[rule]
    mutants = [(one, bad) for one in articles for bad in spread(broken(one), AN_ARTICLE)]
    missed = [
        (sound.article.id, sorted(mutant.lines))
        for sound, mutant in mutants
        if not caught(judged_article(sound, mutant.text, rule), mutant, sound.article.file, rule)
    ]
    assert missed == []
    assert mutants, "no article can be broken this way"


@pytest.mark.parametrize("rule", OF_CONDITIONS)
def test_every_mutant_of_the_conditions_is_caught_on_its_line(rule: str, tmp_path: Path) -> None:
    """No mistake in good conditions gets through."""
    shop = shutil.copytree(SHOP, tmp_path / "shop")
    library, _ = read_library(shop)
    file = shop / CONDITIONS
    sound = SoundConditions(CONDITIONS, tuple(library.conditions.values()), file.read_text("utf-8"))
    mutants = [*OF_CONDITIONS[rule](sound)]
    missed = []
    for mutant in mutants:
        file.write_text(mutant.text, "utf-8")
        read, findings = read_knowledge(shop)
        conditions = replace(library, conditions=read.conditions)
        found = [*findings, *judge_library(conditions, TODAY)]
        if not caught(found, mutant, CONDITIONS, rule):
            missed.append((sorted(mutant.lines), mutant.text))
    assert missed == []
    assert len(mutants) > AN_ARTICLE


@pytest.fixture(scope="module")
def running() -> list[Sound]:
    """Return the ready trees of the samples that run procedures."""
    library, _ = read_library(SAMPLES)
    sound = []
    for path in tree_files(SAMPLES):
        source = Source(path.relative_to(SAMPLES).as_posix(), path.read_text("utf-8"), "")
        tree, _ = tree_from(source)
        if tree and tree.status == "ready" and library.listings[tree.id].procedures:
            sound.append(Sound(tree, source.text, library))
    return sound


@pytest.mark.parametrize("rule", OF_RUNS)
def test_every_mutant_of_a_step_that_runs_is_caught(rule: str, running: list[Sound]) -> None:
    """A step says all that its procedure needs, and knows all that it returns."""
    mutants = [(one, bad) for one in running for bad in spread(OF_RUNS[rule](one), A_TREE)]
    missed = [
        (sound.tree.id, sorted(mutant.lines))
        for sound, mutant in mutants
        if not caught(judged(sound, mutant.text, rule), mutant, sound.tree.file, rule)
    ]
    assert missed == []
    assert len(mutants) > AN_ARTICLE


@pytest.mark.parametrize("rule", OF_PROCEDURES)
def test_every_mutant_of_a_procedure_is_caught(rule: str) -> None:
    """A slip in a procedure is found where it is, not in the trees that run it."""
    library, _ = read_library(SAMPLES)
    missed, count = [], 0
    for procedure in library.procedures.values():
        file = procedure.tree.file
        sound = SoundProcedure(procedure, (SAMPLES / file).read_text("utf-8"))
        for mutant in spread(OF_PROCEDURES[rule](sound), AN_ARTICLE):
            count += 1
            read, findings = procedure_from(Source(file, mutant.text, ""))
            assert read is not None
            known = replace(library, procedures={**library.procedures, read.name: read})
            found = [*findings, *judge_library(with_procedure_runs(known), TODAY)]
            if not caught(found, mutant, file, rule):
                missed.append((file, sorted(mutant.lines), mutant.text))
    assert missed == []
    assert count > 1


def test_every_mutator_breaks_a_rule() -> None:
    """A mutator is listed under the name of a rule in the catalog."""
    names = {rule.RULE.name for rule in RULES}
    known = {*MUTATORS, *OF_ARTICLES, *OF_CONDITIONS, *OF_RUNS, *OF_PROCEDURES, *OF_STATES}
    assert known <= names


def test_no_tree_has_a_finding_to_begin_with(trees: list[Sound]) -> None:
    """A mutant is caught for its change, not for an earlier mistake."""
    for sound in trees:
        assert judge(sound.tree, sound.library) == (), sound.tree.id
