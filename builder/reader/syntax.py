"""YAML syntax errors in plain words, and how to read on after them.

In: an error of PyYAML (its C and its Python scanner word it differently). Out: a finding, and the
text with the character in question replaced by another one, so that the rest of the file is read
too and every column stays right.
"""

import re
from typing import Any

import yaml

from builder.model.finding import Edit, Finding, edit_in_line, with_edit
from builder.model.text import Position
from builder.reader.characters import quoted
from builder.reader.left_open import Explained, bracket_slip, not_closed, open_above, open_quote
from builder.reader.line_forms import LineChange, words_of_the_format
from builder.reader.line_slips import line_slip
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
        rule, (message, hint, mark, change) = "syntax", bracket_slip(text, mark)
    elif left_open:
        rule, (message, hint, mark, change) = "syntax", left_open
    elif not any(word in problem for word in CERTAIN) and (
        slip := line_slip(lines, min(mark.line, len(lines) - 1), mark.column)
    ):
        at = Position(source.file, slip.line + 1, slip.column + 1, slip.line + 1, slip.column + 2)
        return with_edit(mistake("syntax", at, slip.message, WHY, slip.hint),
                         _edit(source.file, slip.change))  # fmt: skip
    else:
        rule, (message, hint, mark, change) = _explanation(
            problem, text, line, mark, error.context_mark
        )
    at = at_index(source.file, text, max(0, min(mark.index, len(text.rstrip()) - 1)))
    return with_edit(mistake(rule, at, message, WHY, hint), _edit(source.file, change))


def _edit(file: str, change: LineChange | None) -> Edit | None:
    if change is None:
        return None
    return edit_in_line(file, change.line + 1, change.column + 1, change.old, change.new)


def _explanation(
    problem: str, text: str, line: str, mark: Any, opened: Any
) -> tuple[str, Explained]:
    character = line[mark.column : mark.column + 1]
    key, _, value = line.strip(" -").partition(": ")
    if "alias" in problem:
        at = opened or mark
        return "alias", ("a text can't start with `*`", _in_quotes(key, value), at,
                         _value(line, at.line))  # fmt: skip
    if "document" in problem:
        return "documents", ("a second YAML document starts here",
                             "a file holds one tree: delete the line `---` or `...`",
                             mark, None)  # fmt: skip
    if character == ":" and ("mapping values" in problem or "',' or '" in problem):
        return "syntax", _colon(line, mark, key, value)
    if opened and "',' or '" in problem:
        bracket = "}" if "flow mapping" in problem else "]"
        return "syntax", not_closed(bracket, character, mark, opened)
    if "quoted scalar" in problem and opened and "end of stream" in problem:
        return "syntax", open_quote(text, opened)
    if "escape" in problem:
        return "syntax", ("a backslash inside double quotes starts an escape code",
                          "use single quotes", mark, None)  # fmt: skip
    if "block scalar" in problem:
        likely = likely_words(value)
        return "lost-text", (
            "YAML reads `>` and `|` as the start of a text block, not as a value",
            f"write `{key}: {likely or 'above ...'}`, or put it in quotes",
            mark, _value(line, mark.line, likely) if likely else None,
        )  # fmt: skip
    if "cannot start any token" in problem:
        return "syntax", (f"text can't start with `{character}`", _in_quotes(key, value), mark,
                          _value(line, mark.line))  # fmt: skip
    if "sequence entries" in problem:
        return "syntax", ("a list item `- ` can't start on the line of its key",
                          f"{_in_quotes(key, value)}, or start the list on the next line",
                          mark, None)  # fmt: skip
    if character in "]}" and character:
        return "syntax", (f"`{character}` closes a bracket that was never opened", "delete it",
                          mark, LineChange(mark.line, mark.column, character, ""))  # fmt: skip
    if ":" not in line and mark.line and not line.startswith(" "):
        return "syntax", ("this line is neither a key nor more of the text above",
                          "if it goes on with the text above, start it further right than that "
                          "text's key", mark, None)  # fmt: skip
    return "syntax", ("this line doesn't line up with the one above",
                      "start it in the same column as the lines around it; end a key with `: `",
                      mark, None)  # fmt: skip


def _in_quotes(key: str, value: str) -> str:
    quote = "'" if '"' in value else '"'
    text = f"{key}: {quote}{value.strip()}{quote}" if value else f"{quote}{key}{quote}"
    return f"put it in quotes: `{text}`"


def _value(line: str, number: int, new: str | None = None) -> LineChange | None:
    """Return the change of what stands behind the key or the dash: by default, into quotes."""
    before = re.match(r" *(?:- +)*(?:[\w-]+: +)?", line)
    column = before.end() if before else 0
    value = line[column:].rstrip()
    return LineChange(number, column, value, new or quoted(value)) if value else None


def _colon(line: str, mark: Any, key: str, value: str) -> Explained:
    if ": " not in line[: mark.column]:
        return ("this line starts a key, but the line above isn't finished",
                "end the key above with `: `, or line this up with the lines around it",
                mark, None)  # fmt: skip
    if joined := _joined_results(line, mark):
        return joined
    braces = "{" in line[: mark.column]
    *before, word = line[: mark.column].split(" ")
    if braces and before and word in words_of_the_format():
        separated = f"{' '.join(before).split(', ')[-1].strip(' ;{-')}, {word}: ..."
        end = len(" ".join(before).rstrip(" ;"))
        old = line[end : mark.column - len(word)]
        return (f"there is no comma before `{word}`", f"write `{separated.rpartition('{')[2]}`",
                mark, LineChange(mark.line, end, old, ", "))  # fmt: skip
    phrase = re.split(r"[{,]\s*", line[: mark.column])[-1].partition(": ")[2]
    rest = re.split(r"[,}]", line[mark.column :])[0] if braces else line[mark.column :]
    name = re.split(r"[{,]\s*", line[: mark.column])[-1].partition(": ")[0].strip(" -")
    whole = (phrase + rest).strip()
    is_plain = phrase and not set(whole) & set("'\"[]{}")
    column = line.find(whole) if is_plain and (braces or whole == value.strip()) else -1
    inner = whole.strip("“”„«»‘’")  # they would be printed
    change = LineChange(mark.line, column, whole, quoted(inner)) if column >= 0 else None
    return (f"the colon inside `{whole}` starts a new key",
            f'put the phrase in quotes: `{name or key}: "{inner or value}"`', mark,
            change)  # fmt: skip


def _joined_results(line: str, mark: Any) -> Explained | None:
    """Explain `results: {yes: ask no: fix}`: a step's name has no blank, so a comma is missing."""
    joined = re.search(r"results: *\{(?:.*, *)?([^,{]+: +[\w-]+)( +)([^,]+)$", line[: mark.column])
    if not joined:
        return None
    first, gap, second = joined.groups()
    return (f"there is no comma before `{second}`", f"write `{first}, {second}: ...`", mark,
            LineChange(mark.line, joined.start(2), gap, ", "))  # fmt: skip


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
