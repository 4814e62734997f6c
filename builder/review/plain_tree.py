"""A tree as it is compared: the head, and every step with its words and results.

In: the root of a tree's file, whether or not it passes the check. Out: a `PlainTree`. What a file
leaves out and what it says in the words of the default are the same.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from builder.model.text import Text
from builder.reader.nodes import Map, Node, Seq
from builder.review.plain_values import Names, Plain, meaning_of, plain_text, shown_value

KINDS = ("check", "action", "fix", "stop", "return")
DEFAULTS = {"status": "draft", "applies_to": "any", "format": "2", "kind": "foreman", "people": "1"}
BY_NAME = ("asks", "lists", "takes", "symptom")  # of the head: each entry is compared for itself


@dataclass(frozen=True, slots=True)
class PlainWord:
    """One word of a step or of the head, with its value."""

    value: Plain
    shown: str
    line: int


@dataclass(frozen=True, slots=True)
class PlainResult:
    """A result of a check; `words` has all that isn't its text or its branch."""

    text: str
    branch: str
    words: Mapping[str, PlainWord]
    line: int
    branch_line: int
    is_range: bool


@dataclass(frozen=True, slots=True)
class PlainStep:
    """A step."""

    name: str
    kind: str
    says: str  # the text after its kind
    words: Mapping[str, PlainWord]
    results: tuple[PlainResult, ...]
    line: int

    @property
    def leads_to(self) -> frozenset[str]:
        """Every target that it names."""
        words = (self.words.get(key) for key in ("then", "spent", "cannot_test", "still_there"))
        return frozenset([*(result.branch for result in self.results),
                          *(str(word.value) for word in words if word)])  # fmt: skip


@dataclass(frozen=True, slots=True)
class PlainTree:
    """A tree; the first of its steps is the start."""

    head: Mapping[str, PlainWord]
    steps: Mapping[str, PlainStep]


def plain_tree(root: Map, names: Names, system: str) -> PlainTree:
    """Return the tree; `names` are the new names of steps, `system` is the folder of its file."""
    steps = root.value("steps")
    inside = steps if isinstance(steps, Map) else Map()
    return PlainTree(
        head=dict(_head(root, names, system)),
        steps={names.get(key, str(key)): _step(names.get(key, str(key)), key.at.line, node, names)
               for key, node in inside.items()},
    )  # fmt: skip


def _head(root: Map, names: Names, system: str) -> Iterator[tuple[str, PlainWord]]:
    for key, node in root.items():
        if key == "steps" or (key == "system" and node == system):
            continue
        if key == "symptom" and isinstance(node, Seq):
            yield "symptom.words", _word("words", node, key.at.line, names)
        elif key in BY_NAME and isinstance(node, Map):
            for name, value in node.items():
                yield f"{key}.{name}", _word(key, value, name.at.line, names)
        elif not _is_default(key, node):
            yield str(key), _word(key, node, key.at.line, names)


def _is_default(key: str, node: Node) -> bool:
    return isinstance(node, str) and DEFAULTS.get(key) == plain_text(node)


def _word(key: str, node: Node, line: int, names: Names) -> PlainWord:
    return PlainWord(meaning_of(node, key, names), shown_value(node), line)


def _step(name: str, line: int, node: Node, names: Names) -> PlainStep:
    if not isinstance(node, Map):
        return PlainStep(name, "", shown_value(node), {}, (), line)
    kind = next((kind for kind in KINDS if node.value(kind) is not None), "")
    words = {
        str(key): _word(key, value, key.at.line, names)
        for key, value in node.items()
        if key != "results" and not _is_default(key, value)
    }
    says = shown_value(node.value(kind)) if kind else ""
    results = tuple(_results(node.value("results"), names))
    return PlainStep(name, kind, says, words, results, line)


def _results(node: Node | None, names: Names) -> Iterator[PlainResult]:
    if isinstance(node, Map):
        for text, branch in node.items():
            target = plain_text(shown_value(branch))
            yield _result(text, names.get(target, target), {}, text.at.line, branch)
    for item in node if isinstance(node, Seq) else ():
        if isinstance(item, Map):
            yield _result_of_map(item, names)


def _result_of_map(item: Map, names: Names) -> PlainResult:
    text, branch, returned = (item.value(key) for key in ("result", "branch", "return"))
    target = plain_text(shown_value(branch))
    words = {
        str(key): _word(key, value, key.at.line, names)
        for key, value in item.items()
        if key not in ("result", "branch", "return")
    }
    line = item.key("result").at.line
    to = names.get(target, target) if returned is None else f"return {shown_value(returned)}"
    return _result(text or Text(""), to, words, line, returned if branch is None else branch)


def _result(
    text: Node, branch: str, words: Mapping[str, PlainWord], line: int, at: Node | None
) -> PlainResult:
    if isinstance(text, Map):
        parts = sorted(f"{name}: {plain_text(shown_value(span))}" for name, span in text.items())
        shown = ", ".join(parts)
    else:
        shown = plain_text(shown_value(text))
    is_range = isinstance(text, Map) or any(letter.isdigit() for letter in shown)
    branch_line = at.at.line if at is not None else line
    return PlainResult(shown, branch, words, line, branch_line, is_range)
