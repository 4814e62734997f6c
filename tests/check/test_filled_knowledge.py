"""A shop that is checked again and again: its knowledge is that of its files as they are now."""

import shutil
from pathlib import Path

import pytest

from builder.check.filled_knowledge import known_knowledge

SHOP = Path(__file__).parents[1] / "shop"


@pytest.mark.parametrize(
    ("file", "old", "new"),
    [
        ("kb/procedures/first-stop.yml", "minutes: 4", "minutes: 9"),
        ("kb/procedures/first-stop.yml", "[road-test]", "[no-such]"),
        ("kb/conditions.yml", "minutes: 2\n  hazards: [road-test]", "minutes: 9"),
        ("kb/hazards.yml", "road-test:", "road-check:"),
    ],
)
def test_a_procedure_follows_all_that_it_rests_on(
    tmp_path: Path, file: str, old: str, new: str
) -> None:
    """After an edit its runs and its findings are those of a first reading."""
    shop = Path(shutil.copytree(SHOP, tmp_path / "shop"))
    before = known_knowledge(shop)
    findings = before.of_procedures()
    text = (shop / file).read_text("utf-8")
    assert old in text
    (shop / file).write_text(text.replace(old, new, 1), "utf-8")
    after, first = known_knowledge(shop, before), known_knowledge(shop)
    assert after.library == first.library
    assert after.of_procedures() == first.of_procedures()
    assert (first.runs.procedures, first.of_procedures()) != (before.runs.procedures, findings)


def test_what_rests_on_the_same_is_not_computed_again() -> None:
    """Neither the runs of the procedures nor what the rules say of them."""
    before = known_knowledge(SHOP)
    findings = before.of_procedures()
    after = known_knowledge(SHOP, before)
    assert after.of_procedures() == findings
    assert after.runs is before.runs
    assert all(after.judged[name] is one for name, one in before.judged.items())
