"""YAML syntax errors in plain words, and how to read on after them.

In: an error of PyYAML (its C and its Python scanner word it differently). Out: a finding, and the
text with the character in question replaced by another one, so that the rest of the file is read
too and every column stays right.
"""

import re
from typing import Any

import yaml

from builder.model.finding import Finding
from builder.model.text import Position
from builder.reader.left_open import bracket_slip, open_above, open_quote
from builder.reader.line_slips import line_slip, words_of_the_format
from builder.reader.range_words import likely_words
from builder.reader.source import Source, at_index, mistake

SUBSTITUTES = {
    ":": "\ua789",
    "@": "a",
    "`": "\u02cb",
    "*": "\u2217",
    "%": "o",
    ">": "\u203a",
    "|": "\u01c0",
    "-": "\u2010",
}
WHY = "the tree can't be read until this is fixed"
# What these problems say is certain, whatever the lines around them look like.
CERTAIN = (
    "alias", "anchor", "block scalar", "document", "end of stream", "escape", "sequence entries",
    "start any token", "tag",
)  # fmt: skip


def explain(source: Source, text: str, error: yaml.MarkedYAMLError) -> Finding:
    """Return a finding for a syntax error: what is wrong in plain words, and where."""
    mark: Any = error.problem_mark or error.context_mark
    lines = text.split("\n")
    line = re.sub(r"\s#.*", "", lines[mark.line]) if mark.line < len(lines) else ""
    problem = f"{error.context or ''} {error.problem or ''}"
    left_open = open_above(text, problem, mark, error.context_mark)
    if "node content" in problem:
        rule, message, hint, mark = "syntax", *bracket_slip(text, mark)
    elif left_open:
        rule, message, hint, mark = "syntax", *left_open
    elif not any(word in problem for word in CERTAIN) and (
        slip := line_slip(lines, min(mark.line, len(lines) - 1), mark.column)
    ):
        at = Position(source.file, slip.line + 1, slip.column + 1, slip.line + 1, slip.column + 2)
        return mistake("syntax", at, slip.message, WHY, slip.hint)
    else:
        rule, message, hint, mark = _explanation(problem, text, line, mark, error.context_mark)
    at = at_index(source.file, text, max(0, min(mark.index, len(text.rstrip()) - 1)))
    return mistake(rule, at, message, WHY, hint)


def _explanation(
    problem: str, text: str, line: str, mark: Any, opened: Any
) -> tuple[str, str, str, Any]:
    character = line[mark.column : mark.column + 1]
    key, _, value = line.strip(" -").partition(": ")
    if "alias" in problem:
        return "alias", "a text can't start with `*`", _in_quotes(key, value), opened or mark
    if "document" in problem:
        return ("documents", "a second YAML document starts here",
                "a file holds one tree: delete the line `---` or `...`", mark)  # fmt: skip
    if character == ":" and ("mapping values" in problem or "',' or '" in problem):
        return _colon(line, mark, key, value)
    if opened and "',' or '" in problem:
        bracket = "}" if "flow mapping" in problem else "]"
        hint = f"close it with `{bracket}` on its line, or use separate lines"
        if character and character in "])}":
            hint = f"type `{bracket}` before the `{character}` in column {mark.column + 1}"
        return "syntax", f"the bracket opened here isn't closed with `{bracket}`", hint, opened
    if "quoted scalar" in problem and opened and "end of stream" in problem:
        return "syntax", *open_quote(text, opened)
    if "escape" in problem:
        return ("syntax", "a backslash inside double quotes starts an escape code",
                "use single quotes", mark)  # fmt: skip
    if "block scalar" in problem:
        return ("lost-text", "YAML reads `>` and `|` as the start of a text block, not as a value",
                f"write `{key}: {likely_words(value) or 'above ...'}`, or put it in quotes",
                mark)  # fmt: skip
    if "cannot start any token" in problem:
        return "syntax", f"text can't start with `{character}`", _in_quotes(key, value), mark
    if "sequence entries" in problem:
        return ("syntax", "a list item `- ` can't start on the line of its key",
                f"{_in_quotes(key, value)}, or start the list on the next line", mark)  # fmt: skip
    return ("syntax", "this line doesn't line up with the one above",
            "start it in the same column as the lines around it; end a key with `: `",
            mark)  # fmt: skip


def _in_quotes(key: str, value: str) -> str:
    quote = "'" if '"' in value else '"'
    text = f"{key}: {quote}{value.strip()}{quote}" if value else f"{quote}{key}{quote}"
    return f"put it in quotes: `{text}`"


def _colon(line: str, mark: Any, key: str, value: str) -> tuple[str, str, str, Any]:
    if ": " not in line[: mark.column]:
        return ("syntax", "this line starts a key, but the line above isn't finished",
                "end the key above with `: `, or line this up with the lines around it",
                mark)  # fmt: skip
    braces = "{" in line[: mark.column]
    *before, word = line[: mark.column].split(" ")
    if braces and before and word in words_of_the_format():
        separated = f"{' '.join(before).split(', ')[-1].strip(' ;{-')}, {word}: ..."
        return ("syntax", f"there is no comma before `{word}`",
                f"write `{separated.rpartition('{')[2]}`", mark)  # fmt: skip
    phrase = re.split(r"[{,]\s*", line[: mark.column])[-1].partition(": ")[2]
    rest = re.split(r"[,}]", line[mark.column :])[0] if braces else line[mark.column :]
    name = re.split(r"[{,]\s*", line[: mark.column])[-1].partition(": ")[0].strip(" -")
    return ("syntax", f"the colon inside `{(phrase + rest).strip()}` starts a new key",
            f'put the phrase in quotes: `{name or key}: "{(phrase + rest).strip() or value}"`',
            mark)  # fmt: skip


def bridged(text: str, error: yaml.MarkedYAMLError) -> str | None:
    """Replace the character that stopped YAML by a look-alike; None where that wouldn't help."""
    mark = error.problem_mark
    problem = f"{error.context or ''} {error.problem or ''}"
    if mark is None or "document" in problem:
        return None
    if ("block scalar" in problem or "alias" in problem) and error.context_mark:
        mark = error.context_mark
    index = mark.index
    character = text[index : index + 1]
    start = text.rfind("\n", 0, index) + 1
    if character not in SUBSTITUTES or (character == ":" and ": " not in text[start:index]):
        return None
    return text[:index] + SUBSTITUTES[character] + text[index + 1 :]
