"""How-to articles: a head between two lines of `---`, then Markdown.

In: a `Source` of `kb/how-to/*.md`. Out: a `HowTo`, and findings. Raw HTML and links that run
a script are refused here, so every page can trust its text.
"""

import html
import re
from collections.abc import Iterator

from builder.model.finding import Finding
from builder.model.knowledge import HowTo
from builder.model.text import Position
from builder.reader.nodes import Map
from builder.reader.sizes import too_large
from builder.reader.source import Source, at_index, mistake
from builder.reader.validate import validate
from builder.reader.values import number, signed, text, texts, the_text
from builder.reader.yaml_text import read_yaml

HEAD = re.compile(r"\A---[ \t]*\r?\n(.*?)^---[ \t]*\r?$\n?", re.DOTALL | re.MULTILINE)
KEY = re.compile(r"\s|#|[a-z_]+:|- ")
HEADING = re.compile(r"^(#{1,6})([^\s#].*)$", re.MULTILINE)
CODE = re.compile(r"```.*?```|`[^`\n]*`", re.DOTALL)
RAW_HTML = re.compile(r"<(?=[A-Za-z/!?])[^>\n]*>?")
LINK = re.compile(r"\]\(([^)\n]*)|^\s*\[[^\]]+\]:([^\n]*)", re.MULTILINE)
SAFE_LINK = re.compile(r"(?:https?://|mailto:|[^:]*$|[^:/#]*[/#])", re.IGNORECASE)


def article_from(source: Source) -> tuple[HowTo | None, list[Finding]]:
    """Read an article from the text of its file."""
    match = HEAD.match(source.text)
    if not match and source.text.startswith("---"):
        return None, [_open_head(source)]
    if not match:
        return None, [mistake("missing-key", source.file, "the article has no head",
                              "without a title nobody can find it",
                              "start with `---`, `title: ...`, `purpose: ...`, `---`")]  # fmt: skip
    head = Source(source.file, "\n" + match.group(1), source.revision)  # keeps the line numbers
    root, findings = read_yaml(head)
    large = [*too_large(source, match.end())]
    findings += large or _unsafe(source, match.end())
    if large or not isinstance(root, Map):
        return None, findings
    mistakes, paths = validate(root, "article")
    findings += mistakes
    for name in {str(path[0]) for path in paths if path}:
        root.pop(root.key(name), None)
    return _article(source, root, match.end()), findings


def _open_head(source: Source) -> Finding:
    lines = source.text.split("\n")
    last = next((at for at, line in enumerate(lines[1:], 1) if not KEY.match(line)), 1)
    at = Position(source.file, last, 1, last, len(lines[last - 1]) + 1)
    hint = f"type `---` on a line of its own below `{lines[last - 1].strip()}`"
    why = "nobody knows where the text starts, so the page is empty"
    return mistake("missing-key", at, "the head of the article isn't closed", why, hint)


def _article(source: Source, root: Map, start: int) -> HowTo:
    id_ = source.file.rsplit("/", 1)[-1].removesuffix(".md")
    return HowTo(
        id=id_,
        file=source.file,
        at=root.key("title").at,
        title=the_text(root, "title", id_),
        purpose=the_text(root, "purpose"),
        body=source.text[start:],
        body_line=source.text.count("\n", 0, start) + 1,
        tools=texts(root, "tools"),
        hazards=texts(root, "hazards"),
        minutes=number(root, "minutes") if text(root, "minutes") else None,
        reviewed=signed(root, "reviewed"),
    )


def _unsafe(source: Source, start: int) -> Iterator[Finding]:
    body = CODE.sub(lambda match: " " * len(match.group()), source.text)
    for match in RAW_HTML.finditer(body, start):
        yield mistake("raw-html", _at(source, match), f"`{match.group()[:40]}` is HTML",
                      "an article is Markdown; HTML could run a script in the reader's browser",
                      "write it as Markdown; put a single `<` in backquotes")  # fmt: skip
    for match in HEADING.finditer(body, start):
        yield mistake("syntax", _at(source, match), f"`{match[0][:40]}` is no heading yet",
                      "the page shows it as a line of text with its signs",
                      f"type a space after `{match[1]}`: `{match[1]} {match[2][:40]}`")  # fmt: skip
    for match in LINK.finditer(body, start):
        target = _target(match.group(1) or match.group(2) or "")
        if not SAFE_LINK.match(target):
            message = f"the link `{target[:60]}` isn't a web page"
            yield mistake("unsafe-link", _at(source, match), message,
                          "it could run a script in the reader's browser",
                          "link to a page: `[words](other-article.md)` or https://...")  # fmt: skip


def _target(written: str) -> str:
    """Return where a link leads as a browser reads it: entities resolved, spaces removed."""
    return re.sub(r"[\s<>\x00-\x1f]+|\".*", "", html.unescape(written))


def _at(source: Source, match: re.Match[str]) -> Position:
    return at_index(source.file, source.text, match.start(), len(match.group()))
