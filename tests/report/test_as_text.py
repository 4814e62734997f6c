"""What a person at a terminal sees."""

import os
from pathlib import Path

from builder.model.finding import Finding, Severity
from builder.report.as_text import color_wanted, findings_as_text

from .conftest import at

GOLDEN = Path(__file__).parent / "goldens" / "findings.txt"


def test_the_report_reads_as_agreed(findings, sources) -> None:
    """Place, line, mark, why, hint and related places; REFRESH=1 rewrites the file."""
    text = findings_as_text(findings, sources, 3)
    if os.environ.get("REFRESH"):
        GOLDEN.write_text(text, encoding="utf-8")
    assert text == GOLDEN.read_text(encoding="utf-8")


def test_colors_change_nothing_but_color(findings, sources) -> None:
    """Without its colors it is the plain report."""
    painted = findings_as_text(findings, sources, 3, color=True)
    assert "\033[31m" in painted
    for style in ("\033[0m", "\033[1m", "\033[2m", "\033[31m", "\033[33m"):
        painted = painted.replace(style, "")
    assert painted == findings_as_text(findings, sources, 3)


def test_color_only_on_a_terminal_and_never_against_no_color() -> None:
    """NO_COLOR counts when it is there and not empty (no-color.org)."""
    assert color_wanted(True, {})
    assert color_wanted(True, {"NO_COLOR": ""})
    assert not color_wanted(True, {"NO_COLOR": "1"})
    assert not color_wanted(True, {"TERM": "dumb"})
    assert not color_wanted(False, {})


def test_the_mark_is_under_its_range(sources) -> None:
    """East Asian characters take two columns, so their mark does too."""
    wide = Finding("slang", Severity.WARNING, at(2, 22, 24), "wide")
    lines = findings_as_text([wide], sources, 1).split("\n")
    assert lines[2] == "       | " + " " * 21 + "^^^^"


def test_nothing_in_a_file_can_drive_the_terminal() -> None:
    """Escape codes and characters that turn the writing direction are shown, not sent."""
    finding = Finding("tab", Severity.ERROR, at(1, 1, 4), "bad \033[2J name \u202egnp.exe")
    text = findings_as_text([finding], lambda _: ["\033]0;x\007 text"], 1)
    assert "\033" not in text
    assert "\u202e" not in text
    assert "\\u001b" in text


def test_a_place_beyond_the_file_is_reported_without_a_line(sources) -> None:
    """A file that shrank since it was read breaks nothing."""
    text = findings_as_text([Finding("tab", Severity.ERROR, at(99, 1, 2), "gone")], sources, 1)
    assert text == f"{at(99, 1, 2).file}:99:1: error: gone [tab]\n\n1 tree, 1 error, 0 warnings\n"


def test_no_findings_is_one_line(sources) -> None:
    """A shop that passes gets one line."""
    assert findings_as_text([], sources, 30) == "30 trees, 0 errors, 0 warnings\n"
