"""`baytree walk` and `baytree drill`, as somebody at a terminal has them."""

import io
import json
from pathlib import Path

import jsonschema
import pytest

from builder.commands.main import main
from builder.reader.schemas import schema

SHOP = str(Path(__file__).parents[1] / "shop")
SAMPLES = str(Path(__file__).parents[1] / "samples")
TREE = "wipers/stop-halfway"


def test_what_is_typed_becomes_a_record(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """Cautions are read, a wrong line is answered, the record comes out as JSON."""
    monkeypatch.setattr("sys.stdin", io.StringIO("2\n\n11,0 V\ndone\npass\nlist\nquit\n"))
    assert main(["--shop", SHOP, "walk", TREE, "--complaint", "stops", "--format", "json"]) == 0
    printed = capsys.readouterr()
    record = json.loads(printed.out)
    jsonschema.validate(record, schema("record"))
    assert [step["step"] for step in record["steps"]] == ["switched-off", "plug", "wiring",
                                                         "wiring"]  # fmt: skip
    assert record["steps"][1]["readings"][""] == {"value": "11", "unit": "V", "typed": "11,0 V"}
    assert (record["end"], record["complaint"]) == ("wiring", "stops")
    assert "type an answer" in printed.err


@pytest.mark.parametrize("form", ["record", "events"])
def test_a_file_of_events_is_played(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], form: str
) -> None:
    """A list of events gives a record, and that record played again is the same."""
    events = [
        {"event": "answer", "step": "switched-off", "result": 1, "at": "2026-11-29T09:00:00Z"},
        {"event": "answer", "readings": {"": "11000 mV"}, "at": "2026-11-29T09:07:00Z"},
    ]
    file = tmp_path / "walk.json"
    file.write_text(json.dumps(events))
    command = ["--shop", SHOP, "walk", TREE, "--replay", str(file), "--format", "json"]
    assert main(command) == 0
    record = json.loads(capsys.readouterr().out)
    assert record["steps"][1]["minutes"] == 7
    assert record["steps"][1]["readings"][""]["value"] == "11"
    assert record["end"] == "wiring"
    if form == "record":
        file.write_text(json.dumps(record))
        assert main(command) == 0
        assert json.loads(capsys.readouterr().out) == record
    else:
        assert main(command[:-2]) == 0
        assert "wipers/stop-halfway#plug: below 11.5 (11 V)" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("content", "words"),
    [
        ("no json", "no JSON"),
        ("{}", "no list of events"),
        ('[{"event": "jump"}]', "event 1"),
        ('[{"event": "answer", "result": 7}]', "there is no result 7"),
        ('[{"event": "start", "tree": "horn/silent"}]', "not of `wipers/stop-halfway`"),
    ],
)
def test_a_file_that_cannot_be_played_says_why(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], content: str, words: str
) -> None:
    """A message with the number of the event, no traceback."""
    file = tmp_path / "walk.json"
    file.write_text(content)
    assert main(["--shop", SHOP, "walk", TREE, "--replay", str(file)]) == 2
    assert words in capsys.readouterr().err


def test_a_drill_answers_itself(capsys: pytest.CaptureFixture[str]) -> None:
    """The hidden fix is reached, and said."""
    arguments = ["drill", "charging/lamp-on", "--fault", "cable-fix", "--seed", "1", "--auto"]
    assert main(["--shop", SAMPLES, *arguments]) == 0
    assert "the fault was `cable-fix`" in capsys.readouterr().out


def test_a_drill_that_ends_elsewhere_is_reported(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """What the vehicle showed and what was answered stand side by side."""
    monkeypatch.setattr("sys.stdin", io.StringIO("\nlook\n1\nquit\n"))
    assert main(["--shop", SHOP, "drill", TREE, "--fault", "motor", "--seed", "1"]) == 1
    printed = capsys.readouterr()
    assert "the fault was" in printed.out.casefold()
    assert "`switched-off` it showed `no`, answered was `yes, always`" in printed.out


def test_a_fault_that_the_tree_lacks_is_named(capsys: pytest.CaptureFixture[str]) -> None:
    """The message lists the fixes there are."""
    assert main(["--shop", SHOP, "drill", TREE, "--fault", "clutch"]) == 2
    assert "motor" in capsys.readouterr().err


def test_choices_are_words_and_both_are_taken(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """A module is shown by its name, and taken by it; an answer by its words; JSON keeps the ID."""
    monkeypatch.setattr("sys.stdin", io.StringIO("abs MODULE\nOnly the ABS module\nquit\n"))
    command = ["--shop", SAMPLES, "walk", "network/module-silent", "--format", "json"]
    assert main(command) == 0
    printed = capsys.readouterr()
    assert "Which module does not answer?\n" in printed.err
    assert "  3  ABS module\n" in printed.err
    assert "abs-module\n" not in printed.err
    record = json.loads(printed.out)
    assert record["events"][1]["value"] == "abs-module"
    assert record["steps"][0]["result"] == "only the <module>"
    monkeypatch.setattr("sys.stdin", io.StringIO("3\n1\nquit\n"))
    assert main(command[:-2]) == 0
    assert "network/module-silent#scan: only the ABS module\n" in capsys.readouterr().out
