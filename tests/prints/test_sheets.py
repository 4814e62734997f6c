"""Every kind of sheet: it is in the list, and it prints on every paper of the shop."""

import ast
from dataclasses import replace
from io import BytesIO
from pathlib import Path

import pytest
from pypdf import PdfReader

import builder.prints
from builder.commands.print import SHEET_NAMES
from builder.model.library import Library
from builder.model.tree import Tree
from builder.prints import sheets
from builder.prints.paper import PAPERS
from builder.prints.sheets import SHEETS, PrintRequest
from builder.walk.story import Story


def test_the_command_offers_every_sheet() -> None:
    """A sheet that is not in builder/commands/print.py could not be asked for."""
    assert tuple(SHEETS) == SHEET_NAMES


def test_no_sheet_is_left_out_of_the_list() -> None:
    """A module of prints that makes a PDF of a tree is used by builder/prints/sheets.py."""
    room = Path(builder.prints.__file__).parent
    makers = {
        node.name
        for file in room.glob("*.py")
        for node in ast.parse(file.read_text("utf-8")).body
        if isinstance(node, ast.FunctionDef)
        and not node.name.startswith("_")
        and isinstance(node.returns, ast.Name)
        and node.returns.id == "bytes"
        and any(isinstance(arg.annotation, ast.Name) and arg.annotation.id == "Tree"
                for arg in node.args.args)
    }  # fmt: skip
    assert len(makers) == len(SHEETS)
    imported = {
        name.name
        for node in ast.walk(ast.parse(Path(sheets.__file__).read_text("utf-8")))
        if isinstance(node, ast.ImportFrom)
        for name in node.names
    }
    assert makers <= imported


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("name", SHEETS)
def test_a_sheet_prints_on_every_paper(
    name: str, paper: str, small: Tree, library: Library
) -> None:
    """The file opens, has the size that was asked for, and names the tree it is of."""
    story = Story("A job", {"Vehicle": "a car"}, (("Cause", ("The wire is open.",)),))
    request = PrintRequest(sheet=name, paper=paper, story=story)
    files = list(SHEETS[name].print(small, replace(library, trees={}), request))
    assert files
    for file, pdf in files:
        assert file.startswith(small.id)
        page = PdfReader(BytesIO(pdf)).pages[0]
        size = sorted(map(float, page.mediabox[2:]))
        assert size == pytest.approx(sorted((PAPERS[paper].width, PAPERS[paper].height)), abs=1)
