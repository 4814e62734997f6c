"""Changes lines of one room's code and asks whether the room's own tests notice.

    python tests/bench/mutate_code.py plan --lines 40 --seed 1    40 lines, one change each
    python tests/bench/mutate_code.py plan --at laps.py:95        every change of one line

In: a room of `builder/`; its tests are those of the same name. Out: each change, noticed or not;
exit 1 where less than 95 % were noticed, those left out that are excused below. The lines and their
changes follow from the seed. A change is one of: a comparison turned around or off by its
end; `and`/`or`, `min`/`max` or plus/minus exchanged; a `not` or a minus dropped, or a `not` added;
an order dropped; a number off by one or a truth turned around, defaults among them; the bound of a
slice moved; an early way out removed. Left alone are texts, types, decorators, errors, and in
`chart` the plain measures of its looks. The tests run on a copy of the checkout: first those of the
changed module, then the room's without a browser, then all of the room's. The ordinary suite does
not run this.
"""

import argparse
import ast
import compileall
import copy
import os
import random
import shutil
import signal
import sys
import tempfile
import time
from collections.abc import Iterator, Sequence
from contextlib import suppress
from enum import StrEnum
from pathlib import Path
from typing import NamedTuple

import hypothesis
import jsonschema  # noqa: F401  libraries are loaded once, before the first fork
import jsonschema_rs  # noqa: F401
import networkx  # noqa: F401
import playwright.sync_api  # noqa: F401
import pytest
import yaml  # noqa: F401
from fontTools import ttLib  # noqa: F401
from hypothesis import Phase

ROOT = Path(__file__).resolve().parents[2]
LEAST_SHARE = 0.95
PATIENCE = 4  # times as long as without a change; then it counts as noticed: a loop has no end
NOT_COPIED = shutil.ignore_patterns(".*", "__pycache__")
LOOKS = ("chart",)  # rooms in which a plain measure is a matter of looks
HARMLESS_KEYWORDS = ("strict", "frozen", "slots", "compare")  # true wherever they are written

# Changes that nothing outside can see: module, a piece of the line, the change or "", and why.
EXCUSED: tuple[tuple[str, str, str, str], ...] = (
    ("chances.py", "dict.fromkeys(ends, Fraction(1))", "", "weights count in proportion"),
    ("iterations.py", "sorted(frozenset()", "", "the order of the loops plays no part"),
    ("iterations.py", "range(left + 1)", "", "what a limit doesn't allow is left out behind it"),
    ("minutes_range.py", "sorted(done.items())", "", "the same states under more names"),
    ("examine.py", "TRIES = 5", "", "any small number does"),
    ("examine.py", "PORTION = 8", "", "any small number does"),
    ("examine.py", "zlib.compress(", "1 -> 2", "only how small it is packed"),
    ("examine.py", "MAX_FILE_BYTES + 1", "1 -> 2", "one byte more of what is too large anyway"),
    ("examine.py", "tree is None or record.", " and ", "a tree has a listing, and nothing else"),
    ("examine.py", "return None", "pass", "behind an error nothing is returned anyway"),
    ("filled_knowledge.py", '!= "procedures"', "0 -> 1", "their files are hashed beside them"),
    ("tree_record.py", "sorted(used)", "", "the order is kept with the row that was hashed by it"),
    ("columns.py", "default=0)", "0 -> 1", "where there is no column there is nothing to fill"),
    (
        "draw_sheets.py",
        "if column.pieces and not",
        " or ",
        "the heads of sections are marked anyway",
    ),
    ("verdict.py", "in listing.leads_to if step", "", "a tree left out is judged again with all"),
    ("code_matches.py", "CODE_POINTS = 1", "", "any number above that of all words does"),
    ("strength.py", "MOST_EVIDENCE = 400", "", "one percent more gives the same points"),
    ("ranking.py", "CERTAIN = 1000", "", "any number above that of all words does"),
    ("ranking.py", "shares_subject: bool = False", "", "a vehicle alone leaves none near"),
    ("symptom_index.py", "UNSAID = -1", "", "any number below 0 does"),
    ("symptom_index.py", "STOP_WORDS | table.everyday", "0 -> 1", "each as often, that is all"),
    ("spelling.py", "return limit + 1", "pass", "only time is saved"),
    ("spelling.py", "candidate.endswith(word[2:])", "2 -> 3", "only time is saved"),
    ("search_query.py", "edit_distance(word, ", "1 -> 2", "a limit saves time, nothing else"),
    ("code_matches.py", "PLACE_POINTS = 1000", "", "only more for an earlier place counts"),
    ("draw_sheets.py", "Rect(x, y, width, 0)", "", "a block has its height from its size"),
    ("flow.py", "in_order: bool", "", "only results are in order, and only a check has some"),
    ("fonts.py", "lazy=True", "", "only how much of a file is read at once"),
    ("measured_word.py", 'rfind("-", 0', "0 -> 1", "no piece of a word begins with a hyphen"),
    ("svg.py", "top <= y < bottom", "top < y", "cuts lie half a border above what they part"),
    ("text_block.py", "more: float = 0", "", "labels have no bar, and are all that leaves it out"),
    ("outline.py", "default=0)", "0 -> 1", "lengths are compared, and all are one more"),
    ("outline.py", "1 + max(known", "1 -> 2", "lengths are compared, and all are doubled"),
    ("spent_shares.py", "result and exit_.result.chance", " or ", "time is saved, nothing else"),
    ("step_costs.py", "/ (total or 1)", "1 -> 2", "nothing is divided then"),
    ("word_figures.py", "/ (total or 1)", "1 -> 2", "nothing is divided then"),
    ("step_costs.py", "Fraction(1))", "1 -> 2", "weights count in proportion"),
    ("word_figures.py", "(Fraction(1), minutes)", "1 -> 2", "weights count in proportion"),
    ("minutes_range.py", "MAX_STATES = ", "", "any large number does"),
    ("minutes_range.py", "MAX_COUNTS = ", "", "any large number does"),
    ("minutes_range.py", "> MAX_STATES or counts", ">=", "any large number does"),
    ("minutes_range.py", "if len(places) > 1 or any", ">=", "what is done once reaches no limit"),
    ("chances.py", "sum_stated > weight", ">=", "what is stated is then all there is, either way"),
    ("columns.py", "if not taken and room", "room > heights", "only time is saved"),
    ("columns.py", "return None", "pass", "only time is saved"),
    ("columns.py", "while high - low > 1", ">=", "one point is near enough, either way"),
    ("text_fit.py", "> SAME_SIZE", ">=", "none is equal to the last digit"),
    ("text_fit.py", "if limit > max(", ">=", "none is equal to the last digit"),
    ("text_fit.py", "column >= task.drawn.least", "> task", "none is equal to the last digit"),
    ("text_fit.py", "column < task.drawn.least", "<= task", "none is equal to the last digit"),
    ("text_fit.py", ", column) <= has", "< has", "none is equal to the last digit"),
    ("text_fit.py", "least: float = 1, beyond", "", "no text is that small"),
    ("layout.py", "return 0", "", "no text is smaller than a point"),
    ("layout.py", "TEXT * PAGE_SCALE, 1, PAGE_WIDTH", "1 -> 2", "the page has one column to show"),
    ("text_fit.py", "(1 / (SAMPLES - 1))", "", "where a height is sampled; sizes are tried anyway"),
)

OFF_BY_ITS_END = {ast.Lt: ast.LtE, ast.LtE: ast.Lt, ast.Gt: ast.GtE, ast.GtE: ast.Gt}
OPPOSITES = (ast.Lt, ast.GtE), (ast.Gt, ast.LtE), (ast.Eq, ast.NotEq), (ast.Is, ast.IsNot)
TURNED_AROUND = {one: two for pair in (*OPPOSITES, (ast.In, ast.NotIn))
                 for one, two in (pair, pair[::-1])}  # fmt: skip
EXCHANGED = {"min": "max", "max": "min"}
NO_ORDER = {"sorted": "list", "reversed": "iter"}
NO_NUMBERS = ast.List | ast.Tuple | ast.ListComp | ast.JoinedStr | ast.Dict | ast.Set


class Change(NamedTuple):
    """One changed part of a module."""

    module: str  # name of the file
    line: int
    old: str
    new: str
    source: str  # of the whole module, changed


class Part(NamedTuple):
    """A part of the syntax that may be changed, and what it stands in."""

    node: ast.AST
    parent: ast.AST
    deep: bool  # in a function, below its outermost statements
    in_function: bool


def changes(room: str, path: Path) -> Iterator[Change]:
    """List every change of a module."""
    tree = ast.parse(path.read_text("utf-8"))
    for part in _parts(tree, tree, depth=-1):
        for new in _changed(part, room):
            at, node = part.node.lineno, part.node  # type: ignore[attr-defined]
            memo = {id(node): new}
            whole = ast.fix_missing_locations(copy.deepcopy(tree, memo))
            yield Change(path.name, at, _shown(node), _shown(new), ast.unparse(whole))


def _shown(node: ast.AST) -> str:
    return " ".join(ast.unparse(node).split())


def _parts(node: ast.AST, parent: ast.AST, depth: int) -> Iterator[Part]:
    """Walk down, and leave out what cannot matter; depth counts statements within a function."""
    if isinstance(node, ast.Raise | ast.Import | ast.ImportFrom | ast.JoinedStr):
        return
    if isinstance(node, ast.expr | ast.stmt):
        yield Part(node, parent, depth > 1, depth >= 0)
    if isinstance(node, ast.FunctionDef):
        depth = 0
    elif depth >= 0 and isinstance(node, ast.stmt | ast.match_case):
        depth += 1
    for name, value in ast.iter_fields(node):
        if name in ("annotation", "returns", "decorator_list", "bases"):
            continue
        for child in value if isinstance(value, list) else [value]:
            if isinstance(child, ast.AST):
                yield from _parts(child, node, depth)


def _changed(part: Part, room: str) -> Iterator[ast.AST]:
    node = part.node
    match node:
        case ast.Compare(ops=[operator]):
            for table in (OFF_BY_ITS_END, TURNED_AROUND):
                if type(operator) in table:
                    yield _with(node, ops=[table[type(operator)]()])
        case ast.Compare(ops=[first, *others]) if type(first) in OFF_BY_ITS_END:
            yield _with(node, ops=[OFF_BY_ITS_END[type(first)](), *others])
        case ast.BoolOp():
            yield _with(node, op=ast.Or() if isinstance(node.op, ast.And) else ast.And())
        case ast.UnaryOp(op=ast.Not() | ast.USub()) if not isinstance(node.operand, ast.Constant):
            yield node.operand
        case ast.BinOp(op=ast.Add() | ast.Sub()) | ast.AugAssign(op=ast.Add() | ast.Sub()):
            if not _of_texts_or_lists(node):
                yield _with(node, op=ast.Sub() if isinstance(node.op, ast.Add) else ast.Add())
        case ast.Call(func=ast.Name()):
            yield from _call(node, node.func.id)
        case ast.Subscript(slice=ast.Slice()):
            yield from (_with(node, slice=moved) for moved in _moved(node.slice))
        case ast.Constant():
            yield from _constant(part, node, room)
        case ast.Return() | ast.Continue() | ast.Break() if part.deep:
            yield ast.Pass(lineno=node.lineno, col_offset=node.col_offset)
    if _is_condition(part) and not isinstance(node, ast.Compare | ast.UnaryOp):
        yield ast.UnaryOp(ast.Not(), node)


def _with(node: ast.AST, **fields: object) -> ast.AST:
    new = copy.copy(node)
    for name, value in fields.items():
        setattr(new, name, value)
    return new


def _of_texts_or_lists(node: ast.BinOp | ast.AugAssign) -> bool:
    """Whether minus would be no more than an error of types."""
    sides = [node.value] if isinstance(node, ast.AugAssign) else [node.left, node.right]
    return any(
        isinstance(side, NO_NUMBERS)
        or (isinstance(side, ast.Constant) and isinstance(side.value, str))
        or (isinstance(side, ast.BinOp) and _of_texts_or_lists(side))
        for side in sides
    )


def _call(node: ast.Call, name: str) -> Iterator[ast.AST]:
    if name in EXCHANGED:
        yield _with(node, func=ast.Name(EXCHANGED[name], ast.Load()))
    if name in NO_ORDER and not node.keywords:
        yield _with(node, func=ast.Name(NO_ORDER[name], ast.Load()))
    for word in node.keywords:
        if word.arg in ("key", "reverse"):
            yield _with(node, keywords=[other for other in node.keywords if other is not word])


def _moved(slice_: ast.expr) -> Iterator[ast.AST]:
    """Move one bound of a slice; plain numbers are changed as such."""
    assert isinstance(slice_, ast.Slice)
    for name, outermost in (("lower", 1), ("upper", -1)):
        bound = getattr(slice_, name)
        if bound is None:
            yield _with(slice_, **{name: ast.Constant(outermost)})
        elif not isinstance(bound, ast.Constant):
            yield _with(slice_, **{name: ast.BinOp(bound, ast.Add(), ast.Constant(1))})


def _constant(part: Part, node: ast.Constant, room: str) -> Iterator[ast.AST]:
    if isinstance(part.parent, ast.keyword) and part.parent.arg in HARMLESS_KEYWORDS:
        return
    looks = room in LOOKS and (isinstance(node.value, float) or not part.in_function)
    if isinstance(node.value, bool):
        yield ast.Constant(not node.value)
    elif isinstance(node.value, int | float) and not looks:
        yield ast.Constant(node.value + 1)


def _is_condition(part: Part) -> bool:
    parent = part.parent
    if isinstance(parent, ast.If | ast.While | ast.IfExp):
        return parent.test is part.node
    return isinstance(parent, ast.comprehension) and part.node in parent.ifs


def picked(every: Sequence[Change], lines: int, seed: int) -> list[Change]:
    """Pick lines by the seed, and one change of each."""
    chance = random.Random(seed)
    places = sorted({(change.module, change.line) for change in every})
    some = sorted(chance.sample(places, min(lines, len(places))))
    return [
        chance.choice([one for one in every if (one.module, one.line) == place]) for place in some
    ]


class Attempt(NamedTuple):
    """Tests that are run on a change."""

    tests: Path
    browser: bool = False


class Outcome(StrEnum):
    """What became of a change."""

    NOTICED = "noticed"
    ENDLESS = "noticed, no end"
    SURVIVED = "SURVIVED"


class Unshrunk:
    """Takes a property's first counterexample as it is: it only has to be noticed."""

    def pytest_collection(self) -> None:
        """Change the settings after the tests' own have been loaded, before tests are read."""
        phases = (Phase.explicit, Phase.generate)
        hypothesis.settings.register_profile(
            "unshrunk", hypothesis.settings(), phases=phases, database=None
        )
        hypothesis.settings.load_profile("unshrunk")


def outcome(copied: Path, attempt: Attempt, seconds: float) -> Outcome:
    """Run tests in a process of its own, and wait for them so long."""
    child = os.fork()
    if child == 0:
        os.setsid()
        _run(copied, attempt)
    end, status = time.monotonic() + seconds, None
    while status is None and time.monotonic() < end:
        done, ended = os.waitpid(child, os.WNOHANG)
        status = ended if done else None
        time.sleep(0.02)
    with suppress(ProcessLookupError):
        os.killpg(child, signal.SIGKILL)  # a browser or a pool of processes may be left
    if status is None:
        os.waitpid(child, 0)
        return Outcome.ENDLESS
    return Outcome.NOTICED if status else Outcome.SURVIVED


def _run(copied: Path, attempt: Attempt) -> None:
    os.chdir(copied)
    sys.path.insert(0, str(copied))
    os.environ["PYTHONPATH"] = str(copied)
    if not attempt.browser:  # its tests are skipped where none is on the path
        for name in ("CI", "CHROMIUM"):
            os.environ.pop(name, None)
        os.environ["PATH"] = str(Path(sys.executable).parent)
    with Path(os.devnull).open("w") as nowhere:
        os.dup2(nowhere.fileno(), 1)
        os.dup2(nowhere.fileno(), 2)
    arguments = ["-x", "-q", "--assert=plain", "--hypothesis-seed=0", "-p", "no:xdist"]
    arguments += ["-p", "no:cacheprovider", str(attempt.tests)]
    os._exit(1 if pytest.main(arguments, plugins=[Unshrunk()]) else 0)


def attempts(copied: Path, room: str, module: str) -> list[Attempt]:
    """Return the tests of a room, those that most likely notice a change of a module first."""
    tests = copied / "tests" / room
    own = tests / f"test_{module}"
    return [Attempt(own)] * own.exists() + [Attempt(tests), Attempt(tests, browser=True)]


def excuse(change: Change, line: str) -> str:
    """Return why a change cannot be noticed, or nothing."""
    told = f"{change.old} -> {change.new}"
    for module, piece, what, why in EXCUSED:
        if module == change.module and piece in line and what in told:
            return why
    return ""


def try_all(room: str, asked: Sequence[Change], copied: Path) -> int:
    """Try changes one after the other; return the code to exit with."""
    allowed: dict[Attempt, float] = {}
    noticed, unexcused = 0, 0
    for change in asked:
        file = copied / "builder" / room / change.module
        source = file.read_text("utf-8")
        found = Outcome.SURVIVED
        for attempt in attempts(copied, room, change.module):
            if attempt not in allowed:
                begun = time.monotonic()
                if outcome(copied, attempt, 3600) is not Outcome.SURVIVED:
                    print(f"{attempt}: the tests fail without any change; mend that first")
                    return 1
                allowed[attempt] = 20 + PATIENCE * (time.monotonic() - begun)
            file.write_text(change.source, "utf-8")
            found = outcome(copied, attempt, allowed[attempt])
            file.write_text(source, "utf-8")
            if found is not Outcome.SURVIVED:
                break
        why = excuse(change, source.split("\n")[change.line - 1])
        noticed += found is not Outcome.SURVIVED
        unexcused += found is Outcome.SURVIVED and not why
        told = f"{found} ({why})" if why and found is Outcome.SURVIVED else found
        print(f"{told}: {room}/{change.module}:{change.line}: {change.old} -> {change.new}",
              flush=True)  # fmt: skip
    share = noticed / max(noticed + unexcused, 1)
    print(f"{room}: {noticed} of {len(asked)} changes noticed, {unexcused} survived without a "
          f"reason: {share:.1%} of what can be noticed")  # fmt: skip
    return 1 if share < LEAST_SHARE else 0


def main() -> int:
    """Do what was asked for."""
    options = argparse.ArgumentParser(description=(__doc__ or "").split("\n")[0])
    options.add_argument("room")
    options.add_argument("--lines", type=int, default=40)
    options.add_argument("--seed", type=int, default=1)
    options.add_argument("--at", action="append", default=[], metavar="FILE:LINE")
    asked = options.parse_args()
    modules = sorted((ROOT / "builder" / asked.room).glob("*.py"))
    every = [change for path in modules for change in changes(asked.room, path)]
    chosen = [one for one in every if f"{one.module}:{one.line}" in asked.at]
    with tempfile.TemporaryDirectory() as folder:
        copied = Path(folder) / "checkout"
        shutil.copytree(ROOT, copied, ignore=NOT_COPIED)
        for part in ("builder", f"tests/{asked.room}"):
            compileall.compile_dir(copied / part, quiet=1)
        sys.dont_write_bytecode = True
        os.environ["PYTHONDONTWRITEBYTECODE"] = "1"
        sys.path[:] = [entry for entry in sys.path if Path(entry) != Path(__file__).parent]
        return try_all(asked.room, chosen or picked(every, asked.lines, asked.seed), copied)


if __name__ == "__main__":
    raise SystemExit(main())
