"""A phrase inside braces that its comma cut in two.

In: the two halves, or the map in which they are. Out: the whole as the format has it, and the edit
that joins them again.
"""

import re
from collections.abc import Iterator

import yaml

from builder.model.figures import SPEC_WORDS
from builder.model.finding import Edit, edit_of
from builder.model.text import Text
from builder.reader.characters import quoted
from builder.reader.line_forms import words_of_the_format
from builder.reader.nodes import Node
from builder.reader.put_right import put_right

WITHOUT_SPACE = re.compile(r"([a-z_]+):(\S.*)")
ITEM = re.compile(r"(?:\[|,|^\s*-)\s*\{\s*$")  # before the first key of a map that is in a list

ANSWERS = ("yes", "no", "good", "bad", "OK", *SPEC_WORDS)


def cut_phrase(
    key: Text, before: list[tuple[Text, Node]], line: str
) -> tuple[str, str, Edit | None]:
    """Return the message, the hint and the edit for the second half; `before` are the entries."""
    name, head = before[-1] if before else (Text("result"), Text(""))
    message = f"inside braces a comma ends the phrase: `{key}` is cut off"
    if whole := _with_its_comma(name, head, key):
        return message, f"write `{name}: {whole}`", None
    if match := WITHOUT_SPACE.fullmatch(key):
        right = f"{match[1]}: {match[2]}"
        hint = f"type a space after the colon: `{right}`"
        return f"there is no space after `{match[1]}:`", hint, edit_of(key, right)
    if not isinstance(head, Text):
        return message, "put the phrase in quotes, or use separate lines", None
    if head[-1:].isdigit() and key[:1].isdigit():
        hint = f"write `{name}: {head}.{key}`: use a decimal point"
        return message, hint, _joined_phrase(head, key, f"{head}.{key}")
    is_named = name in words_of_the_format()
    if not is_named and " " not in key and ITEM.search(line[: name.at.column - 1]):
        hint = f"if each has its own, write `{{{name}: {head}}}, {{{name}: {key}}}`"
        return message, hint, None
    hint = f'put the phrase in quotes, `{name}: "{head}, {key}"`, or use separate lines'
    return message, hint, _joined_phrase(head, key, quoted(f"{head}, {key}"))


def _with_its_comma(name: str, head: Node, rest: str) -> str | None:
    """Return a date or an amount that has a comma in it as the format has it."""
    if not isinstance(head, Text):
        return None
    if day := put_right("a date", name, f"{head}, {rest}"):
        return day
    is_amount = re.fullmatch(r"[$€£]?[1-9]\d{0,2}", head) and re.fullmatch(r"\d{3}(?:\.\d+)?", rest)
    return f"{head.lstrip('$€£')}{rest}" if is_amount else None


def _joined_phrase(head: Text, key: Text, new: str) -> Edit:
    """Return the edit that joins the two halves of a phrase again, if only a comma is between."""
    at = head.at._replace(end_line=key.at.end_line, end_column=key.at.end_column)
    between = " " * (key.at.column - head.at.end_column - 1)
    quote = '"' if head.at.end_column - head.at.column == len(head) + 2 else ""
    return Edit(at, f"{quote}{head}{quote},{between}{key}", new)


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


def cut_answer(pieces: list[Text], branch: str) -> tuple[str, str, Edit | None]:
    """Return the message, the hint and the edit for the pieces of an answer that leads there."""
    head, *rest = pieces
    message = f"inside braces a comma ends the phrase: `{head}` is cut off"
    if head in ANSWERS and rest[-1] in ANSWERS:  # two answers, and not one phrase
        hint = f"write where it leads: `{head}: ...`"
        return f"the result `{head}` has no branch", hint, None
    answer, what = quoted(", ".join(pieces)), "put the whole answer in quotes"
    if len(rest) == 1 and head[-1:].isdigit() and rest[0][:1].isdigit():
        answer, what = f"{head}.{rest[0]}", "use a decimal point"
    edit = _joined_phrase(head, rest[0], answer) if len(rest) == 1 else None
    return message, f"{what}: `{answer}: {branch}`", edit
