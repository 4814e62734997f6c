"""Mutators for the rules of words: slang, abbreviations, long words, missing characters.

In: a sound tree. Out: mutants of it.
"""

from collections.abc import Iterator

from builder.model.checks import Check
from builder.model.ends import Fix
from builder.model.text import Text

from .sound import Mutant, Sound


def slang_written(sound: Sound) -> Iterator[Mutant]:
    """Write slang."""
    for step in sound.steps:
        if sound.is_written(step.text):
            yield sound.replaced(step.text.at, "Reflash it")


def abbreviated(sound: Sound) -> Iterator[Mutant]:
    """Use an abbreviation that the glossary doesn't explain."""
    for step in sound.steps:
        if sound.is_written(step.text):
            yield sound.replaced(step.text.at, f"{step.text[:40]} XQZ")


def spaces_lost(sound: Sound) -> Iterator[Mutant]:
    """Write a word that is wider than its box on the chart."""
    conditions = {words for step in sound.steps for words in step.when}  # these have a blank
    for text in (sound.tree.title, *_on_the_chart(sound)):
        if sound.is_written(text):
            blank = "at " if text in conditions else ""
            yield sound.replaced(text.at, f"{blank}Steeringcolumnlockrelaysocket")


def emoji_typed(sound: Sound) -> Iterator[Mutant]:
    """Write an emoji."""
    for text in _printed(sound):
        if sound.is_written(text):
            yield sound.replaced(text.at, f"{text[:30]} 💡")


def _on_the_chart(sound: Sound) -> Iterator[Text]:
    for step in sound.steps:
        yield step.text
        yield from step.when
    for _, check in sound.checks:
        for result in check.results:
            yield from [result.text] if not result.ranges and not check.figure else []
            yield from [result.means] if result.means else []


def _printed(sound: Sound) -> Iterator[Text]:
    tree = sound.tree
    yield from (tree.title, *tree.symptom.words[:5])
    yield from (words for asked in tree.asks for words in (asked.ask, *asked.one_of))
    yield from _on_the_chart(sound)
    for step in sound.steps:
        yield from step.write_down
        yield from filter(None, (step.note, step.put_back, step.picture and step.picture.shows))
        if isinstance(step.body, Check) and step.body.figure:
            yield step.body.figure.look_up
        elif isinstance(step.body, Fix):
            yield from _of_fix(step.body)


def _of_fix(fix: Fix) -> Iterator[Text]:
    yield from (fix.cause, *(one.text for one in fix.verify), *(part.part for part in fix.parts))
    yield from [fix.tell] if fix.tell else []
    for option in fix.options:
        yield option.option
        yield from filter(None, (option.note, option.not_offered))
        yield from (part.part for part in option.parts)
