"""A step runs a procedure and `with` doesn't fit what the procedure takes: a value is missing,
isn't taken, or is of another kind.

Why: The procedure says `<part>` where the tech must know which connector to unplug.

Wrong:

    # kb/procedures/feed-proof.yml
    title: Is the feed good under load?
    takes:
      part: {is: part}
      load: {is: current}
    returns: [good, bad]
    steps:
      bulb:
        check: Is the feed of the <part> good at <load>?
        results:
          - {result: yes, return: good}
          - {result: no, return: bad}
    # trees/charging/case.yml
    steps:
      feed:
        check: Is the feed good at the radio?
        by: feed-proof
        with: {part: raido}
        results:
          - {result: good, branch: all-good}
          - {result: bad, branch: repair}

Right:

    # kb/procedures/feed-proof.yml
    title: Is the feed good under load?
    takes:
      part: {is: part}
      load: {is: current}
    returns: [good, bad]
    steps:
      bulb:
        check: Is the feed of the <part> good at <load>?
        results:
          - {result: yes, return: good}
          - {result: no, return: bad}
    # trees/charging/case.yml
    steps:
      feed:
        check: Is the feed good at the radio?
        by: feed-proof
        with: {part: radio, load: 9 A}
        results:
          - {result: good, branch: all-good}
          - {result: bad, branch: repair}

Fix: Give every value in `takes` that has no `else`, as what `is` says: a part or a module of the
shop, a current such as `9 A`, a spec. A value that the tree asks for is written `<name>`.
"""

import re
from collections.abc import Collection, Iterable, Iterator, Mapping

from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.model.text import Text
from builder.model.tree import Question, Tree, ValueKind
from builder.rules.shared.close_names import suggestion
from builder.rules.shared.part_hint import is_part, part_hint
from builder.rules.shared.part_in_question import odd_parts
from builder.rules.shared.procedure_steps import VALUE, Running, steps_that_run
from builder.rules.shared.published_text import position_in, texts_of
from builder.rules.shared.rule import Facts, Family, Rule, as_warning

RULE = Rule(
    name="procedure-values",
    family=Family.PROCEDURES,
    severity=Severity.ERROR,
    summary="`with` doesn't fit what the procedure takes.",
)
WHY = "the tech is told `<{name}>` instead of what to use"
CURRENT = re.compile(r"[0-9]+(\.[0-9]+)? m?A")
FITS = {  # a value of the first kind may also come from a question of these
    ValueKind.PART: {ValueKind.PART, ValueKind.MODULE},
    ValueKind.TEXT: set(ValueKind),
}
KIND = {
    ValueKind.PART: ("a part", "add it to kb/parts.yml, or use a part or module from there"),
    ValueKind.MODULE: ("a module", "add its record to kb/modules/, or use one from there"),
    ValueKind.SPEC: ("a spec", "add it to kb/specs.yml, or use one from there"),
    ValueKind.CURRENT: ("a current", "write it like `2 A`"),
}


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every value that is missing, not taken, or of another kind."""
    yield from _never_given(facts)
    for one in facts.tree.asks if facts.tree.is_procedure else ():
        if one.default:
            yield from _of_kind(facts, one, one.default)
    for running in steps_that_run(facts):
        taken = {str(one.name): one for one in running.procedure.tree.asks}
        if other := _other_name(running, taken):
            yield other
            continue
        yield from _missing(running, taken.values())
        for name, value in running.check.with_.items():
            if name not in taken and _uses(running.procedure.tree, name):
                continue  # reported where the procedure uses it
            if name not in taken:
                hint = suggestion(
                    name, taken, "leave it out, or add it to `takes` of the procedure"
                )
                message = f"`{running.by}` takes no `{name}`"
                yield RULE.finding(value.at, message, "what it says is lost", hint)
            else:
                yield from _of_kind(facts, taken[str(name)], value)
        yield from _of_another(facts.library, running, taken)
        for odd in odd_parts(facts.library, running):
            yield as_warning(RULE.finding(odd.value.at, odd.message,
                                          "the tech tests a part that isn't in question", odd.hint,
                                          ))  # fmt: skip


def _never_given(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every state that names a value which nothing gives; also for every text.

    What a fix quotes is a reading, and another rule judges it.
    """
    given = {str(one.name) for one in facts.tree.asks}
    given |= {str(step.each[0]) for step in facts.tree.steps.values() if step.each}
    for step in facts.steps:
        for need in step.needs:
            if need.value is not None and (asked := VALUE.fullmatch(need.value)):
                yield from _unknown(facts, need.value, asked, given)
    for text in facts.texts if facts.tree.is_procedure else ():
        for match in VALUE.finditer(text) if "<" in text else ():
            yield from _unknown(facts, text, match, given)


def _unknown(
    facts: Facts, text: Text, match: re.Match[str], given: Collection[str]
) -> Iterator[Finding]:
    name = match[1]
    if name in given:
        return
    where = "takes" if facts.tree.is_procedure else "asks"
    hint = suggestion(name, given, f"add `{name}` to `{where}`, or write `<...>` with a name there")
    yield RULE.finding(position_in(text, match.start(), len(match[0])),
                       f"nothing gives a value for `{match[0]}`", WHY.format(name=name), hint,
                       )  # fmt: skip


def _other_name(running: Running, taken: Mapping[str, Question]) -> Finding | None:
    """Return the finding for the one value that isn't taken, where the one that is isn't given."""
    given = running.check.with_
    unknown = [name for name in given if name not in taken]
    missing = [str(name) for name, one in taken.items() if not one.default and name not in given]
    if not len(unknown) == len(missing) == 1:
        return None
    return RULE.finding(given[unknown[0]].at, f"`{running.by}` takes no `{unknown[0]}`",
                        WHY.format(name=missing[0]),
                        f"write `{missing[0]}` instead: that is what it takes")  # fmt: skip


def _uses(procedure: Tree, name: str) -> bool:
    steps = procedure.steps.values()
    needs = (need.value or "" for step in steps for need in step.needs)
    return any(f"<{name}>" in text for text in (*texts_of(procedure, tuple(steps)), *needs))


def _missing(running: Running, taken: Iterable[Question]) -> Iterator[Finding]:
    for one in taken:
        if one.default is None and one.name not in running.check.with_:
            kind = KIND.get(one.kind, ("text", ""))[0]
            yield RULE.finding(
                running.by.at,
                f"`{running.by}` takes `{one.name}` ({kind}), and step `{running.step.id}` gives "
                "none",
                WHY.format(name=one.name),
                f"add `{one.name}:` to `with`",
            )


def _of_kind(facts: Facts, taken: Question, value: Text) -> Iterator[Finding]:
    if asked := VALUE.fullmatch(value):
        yield from _asked(facts, taken, value, asked[1])
    elif taken.kind in KIND and not _is_of_kind(facts.library, taken.kind, value):
        message = f"`{value}` isn't {KIND[taken.kind][0]}, and `{taken.name}` takes one"
        hint = _hint(facts.library, taken.kind, value)
        if taken.kind is ValueKind.CURRENT and (number := re.match(r"[0-9]+(?:\.[0-9]+)?", value)):
            hint = f"write `{number[0]} A`, if that is the current"
        why = f"the tech is told `{value}` there, and can't do it"
        yield RULE.finding(value.at, message, why, hint)


def _of_another(
    library: Library, running: Running, taken: Mapping[str, Question]
) -> Iterator[Finding]:
    """Yield a finding for the first spec whose name says that it belongs to another value."""
    with_ = running.check.with_
    names = [name for name, one in taken.items() if one.kind is ValueKind.SPEC]
    specs = {name: with_[name] for name in names if name in with_}
    for name, value in specs.items():
        words = value.split("-") if value in library.specs and name not in value.split("-") else ()
        for other in (one for one in names if one in words):
            there, meant = specs.get(other), value.replace(other, name)
            hint = f"did you mean `{meant}`?" if meant in library.specs else f"correct `{name}`"
            if there and name in there.split("-"):
                hint = f"the two are swapped: write `{name}: {there}, {other}: {value}`"
            message = f"`{value}` looks like the spec for `{other}`, and `{name}` gets it"
            yield RULE.finding(
                value.at, message, "every reading is held against a wrong limit", hint
            )
            return


def _asked(facts: Facts, taken: Question, value: Text, name: str) -> Iterator[Finding]:
    """Yield a finding for a value that the tree never asks for, or asks for as another kind."""
    asks = {str(one.name): one for one in facts.tree.asks}
    items = {str(step.each[0]) for step in facts.steps if step.each}
    if name in items:
        return
    if name not in asks:
        where = "takes" if facts.tree.is_procedure else "asks"
        hint = suggestion(name, asks, f"add `{name}` to `{where}`")
        message = f"nothing gives a value for `{value}`"
        yield RULE.finding(value.at, message, WHY.format(name=taken.name), hint)
    elif asks[name].kind not in FITS.get(taken.kind, {taken.kind}):
        kind = KIND[taken.kind][0]
        message = f"`{value}` may not be {kind}, and `{taken.name}` takes one"
        hint = f"add `is: {taken.kind}` to `{name}`"
        yield RULE.finding(value.at, message, WHY.format(name=taken.name), hint)


def _is_of_kind(library: Library, kind: ValueKind, value: Text) -> bool:
    match kind:
        case ValueKind.PART:
            return is_part(value, library)
        case ValueKind.CURRENT:
            return CURRENT.fullmatch(value) is not None
        case _:
            return value in _known(library, kind)


def _known(library: Library, kind: ValueKind) -> Iterable[str]:
    return {ValueKind.MODULE: library.modules, ValueKind.SPEC: library.specs}.get(kind, ())


def _hint(library: Library, kind: ValueKind, value: Text) -> str:
    if kind is ValueKind.PART:
        return part_hint(value, library)
    return suggestion(value, _known(library, kind), KIND[kind][1])
