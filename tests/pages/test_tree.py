"""The page of a tree shows every key of the format."""

import re
from collections.abc import Iterator
from dataclasses import replace
from html import unescape
from pathlib import Path
from re import sub

import pytest
import yaml

from builder.check.unchecked_library import read_library
from builder.model.library import Library
from builder.model.text import Text
from builder.model.tree import Status, Tree
from builder.pages.analysis import analyze_tree
from builder.pages.page import TreePrint
from builder.pages.tree import tree_page
from builder.reader.schemas import schema
from builder.reader.source import decode
from builder.reader.trees import tree_from

HERE = Path(__file__).parent
SHOP = HERE.parent / "shop"
EVERY_KEY = HERE / "cases" / "every-word.yml"
# `replaced_by` is of a retired tree, which has another page; the others change what is allowed.
NOT_ON_THE_PAGE = {"replaced_by", "format", "is", "part"}
TEXTS = (
    # the head
    "Horn", "Corvane Tern 2017 to 2022", "first phrase", "fourth phrase", "Charging lamp",
    "P0562-16", "starting", "Steering-assist unit", "W. Riter", "2026-03-02", "R. Eviewer",
    "2026-09-01", "Which wheel is it: left wheel (C0031) or right wheel",
    # a check
    "Words of the check", "Words of the note", "words of the condition", "Supply at the plug",
    "words of the picture", "Multimeter", "4 min, then wait 7 min", "People needed 2",
    "CAUTION The horn sounds close to the ear. It can damage hearing. Wear ear protection.",
    "record the DTCs", "words to write down", "0 to OL Ω", "0.1 Ω", "words of the origin",
    "below 5.5 Ω words of the meaning done", "module is steering-unit", "weight 6",
    "continue in the tree “Wipers stop halfway”",
    "Can't do it? Step", "No match? Call the owner, phone 14.",
    # several readings, sums, the maker's figure, phrases
    "Same method as step 1, Words of the check", "Do first step 1, Words of the check",
    "Plus: 0 to 16 V", "Ground: 0 to 16 V", "plus - ground", "words of the figure", "in mm",
    "words of its origin", "below the figure", "within the figure",
    "More than one fits? Use the first.", "phrase of a result",
    "told or looked up, not seen on the vehicle",
    # an action, a list
    "Words of the action", "words to put back", "Limit 3 times, then step",
    "back to Words of the check", "unit of the list units: unit one and unit two", "the next unit",
    # a fix, a stop
    "Words of the fix", "Words of the cause", "1.5 h",
    "name of the part, only if words of the case (€280,00 to €340,00)",
    "with a new part", "Words to verify", "Read the DTCs again", "Not fixed?",
    "Words for the customer", "Name of the option", "€99,00", "note of the option",
    "name of the service (a service)", "Only if words of the doubt.",
    "Name of what is not offered: we don't offer this. Reason not to offer", "Words of the stop",
    "Unsafe: stop",
)  # fmt: skip


@pytest.fixture(scope="module")
def library() -> Library:
    """Return the tests' shop, with a decimal comma and a drawing."""
    own, _ = read_library(SHOP)
    comma = replace(own.shop, decimal_mark="comma")
    return replace(own, shop=comma, pictures=frozenset({"probe.svg"}))


@pytest.fixture(scope="module")
def tree() -> Tree:
    """Read the tree that uses every key."""
    tree, findings = tree_from(decode("trees/horn/every-word.yml", EVERY_KEY.read_bytes()))
    assert findings == ()
    assert tree
    return tree


def shown(tree: Tree, library: Library) -> str:
    """Return the text that a reader sees, in one line, without the chart."""
    facts = replace(analyze_tree(tree, library), chart=Text(""))
    page = tree_page(tree, library, facts, (), [TreePrint("Wall chart", "")])
    return " ".join(unescape(sub(r"<[^>]+>", " ", page.body)).split())


@pytest.fixture(scope="module")
def text(tree: Tree, library: Library) -> str:
    """Return the text of the page, without blanks before punctuation."""
    return sub(r" ([,.:;?)])", r"\1", sub(r"([“(]) ", r"\1", shown(tree, library)))


@pytest.mark.parametrize("words", TEXTS)
def test_every_word_of_the_format_is_on_the_page(text: str, words: str) -> None:
    """The page shows everything that an author writes."""
    assert words in text


def keys_of(part: object) -> Iterator[str]:
    """Yield every key that a schema names."""
    if isinstance(part, dict):
        if isinstance(keys := part.get("properties"), dict):
            yield from keys
        part = list(part.values())
    if isinstance(part, list):
        yield from (key for one in part for key in keys_of(one))


def mappings(node: yaml.Node) -> Iterator[yaml.MappingNode]:
    """Yield every mapping of a YAML file."""
    if isinstance(node, yaml.MappingNode):
        yield node
        for _, value in node.value:
            yield from mappings(value)
    elif isinstance(node, yaml.SequenceNode):
        for item in node.value:
            yield from mappings(item)


def test_every_key_of_a_tree_is_in_the_case() -> None:
    """The next test can only miss a key that the case doesn't use."""
    written = EVERY_KEY.read_text("utf-8")
    keys = set(keys_of(schema("tree"))) - NOT_ON_THE_PAGE
    assert keys
    missing = sorted(key for key in keys if not re.search(rf"(?<![\w-]){key}:", written))
    assert not missing, f"tests/pages/cases/every-word.yml: use {missing}"


def test_every_key_changes_the_page(library: Library) -> None:
    """A key that is taken out of the tree is missed on its page."""
    root = yaml.compose(EVERY_KEY.read_text("utf-8"))

    def page() -> str | None:
        text = yaml.serialize(root, allow_unicode=True, width=1000)
        tree, findings = tree_from(decode("trees/wipers/every-word.yml", text.encode()))
        return shown(replace(tree, revision="1"), library) if tree and not findings else None

    whole, held = page(), 0
    assert whole
    for mapping in mappings(root):
        pairs = list(mapping.value)
        for pair in pairs:
            if pair[0].value in NOT_ON_THE_PAGE:
                continue
            mapping.value = [other for other in pairs if other is not pair]
            without = page()
            held += without is not None
            assert without != whole, (
                f"the page doesn't show `{pair[0].value}`: read it in builder/reader/step_forms.py"
                " or result_forms.py, and show it in builder/pages/step_facts.py"
            )
        mapping.value = pairs
    assert held > 50, "without most keys it is still a tree"


def test_every_step_leads_back_to_where_it_came_from(tree: Tree, library: Library) -> None:
    """Every step links to the steps that lead to it, and to its box in the chart."""
    facts = analyze_tree(tree, library)
    page = tree_page(tree, library, facts)
    for id_ in tree.steps:
        assert f'id="step-{id_}"' in page.body
        assert f'href="#box-{id_}"' in page.body
        assert f'id="box-{id_}"' in facts.chart


def test_a_draft_says_so(tree: Tree, library: Library) -> None:
    """A reader can't mistake a draft for a reviewed tree."""
    draft = replace(tree, status=Status.DRAFT, reviewed=None)
    assert "Draft: not reviewed." in shown(draft, library)
    assert "Draft" not in shown(tree, library)


def test_a_tree_of_unknown_things_is_still_shown(tree: Tree) -> None:
    """A draft may name tools, articles and hazards without a record."""
    bare, _ = read_library(SHOP)
    page = shown(replace(tree, status=Status.DRAFT), Library(bare.shop))
    assert "loud-horn" not in page  # a hazard without a record has no text; the check reports it
    assert "supply-at-the-plug" in page
