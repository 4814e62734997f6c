"""Every word of the format can be looked up, and what is written about it is true."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from builder.authoring.new_shop import new_shop
from builder.check.unchecked_library import read_library
from builder.model.ranges import Range
from builder.model.shop import Shop
from builder.model.tree import Status
from builder.plan.estimate_options import estimate_options
from builder.reader.range_words import COMPARISON_SYMBOLS, ONE_SIDED, OTHER_WORDS, parse_range
from builder.reader.schemas.schema_list import FILE_KINDS
from builder.reader.schemas.shop_schemas import SHOP
from builder.reader.schemas.step_schema import MODULE_VERBS, VERBS
from builder.reader.silences import silences_in
from builder.reader.trees import read_tree
from builder.reference.schema_words import ANY_STEP, FILES
from builder.reference.value_words import RANGES, SILENCE, TASKS
from builder.reference.word_list import smallest_tree, word_groups, words_named
from builder.trade.units import UNITS


def keys_of(part: Any) -> Iterator[str]:
    """Yield every key that a schema knows, at any depth."""
    if isinstance(part, dict):
        if isinstance(named := part.get("properties"), dict):
            yield from named
        for value in part.values():
            yield from keys_of(value)
    elif isinstance(part, list):
        for value in part:
            yield from keys_of(value)


@pytest.mark.parametrize("kind", FILE_KINDS)
def test_every_key_of_every_schema_is_a_word(kind: str) -> None:
    """A key that the reader takes is never missing from the list."""
    words = {word.name for group in word_groups() for word in group.words}
    assert set(keys_of(FILE_KINDS[kind])) <= words
    assert kind in FILES


def test_every_word_says_what_it_means_with_an_example() -> None:
    """Nobody looks up a word to read that it exists."""
    assert any(group.words for group in word_groups())
    for group in word_groups():
        for word in group.words:
            assert word.means.endswith("."), word
            assert len(word.means) >= 5, word
            assert word.example or word.choices, word
            assert word.places, word


def test_a_word_of_all_steps_is_listed_once() -> None:
    """Four times the same answer hides the others."""
    minutes = [word for word in words_named("minutes") if ANY_STEP in word.places]
    assert len(minutes) == 1
    (part,) = (word for word in words_named("part") if "`at` in any step" in word.places)
    assert part.places == ("`at` in any step",)


def test_a_word_is_found_as_it_is_written() -> None:
    """With its colon, with a capital, and with a blank in it."""
    assert words_named("Minutes:") == words_named("minutes")
    assert words_named("# silence") == (SILENCE,)
    assert [word.example for word in words_named("at most")] == ["result: at most 0.5"]


def test_the_range_words_are_those_of_the_reader() -> None:
    """Each example is read as a range, and no form of the reader is missing."""
    numbers = {name: text for name, (text, _) in RANGES.items() if any(map(str.isdigit, text))}
    for text in (*numbers.values(), "OL", "any"):
        assert isinstance(parse_range(text), Range), text
    for form, _ in ONE_SIDED:
        assert any(form.fullmatch(text) for text in numbers.values()), form.pattern
    for other in (*COMPARISON_SYMBOLS.values(), *OTHER_WORDS.values()):
        assert other in RANGES


def test_the_closed_lists_are_complete() -> None:
    """Tasks and units are those that the check knows."""
    assert set(TASKS) == {*VERBS, *MODULE_VERBS}
    assert all(words_named(unit) for unit in UNITS)


def test_the_silencing_comment_is_read() -> None:
    """It is copied from the page as it stands."""
    (silence,) = silences_in("a.yml", f"title: x  {SILENCE.example}\n")
    assert (silence.rule, silence.reason) == ("slang", "the customer says it so")


def test_the_options_are_those_of_an_estimate(tmp_path: Path) -> None:
    """A fix without a module has two of the four."""
    tree = smallest(tmp_path)
    options = estimate_options(tree, "horn-fix", read_library(tmp_path)[0])
    assert options
    assert all(words_named(option.id) for option in options)


def smallest(shop: Path) -> Any:
    """Write the smallest tree into a new shop and read it."""
    new_shop(shop)
    path = shop / "trees/body/horn.yml"
    path.parent.mkdir(exist_ok=True)
    path.write_text(smallest_tree(), encoding="utf-8")
    tree, mistakes = read_tree(shop, path)
    assert mistakes == ()
    return tree


def test_the_smallest_tree_is_read_and_fits_a_phone(tmp_path: Path) -> None:
    """It has no mistake, is a draft of its folder's system, and no more than 16 lines."""
    tree = smallest(tmp_path)
    assert (tree.status, tree.system) == (Status.DRAFT, "body")
    assert len(smallest_tree().splitlines()) <= 16


def test_the_defaults_are_those_of_the_reader() -> None:
    """What the list says without a word is what the shop gets without it."""
    names = {"review_good_for": "review_months"}
    shop, held = Shop.__dataclass_fields__, 0
    for name, schema in SHOP["properties"].items():
        if "default" in schema:
            default = str(shop[names.get(name, name)].default)
            assert str(schema["default"]).removesuffix(" months") == default
            held += 1
    assert held
