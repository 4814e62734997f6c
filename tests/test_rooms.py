"""The house stands as its table says: no import runs back up."""

import ast
from pathlib import Path

import pytest

BUILDER = Path(__file__).parent.parent / "builder"
# Room to the rooms it may import. The same table stands in DEVELOPERS.md; change both together.
MAY_IMPORT: dict[str, set[str]] = {
    "trade": set(),
    "model": {"trade"},
    "pictures": set(),
    "reader": {"model", "trade", "pictures"},
    "plan": {"model", "trade"},
    "walk": {"model", "trade", "plan"},
    "chart": {"model", "trade", "plan"},
    "prints": {"model", "trade", "plan", "walk", "chart"},
    "find": {"model", "trade"},
    "rules": {"model", "trade", "plan", "chart"},
    "report": {"model", "rules"},
    "pages": {"model", "trade", "plan", "walk", "chart", "rules"},
    "site": {"model", "pages", "prints", "find", "pictures"},
    "authoring": {"model", "trade", "plan", "walk", "reader"},
}


def rooms_imported(file: Path) -> set[str]:
    """Return the rooms that a module imports, wherever in it the import stands."""
    found: set[str] = set()
    for node in ast.walk(ast.parse(file.read_text())):
        names = []
        if isinstance(node, ast.Import):
            names = [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{file}: imports are absolute"
            names = [f"{node.module}.{alias.name}" for alias in node.names]
        found |= {name.split(".")[1] for name in names if name.startswith("builder.")}
    found.discard("__version__")  # the one word that the house itself holds
    return found


@pytest.mark.parametrize("room", sorted(MAY_IMPORT))
def test_a_room_imports_only_what_the_table_allows(room: str) -> None:
    """Data travels one way: a room sees the rooms before it and none behind it."""
    for file in sorted((BUILDER / room).rglob("*.py")):
        beyond = rooms_imported(file) - MAY_IMPORT[room] - {room}
        assert not beyond, f"{file.relative_to(BUILDER)} imports {sorted(beyond)}"


def test_every_room_is_in_the_table() -> None:
    """A new room is added to the table when it is built."""
    rooms = {path.name for path in BUILDER.iterdir() if (path / "__init__.py").exists()}
    assert rooms == set(MAY_IMPORT)


@pytest.mark.parametrize("room", sorted(MAY_IMPORT))
def test_a_room_says_what_comes_in_and_what_goes_out(room: str) -> None:
    """The docstring of a room is its sign at the door."""
    text = ast.get_docstring(ast.parse((BUILDER / room / "__init__.py").read_text())) or ""
    assert "In:" in text
    assert "Out:" in text


def test_the_top_level_is_as_agreed() -> None:
    """Nobody looks for a file in a place that is not in the drawing."""
    agreed = {"README.md", "DEVELOPERS.md", "LICENSE", "pyproject.toml",
              "kb", "trees", "builder", "tests", "site_config"}  # fmt: skip
    here = {path.name for path in BUILDER.parent.iterdir() if not path.name.startswith(".")}
    built = {"site", "prints", "build", "dist"}  # what commands make; ignored by git
    assert here - built - {name for name in here if name.endswith(".egg-info")} <= agreed
