"""Records of walks at the command line: printed, filed, and refused where they don't hold."""

import json
import shutil
from pathlib import Path
from typing import Any

import pytest

from builder.check.unchecked_library import read_library
from builder.commands.main import main

SAMPLES = Path(__file__).parents[1] / "samples"
TREE = "horn/silent"
EVENTS = [
    {"event": "start", "tree": TREE, "complaint": "Mrs. Miller says the horn is dead",
     "at": "2026-03-17T09:00:00Z", "who": "R. Osei"},
    {"event": "answer", "step": "fuse", "result": 0, "at": "2026-03-17T09:04:00Z"},
    {"event": "answer", "step": "horn", "result": 0, "at": "2026-03-17T09:10:00Z"},
]  # fmt: skip
JOB = {"order": "RO-4711", "vin": "1M8GDM9AXKP042788", "customer": "Miller", "mileage": "38,400 mi",
       "year": "2019"}  # fmt: skip


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """Return a copy of the samples."""
    return Path(shutil.copytree(SAMPLES, tmp_path / "shop"))


@pytest.fixture
def record(shop: Path, capsys: pytest.CaptureFixture[str]) -> dict[str, Any]:
    """Return the record of a horn that was replaced and tested."""
    file = shop.parent / "events.json"
    events = [*EVENTS, {"event": "done", "at": "2026-03-17T09:40:00Z"},
              {"event": "verify", "passed": True, "at": "2026-03-17T09:45:00Z"}]  # fmt: skip
    file.write_text(json.dumps(events))
    command = ["--shop", str(shop), "walk", TREE, "--replay", str(file), "--format", "json"]
    assert main(command) == 0
    made: dict[str, Any] = json.loads(capsys.readouterr().out)
    return made | {"job": JOB}


def written(shop: Path, record: object) -> str:
    """Write a record beside the shop, and return its path."""
    file = shop.parent / "record.json"
    file.write_text(record if isinstance(record, str) else json.dumps(record))
    return str(file)


@pytest.mark.parametrize("sheet", ["customer", "story"])
def test_a_record_is_printed(shop: Path, record: dict[str, Any], sheet: str) -> None:
    """One file of the tree in which the walk ended."""
    out = shop.parent / "out"
    command = ["--shop", str(shop), "print", "--sheet", sheet, "--record", written(shop, record)]
    assert main([*command, "--out", str(out)]) == 0
    (file,) = out.rglob("*.pdf")
    assert file.read_bytes().startswith(b"%PDF")


def test_a_filed_job_names_nobody(
    shop: Path, record: dict[str, Any], capsys: pytest.CaptureFixture[str]
) -> None:
    """No name, VIN, order, or words of the customer; month and round mileage; it reads back."""
    assert main(["--shop", str(shop), "cases", "add", written(shop, record)]) == 0
    (file,) = (shop / "kb" / "cases").glob("*.yml")
    text = file.read_text("utf-8")
    for secret in ("Miller", "4711", JOB["vin"], "Osei", "dead", "38,400", "03-17", "61"):
        assert secret not in text
    library, findings = read_library(shop)
    assert not findings
    (case,) = library.cases.values()
    assert (case.fix, case.closed, case.vehicle["km"]) == ("horn-fix", "2026-03-01", "60000")
    assert case.walked
    capsys.readouterr()
    assert main(["--shop", str(shop), "cases", "add", written(shop, record)]) == 2
    assert "filed already" in capsys.readouterr().err


HOSTILE = {
    "no JSON": "{",
    "no map": "[]",
    "a word that is no value": '{"tree": NaN}',
    "nested too deep": "[" * 100_000,
    "half": '{"tree": "horn/silent"}',
}


@pytest.mark.parametrize("text", HOSTILE.values(), ids=HOSTILE.keys())
@pytest.mark.parametrize("command", [["cases", "add"], ["print", "--sheet", "story", "--record"]])
def test_what_is_no_record_is_refused(
    shop: Path, text: str, command: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    """One sentence names the file, and nothing is written."""
    assert main(["--shop", str(shop), *command, written(shop, text)]) == 2
    error = capsys.readouterr().err
    assert "record.json" in error
    assert "Traceback" not in error
    assert not (shop / "kb" / "cases").exists()
    assert not (shop / "prints").exists()


CHANGES = {
    "of another revision": ({"revision": "0000000"}, "was changed since this walk"),
    "of another tree": ({"tree": "horn/none"}, "no tree `horn/none`"),
    "without events": ({"events": []}, "has no events"),
    "with another end": ({"end": "fuse-fix"}, "doesn't follow"),
    "with a step left out": ({"steps": []}, "don't follow"),
    "with another event": ({"events": [*EVENTS[:2], {"event": "rejoin"}]}, "event 3"),
    "of a tree outside": ({"tree": "../../etc/passwd"}, "no tree"),
}


@pytest.mark.parametrize(("change", "message"), CHANGES.values(), ids=CHANGES.keys())
def test_a_record_that_does_not_hold_is_refused(
    shop: Path, record: dict[str, Any], change: dict[str, Any], message: str,
    capsys: pytest.CaptureFixture[str],
) -> None:  # fmt: skip
    """What was changed by hand, or belongs to another revision, is told and not printed."""
    file = written(shop, record | change)
    assert main(["--shop", str(shop), "print", "--sheet", "customer", "--record", file]) == 2
    assert message in capsys.readouterr().err
    assert not (shop / "prints").exists()


def test_a_walk_that_goes_on_has_no_sheet(
    shop: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Nothing is repaired yet: no price, no closed job, but a story so far."""
    file = tmp_path / "events.json"
    file.write_text(json.dumps(EVENTS[:2]))
    assert main(["--shop", str(shop), "walk", TREE, "--replay", str(file), "--format", "json"]) == 0
    half = written(shop, capsys.readouterr().out)
    assert main(["--shop", str(shop), "print", "--sheet", "customer", "--record", half]) == 2
    assert "goes on" in capsys.readouterr().err
    assert main(["--shop", str(shop), "cases", "add", half]) == 2
    assert "isn't there yet" in capsys.readouterr().err
    assert main(["--shop", str(shop), "walk", TREE, "--replay", str(file),
                 "--format", "story"]) == 0  # fmt: skip
    story = capsys.readouterr().out
    assert "Not found yet" in story
    assert "Nothing was repaired." in story


@pytest.mark.parametrize(
    "flags", [["--sheet", "wall"], ["--sheet", "customer", "--fix", "horn-fix"], ["--all"]]
)
def test_flags_that_do_not_go_together(shop: Path, flags: list[str]) -> None:
    """A record names its job; a story needs one."""
    assert main(["--shop", str(shop), "print", *flags, "--record", "x.json"]) == 2
    assert main(["--shop", str(shop), "print", TREE, "--sheet", "story"]) == 2
