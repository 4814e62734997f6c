"""Brackets and quotes that an author left open, or closed without opening them.

In: the text of a file, and where YAML stopped, which is often far below. Out: what is wrong, what
to write, and the mark of the bracket or the quote itself.
"""

from collections.abc import Iterator
from contextlib import suppress
from typing import Any

import yaml

from builder.reader.characters import Loader

Explained = tuple[str, str, Any]  # message, hint, mark


def open_above(text: str, problem: str, mark: Any, opened: Any) -> Explained | None:
    """Explain a bracket or a quote that is left open on a line above the error."""
    if "flow" in problem and opened and opened.line < mark.line:
        bracket = "}" if "flow mapping" in problem else "]"
        return (f"the bracket opened here isn't closed with `{bracket}`",
                f"type `{bracket}` at the end of this line", opened)  # fmt: skip
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
    return ("the quote opened here isn't closed on its line",
            f"write `{key}{quote}{phrase}{quote}`", mark)  # fmt: skip


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
                "delete it, or put the phrase in quotes", mark)  # fmt: skip
    bracket = "}" if isinstance(still_open[-1], yaml.FlowMappingStartToken) else "]"
    return (f"the bracket opened here isn't closed with `{bracket}`",
            f"type `{bracket}` before the `{text[mark.index]}` in column {mark.column + 1}"
            if text[mark.index : mark.index + 1] in ("]", "}", ")")
            else f"close it with `{bracket}` on its line, or use separate lines",
            still_open[-1].start_mark)  # fmt: skip
