"""A phrase inside braces that its comma cut in two.

In: the two halves, or the map in which they are. Out: the whole as the format has it, and the edit
that joins them again.
"""

import re
from collections.abc import Iterator
from typing import NamedTuple

import yaml

from builder.model.figures import SPEC_WORDS
from builder.model.finding import Edit, edit_of
from builder.model.ranges import Range
from builder.model.text import Text
from builder.reader.characters import quoted
from builder.reader.curly_quotes import IN_CURLY_QUOTES
from builder.reader.line_forms import words_of_the_format
from builder.reader.nodes import Node
from builder.reader.put_right import put_right
from builder.reader.range_words import likely_words, parse_range

WITHOUT_SPACE = re.compile(r"([a-z][a-z_ ]*):([^\s:].*)")
MAY_BE_OFF = re.compile(r"[\d.]+ ?%?(?: ?\+ ?[\d.]+)?")  # what a tool may be off by
ITEM = re.compile(r"(?:\[|,|^\s*-)\s*\{\s*$")  # before the first key of a map that is in a list

ANSWERS = ("yes", "no", "good", "bad", "OK", *SPEC_WORDS)


class CutPhrase(NamedTuple):
    """The finding for a phrase that a comma cuts."""

    message: str
    hint: str
    edit: Edit | None = None
    whole: Text | None = None  # the value that was meant, so that it isn't judged by its first half


def cut_phrase(pieces: list[Text], before: list[tuple[Text, Node]], line: str) -> CutPhrase:
    """Return the finding for the pieces behind a comma; `before` are the entries of the map."""
    key = pieces[0]
    name, head = before[-1] if before else (Text("result"), Text(""))
    message = f"inside braces a comma ends the phrase: `{key}` is cut off"
    if len(pieces) == 1 and (right := _with_its_comma(name, head, key)):
        return CutPhrase(message, f"write `{name}: {right}`")
    if match := WITHOUT_SPACE.fullmatch(key):
        right = f"{match[1]}: {match[2]}"
        hint = f"type a space after the colon: `{right}`"
        return CutPhrase(f"there is no space after `{match[1]}:`", hint, edit_of(key, right))
    if not isinstance(head, Text):
        return CutPhrase(message, "put the phrase in quotes, or use separate lines")
    if right := _with_points([head, *pieces]):
        hint = f"write `{name}: {right}`: use a decimal point"
        return CutPhrase(message, hint, *_joined_phrase([head, *pieces], right, right, line))
    is_named = name in words_of_the_format()
    if not is_named and " " not in key and ITEM.search(line[: name.at.column - 1]):
        hint = f"if each has its own, write `{{{name}: {head}}}, {{{name}: {key}}}`"
        return CutPhrase(message, hint)
    whole = ", ".join((head, *pieces))
    if IN_CURLY_QUOTES.fullmatch(whole):
        whole = whole[1:-1].strip()
    hint = f'put the phrase in quotes, `{name}: "{whole}"`, or use separate lines'
    return CutPhrase(message, hint, *_joined_phrase([head, *pieces], quoted(whole), whole, line))


def _with_points(pieces: list[Text]) -> str | None:
    """Return numbers with decimal points where commas cut them: `13.2 to 14.8`."""
    whole = pieces[0].lstrip("$€£")
    for piece in pieces[1:]:
        if not (whole[-1:].isdigit() and piece[:1].isdigit()):
            return None
        whole = f"{whole}.{piece}"
    is_right = " " not in whole or MAY_BE_OFF.fullmatch(whole) is not None
    is_right = is_right or isinstance(parse_range(whole), Range)
    return whole if is_right else likely_words(whole)


def _with_its_comma(name: str, head: Node, rest: str) -> str | None:
    """Return a date or an amount that has a comma in it as the format has it."""
    if not isinstance(head, Text):
        return None
    if day := put_right("a date", name, f"{head}, {rest}"):
        return day
    is_amount = re.fullmatch(r"[$€£]?[1-9]\d{0,2}", head) and re.fullmatch(r"\d{3}(?:\.\d+)?", rest)
    return f"{head.lstrip('$€£')}{rest}" if is_amount else None


def _joined_phrase(pieces: list[Text], new: str, whole: str, line: str) -> tuple[Edit | None, Text]:
    """Return the edit that joins the pieces of a phrase again, and the phrase."""
    first, last = pieces[0].at, pieces[-1].at
    at = first._replace(end_line=last.end_line, end_column=last.end_column)
    old = line[at.column - 1 : at.end_column - 1]
    return Edit(at, old, new) if at.line == at.end_line else None, Text(whole, at)


def cut_answers(node: yaml.MappingNode, source: str) -> Iterator[tuple[list[yaml.ScalarNode], str]]:
    """Yield the pieces of every answer in braces, and where it leads.

    The pieces are keys without a value, and the key that has it.
    """
    pieces: list[yaml.ScalarNode] = []
    name, before = "", ""  # the entry before the pieces
    for key, value in node.value:
        text = value.value if isinstance(value, yaml.ScalarNode) else "..."
        if isinstance(key, yaml.ScalarNode) and text == "" and _is_bare(key, source):
            pieces.append(key)
            continue
        whole = [*pieces, key]
        if pieces and text and _is_answer([str(one.value) for one in whole], name, before):
            yield whole, text
        pieces, name, before = [], str(key.value), text


def _is_answer(pieces: list[str], name: str, before: str) -> bool:
    """Whether pieces are an answer, rather than the rest of the entry before them."""
    is_number = before[-1:].isdigit() and pieces[0][:1].isdigit()
    words = words_of_the_format()
    if is_number or pieces[-1] in words:
        return False
    return name not in words or " " in pieces[-1]


def _is_bare(key: yaml.ScalarNode, source: str) -> bool:
    """Whether neither quotes nor a colon are at a key."""
    is_followed = source[key.end_mark.index :].lstrip().startswith(":")
    return not (key.style or ":" in key.value or is_followed)


def cut_answer(pieces: list[Text], branch: str, line: str) -> CutPhrase:
    """Return the message, the hint and the edit for the pieces of an answer that leads there."""
    head, *rest = pieces
    message = f"inside braces a comma ends the phrase: `{head}` is cut off"
    if head in ANSWERS and rest[-1] in ANSWERS:  # two answers, and not one phrase
        hint = f"write where it leads: `{head}: ...`"
        return CutPhrase(f"the result `{head}` has no branch", hint)
    whole = ", ".join(pieces)
    if IN_CURLY_QUOTES.fullmatch(whole):
        message = (
            f"`{whole[0]}` and `{whole[-1]}` are no quotes here, but letters: the comma cuts the "
            "answer in two"
        )
        answer = quoted(whole[1:-1].strip())
        edit, _ = _joined_phrase(pieces, answer, answer, line)
        return CutPhrase(message, f"type straight quotes: `{answer}: {branch}`", edit)
    answer, what = quoted(whole), "put the whole answer in quotes"
    if len(rest) == 1 and head[-1:].isdigit() and rest[0][:1].isdigit():
        answer, what = f"{head}.{rest[0]}", "use a decimal point"
    edit, _ = _joined_phrase(pieces, answer, answer, line)
    return CutPhrase(message, f"{what}: `{answer}: {branch}`", edit)
