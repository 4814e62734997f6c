"""The cache of a check: it saves work and never changes the findings."""

import pickle
import random
import re
import shutil
from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path

import pytest

from builder.cache.database import cache_file, opened, put_row, rows, transaction
from builder.check.unchecked_library import read_library
from builder.check.verdict import check, in_order, known_library
from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.model.text import Position
from builder.model.tree import Tree
from builder.reader.trees import read_tree, tree_id, tree_names
from builder.rules.shared.judge import judge

TODAY = date(2026, 11, 1)
SHOP = Path(__file__).parents[1] / "shop"
# Edits that an author makes, sound and unsound; each is made to some tree or file of the shop.
EDITS = (
    ("trees/*/*.yml", "title: ", "title: Another "),
    ("trees/*/*.yml", "status: ready", "status: draft"),
    ("trees/*/*.yml", "    minutes: ", "    note: Look twice.\n    minutes: "),
    ("trees/*/*.yml", "branch: ", "branch: nowhere-"),
    ("trees/*/*.yml", "does: [check-supply]", "does: [clear-codes]"),
    ("trees/*/*.yml", "  words:\n", "  words:\n    - yet another way to say it\n"),
    ("trees/*/*.yml", "branch: network/", "branch: nowhere/"),
    ("trees/*/*.yml", "format: 2\n", "format: 2\n# a line more\n"),
    ("kb/tools.yml", "multimeter:", "meter:"),
    ("kb/hazards.yml", "signal: WARNING", "signal: NOTICE"),
)


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """Copy the tests' shop, whose trees hand off to each other."""
    return Path(shutil.copytree(SHOP, tmp_path / "shop"))


def findings_of(shop: Path) -> tuple[Finding, ...]:
    """Check a shop."""
    with opened(shop) as cache:
        verdict = check(shop, cache, TODAY)
    assert cache.notes == []
    return verdict.findings


def test_a_check_with_a_cache_finds_the_same(shop: Path) -> None:
    """After any edit the findings are those of a first check, to the line and the word."""
    choose, edited = random.Random(7), set()
    findings_of(shop)
    for number in range(24):
        pattern, old, new = EDITS[number % len(EDITS)]
        files = [file for file in sorted(shop.glob(pattern)) if old in file.read_text("utf-8")]
        if files:
            edited.add(old)
            file = choose.choice(files)
            file.write_text(file.read_text("utf-8").replace(old, new, 1), "utf-8")
        remembered = findings_of(shop)
        cache_file(shop).unlink()
        assert remembered == findings_of(shop), f"after {old!r} became {new!r}"
    assert edited == {old for _, old, _ in EDITS}


def test_a_line_of_another_file_is_shown_where_it_is_now(shop: Path) -> None:
    """A finding that points into `kb/` follows its line when others are written above it."""
    case = shop / "kb/cases/2026-05-d3d8fe5d.yml"
    case.write_text(case.read_text("utf-8").replace("14.15 V", "3 V"), "utf-8")
    (before,) = (one for one in findings_of(shop) if one.rule == "closed-job")
    case.write_text("# A line more\n" + case.read_text("utf-8"), "utf-8")
    (after,) = (one for one in findings_of(shop) if one.rule == "closed-job")
    assert (after.at.file, after.at.line) == (before.at.file, before.at.line + 1)


def test_a_cached_library_is_the_library(shop: Path) -> None:
    """A print or a search after an edit uses the trees as they are now."""
    findings_of(shop)
    file = shop / "trees/charging/battery-lamp.yml"
    file.write_text(file.read_text("utf-8").replace("title: ", "title: Another ", 1), "utf-8")
    read = read_library(shop)[0]
    with opened(shop) as cache:
        known = known_library(shop, cache)
        assert dict(known.trees) == dict(read.trees)
    assert replace(known, trees={}, entry_numbers={}) == replace(read, trees={})
    assert (known.listings, known.callers) == (read.listings, read.callers)
    assert known.entry_numbers[f"charging/battery-lamp#{FIRST}"] == 1


FIRST = "record"
ENTERED = "network/module-silent#answers"  # where battery-lamp leads into


@pytest.mark.parametrize("slip", ["tools: [no-such, multimeter]", "tools: {multimeter: yes}"])
def test_a_tree_with_an_error_has_no_numbers_for_others(shop: Path, slip: str) -> None:
    """They may differ once the mistake is fixed, whether it is of the text or of a rule."""
    file = shop / "trees/network/module-silent.yml"
    sound = file.read_text("utf-8")
    with opened(shop) as cache:
        assert check(shop, cache, TODAY).library.entry_numbers[ENTERED] == 5
        file.write_text(sound.replace("tools: [multimeter]", slip, 1), "utf-8")
        assert ENTERED not in check(shop, cache, TODAY).library.entry_numbers
        file.write_text(sound, "utf-8")
        assert check(shop, cache, TODAY).library.entry_numbers[ENTERED] == 5


def test_what_has_not_changed_is_not_read_again(
    shop: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A second check reads no tree."""
    findings_of(shop)
    read: list[str] = []
    monkeypatch.setattr(
        "builder.check.examine.read_tree", lambda *given: read.append(given[1].name)
    )
    findings_of(shop)
    assert read == []


def test_a_summary_is_remembered_too(shop: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Who searches after a check reads no tree to see what is in it."""
    findings_of(shop)
    read: list[str] = []
    monkeypatch.setattr(
        "builder.check.examine.read_tree", lambda *given: read.append(given[1].name)
    )
    with opened(shop) as cache:
        assert [tree.id for tree in known_library(shop, cache).trees.values()]
    assert read == []


def test_only_errors_count_as_errors(shop: Path) -> None:
    """A build stops at an error and goes on after a warning."""
    file = shop / "trees/charging/battery-lamp.yml"
    sound = file.read_text("utf-8")
    file.write_text(sound.replace("tools: [", "tools: [no-such, ", 1), "utf-8")
    with opened(shop) as cache:
        verdict = check(shop, cache, TODAY)
        errors = sum(one.severity is Severity.ERROR for one in verdict.findings)
        assert verdict.errors == errors > 0
        file.write_text(
            file.read_text("utf-8").replace("status: ready", "status: draft", 1), "utf-8"
        )
        draft = check(shop, cache, TODAY)
    assert draft.drafts - verdict.drafts == {"trees/charging/battery-lamp.yml"}
    assert draft.errors < len(draft.findings)
    assert draft.errors == sum(one.severity is Severity.ERROR for one in draft.findings)


def test_named_files_have_their_findings_and_no_others(shop: Path) -> None:
    """An author at work asks about one file; without, all come file by file and line by line."""
    slips = [shop / "trees/charging/battery-lamp.yml", shop / "trees/wipers/stop-halfway.yml"]
    for file in slips:
        text = file.read_text("utf-8")
        file.write_text(text.replace("tools: [", "tools: [no-such, "), "utf-8")
    whole = findings_of(shop)
    assert list(whole) == sorted(whole, key=lambda one: (one.at.file, one.at.line, one.at.column))
    assert {one.at.file for one in whole} >= {str(file.relative_to(shop)) for file in slips}
    with opened(shop) as cache:
        verdict = check(shop, cache, TODAY, [slips[0]])
        found = verdict.findings
        assert found
        assert len(found) + verdict.elsewhere == len(whole)
        assert {one.at.file for one in found} == {"trees/charging/battery-lamp.yml"}
        for gone in (shop / "trees/charging/gone.yml", shop.parent):
            with pytest.raises(FileNotFoundError):
                check(shop, cache, TODAY, [gone])


def test_findings_at_one_place_come_by_their_rules() -> None:
    """However long they are, and each once: a report is the same after every run."""
    place = "trees/horn/silent.yml", 2, 1
    first = Finding("dead-end", Severity.ERROR, Position(*place, 9, 1), "one")
    second = Finding("no-such-tool", Severity.ERROR, Position(*place, 2, 5), "two")
    assert in_order([second, first, second]) == (first, second)


def test_a_shop_cannot_bring_its_own_cache(shop: Path) -> None:
    """A pull request can't bring its own results: the cache isn't in the shop."""
    assert not cache_file(shop).resolve().is_relative_to(shop.resolve())
    assert cache_file(shop) != cache_file(shop.parent)


class Trap:
    """A value that runs something when it is read back carelessly."""

    def __reduce__(self) -> tuple[object, tuple[str]]:
        """Touch a file."""
        return Path.touch, (Path("trap-has-run"),)  # type: ignore[return-value]


def test_a_tampered_cache_runs_nothing(shop: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Rows are read back by a reader that makes values of the model and nothing else."""
    monkeypatch.chdir(shop)
    file = shop / "trees/charging/battery-lamp.yml"
    file.write_text(file.read_text("utf-8").replace("branch: ", "branch: nowhere-", 1), "utf-8")
    before = findings_of(shop)
    assert before
    no_finding = (("", "", ""), None, ((), (), (), ("",)))
    values = (Trap(), {"a": 1}, (), no_finding)
    for content in (*map(pickle.dumps, values), b"", b"nonsense"):
        for kind in ("tree", "summary"):
            with opened(shop) as cache, transaction(cache):
                for name, _ in list(rows(cache, kind)):
                    put_row(cache, kind, name, content)
            assert findings_of(shop) == before
    assert not (shop / "trap-has-run").exists()


@pytest.fixture
def judged(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Note every tree that is checked."""
    trees: list[str] = []

    def counted(tree: Tree, library: Library) -> tuple[Finding, ...]:
        trees.append(tree.id)
        return judge(tree, library)

    monkeypatch.setattr("builder.check.examine.judge", counted)
    return trees


def trees_with(shop: Path, words: str) -> set[str]:
    """Return the trees in whose files some words are."""
    files = (shop / "trees").rglob("*.yml")
    return {tree_id(file.relative_to(shop).as_posix()) for file in files
            if words in file.read_text("utf-8")}  # fmt: skip


def test_a_first_check_reads_and_judges_each_tree_once(
    shop: Path, judged: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Also those that only others lead to, or into: they wait until all are read."""
    file = shop / "trees/charging/battery-lamp.yml"
    sound = file.read_text("utf-8")
    file.write_text(re.sub(r"\nsymptom:\n( .*\n)+", "\n", sound), "utf-8")
    read: list[str] = []

    def counted(
        shop: Path, path: Path, raw: bytes | None = None
    ) -> tuple[Tree | None, tuple[Finding, ...]]:
        read.append(tree_id(path.relative_to(shop).as_posix()))
        return read_tree(shop, path, raw)

    monkeypatch.setattr("builder.check.examine.read_tree", counted)
    findings_of(shop)
    trees = {tree_id(name) for name in tree_names(shop)}
    assert sorted(read) == sorted(trees)
    assert sorted(judged) == sorted(trees)


def test_a_changed_tool_judges_the_trees_that_name_it(shop: Path, judged: list[str]) -> None:
    """Whatever else is in the file of the tools, and wherever its lines move."""
    findings_of(shop)
    judged.clear()
    file = shop / "kb/tools.yml"
    text = file.read_text("utf-8")
    file.write_text(
        "# a line more\n" + text.replace("thermometer:\n", "thermometer:\n  note: New\n")
    )
    findings_of(shop)
    naming = trees_with(shop, "thermometer")
    assert naming
    assert set(judged) == naming


def test_a_changed_tree_judges_those_that_it_leads_into(shop: Path, judged: list[str]) -> None:
    """Also those farther on: what a walk has behind it depends on every tree it came by."""
    findings_of(shop)
    judged.clear()
    file = shop / "trees/steering/heavy-after-swap.yml"
    assert "branch: charging/battery-lamp\n" in file.read_text("utf-8")
    file.write_text(file.read_text("utf-8").replace("title: ", "title: Another ", 1), "utf-8")
    findings_of(shop)
    middle = {"charging/voltage-high", "network/module-silent"}  # into which battery-lamp leads
    assert set(judged) == {"steering/heavy-after-swap"} | middle


def test_a_new_day_judges_no_tree(shop: Path, judged: list[str]) -> None:
    """Only the rules about dates look again, and they look at all trees in summary."""
    before = findings_of(shop)
    judged.clear()
    with opened(shop) as cache:
        later = check(shop, cache, TODAY + timedelta(days=3000))
    assert judged == []
    assert {one.rule for one in later.findings} - {one.rule for one in before} == {"review-too-old"}


def test_a_second_check_writes_nothing(shop: Path) -> None:
    """What has not changed is not written again: the cache stays as it was, to the byte."""
    findings_of(shop)
    before = cache_file(shop).read_bytes()
    findings_of(shop)
    assert cache_file(shop).read_bytes() == before
