"""Results and branches as an author writes them who doesn't know the form.

In: what stands there. Out: the same in the form of the format, or None.
"""

import re

from builder.model.finding import Finding, Severity, edit_of, with_edit
from builder.model.text import Text
from builder.reader.nodes import Map, Node, NodePath, Seq, key_at, node_at
from builder.reader.reasons import why
from builder.reader.schemas.step_schema import KIND

ARROW = re.compile(r"([^,;>]+?) ?(?:->|=>|→) ?([\w-]+)[,;]? ?")
GOING_TO = re.compile(r"([^,;>]+?) (?:(?:goes|leads|go|lead) )?to ([a-z][\w-]*)[,;]? ?")


def results_in_brackets(value: Node) -> str | None:
    """Return `[yes: belt, no: fuse]` as the map that it is meant to be."""
    items = [item for item in value if isinstance(item, Map)] if isinstance(value, Seq) else []
    pairs = [pair for item in items for pair in item.items()]
    if len(pairs) != len(items) or not all(isinstance(words, Text) for _, words in pairs):
        return None
    return _as_map([(str(key), str(words)) for key, words in pairs]) if pairs else None


def results_with_arrows(words: str) -> str | None:
    """Return `yes -> belt, no -> fuse` as a map, also `yes goes to belt, no to fuse`."""
    form = next((one for one in (ARROW, GOING_TO) if one.sub("", words) == ""), None)
    return _as_map(form.findall(words)) if form and words else None


def _as_map(pairs: list[tuple[str, str]]) -> str:
    return f"{{{', '.join(f'{key.strip()}: {words}' for key, words in pairs)}}}"


def word_as_branch(root: Map, path: NodePath) -> Finding | None:
    """Return the finding for a word that a procedure returns, where a branch is wanted."""
    words, key = node_at(root, path), key_at(root, path)
    returns = root.value("returns")
    if not isinstance(returns, Seq) or words not in returns:
        return None
    is_branch = key == "branch"
    right = f"return: {words}" if is_branch else f"- {{result: {key}, return: {words}}}"
    finding = Finding("bad-value", Severity.ERROR, node_at(root, path).at,
                      f"`{words}` is a word that this procedure returns, and no step",
                      why("bad-value", "a branch"), f"write `{right}`")  # fmt: skip
    return with_edit(finding, edit_of(key, "return") if is_branch else None)


def step_of_words(root: Map, words: str) -> str | None:
    """Return the step whose text these words are."""
    steps = root.value("steps")
    for name, node in steps.items() if isinstance(steps, Map) else ():
        if isinstance(node, Map) and any(node.value(kind) == words for kind in KIND):
            return str(name)
    return None
