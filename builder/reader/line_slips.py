"""What an author most likely got wrong in the lines around the place where YAML stopped.

In: the lines of a file, and the line and column of the error, which is often below the mistake.
Out: a `LineSlip` at the mistake itself, or None where the lines look right.
"""

import re

from builder.reader.dash_slips import missing_dash
from builder.reader.line_forms import (
    KEY_LINE,
    LineChange,
    LineSlip,
    content_above,
    has_content,
    indent_of,
    indented,
    words_of_the_format,
)
from builder.reader.schemas.tree_schema import TREE

NAME_LINE = re.compile(r"( *)([^\s#:-][^:]*):\s*(#.*)?")
OPENING_QUOTE = re.compile(r""" *(?:- +)*(?:[^"':]+: +)?(["'])""")


OTHER_COMMENT = re.compile(r"( *)(//|--|;|<!--|/\*) *(.*?)(?: *(?:-->|\*/))?")


def line_slip(lines: list[str], line: int, column: int) -> LineSlip | None:
    """Return the slip nearest to an error, the surest kinds first."""
    above = content_above(lines, line)
    return (
        _other_comment(lines, (line, above))
        or _key_without_blank(lines, (line, above))
        or _key_without_colon(lines, line, above)
        or _half_in_quotes(lines, line, column)
        or _second_key(lines[line], line, column)
        or missing_dash(lines, line)
        or _step_too_far_left(lines, line)
        or _colon_further_down(lines, line, above)
        or (None if _is_in_a_value(lines[line], column) else _too_far_right(lines, line, above)
            or _between_columns(lines, line))
    )  # fmt: skip


def _is_in_a_value(text: str, column: int) -> bool:
    """Whether YAML stopped at a colon inside a phrase, which says nothing about the columns."""
    return ": " in text[:column]


def _other_comment(lines: list[str], places: tuple[int, ...]) -> LineSlip | None:
    for at in places:
        if match := OTHER_COMMENT.fullmatch(lines[at].rstrip()):
            right, start = f"# {match[3]}", match.start(2)
            return LineSlip(at, start, f"a comment doesn't start with `{match[2]}`",
                            f"write `{right}`",
                            LineChange(at, start, match[0][start:], right))  # fmt: skip
    return None


def _key_without_blank(lines: list[str], places: tuple[int, ...]) -> LineSlip | None:
    for at in places:
        match = KEY_LINE.fullmatch(lines[at].rstrip())
        if match and match[3] and not match[4] and match[5] and match[2] in words_of_the_format():
            return LineSlip(at, match.start(3), f"there is no space after `{match[2]}:`",
                            f"write `{match[2]}: {match[5]}`",
                            LineChange(at, match.end(3), "", " "))  # fmt: skip
    return None


def _key_without_colon(lines: list[str], line: int, above: int) -> LineSlip | None:
    below = KEY_LINE.fullmatch(lines[line].rstrip())
    for at in (line, above):
        match = KEY_LINE.fullmatch(lines[at].rstrip())
        if not match or match[3] or not match[4] or match[2] not in words_of_the_format():
            continue
        in_line = at == line or (below and match.start(2) == below.start(2))
        if in_line and ": " not in match[5]:
            return LineSlip(at, match.end(2), f"there is no colon after `{match[2]}`",
                            f"write `{match[2]}: {match[5]}`",
                            LineChange(at, match.end(2), "", ":"))  # fmt: skip
    return None


def _half_in_quotes(lines: list[str], line: int, column: int) -> LineSlip | None:
    text = lines[line].rstrip()
    match = OPENING_QUOTE.match(text)
    if not match:
        return None
    quote, start = match[1], match.start(1)
    end = text.find(quote, start + 1)
    if end < 0 or column <= end or end == len(text) - 1:
        return None
    after_a_word = text[end + 1] == " "
    inner = text[start:] if after_a_word else text[start + 1 :].removesuffix(quote)
    key = text[:start].strip(" -")
    other = "'" if '"' in inner else '"'
    return LineSlip(line, start, f"the quotes end too early: `{text[start : end + 1]}`",
                    f"put the whole phrase in quotes: `{key} {other}{inner}{other}`",
                    LineChange(line, start, text[start:], f"{other}{inner}{other}")
                    if text[:start].strip() and ": " not in inner else None)  # fmt: skip


def _second_key(text: str, line: int, column: int) -> LineSlip | None:
    """Find a key that is on the line of another one: `result: yes branch: belt`."""
    first = KEY_LINE.fullmatch(text.rstrip())
    if text[column : column + 1] != ":" or "{" in text[:column] or not first or not first[3]:
        return None
    word = text[:column].rsplit(" ", 1)[-1]
    if word not in words_of_the_format() or column - len(word) <= first.start(2):
        return None
    deeper = 2 if first[5].startswith(f"{word}:") else 0
    start, wanted = column - len(word), first.start(2) + deeper
    end = len(text[:start].rstrip())
    return LineSlip(line, start, f"`{word}` needs a line of its own",
                    f"start a new line in column {wanted + 1}: `{text[start:].rstrip()}`",
                    LineChange(line, end, text[end:start], "\n" + " " * wanted))  # fmt: skip


def _step_too_far_left(lines: list[str], line: int) -> LineSlip | None:
    """Find the name of a step in the column of `steps`, which ends all steps."""
    indent = indent_of(lines[line])
    if not indent or not NAME_LINE.fullmatch(lines[line].rstrip()):
        return None
    for at in range(line - 1, -1, -1):
        if has_content(lines[at]) and not indent_of(lines[at]):
            match = NAME_LINE.fullmatch(lines[at].rstrip())
            if not match or match[2] in TREE["properties"]:
                return None
            message = (
                f"`{match[2]}` starts in column 1, `{lines[line].strip()}` in column {indent + 1}"
            )
            hint = f"put {indent} spaces before `{match[2]}:`, if it's a step"
            return LineSlip(at, 0, message, hint, indented(at, 0, indent))
    return None


def _colon_further_down(lines: list[str], line: int, above: int) -> LineSlip | None:
    """Find a colon in a text of several lines, behind what is no key of the format."""
    phrase, colon, _ = lines[line].partition(": ")
    upper = KEY_LINE.fullmatch(lines[above].rstrip())
    known = words_of_the_format()
    if not colon or phrase.strip() in known or not upper or upper[2] not in known or not upper[5]:
        return None
    if indent_of(lines[line]) <= upper.start(2) or upper[5][0] in "|>{[\"'":
        return None
    return LineSlip(line, len(phrase), f"the colon after `{phrase.strip()}` starts a new key, "
                                       f"in the middle of the text of `{upper[2]}`",
                    f'put the whole text in quotes, from `{upper[2]}: "{upper[5]}` to '
                    f'`{lines[line].strip()}"`')  # fmt: skip


def _too_far_right(lines: list[str], line: int, above: int) -> LineSlip | None:
    key, upper = KEY_LINE.fullmatch(lines[line].rstrip()), KEY_LINE.fullmatch(lines[above].rstrip())
    if not key or not upper or not key[3] or not upper[3] or not upper[5] or above == line:
        return None
    if key.start(2) <= upper.start(2) or upper[5][0] in "|>{[":
        return None
    column = upper.start(2)
    if upper[2] not in words_of_the_format() and key[2] in words_of_the_format():
        return LineSlip(above, upper.start(5), f"`{upper[2]}` has a text, and lines below it",
                        f"end the line after `{upper[2]}:`, and start the text below it with its "
                        f"kind, such as `check: {upper[5]}`")  # fmt: skip
    return LineSlip(line, key.start(2), f"`{key[2]}` starts in column {key.start(2) + 1}, "
                                        f"`{upper[2]}` above it in column {column + 1}",
                    f"start it in column {column + 1}: `{' ' * column}{key[2]}: ...`"
                    if not key[5] else f"start it in column {column + 1}",
                    indented(line, key.start(2), column)
                    if indent_of(lines[line]) == key.start(2) else None)  # fmt: skip


def _between_columns(lines: list[str], line: int) -> LineSlip | None:
    """Find a line in a column where nothing above it has started."""
    indent = indent_of(lines[line])
    if lines[content_above(lines, line)].rstrip().endswith(":"):
        return None
    columns: list[int] = []
    for at in range(line - 1, -1, -1):
        if has_content(lines[at]):
            match = KEY_LINE.match(lines[at])
            starts = {indent_of(lines[at]), match.start(2) if match else indent_of(lines[at])}
            columns += [one for one in starts if one < min(columns, default=one + 1)]
            if min(columns) == 0:
                break
    if not columns or indent in columns:
        return None
    near = sorted(sorted(columns, key=lambda one: abs(one - indent))[:2])
    where = " or ".join(str(one + 1) for one in near)
    return LineSlip(line, indent, f"this line starts in column {indent + 1}, "
                                  f"and no line above it that is still open does",
                    f"start it in column {where}, like the lines it belongs to")  # fmt: skip
