"""`baytree new tree --from-record`: a job becomes a draft, and nobody is named in it."""

import json
import shutil
from pathlib import Path
from typing import Any

import pytest

from builder.commands.main import main

TESTS = Path(__file__).parents[1]
TREE = "charging/lamp-on"
JOB = {"order": "RO-4711", "vin": "1M8GDM9AXKP042788", "customer": "Ann Miller"}
EVENTS: list[dict[str, Any]] = [
    {"event": "start", "tree": TREE, "complaint": "light flickers since June", "who": "R. Osei"},
    {"event": "done", "wrote": {"DTCs": "P0562 current", "recent parts": "ask Miller"}},
    {"event": "answer", "step": "belt", "result": 4, "stated": True},
    {"event": "acknowledge", "step": "joints", "hazards": ["battery-short"]},
    {"event": "none_of_these", "step": "joints", "seen": "the post is warm # silence: slang"},
]


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """Return a copy of the samples."""
    return Path(shutil.copytree(TESTS / "samples", tmp_path / "shop"))


def record_of_events(
    shop: Path, events: list[dict[str, Any]], capsys: pytest.CaptureFixture[str]
) -> dict[str, Any]:
    """Return the record of a walk."""
    file = shop.parent / "events.json"
    file.write_text(json.dumps(events))
    assert main(["--shop", str(shop), "walk", TREE, "--replay", str(file), "--format", "json"]) == 0
    record: dict[str, Any] = json.loads(capsys.readouterr().out)
    return record


def drafted(shop: Path, record: dict[str, Any], name: str = "charging/flicker") -> str:
    """Draft a tree from a record, and return its text."""
    file = shop.parent / "record.json"
    file.write_text(json.dumps(record))
    assert main(["--shop", str(shop), "new", "tree", name, "--from-record", str(file)]) == 0
    return (shop / f"trees/{name}.yml").read_text("utf-8")


def test_what_was_done_stands_and_what_is_missing_is_named(
    shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The steps in their words; each answer that wasn't met is a warning of the check, no more."""
    text = drafted(shop, record_of_events(shop, EVENTS, capsys))
    assert "    action: Scan all modules, save the DTCs\n" in text
    assert "      good: joints\n" in text
    assert "      rough or stuck: not-written-4\n" in text
    assert "# The customer's words: light flickers since June\n" in text
    capsys.readouterr()
    assert main(["--shop", str(shop), "check", "trees/charging/flicker.yml"]) == 0
    report = capsys.readouterr().out
    assert report.count("[branch-to-nowhere]") == text.count(": not-written-") == 6
    assert "6 of the warnings become errors once the draft is `status: ready`" in report


def test_free_remarks_are_comments_that_name_nobody(
    shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """They stand at their step and silence no rule; one that names the customer is left out."""
    record = record_of_events(shop, EVENTS, capsys) | {"job": JOB}
    text = drafted(shop, record)
    steps = text.partition("steps:\n")[2].split("\n\n")
    assert "    # Written down, DTCs: P0562 current\n" in steps[0]
    assert "    # A remark is left out here" in steps[0]
    assert "    # None of these: the post is warm # silence slang\n" in steps[2]
    secrets = ("Miller", "4711", JOB["vin"], "Osei")
    assert not [secret for secret in secrets if secret in text]
    for complaint in ("Mrs. Smith heard it", "call 555-0142", f"it is {JOB['vin']}", "Ann says"):
        text = drafted(shop, record | {"complaint": complaint}, f"charging/c-{len(complaint)}")
        assert "The customer's words" not in text, complaint


def test_a_closed_job_is_drafted_to_its_fix(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A job that was written by hand has readings alone: they say which result it was."""
    case = shop / "kb/cases/2026-0001.yml"
    case.parent.mkdir()
    case.write_text(
        "case: 2026-0001\ntree: charging/lamp-on\ndates: {opened: 2026-06-26, closed: 2026-06-28}\n"
        "path:\n  - {step: belt, result: good}\n  - {step: battery}\n"
        "  - {step: running, reading: 12.4 V}\n  - {step: output}\n"
        "  - {step: cable, reading: 0.92 V}\n"
        "fix: cable-fix\nalso_found: [glove box light was on]\noutcome: fixed\n"
    )
    command = ["--shop", str(shop), "new", "tree", "charging/cable", "--from-record", str(case)]
    assert main(command) == 0
    text = (shop / "trees/charging/cable.yml").read_text("utf-8")
    assert "      good: running\n" in text
    assert "    # Read on this job: 12.4 V\n" in text
    assert "      within spec: cable\n" in text
    assert "    # Also found: glove box light was on\n    fix: Repair the charge cable" in text
    assert "    verify: [cable, running]\n" in text
    assert "    proved_by: [{output: [within spec, above spec]}]\n" in text
    assert main(["--shop", str(shop), "check", "trees/charging/cable.yml"]) == 0
    assert main(["--shop", str(shop), "new", "tree", "charging/x", "--from-record",
                 str(shop / "kb/specs.yml")]) == 2  # fmt: skip
    assert "no closed job" in capsys.readouterr().err


def test_a_job_that_is_a_link_to_itself_is_refused_in_words(
    shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Nothing is drafted, and nobody sees a traceback."""
    ring = shop / "kb/cases/ring.yml"
    ring.parent.mkdir()
    ring.symlink_to(ring.name)
    command = ["--shop", str(shop), "new", "tree", "charging/x", "--from-record", str(ring)]
    assert main(command) == 2
    assert "no closed job" in capsys.readouterr().err


def test_steps_that_the_shop_lost_come_from_the_record(
    shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Their names and the answers that were met are kept; the rest is named as left to write."""
    record = record_of_events(shop, EVENTS, capsys)
    (shop / f"trees/{TREE}.yml").unlink()
    text = drafted(shop, record)
    assert "    # charging/lamp-on has no step `belt` any more" in text
    assert "    check: Belt?\n    results:\n      good: joints\n      anything else: not-" in text
    assert main(["--shop", str(shop), "check", "trees/charging/flicker.yml"]) == 0


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (["new", "procedure", "a-test", "--from-record", "x.json"], "drafts a tree"),
        (["new", "tree", "charging/new", "--from-record", "x.json"], "no record"),
        (["new", "tree", "Charging", "--from-record", "x.json"], "can't be a tree ID"),
        (["new", "tree", TREE, "--from-record", "events.json"], "already exists"),
        (["new", "tree", "charging/new", "--from-record", "empty.json"], "has no step yet"),
    ],
)
def test_what_cannot_be_drafted_says_why(
    shop: Path, words: list[str], message: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """One sentence, and nothing is written."""
    start = record_of_events(shop, EVENTS[:1], capsys)
    for name, content in {"x.json": {}, "events.json": record_of_events(shop, EVENTS, capsys),
                          "empty.json": start}.items():  # fmt: skip
        (shop.parent / name).write_text(json.dumps(content))
    before = sorted(shop.rglob("*"))
    named = [str(shop.parent / word) if word.endswith(".json") else word for word in words]
    assert main(["--shop", str(shop), *named]) == 2
    assert message in capsys.readouterr().err
    assert sorted(shop.rglob("*")) == before
