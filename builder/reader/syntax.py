"""Mistakes of YAML's own grammar in plain words, and how to read on behind them.

In: what PyYAML says (its C and its Python scanner use different words). Out: a finding, and the
text with the stumbling sign replaced by another of the same width, so that the rest of the file is
read too and every column still fits.
"""

import re
from typing import Any

import yaml

from builder.model.finding import Finding
from builder.reader.characters import Loader
from builder.reader.source import Source, at_index, mistake

BRIDGE = {
    ":": "\ua789",
    "@": "a",
    "`": "\u02cb",
    "*": "\u2217",
    "%": "o",
    ">": "\u203a",
    "|": "\u01c0",
    "-": "\u2010",
}
CUT = "the tree cannot be read until this is mended"


def explain(source: Source, text: str, error: yaml.MarkedYAMLError) -> Finding:
    """Say in plain words what is wrong with the grammar, and where."""
    mark: Any = error.problem_mark or error.context_mark
    lines = text.split("\n")
    line = re.sub(r"\s#.*", "", lines[mark.line]) if mark.line < len(lines) else ""
    problem = f"{error.context or ''} {error.problem or ''}"
    if "node content" in problem:
        rule, message, hint, mark = _bracket(text, mark)
    else:
        rule, message, hint, mark = _plain(problem, line, mark, error.context_mark)
    at = at_index(source.file, text, max(0, min(mark.index, len(text.rstrip()) - 1)))
    return mistake(rule, source.file, message, CUT, hint, at)


def _plain(problem: str, line: str, mark: Any, opened: Any) -> tuple[str, str, str, Any]:
    sign = line[mark.column : mark.column + 1]
    key, _, value = line.strip(" -").partition(": ")
    if "alias" in problem:
        return ("alias", "an alias `*` stands here, and nothing it could stand for",
                "write the text out; if `*` belongs to it, put it in quotes", mark)  # fmt: skip
    if "document" in problem:
        return ("documents", "a second document begins here",
                "one file holds one tree: delete the line of `---` or `...`", mark)  # fmt: skip
    if sign == ":" and ("mapping values" in problem or "',' or '" in problem):
        return _colon(line, mark, key, value)
    if opened and "',' or '" in problem:
        sign = "}" if "flow mapping" in problem else "]"
        return ("syntax", f"the bracket that opens here is not closed with `{sign}`",
                f"close it with `{sign}` on its line, or write on separate lines",
                opened)  # fmt: skip
    if "quoted scalar" in problem and opened and "end of stream" in problem:
        return ("syntax", "the quote that opens here is never closed",
                "close it; an apostrophe inside single quotes is written twice",
                opened)  # fmt: skip
    if "escape" in problem:
        return ("syntax", "a backslash inside double quotes does not mean itself",
                "use single quotes", mark)  # fmt: skip
    if "block scalar" in problem:
        return ("lost-text", "`>` and `|` open a block of text in YAML, so this value is not read",
                f"write `{key}: above ...` for a value above, or put it in quotes",
                mark)  # fmt: skip
    if "cannot start any token" in problem:
        return ("syntax", f"a text cannot begin with `{sign}`",
                f"put it in quotes: `{key}: \"{value.strip()}\"`", mark)  # fmt: skip
    if "sequence entries" in problem:
        return ("syntax", "a list item `- ` cannot begin on the line of its key",
                "begin the list on the next line, two blanks further in", mark)  # fmt: skip
    return ("syntax", "this line does not fit under the one above it",
            "let it begin in the same column as its neighbours; a key ends with `: `",
            mark)  # fmt: skip


def _bracket(text: str, mark: Any) -> tuple[str, str, str, Any]:
    """Tell of a bracket that is left open, or of one that nothing has opened."""
    still_open: list[Any] = []
    for token in yaml.scan(text, Loader=Loader):
        if token.start_mark.index >= mark.index:
            break
        if isinstance(token, yaml.FlowSequenceStartToken | yaml.FlowMappingStartToken):
            still_open.append(token)
        elif isinstance(token, yaml.FlowSequenceEndToken | yaml.FlowMappingEndToken):
            still_open.pop()
    if not still_open:
        sign = text[mark.index : mark.index + 1]
        return ("syntax", f"`{sign}` closes a bracket that nothing opens",
                "delete it, or put the phrase in quotes", mark)  # fmt: skip
    sign = "}" if isinstance(still_open[-1], yaml.FlowMappingStartToken) else "]"
    return ("syntax", f"the bracket that opens here is not closed with `{sign}`",
            f"close it with `{sign}` on its line, or write on separate lines",
            still_open[-1].start_mark)  # fmt: skip


def _colon(line: str, mark: Any, key: str, value: str) -> tuple[str, str, str, Any]:
    if ": " not in line[: mark.column]:
        return ("syntax", "this line begins a key, but the line above it is not finished",
                "end the key above with `: `, or begin this line in the column of its neighbours",
                mark)  # fmt: skip
    braces = "{" in line[: mark.column]
    phrase = re.split(r"[{,]\s*", line[: mark.column])[-1].partition(": ")[2]
    rest = re.split(r"[,}]", line[mark.column :])[0] if braces else line[mark.column :]
    name = re.split(r"[{,]\s*", line[: mark.column])[-1].partition(": ")[0].strip(" -")
    return ("syntax", f"a colon inside the phrase `{(phrase + rest).strip()}` begins a new key",
            f'put the phrase in quotes: `{name or key}: "{(phrase + rest).strip() or value}"`',
            mark)  # fmt: skip


def mended(text: str, error: yaml.MarkedYAMLError) -> str | None:
    """Replace the stumbling sign by one of the same width; None where that would not help."""
    mark = error.problem_mark
    problem = f"{error.context or ''} {error.problem or ''}"
    if mark is None or "document" in problem:
        return None
    if "block scalar" in problem and error.context_mark:
        mark = error.context_mark
    index = mark.index
    sign = text[index : index + 1]
    start = text.rfind("\n", 0, index) + 1
    if sign not in BRIDGE or (sign == ":" and ": " not in text[start:index]):
        return None
    return text[:index] + BRIDGE[sign] + text[index + 1 :]
