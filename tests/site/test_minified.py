"""Scripts are published without comments and blanks; what is in quotes or in a pattern stays."""

import re

from builder.web import WEB

# The minifier takes a pattern right after an arrow for a division, and a template within a template
# for code: it strips the blanks in both.
LOST = re.compile(r"=>\s*/(?![/*])|`[^`\n]*\$\{[^`}\n]*(?<!\\)`")


def test_no_script_loses_the_blanks_in_its_words() -> None:
    """A pattern has a name before it is used, and no template stands within another."""
    assert LOST.search("const parts = (name) => /a b/.exec(name)")
    assert LOST.search("`${part}: ${`${role} ${kind}`.trim()}`")
    lines = ((file.name, line) for file in sorted(WEB.glob("*.js"))
             for line in file.read_text("utf-8").splitlines())  # fmt: skip
    assert [(name, line.strip()) for name, line in lines if LOST.search(line)] == []
