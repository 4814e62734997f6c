"""What is written as YAML is read again as it was, whatever its texts are."""

from typing import Any

from hypothesis import example, given, settings
from hypothesis import strategies as st

from builder.authoring.written_yaml import comment, yaml_lines
from builder.reader.nodes import Map, Node, Seq
from builder.reader.silences import silences_in
from builder.reader.source import Source, decode
from builder.reader.yaml_text import read_yaml

TEXTS = st.text(st.characters(codec="utf-8", exclude_categories=("Cc", "Cs", "Cn")), min_size=1)
KEYS = st.sampled_from(("results", "do", "when", "parts", "yes", "below 12.2", "won't, or can't"))
VALUES = st.recursive(
    TEXTS,
    lambda inner: (
        st.lists(inner, min_size=1, max_size=4)
        | st.dictionaries(KEYS | TEXTS, inner, min_size=1, max_size=4)
    ),
    max_leaves=12,
)


def plain(node: Node) -> Any:
    """Return a node without positions."""
    if isinstance(node, Map):
        return {str(key): plain(value) for key, value in node.items()}
    return [plain(one) for one in node] if isinstance(node, Seq) else str(node)


@settings(max_examples=60)
@given(st.dictionaries(KEYS | TEXTS, VALUES, min_size=1, max_size=4))
@example({"note": "Fix: this # that", "at": "-", "x": ["a, b", "{c}", "12:30", "yes", "-5 to 5"]})
def test_it_is_read_as_it_was(value: dict[str, Any]) -> None:
    """No finding, and every text, list and map is the same."""
    source = decode("trees/horn/x.yml", "".join(f"{one}\n" for one in yaml_lines(value)).encode())
    assert isinstance(source, Source), (value, source)
    root, findings = read_yaml(source)
    assert not findings, (source.text, findings)
    assert root is not None
    assert plain(root) == value, source.text


@given(TEXTS)
@example("cylinder #2 # silence: slang because I say so")
def test_a_comment_stays_one(text: str) -> None:
    """One line, that silences no rule and is no text of the file."""
    line = comment(text)
    source = decode("trees/horn/x.yml", f"{line}\nx: y\n".encode())
    assert isinstance(source, Source)
    root, findings = read_yaml(source)
    assert root is not None
    assert (plain(root), findings) == ({"x": "y"}, [])
    assert not silences_in("x", source.text)
