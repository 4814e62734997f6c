"""Characters that YAML reads differently from what an author means.

In: the text of a file. Out: findings on tabs, on invisible line ends, on no-break spaces, on text
that YAML would drop as a comment, on anchors and tags; and the text with spaces for the first
three, so that YAML counts lines and columns as editors do.
"""

import re
from collections.abc import Iterator

import yaml

from builder.model.finding import Edit, Finding, edit_in_line, with_edit
from builder.model.text import Position
from builder.reader.source import Source, mistake

FEW = 50  # lines below a tab to search for one that shows the indentation
LOST_COMMENT = re.compile(r"(?<=\S)[ \t]+#(?=[^\s#!])")
# YAML ends a line at these; editors don't.
# Where YAML needs a space: before and after a key, after a dash.
NO_BREAK_SPACE = re.compile(r"(?m)(?:^[ -]*(?:[\w-]+: *)?|[{,] *[\w-]+: *)[\u00a0\u2007\u202f]+")
NO_SPACE = re.compile(r"[\u00a0\u2007\u202f]")
# What stands after the key or the dash of a line, where it's a phrase without quotes or brackets.
WHOLE_VALUE = re.compile(r""" *(?:- +)*(?:[\w-]+: +)?([^\s"'\[\]{}#|>-].*)""")
LINE_END = re.compile(r"[\x85\u2028\u2029]|\r(?!\n|\Z)")


class Loader(getattr(yaml, "CBaseLoader", yaml.BaseLoader)):  # type: ignore[misc]
    """PyYAML's composer, in C where available, that leaves every scalar as text.

    Its type resolver runs three times for each node; here no node has a type.
    """

    def resolve(self, _kind: type[yaml.Node], _value: object, _implicit: object) -> str:
        """Give no node a type."""
        return ""

    def descend_resolver(self, _parent: yaml.Node | None, _index: object) -> None:
        """Keep no path to the node."""

    def ascend_resolver(self) -> None:
        """Keep no path to the node."""


def with_spaces(text: str) -> str:
    """Replace what only looks like a space by spaces; every position stays the same."""
    spaced = text.replace("\t", " ")
    if _may_have_line_end(text):
        spaced = LINE_END.sub(" ", spaced)
    if text.isascii():
        return spaced
    return NO_BREAK_SPACE.sub(lambda match: NO_SPACE.sub(" ", match[0]), spaced)


def _may_have_line_end(text: str) -> bool:
    """Whether a text has to be searched for invisible line ends; this test is fast."""
    return "\r" in text or not text.isascii()


def tabs(source: Source) -> Iterator[Finding]:
    """Yield a finding for the first tab of each line."""
    if "\t" not in source.text:
        return
    lines = source.text.split("\n")
    for number, line in enumerate(lines, 1):
        column = line.find("\t") + 1
        if column and not line.lstrip().startswith("#"):
            at = Position(source.file, number, column, number, column + 1)
            hint, old, new = _spaces_hint(line, lines[number : number + FEW])
            finding = mistake(
                "tab", at, "there is a tab here",
                "editors show tabs at different widths, so the indentation is unclear", hint,
            )  # fmt: skip
            yield with_edit(finding, edit_in_line(source.file, number, 1, old, new))


def _spaces_hint(line: str, below: list[str]) -> tuple[str, str, str]:
    """Return the hint, and what stands at the start of the line before and after.

    A line that starts with tabs gets as many spaces as the next line without a tab has.
    """
    if line.lstrip(" ")[:1] != "\t":
        spaced = re.sub("\t+", " ", line)
        return f"type a space instead: `{spaced.strip()}`", line.rstrip(), spaced.rstrip()
    model = next((other for other in below if other.strip() and "\t" not in other), "")
    width = len(model) - len(model.lstrip(" "))
    blank = line[: len(line) - len(line.lstrip())]
    if not width:
        hint = "start the line with spaces, two more than the line that it belongs under"
        return hint, blank, "  " * len(blank)
    return f"start the line with {width} spaces, like the next line", blank, " " * width


def unseen_line_ends(source: Source) -> Iterator[Finding]:
    """Yield a finding for the first invisible line end of each line."""
    if not _may_have_line_end(source.text) or not LINE_END.search(source.text):
        return
    for number, line in enumerate(source.text.split("\n"), 1):
        if match := LINE_END.search(line):
            column, code = match.start() + 1, ord(match.group())
            yield mistake("encoding", Position(source.file, number, column, number, column + 1),
                          f"there is an invisible line end here (character U+{code:04X})",
                          "some programs end the line here, and some don't",
                          "delete it, or start a new line; pasted text often has one")  # fmt: skip


def no_break_spaces(source: Source) -> Iterator[Finding]:
    """Yield a finding for the first no-break space of each line that YAML needs a space at."""
    if source.text.isascii():
        return
    for number, line in enumerate(source.text.split("\n"), 1):
        if match := NO_BREAK_SPACE.search(line):
            run = len(match[0]) - len(match[0].rstrip("\u00a0\u2007\u202f"))
            column, end = match.end() - run + 1, match.end()
            message = "there is a no-break space here, which only looks like a space"
            hint = f"type a space instead: `{with_spaces(line).strip()}`"
            if run > 1:
                message = (
                    f"there are {run} no-break spaces here, in columns {column} to {end}, "
                    "which only look like spaces"
                )
                hint = f"type {run} spaces instead: `{with_spaces(line).rstrip()}`"
            finding = mistake(
                "encoding", Position(source.file, number, column, number, end + 1),
                message, "YAML takes it as a letter, and the line as something else", hint,
            )  # fmt: skip
            spaced = with_spaces(line).rstrip()
            yield with_edit(finding, edit_in_line(source.file, number, 1, line.rstrip(), spaced))


def lost_comments(source: Source, text: str, spans: list[tuple[int, int]]) -> Iterator[Finding]:
    """Yield a finding for text after a `#`, except inside the spans of quoted text."""
    if " #" not in text:
        return
    quoted = iter([*spans, (len(text), len(text))])  # in the order of the file
    begin, end = next(quoted)
    start = 0
    for number, line in enumerate(text.split("\n"), 1):
        if "#" in line and not line.lstrip().startswith("#"):
            for match in LOST_COMMENT.finditer(line):
                index = start + match.end() - 1
                while end <= index and begin < len(text):
                    begin, end = next(quoted)
                if not begin <= index < end:
                    yield _lost_comment(source.file, line.rstrip(), number, match.end())
                    break
        start += len(line) + 1


def _lost_comment(file: str, line: str, number: int, column: int) -> Finding:
    rest = line[column - 1 :]
    at = Position(file, number, column, number, column + len(rest))
    finding = mistake("lost-text", at, f"YAML drops `{rest}` as a comment",
                      "part of your text would be lost without a warning",
                      f"put the whole phrase in quotes: `{_quoted(line)}`")  # fmt: skip
    return with_edit(finding, _in_quotes(file, number, line))


def _quoted(line: str) -> str:
    key, colon, value = line.strip(" -").partition(": ")
    return f'{key}: "{value}"' if colon else f'"{key}"'


def _in_quotes(file: str, number: int, line: str) -> Edit | None:
    """Return the edit that puts the value of a line in quotes; None in brackets or in quotes."""
    match = WHOLE_VALUE.fullmatch(line.rstrip())
    if match is None:
        return None
    return edit_in_line(file, number, match.start(1) + 1, match[1], quoted(match[1]))


def quoted(phrase: str) -> str:
    """Return a phrase in quotes, as YAML reads it back."""
    if '"' in phrase or "\\" in phrase:
        return "'" + phrase.replace("'", "''") + "'"
    return f'"{phrase}"'


FORBIDDEN_TOKENS = {
    yaml.AnchorToken: (
        "alias",
        "&",
        "YAML takes the word for a name of its own, so it would be lost",
    ),
    yaml.AliasToken: (
        "alias",
        "*",
        "YAML takes the word for a name of its own, so it would be lost",
    ),
    yaml.TagToken: ("tag", "!", "YAML takes the word for itself, so it would be lost"),
}


def anchors_and_tags(source: Source, text: str) -> Iterator[Finding]:
    """Yield a finding for every anchor, alias, and tag."""
    if not any(mark in text for mark in "&*!"):
        return
    try:
        for token in yaml.scan(text, Loader=Loader):
            if type(token) in FORBIDDEN_TOKENS:
                rule, sign, why = FORBIDDEN_TOKENS[type(token)]
                line, column = token.start_mark.line + 1, token.start_mark.column + 1
                at = Position(source.file, line, column, line, column + 1)
                words = text.split("\n")[line - 1]
                bare = words[: column - 1] + words[column:]
                hint = (
                    f"delete the `{sign}`: `{bare.strip()}`; if it belongs to the text, put the "
                    f"whole text in quotes: `{_quoted(words)}`"
                )
                finding = mistake(rule, at, f"a text can't start with `{sign}`", why, hint)
                edit = edit_in_line(source.file, line, column, sign, "")
                yield with_edit(finding, edit if _in_quotes(source.file, line, words) else None)
    except yaml.YAMLError:
        return  # already reported as a syntax mistake
