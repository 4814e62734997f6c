"""The scripts as they are published say what they say in the source."""

import re
from pathlib import Path

import pytest
from rjsmin import jsmin

from builder.web import WEB

NESTED = re.compile(r"\$\{[^{}`]*`")


def test_a_nested_template_loses_its_blanks() -> None:
    """That is why the scripts have none: `alternator: sensepin` once stood on a screen."""
    nested = "let words = `${part}: ${`${role} ${kind}`.trim()}`;"
    assert NESTED.search(nested)
    assert "${role}${kind}" in jsmin(nested)


@pytest.mark.parametrize("script", sorted(WEB.glob("*.js")), ids=lambda path: path.name)
def test_no_script_loses_its_blanks(script: Path) -> None:
    """No template stands inside another one."""
    assert NESTED.findall(script.read_text("utf-8")) == []
