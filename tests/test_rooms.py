"""The house is as DEVELOPERS.md draws it: every module in a room, no import back up."""

import ast
import re
from collections import defaultdict
from collections.abc import Iterator
from pathlib import Path

import pytest

BUILDER = Path(__file__).parent.parent / "builder"
GUIDE = BUILDER.parent / "DEVELOPERS.md"
# Room to the rooms that it imports, exactly: an arrow that is no longer used is taken out. A room
# imports only rooms above it in this list. DEVELOPERS.md has the same table.
IMPORTS: dict[str, set[str]] = {
    "trade": set(),
    "cache": set(),
    "cores": set(),
    "web": set(),
    "pictures": set(),
    "model": set(),
    "wording": {"model", "trade"},
    "graph": {"model", "trade"},
    "reader": {"model", "pictures", "trade"},
    "plan": {"graph", "model", "wording"},
    "walk": {"graph", "model", "plan", "trade", "wording"},
    "chart": {"graph", "model", "plan", "wording"},
    "rules": {"chart", "graph", "model", "plan", "trade", "walk", "wording"},
    "reference": {"plan", "reader", "trade"},
    "check": {"cache", "cores", "graph", "model", "plan", "reader", "rules"},
    "review": {"chart", "check", "graph", "model", "plan", "reader", "rules"},
    "report": {"model", "rules"},
    "find": {"model", "trade"},
    "prints": {"chart", "cores", "graph", "model", "plan", "trade", "walk", "wording"},
    "pages": {
        "chart", "graph", "model", "plan", "reference", "review", "rules", "trade", "walk",
        "wording",
    },
    "site": {"cache", "cores", "find", "model", "pages", "pictures", "prints", "web"},
    "authoring": {"graph", "model", "reader", "rules", "walk", "wording"},
    "commands": {
        "authoring", "cache", "check", "cores", "find", "graph", "model", "pages", "plan", "prints",
        "reader", "reference", "report", "review", "rules", "site", "walk", "wording",
    },
}  # fmt: skip
# Modules that are one kind of thing each, so that each has the same names: what they are for.
ROLES = {
    "rules": {"RULE", "check", "check_library"},
    "commands": {"NAME", "HELP", "add_flags", "run"},
    "chart": {"size", "draw", "least"},  # the two styles
}
# A command or a page is named like the room's module that does its work.
SAME_ROLE = {"commands", "pages", "rules"}


def modules() -> Iterator[Path]:
    """Yield every module of the builder."""
    yield from sorted(BUILDER.rglob("*.py"))


def room_of(file: Path) -> str:
    """Return the room of a module; "" for the face of the package."""
    parts = file.relative_to(BUILDER).parts
    return parts[0] if len(parts) > 1 else ""


def imported_names(file: Path) -> Iterator[str]:
    """Yield what a module imports of ours, wherever in it the import is."""
    for node in ast.walk(ast.parse(file.read_text("utf-8"))):
        names = []
        if isinstance(node, ast.Import):
            names = [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{file}: imports are absolute"
            names = [f"{node.module}.{alias.name}" for alias in node.names]
        yield from (name for name in names if name.startswith("builder."))


def rooms_imported(room: str) -> set[str]:
    """Return the other rooms that a room imports."""
    files = (BUILDER / room).rglob("*.py")
    rooms = {name.split(".")[1] for file in files for name in imported_names(file)}
    return rooms - {room, "__version__"}  # the version is the one word of the package's face


def public_names(file: Path) -> Iterator[str]:
    """Yield the classes and functions of a module that others may use."""
    for node in ast.parse(file.read_text("utf-8")).body:
        if isinstance(node, ast.ClassDef | ast.FunctionDef) and not node.name.startswith("_"):
            yield node.name


def test_every_module_is_in_a_room() -> None:
    """Beside the rooms there is only the face of the package, and the table has every room."""
    assert {file.name for file in BUILDER.glob("*.py")} == {"__init__.py"}
    rooms = {path.name for path in BUILDER.iterdir() if (path / "__init__.py").exists()}
    assert rooms == set(IMPORTS)


@pytest.mark.parametrize("room", IMPORTS)
def test_a_room_imports_exactly_what_the_table_says(room: str) -> None:
    """No arrow is missing, and none is drawn that nobody goes."""
    assert rooms_imported(room) == IMPORTS[room]


def test_data_goes_one_way() -> None:
    """Every room imports only rooms that come before it in the table."""
    order = list(IMPORTS)
    for room, others in IMPORTS.items():
        later = {other for other in others if order.index(other) > order.index(room)}
        assert not later, f"{room} imports {later}, which come after it"


def test_the_guide_has_the_same_table() -> None:
    """A contributor reads in DEVELOPERS.md what the test holds."""
    rows = re.findall(r"^\| `(\w+)/` \|[^|]*\| ([^|]*) \|$", GUIDE.read_text("utf-8"), re.MULTILINE)
    table = {room: set(re.findall(r"\w+", others)) - {"nothing"} for room, others in rows}
    assert table == IMPORTS


def test_every_file_that_the_guide_names_is_there() -> None:
    """A file that is renamed is renamed in the guide; the guide may leave out `builder/`."""
    path = r"[\w.*-]+/(?:[\w./*-]*\.(?:py|yml|json|js|html)|(?:[\w.*-]+/)*)"
    named = re.findall(rf"`(?:python )?({path})[ `]", GUIDE.read_text("utf-8"))
    gone = sorted({name for name in named if not [*BUILDER.parent.glob(name), *BUILDER.glob(name)]})
    assert named
    assert not gone, f"DEVELOPERS.md names {gone}: write the path as it is now"


@pytest.mark.parametrize("room", IMPORTS)
def test_a_room_says_what_comes_in_and_what_goes_out(room: str) -> None:
    """The docstring of a room is the sign at its door."""
    text = ast.get_docstring(ast.parse((BUILDER / room / "__init__.py").read_text("utf-8"))) or ""
    assert "In:" in text
    assert "Out:" in text


def test_no_public_name_is_defined_twice() -> None:
    """A class or function is found by its name alone, from anywhere in the house."""
    places: dict[str, list[str]] = defaultdict(list)
    for file in modules():
        for name in public_names(file):
            if name not in ROLES.get(room_of(file), ()):
                places[name].append(file.relative_to(BUILDER).as_posix())
    assert {name: files for name, files in places.items() if len(files) > 1} == {}


def test_no_two_files_have_one_name() -> None:
    """Except a command or a page, which is named like what it runs or shows."""
    places: dict[str, list[str]] = defaultdict(list)
    for file in modules():
        if file.name != "__init__.py" and room_of(file) not in SAME_ROLE:
            places[file.name].append(file.relative_to(BUILDER).as_posix())
    assert {name: files for name, files in places.items() if len(files) > 1} == {}


def test_the_top_level_is_as_agreed() -> None:
    """Nobody looks for a file in a place that is not in the drawing."""
    agreed = {"README.md", "DEVELOPERS.md", "LICENSE", "pyproject.toml",
              "kb", "trees", "builder", "tests", "site_config"}  # fmt: skip
    here = {path.name for path in BUILDER.parent.iterdir() if not path.name.startswith(".")}
    built = {"site", "prints", "build", "dist"}  # what commands make; ignored by git
    assert here - built - {name for name in here if name.endswith(".egg-info")} <= agreed
