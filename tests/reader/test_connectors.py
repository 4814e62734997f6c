"""How the pins of a connector lie: counted along the rows, or listed."""

import pytest

from builder.model.finding import Finding
from builder.model.text import Text
from builder.reader.connector_records import connector
from builder.reader.nodes import Map
from builder.reader.source import Source, decode
from builder.reader.yaml_text import read_yaml


def read(text: str) -> tuple[tuple[tuple[str, ...], ...], list[Finding]]:
    """Read a connector of these lines; return its face, and the findings."""
    source = decode("kb/vehicles/tern.yml", f"of: alternator\npins: {{}}\n{text}\n".encode())
    assert isinstance(source, Source)
    root, findings = read_yaml(source)
    assert isinstance(root, Map)
    return connector(Text("c1"), root, findings).face, findings


def test_numbers_run_along_the_rows_or_as_listed() -> None:
    """Pin 1 is at the top left; where it isn't, or rows differ in length, the rows are listed."""
    assert read("rows: 2\ncolumns: 3") == ((("1", "2", "3"), ("4", "5", "6")), [])
    assert read("cavities: [[3, 4], [5, 7, 6], [1, 2]]")[0] == (("3", "4"), ("5", "7", "6"),
                                                                ("1", "2"))  # fmt: skip
    assert read("cavities: [[A1, A2]]")[0] == (("A1", "A2"),)
    assert read("") == ((), [])


@pytest.mark.parametrize(
    ("text", "message", "hint"),
    [
        ("rows: 2", "`rows` needs `columns`", "add `columns`"),
        ("columns: 2", "`columns` needs `rows`", "add `rows`"),
        ("rows: 1\ncolumns: 2\ncavities: [[1, 2]]", "both say how the pins lie", "leave out"),
        ("cavities: [[1, 2], [2, 3]]", "pin 2 is drawn twice", "every pin number once"),
        ("rows: 999999\ncolumns: 999999", "more than 200 pins", "a connector of its own"),
    ],
)
def test_a_face_that_cannot_be_drawn_is_a_finding(text: str, message: str, hint: str) -> None:
    """A face drawn by guess sends the probe to a wrong pin: nothing is drawn, and it says why."""
    face, findings = read(text)
    assert face == ()
    assert [(message in one.message, hint in one.hint) for one in findings] == [(True, True)]
