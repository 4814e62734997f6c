"""Ways to break the rules of procedures: slips in sound procedures, and in the trees that run them.

In: a procedure with its text, and a tree as `Sound`. Out: mutants of them.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import pairwise
from json import dumps

from builder.graph.routes import exits
from builder.graph.runs import procedure_of
from builder.model.checks import Check
from builder.model.procedures import Procedure
from builder.model.text import Position, Text
from builder.model.tree import Step

from .sound import Mutant, Sound, edited

TOO_MANY = "\n".join(
    f"  more-{n}:\n    check: Is bolt {n} tight?\n    results:\n"
    f"      - {{result: yes, branch: more-{n + 1}}}\n      - {{result: no, branch: more-{n + 1}}}"
    for n in range(1, 10)
)


@dataclass(frozen=True)
class SoundProcedure:
    """A sound procedure with its text."""

    procedure: Procedure
    text: str

    def replaced(self, at: Position, new: str, *also: int) -> Mutant:
        """Replace part of a line."""
        return Mutant(edited(self.text, at, new), frozenset({at.line, *also}))


ProcedureMutator = Callable[[SoundProcedure], Iterator[Mutant]]


def runs(sound: Sound) -> Iterator[tuple[Step, Check, Text]]:
    """Yield the steps of a tree that run a procedure."""
    for step in sound.steps:
        if procedure_of(step, sound.library.procedures):
            assert isinstance(step.body, Check)
            assert step.body.by
            yield step, step.body, step.body.by


def by_misspelled(sound: Sound) -> Iterator[Mutant]:
    """Run a procedure that isn't there."""
    for _, _, by in runs(sound):
        yield sound.replaced(by.at, f"{by}zz")


def word_misspelled(sound: Sound) -> Iterator[Mutant]:
    """Write a result that the procedure never returns, in the place of one that it does."""
    for _, check, by in runs(sound):
        for result in check.results:
            if sound.is_written(result.text):
                yield sound.replaced(result.text.at, f"{result.text}zz", by.at.line)


def words_replaced(sound: Sound) -> Iterator[Mutant]:
    """Write two results that no words of the procedure are like, so that two of them have none."""
    for _, check, by in runs(sound):
        for result, other in pairwise(check.results):
            if sound.is_written(result.text) and sound.is_written(other.text):
                later = sound.again(sound.replaced(other.text.at, "wwwwwww"))
                yield later.replaced(result.text.at, "qqqqqqq", by.at.line)


def value_left_out_or_wrong(sound: Sound) -> Iterator[Mutant]:
    """Hand over nothing, or something of no kind that is taken."""
    for step, check, by in runs(sound):
        if check.with_:
            yield sound.without(next(iter(check.with_.values())).at, "with", by.at.line)
        procedure = procedure_of(step, sound.library.procedures)
        kinds = {str(one.name): one.kind for one in procedure.tree.asks} if procedure else {}
        for name, value in check.with_.items():
            if kinds.get(str(name)) != "text":
                yield sound.replaced(value.at, f"{value}zz")


def returned_word_misspelled(sound: SoundProcedure) -> Iterator[Mutant]:
    """Return a word that isn't listed."""
    for step in sound.procedure.tree.steps.values():
        for exit_ in exits(step):
            word = exit_.branch.text
            if exit_.branch.returns and word in sound.text.split("\n")[word.at.line - 1]:
                yield sound.replaced(word.at, f"{word}zz")


def word_added(sound: SoundProcedure) -> Iterator[Mutant]:
    """List a word that no step returns."""
    word = sound.procedure.returns[-1]
    yield sound.replaced(word.at, f"{word}, lost")


def part_misspelled(sound: SoundProcedure) -> Iterator[Mutant]:
    """Keep the procedure off a part that isn't there."""
    for part in sound.procedure.never_on:
        yield sound.replaced(part.at, f"{part}zz")


def value_forgotten(sound: SoundProcedure) -> Iterator[Mutant]:
    """Use no longer what is taken."""
    for taken in sound.procedure.tree.asks:
        lines = sound.text.split("\n")
        kept = [line.replace(f"<{taken.name}>", "x") for line in lines]
        yield Mutant("\n".join(kept), frozenset({taken.name.at.line}))


def run_by_itself(sound: SoundProcedure) -> Iterator[Mutant]:
    """Let the procedure run itself."""
    words = (dumps(str(word)) for word in sound.procedure.returns)
    results = "".join(f"      - {{result: {word}, return: {word}}}\n" for word in words)
    handed = ", ".join(f"{one.name}: <{one.name}>" for one in sound.procedure.tree.asks)
    head = f"{sound.text.rstrip()}\n  again:\n    check: Is it still so?\n"
    by = f"    by: {sound.procedure.name}\n" + (f"    with: {{{handed}}}\n" if handed else "")
    yield Mutant(f"{head}{by}    results:\n{results}", frozenset({head.count("\n") + 1}))


def steps_added(sound: SoundProcedure) -> Iterator[Mutant]:
    """Write more steps than anyone keeps in mind."""
    end = f"  more-10:\n    return: {sound.procedure.returns[0]!s}"
    text = f"{sound.text.rstrip()}\n{TOO_MANY}\n{end}\n"
    before = text[: text.index("\nsteps:")].count("\n") + 2
    steps = [
        number
        for number, line in enumerate(text.split("\n"), 1)
        if number > before and line.startswith("  ") and line[2] != " "
    ]
    yield Mutant(text, frozenset({steps[9]}))
