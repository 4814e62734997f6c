"""What a forge shows beside the changed lines; escaping as in the toolkit of GitHub Actions
(`packages/core/src/command.ts`): `%`, CR and LF in data, `:` and `,` too in properties."""

import unicodedata

from hypothesis import given
from hypothesis import strategies as st

from builder.model.finding import Finding, Severity
from builder.model.text import Position
from builder.report.annotations import findings_as_annotations


def test_one_command_a_finding_on_its_line(findings) -> None:
    """Severity, file, line, columns and rule stand where the runner looks for them."""
    lines = findings_as_annotations(findings).splitlines()
    assert len(lines) == len(findings)
    assert lines[0] == (
        "::error file=trees/charging/lamp-on.yml,line=1,endLine=1,col=1,endColumn=7,"
        "title=unknown-key::unknown key `format`%0Ait would be passed over%0Adelete it"
    )
    assert lines[1].startswith("::warning file=")


def test_no_text_can_end_a_command_or_add_a_property(findings) -> None:
    """A line end or a comma in a name stays inside its value."""
    lines = findings_as_annotations(findings, "a shop/").splitlines()
    assert lines[4].endswith("::two%0Alines, 100 %25: so")
    assert "file=a shop/trees/a%2C b%3Ac.yml,line=1" in lines[5]


def test_columns_are_left_out_over_several_lines(findings) -> None:
    """Columns count only within one line."""
    assert "col=" not in findings_as_annotations(findings).splitlines()[4]


@given(st.text(st.characters(codec=None), max_size=40), st.text(max_size=20))
def test_no_invisible_character_leaves_in_a_command(text: str, name: str) -> None:
    """NUL, escape codes, line separators and turned writing directions are shown as numbers."""
    place = Position(f"trees/{name}.yml", 1, 1, 1, 2)
    finding = Finding("tab", Severity.ERROR, place, f"bad {text}", text, text)
    command = findings_as_annotations([finding])
    assert command.endswith("\n")
    found = {unicodedata.category(one) for one in command.removesuffix("\n")}
    assert not found & {"Cc", "Cf", "Cs", "Zl", "Zp"}
    command.encode()  # a lone half of a surrogate pair would stop the report here


def test_a_nul_is_shown_as_its_number() -> None:
    """A runner that cuts its log at a NUL would lose the rest of the line."""
    finding = Finding("tab", Severity.ERROR, Position("a.yml", 1, 1, 1, 2), "a\0b\x1b[2Jc\u202ed")
    assert findings_as_annotations([finding]).endswith("::a\\u0000b\\u001b[2Jc\\u202ed\n")
