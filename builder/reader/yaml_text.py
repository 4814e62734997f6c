"""YAML without its traps: text to maps, lists and texts that know their places.

In: a `Source`. Out: the root `Node` (None where nothing can be made of it), and a finding for every
mistake. Every scalar stays text (`yes`, `012`, `1e3` and `12:30` as written); duplicate keys,
anchors, aliases, tags, tabs, several documents and text that YAML would silently lose are findings.
"""

import re
from typing import Any

import yaml

from builder.model.finding import Finding, Related, Severity
from builder.model.text import Position, Text
from builder.reader.characters import (
    Loader,
    anchors_and_tags,
    lost_comments,
    tabs,
    unseen_line_ends,
    with_blanks,
)
from builder.reader.nodes import Map, Node, Seq
from builder.reader.source import Source, mistake
from builder.reader.syntax import explain, mended

DEEPEST = 20  # levels; the format needs seven
SAFE_BOUND = 400  # up to this rough bound the composer may recurse without being measured first
MOST_SYNTAX_MISTAKES = 20

INDENT = re.compile(r"^(?: *- )* *", re.MULTILINE)


def read_yaml(source: Source) -> tuple[Node | None, list[Finding]]:
    """Read the text of a file; findings come in the order of the file."""
    findings = [*tabs(source), *unseen_line_ends(source)]
    text = with_blanks(source.text)
    if too_deep := _too_deep(source, text):
        return None, [*findings, too_deep]
    root, syntax = _composed(source, text)
    told_lines = {finding.at.line for finding in findings}
    findings += [finding for finding in syntax if finding.at.line not in told_lines]
    if root is None:
        return None, sorted(findings, key=_place)
    reading = _Reading(source.file)
    node = reading.node(root)
    findings += reading.findings
    findings += lost_comments(source, text, reading.spans)
    told = {_place(finding) for finding in findings}
    findings += [one for one in anchors_and_tags(source, text) if _place(one) not in told]
    return node, sorted(findings, key=_place)


def _place(finding: Finding) -> tuple[int, int]:
    return finding.at.line, finding.at.column


def _too_deep(source: Source, text: str) -> Finding | None:
    """Measure nesting before composing: the composer would go as deep as the file asks."""
    widest = max((len(match.group()) for match in INDENT.finditer(text)), default=0)
    if widest + text.count("[") + text.count("{") < SAFE_BOUND:
        return None
    depth = 0
    try:
        for event in yaml.parse(text, Loader=Loader):
            if isinstance(event, yaml.events.CollectionStartEvent):
                depth += 1
                if depth > DEEPEST:
                    return _deep(source, event.start_mark)
            elif isinstance(event, yaml.events.CollectionEndEvent):
                depth -= 1
    except yaml.YAMLError:
        return None  # told with its place when it is composed
    return None


def _deep(source: Source, mark: Any) -> Finding:
    at = Position(source.file, mark.line + 1, mark.column + 1, mark.line + 1, mark.column + 2)
    return mistake("depth", source.file, f"more than {DEEPEST} levels stand inside each other here",
                   "no tree needs that; a bracket may have been left open",
                   "close the brackets, or write on separate lines", at)  # fmt: skip


def _composed(source: Source, text: str) -> tuple[yaml.Node | None, list[Finding]]:
    """Compose; after a mistake that can be bridged go on, so that the next is told as well."""
    findings: list[Finding] = []
    for _ in range(MOST_SYNTAX_MISTAKES):
        try:
            return yaml.compose(text, Loader=Loader), findings
        except yaml.MarkedYAMLError as error:
            told = explain(source, text, error)
            if told not in findings:
                findings.append(told)
            bridged = mended(text, error)
            if bridged is None:
                return None, findings
            text = bridged
        except yaml.YAMLError:
            findings.append(mistake("encoding", source.file, "a sign that YAML does not allow",
                                    "the file cannot be read", "delete it"))  # fmt: skip
            return None, findings
    return None, findings


class _Reading:
    """One pass over the composed nodes, noting mistakes on the way."""

    def __init__(self, file: str) -> None:
        self.file = file
        self.findings: list[Finding] = []
        self.spans: list[tuple[int, int]] = []  # where quoted and block scalars lie in the text
        self.seen: set[int] = set()  # collections read already: an alias leads to one a second time

    def position(self, node: yaml.Node) -> Position:
        start, end = node.start_mark, node.end_mark
        place = self.file, start.line + 1, start.column + 1, end.line + 1, end.column + 1
        return tuple.__new__(Position, place)  # half the time of Position(...), once a value

    def node(self, node: yaml.Node, depth: int = 0) -> Node:
        if isinstance(node, yaml.ScalarNode):
            return self.text(node)
        if depth == DEEPEST:
            self.findings.append(_deep(Source(self.file, "", ""), node.start_mark))
            return Text("", self.position(node))
        if id(node) in self.seen:
            return Text("", self.position(node))
        self.seen.add(id(node))
        if isinstance(node, yaml.SequenceNode):
            made = Seq(self.node(item, depth + 1) for item in node.value)
            made.at = self.position(node)
            return made
        assert isinstance(node, yaml.MappingNode)
        return self.map(node, depth)

    def text(self, node: yaml.ScalarNode) -> Text:
        text = Text(node.value, self.position(node))
        if node.style and node.style not in ("", "plain"):
            self.spans.append((node.start_mark.index, node.end_mark.index))
        if not node.value and node.style in (">", "|"):
            self.lost(text, f"a lone `{node.style}` opens a block of text and its line is lost",
                      "write `above 5` for a value above 5, or put it in quotes")  # fmt: skip
        return text

    def map(self, node: yaml.MappingNode, depth: int) -> Map:
        made = Map()
        made.at = self.position(node)
        first: dict[Text, Text] = {}
        for key_node, value_node in node.value:
            if not isinstance(key_node, yaml.ScalarNode):
                self.lost(Text("", self.position(key_node)), "a key must be a plain word",
                          "write `key: value`")  # fmt: skip
                continue
            key = self.text(key_node)
            value = self.node(value_node, depth + 1)
            if key in made:
                self.duplicate(key, first[key])
            elif node.flow_style and value == "" and not getattr(value_node, "style", "x"):
                self.split_phrase(key, list(made.items()))
            else:
                made[key], first[key] = value, key
        return made

    def duplicate(self, key: Text, first: Text) -> None:
        self.findings.append(Finding(
            "duplicate-key", Severity.ERROR, key.at, f"the key `{key}` stands here a second time",
            "only one of the two would count, and nobody sees which",
            "each needs a name of its own: rename one of the two, or put both together",
            (Related(first.at, "first written here"),)))  # fmt: skip

    def split_phrase(self, key: Text, before: list[tuple[Text, Node]]) -> None:
        """Tell of a comma inside braces, which has cut a phrase in two."""
        name, head = before[-1] if before else (Text("result"), Text(""))
        if isinstance(head, Text) and head[-1:].isdigit() and key[:1].isdigit():
            hint = f"write `{name}: {head}.{key}`: a decimal point, never a comma"
        else:
            hint = (
                f'put the phrase in quotes, `{name}: "{head}, {key}"`, or write on separate lines'
            )
        self.lost(key, f"inside braces a comma ends a phrase: `{key}` was cut off from it", hint)

    def lost(self, text: Text, message: str, hint: str) -> None:
        why = "part of what was written would be lost without a word"
        self.findings.append(mistake("lost-text", self.file, message, why, hint, text.at))
