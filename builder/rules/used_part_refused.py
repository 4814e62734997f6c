"""A fix that installs or offers a used part where the module's record says that a used one can't be
set up. Where the record doesn't know, or a used part has to be released first, it's a warning.

Why: The used part stays locked to the vehicle it came from: the customer has paid for the part and
the labor for nothing.

Wrong:

    unit:
      fix: Install a used radio and set it up
      cause: The radio failed internally
      weight: 1
      replaces: {module: radio, part: used}
      verify: [all bands play]

Right:

    unit:
      fix: Install a new radio and set it up
      cause: The radio failed internally
      weight: 1
      replaces: {module: radio, part: new}
      verify: [all bands play]

Fix: Write `part: new`, in an option too. If a used part was set up and proved, correct the record.
"""

import re
from collections.abc import Iterator

from builder.model.ends import Fix, PartKind
from builder.model.finding import Finding, Severity
from builder.model.module_record import Module
from builder.model.text import Text
from builder.rules.shared.rule import Facts, Family, Rule, as_warning
from builder.wording.sentences import uncapitalized

SENTENCE = re.compile(r"[^.;!?]+")
USED = re.compile(
    r"\b(?:used|second-hand|secondhand|salvaged?|junkyard|donor)\s+"
    r"(?!to\b|with\b|by\b|for\b|in\b|on\b|as\b|up\b|at\b|and\b|when\b|until\b|the\b|a\b)\w",
    re.IGNORECASE,
)
OFFERING = re.compile(
    r"\b(?:install|fit|offer|supply|buy|order|get|find|put in|choose|save|cheaper|go with)",
    re.IGNORECASE,
)
REFUSING = re.compile(
    r"n't\b|\b(?:no|not|never|cannot|instead of|released?|releases)\b", re.IGNORECASE
)
RULE = Rule(
    name="used-part-refused",
    family=Family.SETUP,
    severity=Severity.ERROR,
    summary="A used part is installed that can't be set up.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every used part that its record rules out or doesn't know about."""
    for step in facts.steps:
        if isinstance(step.body, Fix) and step.body.replaces:
            replaces = step.body.replaces
            module = facts.library.modules.get(replaces.module)
            if module is None:
                continue
            for option in step.body.options:
                if option.part is PartKind.USED and not option.not_offered:
                    yield from _used(option.option, module)
            if replaces.part == "used":
                yield from _used(replaces.part, module)
            elif module.used_part in ("no", "if released"):
                yield from _offered(step.text, step.body, module)


def _offered(fix: Text, body: Fix, module: Module) -> Iterator[Finding]:
    """Yield a finding where the words of a fix offer what its record refuses."""
    options = (one.option for one in body.options if not one.not_offered and not one.part)
    for text in filter(None, (fix, body.tell, *options)):
        for sentence in SENTENCE.findall(text):
            offers = text is not body.tell or OFFERING.search(sentence)
            if offers and USED.search(sentence) and not REFUSING.search(sentence):
                yield _offer(text, sentence.strip(), module)
                break


def _offer(text: Text, sentence: str, module: Module) -> Finding:
    why = "the customer pays for a part that stays locked to the vehicle it came from"
    if module.used_part == "no":
        return RULE.finding(
            text.at, f"this offers a used part, but a used `{module.id}` can't be set up",
            why, f"write `new` instead of `used`, or correct `used_part` in {module.file}",
        )  # fmt: skip
    return as_warning(RULE.finding(
        text.at, f"this offers a used part; a used `{module.id}` has to be released first",
        why, f"say so in the same sentence: `{sentence}, {_condition(module)}`",
    ))  # fmt: skip


def _condition(module: Module) -> str:
    first = (module.released_by or "...").split(". ")[0]
    return f"but it has to be released first, by {uncapitalized(first)}"


def _used(at: Text, module: Module) -> Iterator[Finding]:
    why = "the customer pays for a part that stays locked to the vehicle it came from"
    if module.used_part == "no":
        message = f"a used `{module.id}` can't be set up, per its record"
        hint = f"write `part: new`, or correct {module.file}"
        yield RULE.finding(at.at, message, why, hint)
    elif module.used_part == "not known":
        message = f"it's unknown whether a used `{module.id}` can be set up"
        hint = f"write `part: new`, or find out and correct {module.file}"
        yield as_warning(RULE.finding(at.at, message, why, hint))
