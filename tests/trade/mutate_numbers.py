"""Changes each number in `builder/trade/` by a little and asks whether a test notices.

    python tests/trade/mutate_numbers.py                 every module, some minutes
    python tests/trade/mutate_numbers.py wires battery   only these

In: the sources of the room. Out: each change that no test noticed, and the share that was noticed;
exit 1 when one survived that is not excused below, or less than 95 % were noticed. Number literals
are raised by one, decimals in text by one in their last digit; tables written as letters lose their
last one and have their first two exchanged. Wordings are left alone. The ordinary suite does not
run this.
"""

import ast
import os
import re
import signal
import sys
from collections.abc import Iterator
from importlib.abc import SourceLoader
from importlib.machinery import ModuleSpec
from importlib.util import spec_from_loader
from pathlib import Path
from typing import NamedTuple

import hypothesis
import pint  # noqa: F401  the references are loaded once, before the first fork
import pytest
import udsoncan.services  # noqa: F401
import vin  # noqa: F401
import vininfo  # noqa: F401

ROOT = Path(__file__).resolve().parents[2]
ROOM = ROOT / "builder" / "trade"
TESTS = ROOT / "tests" / "trade"
SECONDS = 60  # a change that makes a loop endless counts as noticed
LEAST_SHARE = 0.95

# Changes that nothing outside can see: module, a piece of the line, and why.
EXCUSED: tuple[tuple[str, str, str], ...] = (
    ("calls", "get_close_matches", "only the first match is used, so asking for two is the same"),
    ("codes", "len(typed) < 5", "five characters that pass the checks above are a code already"),
    ("codes", '"0123456789ABCDEF"', "the order of the characters plays no part"),
    (
        "codes",
        'CODE_LOOK_ALIKES = str.maketrans("OQIL", "0011")',
        "O and Q are the same digit",
    ),
    ("codes", 'typed[1] not in "0123"', "the order of the characters plays no part"),
    ("status", "FAILS_NOW, FAILED_CYCLE", "the mask of failed bits has bit 0 already"),
    ("unit_algebra", "get_close_matches", "only the first match is used"),
    ("vin", '"1AJ"', "the order of the characters of one value plays no part"),
    ("refusal_codes", "range(0x41, 0x50)", "the number behind the range has a name of its own"),
    ("refusal_codes", "range(0x81, 0xFF)", "the first number of the range has a name of its own"),
)
# Modules whose tests are named after another one.
SHARED_TESTS = {"refusal_codes": "refusals", "lookups": "calculators", "answers": "calculators"}
UNITS = {"CCA"}  # symbols, not tables of letters


class Change(NamedTuple):
    """One literal and what it becomes."""

    module: str
    line: int
    start: int  # byte offset in the line
    end: int
    old: str
    new: str


class _Mutated(SourceLoader):
    """Loads one module of the room from changed text; serves as its own finder."""

    def __init__(self, module: str, source: str) -> None:
        self.name, self.source = f"builder.trade.{module}", source

    def find_spec(self, name: str, path: object, target: object = None) -> ModuleSpec | None:
        return spec_from_loader(name, self) if name == self.name else None

    def get_filename(self, fullname: str) -> str:
        return f"<changed {fullname}>"

    def get_data(self, path: str) -> bytes:
        return self.source.encode()


def changes(module: str, source: str) -> Iterator[Change]:
    """List the literals of a module that carry a number, with their changed text."""
    tree = ast.parse(source)
    wordings = {id(part) for node in ast.walk(tree) for part in _wordings(node)}
    lines = source.encode().split(b"\n")
    for node in ast.walk(tree):
        if not isinstance(node, ast.Constant) or id(node) in wordings:
            continue
        if node.lineno != node.end_lineno:
            continue
        old = lines[node.lineno - 1][node.col_offset : node.end_col_offset].decode()
        for new in _changed(node.value, old):
            yield Change(module, node.lineno, node.col_offset, node.end_col_offset or 0, old, new)


def _wordings(node: ast.AST) -> list[ast.AST]:
    """Texts within an f-string and the texts of documentation."""
    if isinstance(node, ast.JoinedStr):
        return [part for part in node.values if isinstance(part, ast.Constant)]
    if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant):
        return [node.value]
    return []


def _changed(value: object, old: str) -> list[str]:
    """Give the changed texts of one literal, none for what is no number."""
    if isinstance(value, int) and not isinstance(value, bool):
        return [hex(value + 1) if old.startswith("0x") else str(value + 1)]
    if not isinstance(value, str):
        return []
    if re.fullmatch(r"-?[0-9]+(\.[0-9]+)?(/0)?", value) and len(value) > 0:
        at = -3 if value.endswith("/0") else -1
        digit = value[at]
        new = f"{value[:at]}{'8' if digit == '9' else int(digit) + 1}"
        return [repr(new + (value[at + 1 :] if at != -1 else ""))]
    if re.fullmatch(r"[0-9A-Z]{2,}", value) and value not in UNITS:
        return [repr(f"{value[1]}{value[0]}{value[2:]}"), repr(value[:-1])]
    return []


def _applied(source: str, change: Change) -> str:
    lines = source.encode().split(b"\n")
    line = lines[change.line - 1]
    lines[change.line - 1] = line[: change.start] + change.new.encode() + line[change.end :]
    return b"\n".join(lines).decode()


def _noticed(change: Change, source: str, tests: list[Path]) -> bool:
    """Run tests on the changed module in a process of its own."""
    child = os.fork()
    if child == 0:
        signal.alarm(SECONDS)
        with Path(os.devnull).open("w") as nowhere:
            os.dup2(nowhere.fileno(), 1)
            os.dup2(nowhere.fileno(), 2)
        sys.meta_path.insert(0, _Mutated(change.module, _applied(source, change)))
        arguments = ["-x", "-q", "--assert=plain", "-p", "no:cacheprovider", *map(str, tests)]
        os._exit(1 if pytest.main(arguments) else 0)
    _, status = os.waitpid(child, 0)
    return status != 0


def _tests_of(module: str) -> list[Path]:
    own = TESTS / f"test_{SHARED_TESTS.get(module, module)}.py"
    return [own if own.exists() else TESTS / "test_expressions.py"]


def main(names: list[str]) -> int:
    """Try every change of the named modules, or of all."""
    os.chdir(ROOT)
    sys.path.insert(0, str(ROOT))
    hypothesis.settings.register_profile("few", max_examples=15, database=None, deadline=None)
    hypothesis.settings.load_profile("few")
    tried = noticed = 0
    unexcused: list[str] = []
    for path in sorted(ROOM.glob("*.py")):
        if names and path.stem not in names:
            continue
        source = path.read_text("utf-8")
        if _noticed(Change(path.stem, 1, 0, 0, "", ""), source, [TESTS]):
            print(f"{path.name}: the tests fail without any change; fix that first")
            return 1
        for change in changes(path.stem, source):
            tried += 1
            quick = _noticed(change, source, _tests_of(path.stem))
            if quick or _noticed(change, source, [TESTS]):
                noticed += 1
                continue
            text = source.split("\n")[change.line - 1].strip()
            why = next((w for m, piece, w in EXCUSED if m == path.stem and piece in text), None)
            report = f"{path.name}:{change.line}: {change.old} -> {change.new}: {text}"
            print(f"{report}\n    {why or 'NOT NOTICED'}", flush=True)
            if why is None:
                unexcused.append(report)
    share = noticed / tried if tried else 1.0
    print(f"{noticed} of {tried} changes noticed ({share:.1%}), {len(unexcused)} without a reason")
    return 1 if unexcused or share < LEAST_SHARE else 0


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
