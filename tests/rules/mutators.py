"""One way to break each rule: a sound tree in, broken ones out.

A mutator edits the text of a tree where a position says, so that the tree is wrong by its rule and
by nothing else that matters to it. `Mutant.lines` are the lines on which the finding may stand: the
changed one, or where the fault lies between two lines, both.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from decimal import Decimal

from builder.model.library import Library
from builder.model.ranges import BOTTOM, TOP
from builder.model.routes import Way, exits
from builder.model.text import Position
from builder.model.tree import Action, Check, Fix, Result, Step, Tree
from builder.trade.units import same_kind


@dataclass(frozen=True)
class Mutant:
    """A broken text and where its fault lies."""

    text: str
    lines: frozenset[int]


@dataclass(frozen=True)
class Sound:
    """A sound tree with its text, and what is known beside it."""

    tree: Tree
    text: str
    library: Library

    def replaced(self, at: Position, new: str, *also: int) -> Mutant:
        """Write something else at a place of one line."""
        assert at.line == at.end_line
        lines = self.text.split("\n")
        line = lines[at.line - 1]
        lines[at.line - 1] = line[: at.column - 1] + new + line[at.end_column - 1 :]
        return Mutant("\n".join(lines), frozenset({at.line, *also}))

    def without(self, at: Position, key: str, *also: int) -> Mutant:
        """Take a key with all that stands under it out of a step."""
        lines = self.text.split("\n")
        first = next(
            n
            for n in range(at.line - 1, -1, -1)
            if lines[n].strip().removeprefix("- ").startswith(f"{key}:")
        )
        depth = len(lines[first]) - len(lines[first].lstrip())
        last = first + 1
        while last < len(lines) and (
            not lines[last].strip() or len(lines[last]) - len(lines[last].lstrip()) > depth
        ):
            last += 1
        kept = [*lines[:first], *("" for _ in range(first, last)), *lines[last:]]
        return Mutant("\n".join(kept), frozenset({first + 1, *also}))

    @property
    def checks(self) -> Iterator[tuple[Step, Check]]:
        """The checks of the tree."""
        for step in self.tree.steps.values():
            if isinstance(step.body, Check):
                yield step, step.body

    @property
    def fixes(self) -> Iterator[tuple[Step, Fix]]:
        """The fixes of the tree."""
        for step in self.tree.steps.values():
            if isinstance(step.body, Fix):
                yield step, step.body


Mutator = Callable[[Sound], Iterator[Mutant]]


def _written(sound: Sound, at: Position) -> str:
    line = sound.text.split("\n")[at.line - 1]
    return line[at.column - 1 : at.end_column - 1]


def _single(sound: Sound) -> Iterator[tuple[Check, int, Result]]:
    """Yield the results of single readings whose upper end is the lower end of the next."""
    for _, check in sound.checks:
        if len(check.readings) == 1 and not check.computed and not check.readings[0].name:
            for result in check.results:
                side = result.ranges[""]
                above = [one for one in check.results if one.ranges[""].low == side.high]
                if side.high not in (TOP, BOTTOM) and above and side.high.value.is_finite():
                    yield check, above[0].said.at.line, result


def limit_shifted(sound: Sound) -> Iterator[Mutant]:
    """Pull the upper end of a range down by ten steps of the reading, so that a gap opens."""
    for check, neighbour, result in _single(sound):
        yield from _moved(sound, check, neighbour, result, -10)


def limit_pushed(sound: Sound) -> Iterator[Mutant]:
    """Push the upper end of a range up by ten steps, into the next range."""
    for check, neighbour, result in _single(sound):
        yield from _moved(sound, check, neighbour, result, +10)


def _moved(
    sound: Sound, check: Check, neighbour: int, result: Result, steps: int
) -> Iterator[Mutant]:
    side, fine = result.ranges[""], check.readings[0].resolution or Decimal("0.1")
    end = side.high.value + steps * fine
    if end > max(side.low.value, check.readings[0].low) and end < check.readings[0].high:
        head, _, _ = result.said.rpartition(" ")
        yield sound.replaced(result.said.at, f"{head} {end:f}", neighbour)


def ends_swapped(sound: Sound) -> Iterator[Mutant]:
    """Write the ends of a range in the wrong order."""
    for _, check in sound.checks:
        for result in check.results:
            low, to, high = result.said.partition(" to ")
            if to and "" in result.ranges and " " not in low + high:
                yield sound.replaced(result.said.at, f"{high} to {low}")


def branch_to_nowhere(sound: Sound) -> Iterator[Mutant]:
    """Let a branch lead to a step that is not there."""
    for step in sound.tree.steps.values():
        for way in exits(step):
            if way.branch.step and not way.branch.tree:
                yield sound.replaced(way.at, f"{way.branch.text}-zz")


def node_orphaned(sound: Sound) -> Iterator[Mutant]:
    """Turn the only branch that leads to a step away from it."""
    ways = [(step, way) for step in sound.tree.steps.values() for way in exits(step)]
    entered = {step for _, step in sound.library.callers.get(sound.tree.id, ())}
    for target in list(sound.tree.steps.values())[1:]:
        leading = [way for _, way in ways if way.branch.step == target.id and not way.branch.tree]
        if len(leading) == 1 and target.id not in entered:
            others = (one for one in sound.tree.steps if one != target.id)
            yield sound.replaced(leading[0].at, next(others), target.id.at.line)


def no_way_on(sound: Sound) -> Iterator[Mutant]:
    """Take `then` out of an action."""
    for step in sound.tree.steps.values():
        if isinstance(step.body, Action) and step.body.then:
            yield sound.without(step.body.then.text.at, "then", step.id.at.line)


def hand_over_to_nothing(sound: Sound) -> Iterator[Mutant]:
    """Hand over to a tree that is not there."""
    for step in sound.tree.steps.values():
        for way in exits(step):
            if way.branch.tree:
                yield sound.replaced(way.at, f"{way.branch.tree}-zz")


def one_way(sound: Sound) -> Iterator[Mutant]:
    """Let every result of a check lead where its first leads."""
    for _, check in sound.checks:
        first = check.results[0].branch.text
        mutant = sound
        for result in check.results[1:]:
            text = mutant.replaced(result.branch.text.at, first).text
            mutant = Sound(sound.tree, text, sound.library)
        yield Mutant(mutant.text, frozenset(r.branch.text.at.line for r in check.results))


def phrase_repeated(sound: Sound) -> Iterator[Mutant]:
    """Write the first phrase of a check once more, in capitals."""
    for _, check in sound.checks:
        first, *others = check.results
        if not first.ranges and not check.figure and others and not others[0].ranges:
            yield sound.replaced(others[0].said.at, f'"{first.said.upper()}"')


def bound_removed(sound: Sound) -> Iterator[Mutant]:
    """Take the only bound out of a step that leads back to itself through one other step."""
    for step in sound.tree.steps.values():
        if not step.at_most or step.spent:
            continue
        for way in exits(step):
            there = sound.tree.steps.get(way.branch.step or "")
            if there is None or there.at_most or way.way in (Way.SPENT, Way.STILL_THERE):
                continue
            back = [one for one in exits(there) if one.branch.step == step.id]
            if any(one.way is not Way.STILL_THERE for one in back):
                around = {one.at.line for one in (*back, *exits(step))}
                yield sound.without(step.at_most.at, "at_most", *around)
                break


def unit_of_another_kind(sound: Sound) -> Iterator[Mutant]:
    """Give a reading a unit that none of the step's tools reads."""
    for step, check in sound.checks:
        tools = [sound.library.tools.get(name) for name in step.tools]
        if not tools or any(tool is None or not tool.reads for tool in tools):
            continue
        reads = [one.unit for tool in tools if tool for one in tool.reads]
        for reading in check.readings:
            other = next(
                unit
                for unit in ("g/s", "lb-ft", "CCA")
                if not any(same_kind(unit, read) for read in reads)
            )
            if not reading.one_of and not check.computed:
                yield sound.replaced(reading.unit.at, other)


def unit_misspelt(sound: Sound) -> Iterator[Mutant]:
    """Write a unit that does not exist."""
    for _, check in sound.checks:
        for reading in check.readings:
            if not reading.one_of:
                yield sound.replaced(reading.unit.at, f'"{reading.unit}zz"')


def origin_removed(sound: Sound) -> Iterator[Mutant]:
    """Take the origin out of a reading with limits."""
    for _, check in sound.checks:
        for reading in check.readings:
            limited = any(reading.name in result.ranges for result in check.results)
            if reading.origin and limited and not reading.one_of:
                if reading.origin.at.line == reading.at.line:  # in braces, on one line
                    line = sound.text.split("\n")[reading.origin.at.line - 1]
                    start = line.rindex(", origin:", 0, reading.origin.at.column)
                    at = reading.origin.at._replace(column=start + 1)
                    yield sound.replaced(at, "", reading.at.line)
                else:
                    yield sound.without(reading.origin.at, "origin", reading.at.line)


def condition_removed(sound: Sound) -> Iterator[Mutant]:
    """Take the conditions out of a check with limits."""
    for step, check in sound.checks:
        numbers = any(not one.one_of for one in check.readings)
        if step.when and numbers and not step.same_as:
            yield sound.without(step.when[0].at, "when", step.text.at.line)


def power_left_on(sound: Sound) -> Iterator[Mutant]:
    """Let a resistance be measured with nothing said but the key off."""
    for step, check in sound.checks:
        ohms = any(same_kind(one.unit, "ohm") for one in check.readings if not one.one_of)
        if (
            ohms
            and step.when
            and not step.same_as
            and step.when[0].at.line == step.when[-1].at.line
        ):
            at = step.when[0].at._replace(end_column=step.when[-1].at.end_column)
            yield sound.replaced(at, "key off", step.text.at.line)


def _names(rule_of: Callable[[Step], tuple[Position, str] | None]) -> Mutator:
    def misspelt(sound: Sound) -> Iterator[Mutant]:
        for step in sound.tree.steps.values():
            found = rule_of(step)
            if found:
                at, name = found
                yield sound.replaced(at, f"{name}zz")

    return misspelt


def lamp_misspelt(sound: Sound) -> Iterator[Mutant]:
    """Write a lamp that does not exist."""
    for lamp in sound.tree.symptom.lamps:
        yield sound.replaced(lamp.at, f"{lamp}zz")


def look_alike(sound: Sound) -> Iterator[Mutant]:
    """Write the letter O for the figure 0 in a code."""
    for code in sound.tree.symptom.codes:
        if "0" in code:
            yield sound.replaced(code.at, code.replace("0", "O", 1))


def deed_removed(verb: str, *needing: str) -> Mutator:
    """Return a mutator that takes a deed out of the only step that does it."""

    def removed(sound: Sound) -> Iterator[Mutant]:
        steps = sound.tree.steps.values()
        doing = [(step, deed) for step in steps for deed in step.does if deed.verb == verb]
        needs = {d.text.at.line for step in steps for d in step.does if d.verb in needing}
        if len(doing) == 1 and needs and not _undone(sound):
            step, deed = doing[0]
            if len(step.does) == 1:
                yield sound.without(deed.text.at, "does", *needs)
            else:
                yield sound.replaced(deed.text.at, "cycle-key", *needs)

    return removed


def _undone(sound: Sound) -> bool:
    """Whether other trees lead into the middle, where what they have done counts as well."""
    return any(step for _, step in sound.library.callers.get(sound.tree.id, ()))


def proof_removed(sound: Sound) -> Iterator[Mutant]:
    """Take the only proof of the ground out of a tree that replaces a module asking for it."""
    lines = {
        fix.replaces.module.at.line
        for _, fix in sound.fixes
        if fix.replaces and "ground" in sound.library.modules[fix.replaces.module].prove_first
    }
    doing = [
        (step, deed)
        for step in sound.tree.steps.values()
        for deed in step.does
        if deed.verb == "check-ground"
    ]
    if len(doing) == 1 and lines and not _undone(sound):
        step, deed = doing[0]
        if len(step.does) == 1:
            yield sound.without(deed.text.at, "does", *lines)
        else:
            yield sound.replaced(deed.text.at, "cycle-key", *lines)


def set_up_dropped(sound: Sound) -> Iterator[Mutant]:
    """Fit a module as if it were a mere part."""
    for _, fix in sound.fixes:
        if fix.replaces and not fix.parts and not fix.options:
            name = sound.library.modules[fix.replaces.module].name
            mutant = sound.without(fix.replaces.module.at, "replaces")
            (line,) = mutant.lines
            lines = mutant.text.split("\n")
            lines[line - 1] = f"    parts: [{{part: {name}}}]"
            yield Mutant("\n".join(lines), mutant.lines)


def used_for_new(sound: Sound) -> Iterator[Mutant]:
    """Fit a used part whose record refuses it."""
    for _, fix in sound.fixes:
        modules = sound.library.modules
        if fix.replaces and modules[fix.replaces.module].used_part == "no":
            yield sound.replaced(fix.replaces.part.at, "used")


def verification_removed(sound: Sound) -> Iterator[Mutant]:
    """Take the proof out of a fix."""
    for step, fix in sound.fixes:
        if fix.verify:
            yield sound.without(fix.verify[0].at, "verify", step.id.at.line)


def weight_removed(sound: Sound) -> Iterator[Mutant]:
    """Take the weight out of a fix."""
    for step, fix in sound.fixes:
        if fix.weight is not None:
            yield sound.without(fix.weight.at, "weight", step.id.at.line)


def review_aged(sound: Sound) -> Iterator[Mutant]:
    """Let the last review be long ago."""
    if sound.tree.reviewed:
        yield sound.replaced(sound.tree.reviewed.date.at, "2020-02-29")


def slang_written(sound: Sound) -> Iterator[Mutant]:
    """Say it as in the bay."""
    for step in sound.tree.steps.values():
        if _written(sound, step.text.at) == step.text:
            yield sound.replaced(step.text.at, "Reflash it")


def abbreviated(sound: Sound) -> Iterator[Mutant]:
    """Use letters that nobody has explained."""
    for step in sound.tree.steps.values():
        if _written(sound, step.text.at) == step.text:
            yield sound.replaced(step.text.at, f"{step.text[:40]} XQZ")


def key_misspelt(sound: Sound) -> Iterator[Mutant]:
    """Leave a letter out of a key of a step."""
    for number, line in enumerate(sound.text.split("\n"), 1):
        for key in ("minutes", "branch", "verify", "when", "tools"):
            if line.startswith((f"    {key}:", f"        {key}:")):
                start = line.index(key) + 1
                at = Position("", number, start, number, start + len(key))
                yield sound.replaced(at, key[:-2] + key[-1], number - 1, number - 2)


MUTATORS: dict[str, Mutator] = {
    "reading-gap": limit_shifted,
    "reading-overlap": limit_pushed,
    "reversed-range": ends_swapped,
    "branch-to-nowhere": branch_to_nowhere,
    "unreachable-step": node_orphaned,
    "dead-end": no_way_on,
    "no-such-tree": hand_over_to_nothing,
    "one-way-check": one_way,
    "same-phrase-twice": phrase_repeated,
    "unbounded-way-back": bound_removed,
    "mixed-units": unit_of_another_kind,
    "unknown-unit": unit_misspelt,
    "limit-without-origin": origin_removed,
    "limit-without-condition": condition_removed,
    "resistance-under-power": power_left_on,
    "no-such-article": _names(lambda step: (step.how_to.at, step.how_to) if step.how_to else None),
    "no-such-tool": _names(lambda step: (step.tools[0].at, step.tools[0]) if step.tools else None),
    "no-such-hazard": _names(
        lambda step: (step.hazards[0].at, step.hazards[0]) if step.hazards else None
    ),
    "no-such-lamp": lamp_misspelt,
    "malformed-code": look_alike,
    "codes-before-clearing": deed_removed("record-codes", "clear-codes", "disconnect-battery"),
    "supply-before-programming": deed_removed("hold-supply", "program", "configure", "initialise"),
    "prove-before-replacing": proof_removed,
    "missing-set-up": set_up_dropped,
    "used-part-refused": used_for_new,
    "no-verification": verification_removed,
    "no-weights": weight_removed,
    "review-too-old": review_aged,
    "slang": slang_written,
    "abbreviation": abbreviated,
    "unknown-key": key_misspelt,
}
