"""What a forge shows beside the changed lines; escaping as in the toolkit of GitHub Actions
(`packages/core/src/command.ts`): `%`, CR and LF in data, `:` and `,` too in properties."""

from builder.report.annotations import as_annotations


def test_one_command_a_finding_on_its_line(findings) -> None:
    """Severity, file, line, columns and rule stand where the runner looks for them."""
    lines = as_annotations(findings).splitlines()
    assert len(lines) == len(findings)
    assert lines[0] == (
        "::error file=trees/charging/lamp-on.yml,line=1,endLine=1,col=1,endColumn=7,"
        "title=unknown-key::unknown key `format`%0Ait would be passed over%0Adelete it"
    )
    assert lines[1].startswith("::warning file=")


def test_no_text_can_end_a_command_or_add_a_property(findings) -> None:
    """A line end or a comma in a name stays inside its value."""
    lines = as_annotations(findings, "a shop/").splitlines()
    assert lines[4].endswith("::two%0Alines, 100 %25: so")
    assert "file=a shop/trees/a%2C b%3Ac.yml,line=1" in lines[5]


def test_columns_are_left_out_over_several_lines(findings) -> None:
    """Columns count only within one line."""
    assert "col=" not in as_annotations(findings).splitlines()[4]
