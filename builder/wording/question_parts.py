"""A question taken apart, and its statement put together: yes, no, or as an indirect question.

In: `Does`, `A/C water drip under the car`. Out: `A/C water drips under the car`, `A/C water doesn't
drip under the car`.
"""

import re
from typing import NamedTuple

from builder.wording.question_words import NOUNS, PAST_FORMS, STATES, VERBS

BE = {"is": "isn't", "are": "aren't", "was": "wasn't", "were": "weren't"}
DO = {"does": "doesn't", "do": "don't", "did": "didn't"}
HAVE = {"has": "hasn't", "have": "haven't"}
NEGATIVE = BE | DO | HAVE
_POSITIVE = {negative: verb for verb, negative in NEGATIVE.items()}
_ANY = {"anywhere": "somewhere", "anything": "something"}
_BEFORE_NUMBERS = ("above", "after", "at", "below", "least", "than", "the", "to", "wet", "within")
_OTHER_PART = re.compile(r", (?:the|its) \w+$")
_OF_EACH = re.compile(r"\b(?P<where>at|in|of|on|through) each\b")  # denied, it is so of some
_EVERY = ("all", "both", "each", "every")
_CLAUSE = re.compile(rf", (?P<subject>(?:its|the) .+?) (?P<state>(?:{'|'.join(STATES[0])})\b[^,]*)")
_DOING = re.compile(rf", (?P<subject>(?:its|the) \w+) (?P<verb>{'|'.join(sorted(VERBS))})\b")


class Clause(NamedTuple):
    """A question: `aux` is its first verb, in small letters."""

    aux: str
    subject: str
    predicate: str


def clause_of(aux: str, after: str) -> Clause | None:
    """Take a question apart behind its first verb; None where its predicate isn't known."""
    words = after.split(" ")
    if words[0] == "there":
        return Clause(aux, "there", " ".join(words[1:]))
    known_words = (VERBS,) if aux in DO else STATES
    for known in known_words:
        for at in range(1, len(words)):
            if aux in BE | HAVE and _is_measure(words, at):
                return Clause(aux, " ".join(words[:at]), " ".join(words[at:]))
            is_open = known is STATES[-1] or not _is_noun(words, at)
            if words[at].strip(",") in known and is_open:
                return Clause(*_negation(aux, words[:at]), " ".join(words[at:]))
    return None


def _is_measure(words: list[str], at: int) -> bool:
    """Whether a difference begins here: `50 °F colder`."""
    is_it = words[0] == "it"
    return words[at][:1].isdigit() and words[at - 1] not in _BEFORE_NUMBERS and (at > 1 or is_it)


def _negation(aux: str, subject: list[str]) -> tuple[str, str]:
    """Join `not` to the verb: `does any module not respond` is asked with `doesn't`."""
    if subject[-1] != "not":
        return aux, " ".join(subject)
    return NEGATIVE[aux], " ".join(subject[:-1])


def _is_noun(words: list[str], at: int) -> bool:
    following = words[at + 1].strip(",") if at + 1 < len(words) else ""
    word = words[at].strip(",")
    return (words[at - 1], word) in NOUNS or (word, following) in NOUNS


def yes_text(clause: Clause) -> str:
    """State that it is so."""
    aux, subject, predicate = clause
    first, _, rest = subject.partition(" ")
    subject = f"a {rest}" if first == "any" else _ANY.get(subject, subject)
    return f"{subject} {_some(verb_text(aux, predicate))}"


def no_text(clause: Clause) -> str:
    """State that it isn't so: of several parts, of none, or not of all."""
    aux, subject, predicate = clause
    first, _, rest = subject.partition(" ")
    if first == "each" and aux in NEGATIVE:
        return f"at least one {rest} {NEGATIVE[aux]} {predicate}"
    if first in _EVERY:
        return f"not {subject} {verb_text(aux, predicate)}"
    if (
        first == "any"
        or (first in ("a", "an") and aux in BE and " or the " not in rest)
        or (first == "one" and rest)
    ):
        return f"no {rest} {verb_text(aux, predicate)}"
    if subject == "anything":
        return f"nothing {verb_text(aux, predicate)}"
    if predicate.startswith("still "):
        rest = predicate.removeprefix("still ")
        no_more = f"{aux} no longer {rest}" if aux in BE else f"no longer {verb_text(aux, rest)}"
        return f"{subject} {no_more}"
    subject, predicate = (_OF_EACH.sub(r"\g<where> at least one", one) for one in clause[1:])
    words = f"{subject} {NEGATIVE.get(aux, _POSITIVE.get(aux, aux))} {predicate}"
    words = _CLAUSE.sub(_negative_clause, words)
    return _DOING.sub(rf", or \g<subject> {NEGATIVE[aux]} \g<verb>", words) if aux in DO else words


def _negative_clause(match: re.Match[str]) -> str:
    """Write `its mount tight` as another reason: not all of several parts are as they should be."""
    is_plural = re.search(r"[^s]s$| and ", match["subject"])
    return f", or {match['subject']} {'aren' if is_plural else 'isn'}'t {match['state']}"


def _some(words: str) -> str:
    return re.sub(r"\banywhere\b", "somewhere", words).replace(" ever ", " ")


def verb_text(aux: str, predicate: str) -> str:
    """Write the verb as a statement has it: `drips under the car`, `is tight`."""
    if aux == "does":
        return _third_person(predicate)
    if aux in NEGATIVE.values():
        return f"{aux} {predicate}"
    if aux == "did":
        verb, _, rest = predicate.partition(" ")
        past = PAST_FORMS.get(verb, f"{verb.removesuffix('e')}ed")
        return f"{past} {rest}".strip()
    return predicate if aux == "do" else f"{aux} {predicate}"


def _third_person(predicate: str) -> str:
    """Write `clicks, binds, or has play`: the first verb and those that are joined to it."""
    words = predicate.split(" ")
    for at, word in enumerate(words):
        bare, before = word.strip(","), words[at - 1] if at else ""
        is_joined = before in ("and", "or", "still", "then") or before.endswith(",")
        is_joined |= bool(_OTHER_PART.search(" ".join(words[:at])))
        if at == 0 or (is_joined and bare in VERBS and not _is_noun(words, at)):
            words[at] = word.replace(bare, _with_ending(bare), 1)
    return " ".join(words)


def _with_ending(verb: str) -> str:
    if verb in ("still", "have"):
        return {"still": "still", "have": "has"}[verb]
    if verb.endswith(("s", "sh", "ch", "x", "o")):
        return f"{verb}es"
    return f"{verb[:-1]}ies" if re.search(r"[^aeiou]y$", verb) else f"{verb}s"
