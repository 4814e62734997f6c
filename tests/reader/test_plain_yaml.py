"""What is read event by event is what the closer look at the composed nodes gives."""

from pathlib import Path
from unittest.mock import patch

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.reader import yaml_text
from builder.reader.nodes import Map, Node, Seq
from builder.reader.plain_yaml import plain_root
from builder.reader.source import Source

SHOP = Path(__file__).parents[1] / "shop"
FILES = sorted((SHOP / "trees").rglob("*.yml"))
TREE = """\
title: No crank  # on any car
symptom: {words: [won't crank, "clicks, then nothing"], lamps: []}
steps:
  battery:
    check: Is the battery good?
    note: A weak one drops
      when you crank it
    results: {yes: charge, 'no - it is dead': swap}
    do:
      - Turn the lights on
      - Wait 2 minutes
"""
SIGNS = [
    "&a ", "*a", "!t ", "\n- ", " - ", "- ", "? ", ": ", "|\n", ">", "{", "}", "[", "]", ", ", "'",
    '"', "“", "”", "’", "---\n", "...\n", "\n", "  ", "{}", "#", " # ", "title: ",
]  # fmt: skip


def with_places(node: Node) -> object:
    """Return a node with the positions of everything in it."""
    if isinstance(node, Map):
        return node.at, [(key, key.at, with_places(value)) for key, value in node.items()]
    if isinstance(node, Seq):
        return node.at, [with_places(item) for item in node]
    return node, node.at


def closer_look(text: str) -> tuple[object, object]:
    """Return the root and the findings as they are without the plain reading."""
    with patch.object(yaml_text, "plain_root", lambda _file, _text: None):
        root, findings = yaml_text.read_yaml(Source("a.yml", text, ""))
    return None if root is None else with_places(root), findings


def assert_same(text: str) -> None:
    """Hold that both readings give one result."""
    root, findings = yaml_text.read_yaml(Source("a.yml", text, ""))
    assert (None if root is None else with_places(root), findings) == closer_look(text)


@pytest.mark.parametrize("file", FILES, ids=[file.stem for file in FILES])
def test_a_sound_file_is_read_at_once(file: Path) -> None:
    """No tree of the shop needs the closer look, which would find the same."""
    text = file.read_text("utf-8")
    assert plain_root("a.yml", text)
    assert_same(text)


@given(st.lists(st.tuples(st.integers(0, len(TREE)), st.sampled_from(SIGNS)), max_size=3))
def test_a_spoiled_file_is_read_alike(signs: list[tuple[int, str]]) -> None:
    """Whatever is typed into a tree, no mistake is missed, and no text or place is another."""
    text = TREE
    for place, sign in signs:
        text = text[:place] + sign + text[place:]
    assert_same(text)
