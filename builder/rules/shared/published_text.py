"""The text that a reader of the site and the prints sees.

In: a `Tree`, an article, the knowledge. Out: texts one by one, and the position of a word in one of
them. What customers say (`symptom: words`) is theirs and not included.
"""

from collections.abc import Iterable, Iterator

from builder.model.checks import Check
from builder.model.ends import Fix, Stop
from builder.model.knowledge import HowTo
from builder.model.library import Library
from builder.model.text import Position, Text
from builder.model.tree import Step, Tree


def texts_of(tree: Tree, steps: Iterable[Step]) -> Iterator[Text]:
    """Yield every published text of a tree, in the order of the file."""
    yield from filter(None, (tree.title, tree.why))
    yield from (text for question in tree.asks for text in (question.ask, *question.one_of))
    for step in steps:
        yield from _of_step(step)


def _of_step(step: Step) -> Iterator[Text]:
    yield step.text
    yield from filter(None, (step.note, step.put_back, step.picture and step.picture.shows))
    yield from step.when
    yield from step.do
    if step.where and step.where.phrase:
        yield step.where.phrase
    yield from step.write_down
    if isinstance(step.body, Check):
        yield from _of_check(step.body)
    elif isinstance(step.body, Fix):
        yield from _of_fix(step.body)
    elif isinstance(step.body, Stop) and step.body.why:
        yield step.body.why


def _of_check(check: Check) -> Iterator[Text]:
    if check.figure:
        yield from filter(None, (check.figure.look_up, check.figure.origin))
    for reading in check.readings:
        yield from (*reading.one_of, *filter(None, (reading.origin,)))
    for result in check.results:
        if not result.ranges:
            yield result.text
        if result.means:
            yield result.means


def _of_fix(fix: Fix) -> Iterator[Text]:
    yield fix.cause
    yield from filter(None, (fix.why,))
    yield from (one.text for one in fix.verify if not one.is_named)
    yield from (part.part for part in fix.parts)
    if fix.tell:
        yield fix.tell
    for option in fix.options:
        yield from filter(None, (option.option, option.note, option.only_if, option.not_offered))
        yield from (part.part for part in option.parts)


def texts_of_article(article: HowTo) -> Iterator[Text]:
    """Yield the title and purpose of an article, and its body line by line."""
    yield article.title
    yield article.purpose
    for number, line in enumerate(article.body.split("\n"), article.body_line):
        yield Text(line, Position(article.file, number, 1, number, len(line) + 1))


def texts_of_knowledge(library: Library) -> Iterator[Text]:
    """Yield the published text of module records, hazards, conditions and codes."""
    for condition in library.conditions.values():
        yield from (*filter(None, (condition.text,)), *condition.enter, *condition.undo)
    for hazard in library.hazards.values():
        yield from (hazard.hazard, hazard.harm, hazard.avoid)
    for module in library.modules.values():
        notes = (module.released_by, module.drive_why, module.network, module.if_it_fails)
        yield from filter(None, notes)
        yield from module.write_down
        yield from module.fit.do if module.fit else ()
    yield from (code.short for code in library.codes.values())


def position_in(text: Text, start: int, length: int) -> Position:
    """Return the position of part of a text; of the whole where it is quoted or spans lines."""
    file, line, column, end_line, end_column = text.at
    if end_line != line or end_column - column != len(text):
        return text.at
    return Position(file, line, column + start, line, column + start + length)
