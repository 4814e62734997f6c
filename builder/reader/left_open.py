"""Brackets and quotes that an author left open, or closed without opening them.

In: the text of a file, and where YAML stopped, which is often far below. Out: what is wrong, what
to write, the mark of the bracket or the quote itself, and the change that closes it.
"""

import re
from collections.abc import Iterator
from contextlib import suppress
from typing import Any

import yaml

from builder.reader.characters import Loader, quoted
from builder.reader.line_forms import LineChange

Explained = tuple[str, str, Any, LineChange | None]  # message, hint, mark, change
BEFORE_COMMENT = re.compile(r".*?(?=\s*(?:\s#.*)?$)")


def open_above(text: str, problem: str, mark: Any, opened: Any) -> Explained | None:
    """Explain a bracket or a quote that is left open on a line above the error."""
    if "flow" in problem and opened and opened.line < mark.line:
        bracket = "}" if "flow mapping" in problem else "]"
        line = text.split("\n")[opened.line]
        end = BEFORE_COMMENT.match(line)
        return (f"the bracket opened here isn't closed with `{bracket}`",
                f"type `{bracket}` at the end of this line", opened,
                LineChange(opened.line, end.end() if end else len(line), "", bracket))  # fmt: skip
    if "end of stream" in problem:
        return None
    quoted = None
    for token in _tokens(text, mark.index):
        if isinstance(token, yaml.ScalarToken) and token.style in ("'", '"'):
            quoted = token
    if quoted and quoted.start_mark.line < quoted.end_mark.line >= mark.line - 1:
        return open_quote(text, quoted.start_mark)
    return None


def _tokens(text: str, index: int) -> Iterator[Any]:
    """Yield the tokens before an index, as far as they can be read."""
    with suppress(yaml.YAMLError):
        for token in yaml.scan(text, Loader=Loader):
            if token.start_mark.index >= index:
                return
            yield token


def open_quote(text: str, mark: Any) -> Explained:
    """Explain a quote that isn't closed on its line."""
    line = text.split("\n")[mark.line].rstrip("\r")
    quote, phrase = line[mark.column], line[mark.column + 1 :].strip()
    phrase = phrase.rstrip("'\"").rstrip() if phrase[-1:] in ("'", '"') else phrase
    quote = '"' if "'" in phrase and '"' not in phrase else quote
    key = f"{line[: mark.column].strip(' -')} ".lstrip()
    closed = f"{quote}{phrase}{quote}" if quote not in phrase else quoted(phrase)
    return ("the quote opened here isn't closed on its line",
            f"write `{key}{quote}{phrase}{quote}`", mark,
            LineChange(mark.line, mark.column, line[mark.column :].rstrip(), closed))  # fmt: skip


def bracket_slip(text: str, mark: Any) -> Explained:
    """Explain a bracket that is left open, or one that was never opened."""
    still_open: list[Any] = []
    for token in _tokens(text, mark.index):
        if isinstance(token, yaml.FlowSequenceStartToken | yaml.FlowMappingStartToken):
            still_open.append(token)
        elif isinstance(token, yaml.FlowSequenceEndToken | yaml.FlowMappingEndToken):
            still_open.pop()
    if not still_open:
        bracket = text[mark.index : mark.index + 1]
        return (f"`{bracket}` closes a bracket that was never opened",
                "delete it, or put the phrase in quotes", mark, None)  # fmt: skip
    bracket = "}" if isinstance(still_open[-1], yaml.FlowMappingStartToken) else "]"
    return not_closed(bracket, text[mark.index : mark.index + 1], mark, still_open[-1].start_mark)


def not_closed(bracket: str, character: str, mark: Any, opened: Any) -> Explained:
    """Explain a bracket that is still open where another one closes, or where YAML stopped."""
    if character and character in "[{" and opened.line == mark.line:
        return f"there is no comma before `{character}`", "type a comma before it", mark, None
    hint, change = f"close it with `{bracket}` on its line, or use separate lines", None
    if character and character in "])}":
        hint = f"type `{bracket}` before the `{character}` in column {mark.column + 1}"
        change = LineChange(mark.line, mark.column, "", bracket)
    return f"the bracket opened here isn't closed with `{bracket}`", hint, opened, change
