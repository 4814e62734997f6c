"""A question of a check and its answer as a plain statement of what was seen.

In: `Does A/C water drip under the car?` and `no`. Out: `A/C water doesn't drip under the car`. A
customer and a service writer read what was seen, not a form that somebody filled in. A question
whose verb isn't known is kept, with its answer.
"""

import re

from builder.wording.question_parts import (
    BE,
    DO,
    NEGATIVE,
    Clause,
    clause_of,
    no_text,
    verb_text,
    yes_text,
)
from builder.wording.sentences import capitalized, uncapitalized

_YES_NO = re.compile(r"(?P<word>yes|no)(?P<more>(?:, | and | but | or ).+)?$")
_SIDES = {"both sides": "both sides", "one side": "only one side", "neither": "neither side",
          "neither side": "neither side"}  # fmt: skip
# How a part is: said of the part, not of what it was asked for.
_HOW_IT_IS = re.compile(
    r"(?:bent|blocked|bright|broken|burned|corroded|cracked|dark|dim|dirty|dry|green|loose|"
    r"melted|rusty|spread|wet|worn)\b"
)
_SENSES = {"hear": "Heard", "feel": "Felt", "see": "Seen", "find": "Found",
           "hear or feel": "Heard or felt", "see or feel": "Seen or felt",
           "see and hear": "Seen and heard"}  # fmt: skip
_VERBS = "|".join(sorted(_SENSES, key=len, reverse=True))
_SENSED = re.compile(rf"What (?:do|does|did) we (?P<verb>{_VERBS})\b(?P<rest>.*)")
# What is asked of a part: the part alone, and on which occasion, says enough before the answer.
_OF_A_PART = tuple(map(re.compile, (
    r"How (?:do|does|did) (?P<part>.+?) (?:look and feel|look|feel|move)\b(?P<rest>.*)",
    r"How (?:hot )?(?:is|are|was|were) (?P<part>.+)",
    r"What (?:do|does|did) (?P<part>(?!it |they ).+?) (?:show|say|do|name|look like|catch)\b"
    r"(?P<rest>.*)",
    r"What happens,? (?P<part>.+)",
    r"What kind of (?P<part>.+?) (?:does it have|is .+)",
    r"What(?P<part> .+) is it",
    r"Which of these is (?P<part>.+)",
    r"Which (?P<part>[^,]+?) (?:is|are|was|were)"
    r"(?P<rest> (?:in|on|at|set|stored|replaced|missing)\b.*)",
    r"Which (?P<part>(?:other )?DTCs)",
    r"What(?: is|'s) (?P<part>.+)",
    r"Where is (?P<part>the .+)",
)))  # fmt: skip
# What none of the parts does; one that is asked with `not` would deny twice.
_WHICH = re.compile(r"Which (?P<rest>(?:[a-z]+ )?(?:DTCs|[a-z]+s) (?!do\b|does\b|don't\b|of\b).+)")
# What is so of one of several, named ahead of it: `hose that, pinched, brings the trim back`.
_ONE_OF = re.compile(r"(?:Which|How many) (?P<part>(?:(?!DTCs?\b)(?:other|[A-Z]\w+) )?\w+)"
                     r"(?P<rest>(?:,[^,]+,)? (?!and\b|does\b|do\b|did\b).+)")  # fmt: skip
_NOTHING_DOES = re.compile(r"What (?P<rest>(?!is |was |does |happens )[a-z]+s .+)")
_INDIRECT = re.compile(r"(?P<what>(?:Where|When|Who|What|How)(?: \w+)??|"
                       r"(?:Which|How much)(?: \w+)+?) "
                       r"(?P<aux>does|do|did|is|are) (?P<after>.+)")  # fmt: skip


def finding_text(question: str, answer: str) -> str:
    """Write what was found: a sentence without its period, or a part and how it is."""
    asked = _of_the_shop(question)
    if re.match(r"(?:Is|Are) \w+ (?:one )?of these", asked):
        return capitalized(answer)
    sensed = _SENSED.match(asked)
    if sensed and answer == "nothing":
        return f"Nothing {uncapitalized(_label(asked))}"
    if answer == "nothing" and (does := _NOTHING_DOES.match(asked)):
        return f"Nothing {does['rest']}"
    if answer == "nowhere":
        return f"{capitalized(finding_label(question).removeprefix('Where '))}: nowhere"
    if answer == "none" and (which := _WHICH.match(asked)):
        return f"No {which['rest']}"
    first, _, after = asked.partition(" ")
    if first.lower() not in NEGATIVE or not question.endswith("?"):
        return f"{finding_label(question)}: {answer}"
    clause = clause_of(first.lower(), after)
    return capitalized(_sentence(clause, answer) if clause else f"{asked}: {answer}")


def _of_the_shop(question: str) -> str:
    """Write `you` as the shop says it of itself."""
    words = {"you": "we", "your": "our", "yours": "ours"}
    asked = question.removesuffix("?")
    return re.sub(r"\b(?:you|yours?)\b", lambda match: words[match[0]], asked)


def finding_label(question: str) -> str:
    """Name what was looked at or measured: `Battery voltage, cranking`, `Rotors`."""
    asked = _of_the_shop(question).removeprefix("Measure ")
    return capitalized(_label(_bare(asked)))


def _sentence(clause: Clause, answer: str) -> str:
    if "both sides" in clause.predicate and answer in _SIDES:
        there = clause.predicate.replace("both sides", _SIDES[answer])
        return yes_text(clause._replace(predicate=there))
    if answer == "none" and re.match(r"(?:a|an|any) ", clause.subject):
        answer = "no"
    match = _YES_NO.match(answer)
    if match is None or (match["more"] or "").startswith(" or "):
        return _other_answer(clause, answer)
    words = yes_text(clause) if match["word"] == "yes" else no_text(clause)
    more = match["more"] or ""
    if match["word"] == "no" and (named := _reasons_named(words, more)):
        return named
    if more.startswith(", or ") and _HOW_IT_IS.match(more.removeprefix(", or ")):
        return f"{words}, or is {more.removeprefix(', or ')}"
    is_clause = more.startswith((", and ", ", but ", ", or "))
    return words + (more if is_clause else more.replace(", ", ": ", 1))


def _reasons_named(words: str, more: str) -> str:
    """Return of several reasons for a no the one that the answer names, with what is `its`."""
    first, *others = re.split(r", or (?!its )", words)
    key = re.match(r", (\w+)$|, \w+ (\w+)$", more)
    name = next(filter(None, key.groups()), "") if key else ""
    named = [one for one in (first, *others) if re.search(rf"\b{name}\b", one)]
    return named[0] if name and others and len(named) == 1 else ""


def _other_answer(clause: Clause, answer: str) -> str:
    """Write an answer that says how it is: `starter relay: no feed`, `the system leaks outside`."""
    aux, subject, predicate = clause
    if subject == "we":
        return answer  # it is of the vehicle, not of who works on it
    own = re.match(r"(?:it|they) (?P<does>\w+(?: \w+)?)$", answer)
    after = re.match(r"\w+(?P<rest>,? (?:at|in|on|lock|when|with) .+)", predicate)
    is_apart = after and after["rest"].startswith(" with")
    if own and is_apart and not _is_verb_of(own["does"], predicate):
        return f"{subject} {own['does']}"  # it stays: that is not with what it was moved with
    if subject != "it" and own and after:
        return f"{subject} {own['does']}{after['rest']}"
    if subject != "it" and re.match(r"doesn't|(?:holds|leaks|moves|quits|reads|stops) ", answer):
        return f"{subject} {answer}"
    if subject == "there":
        return f"{_bare(predicate)}: {answer}"
    state, _, rest = predicate.partition(" ")
    if state in ("good", "good,") and not rest.startswith("enough"):
        comma = "" if not rest or rest.startswith(("at ", "while ")) else ","
        return f"{_bare(subject)}{comma} {rest}".strip() + f": {answer}"
    if aux in BE and state.endswith("ed") and answer.startswith(f"{state} "):
        return f"{subject} {aux.lower()} {answer}"  # is commanded on, of `commanded to charge`
    if aux in BE and answer == f"not {state}":
        return f"{subject} {aux.lower()} not {predicate}"
    if aux in BE and subject != "it":
        return f"{_bare(subject)}: {answer}"
    if side := _SIDES.get(answer):
        return f"{subject} {verb_text(aux, predicate)}: {side}"
    if subject != "it" and _HOW_IT_IS.match(answer):
        where = re.search(r",? (?:at|on|in) .+|, .+", predicate)
        part = subject.removeprefix("each ")
        return f"{_bare(part)}{where[0] if where else ''}: {answer}"
    return f"checked if {subject} {verb_text(aux, predicate)}: {answer}"


def _is_verb_of(does: str, predicate: str) -> bool:
    """Whether an answer says what was asked: `moves`, of `move with the coil`."""
    return does.startswith(predicate.partition(" ")[0].removesuffix("e"))


def _label(asked: str) -> str:
    """Name what was looked at: the part, or the question turned around."""
    if match := _SENSED.match(asked):
        return f"{_SENSES[match['verb']]}{match['rest']}"
    for pattern in _OF_A_PART:
        if match := pattern.fullmatch(asked):
            known = match.groupdict()
            return _bare(known["part"].strip()) + (known.get("rest") or "")
    match = _INDIRECT.fullmatch(asked)
    clause = clause_of(match["aux"], match["after"]) if match else None
    if match and clause and (" " not in match["what"] or match["aux"] in DO):
        what = re.sub(r"^(?:Which|How much) ", "", match["what"])
        return f"{what} {clause.subject} {verb_text(clause.aux, clause.predicate)}"
    one = _ONE_OF.fullmatch(asked)
    return f"{one['part']} that{one['rest']}" if one else asked


def _bare(part: str) -> str:
    return re.sub(r"^(?:the|a|an) ", "", part)
