"""The scripts as they are published say what they say in the source."""

import re
from pathlib import Path

import pytest
from rjsmin import jsmin

from builder.web import WEB

NESTED = re.compile(r"\$\{[^{}`]*`")
AFTER_AN_ARROW = re.compile(r"=>\s*/(?![/*])")


def test_a_nested_template_loses_its_blanks() -> None:
    """That is why the scripts have none: `alternator: sensepin` once stood on a screen."""
    nested = "let words = `${part}: ${`${role} ${kind}`.trim()}`;"
    assert NESTED.search(nested)
    assert "${role}${kind}" in jsmin(nested)


def test_a_pattern_after_an_arrow_loses_its_blanks() -> None:
    """It's taken for a division: so a pattern has a name before it is used."""
    pattern = "let parts = (name) => /^(.*) (.*)$/.exec(name);"
    assert AFTER_AN_ARROW.search(pattern)
    assert "(.*)(.*)" in jsmin(pattern)


@pytest.mark.parametrize("script", sorted(WEB.glob("*.js")), ids=lambda path: path.name)
def test_no_script_loses_its_blanks(script: Path) -> None:
    """No template stands inside another one, and no pattern right after an arrow."""
    text = script.read_text("utf-8")
    assert NESTED.findall(text) == []
    assert AFTER_AN_ARROW.findall(text) == []
