"""`baytree find`: what it prints, and its exit status."""

import json
from pathlib import Path
from typing import Any

import pytest

from builder.commands.main import main

SHOP = Path(__file__).parents[1] / "shop"


def find(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str]:
    """Run the command; return its status and what it printed."""
    status = main(["--shop", str(SHOP), "find", *words])
    return status, capsys.readouterr().out


def as_json(capsys: pytest.CaptureFixture[str], *words: str) -> dict[str, Any]:
    """Return what the command prints as JSON."""
    found: dict[str, Any] = json.loads(find(capsys, "--format", "json", *words)[1])
    return found


def test_json_holds_the_strong_hits_best_first(capsys: pytest.CaptureFixture[str]) -> None:
    """The query, no safety line, and each hit with its kind and score."""
    found = as_json(capsys, "wipers", "stuck")
    assert found.keys() == {"query", "safety", "results"}
    assert (found["query"], found["safety"]) == ("wipers stuck", None)
    first, *_ = found["results"]
    assert first.keys() == {"id", "title", "kind", "score"}
    assert (first["id"], first["kind"]) == ("wipers/stop-halfway", "tree")
    scores = [hit["score"] for hit in found["results"]]
    assert scores == sorted(scores, reverse=True)


def test_json_carries_the_safety_line(capsys: pytest.CaptureFixture[str]) -> None:
    """Danger is told whether a tree fits or not."""
    found = as_json(capsys, "smoke", "from", "the", "dash")
    assert found["safety"].startswith("WARNING: ")
    assert "qualified" in found["safety"]
    assert found["results"] == []


def test_no_hit_is_status_1_and_says_how_to_begin(capsys: pytest.CaptureFixture[str]) -> None:
    """Nonsense finds nothing, and no list of what might be."""
    status, printed = find(capsys, "zzzz")
    assert status == 1
    assert printed == "We have no tree for this. Start one: baytree new tree SYSTEM/NAME\n"


def test_the_safety_line_comes_first(capsys: pytest.CaptureFixture[str]) -> None:
    """Above everything else, and the status is still that of the hits."""
    status, printed = find(capsys, "no", "brakes")
    assert status == 1
    assert printed.startswith("WARNING: ")
