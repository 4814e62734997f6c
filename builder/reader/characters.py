"""Characters that YAML takes for something else than an author does.

In: the text of a file. Out: findings on tabs, on line ends that cannot be seen, on text that would
be taken for a comment, on anchors and tags; and the text with blanks in place of the first two, so
that YAML counts lines and columns as editors do.
"""

import re
from collections.abc import Iterator

import yaml

from builder.model.finding import Finding
from builder.model.text import Position
from builder.reader.source import Source, mistake

FEW = 50  # lines below a tab in which a like one is looked for
LOST_COMMENT = re.compile(r"(?<=\S)[ \t]+#(?=[^\s#!])")
# Line ends for YAML that no editor counts as such.
LINE_END = re.compile(r"[\x85\u2028\u2029]|\r(?!\n|\Z)")


class Loader(getattr(yaml, "CBaseLoader", yaml.BaseLoader)):  # type: ignore[misc]
    """PyYAML's composer, in C where there is one, that leaves every scalar as text.

    It would ask three times a node which type the node is to have; here none has any.
    """

    def resolve(self, _kind: type[yaml.Node], _value: object, _implicit: object) -> str:
        """Give no node a type."""
        return ""

    def descend_resolver(self, _parent: yaml.Node | None, _index: object) -> None:
        """Keep no path to a node."""

    def ascend_resolver(self) -> None:
        """Keep no path to a node."""


def with_blanks(text: str) -> str:
    """Return the text for YAML to read: of the same length, every position in it true."""
    return LINE_END.sub(" ", text.replace("\t", " "))


def tabs(source: Source) -> Iterator[Finding]:
    """Tell of the first tab of each line."""
    if "\t" not in source.text:
        return
    lines = source.text.split("\n")
    for number, line in enumerate(lines, 1):
        column = line.find("\t") + 1
        if column and not line.lstrip().startswith("#"):
            yield mistake("tab", source.file, "a tab stands here",
                          "each editor shows another width, so nobody sees the indentation",
                          _blanks(line, lines[number : number + FEW]),
                          Position(source.file, number, column, number, column + 1))  # fmt: skip


def _blanks(line: str, below: list[str]) -> str:
    """Say how many blanks to write: as many as the next line without a tab has."""
    if line.lstrip(" ")[:1] != "\t":
        return "write a blank instead"
    like = next((other for other in below if other.strip() and "\t" not in other), "")
    return f"begin the line with {len(like) - len(like.lstrip(' '))} blanks, as the next line does"


def unseen_line_ends(source: Source) -> Iterator[Finding]:
    """Tell of the first such line end of each line."""
    if not LINE_END.search(source.text):
        return
    for number, line in enumerate(source.text.split("\n"), 1):
        if match := LINE_END.search(line):
            column, sign = match.start() + 1, ord(match.group())
            yield mistake("encoding", source.file,
                          f"a line end that cannot be seen (number {sign}) stands here",
                          "one program ends the line here, and another does not",
                          "delete it, or begin a new line; it often comes with pasted text",
                          Position(source.file, number, column, number, column + 1))  # fmt: skip


def lost_comments(source: Source, text: str, spans: list[tuple[int, int]]) -> Iterator[Finding]:
    """Tell of text behind a `#`; the spans are where quoted text lies, and a `#` is itself."""
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
    return mistake("lost-text", file, f"`{rest}` is taken for a comment and lost",
                   "part of what was written would be lost without a word",
                   f"put the whole phrase in quotes: `{_quoted(line)}`",
                   Position(file, number, column, number, column + len(rest)))  # fmt: skip


def _quoted(line: str) -> str:
    key, colon, value = line.strip(" -").partition(": ")
    return f'{key}: "{value}"' if colon else f'"{key}"'


MARKS = {
    yaml.AnchorToken: ("alias", "an anchor `&{}` stands here",
                       "a step that borrows from elsewhere cannot be read on its own",
                       "write the text out; if `&` belongs to it, put it in quotes"),
    yaml.AliasToken: ("alias", "an alias `*{}` stands here",
                      "a step that borrows from elsewhere cannot be read on its own",
                      "write the text out; if `*` belongs to it, put it in quotes"),
    yaml.TagToken: ("tag", "a tag `!` stands here", "the format has no tags",
                    "delete it; if `!` belongs to the text, put it in quotes"),
}  # fmt: skip


def anchors_and_tags(source: Source, text: str) -> Iterator[Finding]:
    """Tell of every anchor, alias and tag."""
    if not any(sign in text for sign in "&*!"):
        return
    try:
        for token in yaml.scan(text, Loader=Loader):
            if type(token) in MARKS:
                rule, message, why, hint = MARKS[type(token)]
                line, column = token.start_mark.line + 1, token.start_mark.column + 1
                at = Position(source.file, line, column, line, column + 1)
                yield mistake(
                    rule, source.file, message.format(getattr(token, "value", "")), why, hint, at
                )
    except yaml.YAMLError:
        return  # its syntax mistake has been told already
