"""YAML without its traps: text to maps, lists and texts that know their positions.

In: a `Source`. Out: the root `Node` (None where the text can't be read), and a finding for every
mistake. Every scalar stays text (`yes`, `012`, `1e3` and `12:30` as written); duplicate keys,
anchors, aliases, tags, tabs, several documents and text that YAML would silently drop are findings.
Where `plain_yaml` sees nothing unusual, its reading is taken: the closer look here finds the same.
"""

from functools import cached_property

import yaml

from builder.model.finding import (
    Edit,
    Finding,
    with_edit,
)
from builder.model.text import Position, Text
from builder.reader.characters import (
    Loader,
    anchors_and_tags,
    lost_comments,
    no_break_spaces,
    tabs,
    unseen_line_ends,
    with_spaces,
)
from builder.reader.curly_quotes import (
    IN_CURLY_QUOTES,
    phrase_in_pieces,
    printed_quotes,
    quoted_across,
)
from builder.reader.cut_phrase import cut_answer, cut_answers, cut_phrase
from builder.reader.nesting import DEEPEST, deep_nesting, too_deep
from builder.reader.nodes import Map, Node, Seq
from builder.reader.plain_yaml import plain_root
from builder.reader.second_key import item_without_dash, second_key
from builder.reader.source import Source, mistake
from builder.reader.swallowed_item import swallowed_item
from builder.reader.syntax import SUBSTITUTES, bridged, explain

MOST_SYNTAX_MISTAKES = 20


def read_yaml(source: Source) -> tuple[Node | None, list[Finding]]:
    """Read the text of a file; the findings are in the order of the file."""
    findings = [*tabs(source), *unseen_line_ends(source), *no_break_spaces(source)]
    text = with_spaces(source.text)
    if too_many := too_deep(source, text):
        return None, [*findings, too_many]
    if plain := plain_root(source.file, text):
        node, spans = plain
    else:
        root, syntax = _composed(source, text)
        reported_lines = {finding.at.line for finding in findings}
        findings += [finding for finding in syntax if finding.at.line not in reported_lines]
        if root is None:
            return None, sorted(findings, key=_place)
        reading = _Reading(source.file, text)
        node, spans = reading.node(root), reading.spans
        findings += reading.findings
    findings += lost_comments(source, text, spans)
    reported = {_place(finding) for finding in findings}
    tokens = anchors_and_tags(source, text)
    findings += [finding for finding in tokens if _place(finding) not in reported]
    return node, sorted(findings, key=_place)


def _place(finding: Finding) -> tuple[int, int]:
    return finding.at.line, finding.at.column


def _composed(source: Source, text: str) -> tuple[yaml.Node | None, list[Finding]]:
    """Compose; read on after a mistake where possible, so that the next is reported too."""
    findings: list[Finding] = []
    for _ in range(MOST_SYNTAX_MISTAKES):
        try:
            return yaml.compose(text, Loader=Loader), findings
        except yaml.MarkedYAMLError as error:
            finding = explain(source, text, error)
            if finding.at.line not in {other.at.line for other in findings}:
                findings.append(finding)
            readable = bridged(text, error)
            if readable is None:
                return None, findings
            text = readable
        except yaml.YAMLError:
            message = "there is a character that YAML doesn't allow"
            findings.append(mistake("encoding", source.file, message,
                                    "the file can't be read", "delete it"))  # fmt: skip
            return None, findings
    return None, findings


class _Reading:
    """One pass over the composed nodes that collects mistakes."""

    def __init__(self, file: str, source: str) -> None:
        self.file, self.source = file, source
        self.findings: list[Finding] = []
        self.spans: list[tuple[int, int]] = []  # of quoted and block scalars in the text
        self.seen: set[int] = set()  # collections read so far: an alias leads to one again

    @cached_property
    def lines(self) -> list[str]:
        """The lines of the file."""
        return self.source.split("\n")

    def position(self, node: yaml.Node) -> Position:
        start, end = node.start_mark, node.end_mark
        return Position(self.file, start.line + 1, start.column + 1, end.line + 1, end.column + 1)

    def node(self, node: yaml.Node, depth: int = 0, is_item: bool = False) -> Node:
        if isinstance(node, yaml.ScalarNode):
            return self.text(node)
        if depth == DEEPEST:
            self.findings.append(deep_nesting(Source(self.file, "", ""), node.start_mark))
            return Text("", self.position(node))
        if id(node) in self.seen:
            return Text("", self.position(node))
        self.seen.add(id(node))
        if isinstance(node, yaml.SequenceNode):
            items = Seq([self.node(item, depth + 1, is_item=True) for item in node.value])
            items.at = self.position(node)
            if node.flow_style:
                items[:] = self.join_quoted(items)
            return items
        assert isinstance(node, yaml.MappingNode)
        return self.map(node, depth, is_item and not node.flow_style)

    def text(self, node: yaml.ScalarNode) -> Text:
        text = Text(node.value, self.position(node))
        if node.style:  # quoted, or a block
            self.spans.append((node.start_mark.index, node.end_mark.index))
        elif IN_CURLY_QUOTES.fullmatch(text):
            if SUBSTITUTES[":"] in text:
                return text  # the colon is the mistake that is reported
            self.findings.append(printed_quotes(text))
        elif node.start_mark.line != node.end_mark.line and " - " in node.value:
            lines = self.lines
            marks = node.start_mark.line, node.end_mark.line
            self.findings.extend(filter(None, [swallowed_item(self.file, lines, *marks)]))
        if not node.value and node.style in (">", "|"):
            self.lost(text, f"a single `{node.style}` starts a text block, so this line is lost",
                      "write `above 5` for a value above 5, or put it in quotes")  # fmt: skip
        return text

    def join_quoted(self, items: list[Node]) -> list[Node]:
        """Report phrases that a comma cuts inside curly quotes, and put the whole ones in place."""
        while cut := quoted_across(items):
            start, end = cut[0], cut[1] + 1
            finding, whole = phrase_in_pieces(items[start:end], self.lines)
            self.findings.append(finding)
            items = [*items[:start], whole, *items[end:]]
        return items

    def map(self, node: yaml.MappingNode, depth: int, is_item: bool) -> Map:
        """Read a map; an item of a list begins with a dash, which is easily forgotten."""
        entries = Map()
        entries.at = self.position(node)
        cut = self.cut_answers(node) if node.flow_style else ()
        pieces: list[Text] = []  # of a phrase that commas cut
        for key_node, value_node in node.value:
            if key_node in cut:
                continue
            if not isinstance(key_node, yaml.ScalarNode):
                self.lost(Text("", self.position(key_node)), "a key must be plain text",
                          "write `key: value`")  # fmt: skip
                continue
            key, value = self.text(key_node), self.node(value_node, depth + 1)
            if node.flow_style and value == "" and not getattr(value_node, "style", "x"):
                pieces.append(key)
                continue
            self.join_phrase(pieces, entries)
            pieces = []
            if key in entries and is_item and key == next(iter(entries)):
                self.findings.append(item_without_dash(key, value, entries.key(key)))
                break  # what follows belongs to the next item
            if key in entries:
                finding, is_next = second_key(key, entries.key(key), self.lines)
                self.findings.append(finding)
                if is_next:
                    break
            else:
                entries[key] = value
        self.join_phrase(pieces, entries)
        return entries

    def cut_answers(self, node: yaml.MappingNode) -> list[yaml.ScalarNode]:
        """Report answers inside braces that a comma cuts, and return the pieces without a value."""
        cut: list[yaml.ScalarNode] = []
        for pieces, branch in cut_answers(node, self.source):
            texts = [Text(piece.value, self.position(piece)) for piece in pieces]
            line = self.lines[texts[0].at.line - 1]
            said = cut_answer(texts, branch, line)
            self.lost(texts[0], said.message, said.hint, said.edit)
            cut += pieces[:-1]
        return cut

    def join_phrase(self, pieces: list[Text], entries: Map) -> None:
        """Report commas inside braces, which cut a phrase; put the whole one in its place."""
        if not pieces:
            return
        key = pieces[0]
        line = self.lines[key.at.line - 1]
        if line[key.at.end_column - 1 :].lstrip().startswith(":"):
            self.lost(
                key, f"`{key}:` has nothing behind it", f"write what belongs there: `{key}: ...`"
            )
            self.join_phrase(pieces[1:], entries)
            return
        before = list(entries.items())
        cut = cut_phrase(pieces, before, line)
        self.lost(key, cut.message, cut.hint, cut.edit)
        if before and cut.whole is not None:
            entries[before[-1][0]] = cut.whole

    def lost(self, text: Text, message: str, hint: str, edit: Edit | None = None) -> None:
        why = "part of your text would be lost without a warning"
        self.findings.append(with_edit(mistake("lost-text", text.at, message, why, hint), edit))
