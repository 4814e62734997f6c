"""The bytes of a file as text, or the finding that says why not.

In: a path inside the shop. Out: a `Source`; UTF-8 only, with or without a byte order mark, Windows
line ends kept.
"""

import hashlib
import os
import re
import stat
from dataclasses import dataclass
from pathlib import Path

from builder.model.finding import Edit, Finding, Severity, with_edit
from builder.model.text import Position

MAX_FILE_BYTES = 1024 * 1024  # bytes; a tree of 45 steps has about 12 KB
# Not allowed in YAML; invisible line ends are reported by `yaml_text`.
CONTROL_CHARACTER = re.compile(r"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x84\x86-\x9f\ufffe\uffff]")
# The bytes that no such character has in UTF-8; most files have no others.
PLAIN_BYTES = bytes({*b"\t\n\r", *range(0x20, 0x7F), *range(0x80, 0x100)} - {0xC2, 0xEF})
CONFLICT = re.compile(r"^(?:<{7}|\|{7}|={7}|>{7})(?:\r?$| )", re.MULTILINE)
# What is left where the start was deleted; `=======` alone may also underline a heading.
CONFLICT_LEFT = re.compile(r"^(?:\|{7}|>{7})(?: .*)?(?=\r?$)", re.MULTILINE)
CONFLICT_START = re.compile(r"^<{7}(?:\r?$| )", re.MULTILINE)
OTHER_ENCODINGS = {b"\xff\xfe": "UTF-16", b"\xfe\xff": "UTF-16"}


@dataclass(frozen=True, slots=True)
class Source:
    """The text of one file."""

    file: str  # relative to the shop
    text: str
    revision: str  # the first seven hex digits of the SHA-256 of its bytes


def read_source(shop: Path, path: Path, raw: bytes | None = None) -> Source | Finding:
    """Read a file of the shop; an author's mistake is returned as a finding.

    `raw` are its bytes, where they have been read already.
    """
    file = path.relative_to(shop).as_posix()
    problem = file_problem(shop, path, MAX_FILE_BYTES)
    if problem or raw is None:
        return problem or _read(file, path)
    return decode(file, raw)


def file_problem(shop: Path, path: Path, largest: int) -> Finding | None:
    """Return why a file can't be read: a link, a pipe, over `largest` bytes; None if it can."""
    file = path.relative_to(shop).as_posix()
    if leads_out(shop, path):
        return link_out(shop, path)
    try:
        status = path.stat()
    except PermissionError as error:
        return unreadable(file, error)
    except OSError:  # a link to nothing, or to itself
        status = None
    if status is None or not stat.S_ISREG(status.st_mode):
        return mistake("link", file, "this is a broken link, or not a regular file",
                       "the techs who look for its contents find nothing",
                       "put the file itself here, or delete this")  # fmt: skip
    if status.st_size > largest:
        return mistake("size", file, f"the file is larger than {largest // 1024} KiB",
                       "a file of that size can't be reviewed or followed",
                       "split it into several files")  # fmt: skip
    return None


def unreadable(file: str, error: OSError) -> Finding:
    """Return the finding for a file that the system won't open."""
    return mistake("unreadable", file, f"the file can't be read: {error.strerror}",
                   "what is in it drops out of every check, page, and search",
                   "give yourself read permission: `chmod u+r` on it")  # fmt: skip


def _read(file: str, path: Path) -> Source | Finding:
    try:
        return decode(file, path.read_bytes())
    except OSError as error:
        return unreadable(file, error)


def leads_out(shop: Path, path: Path) -> bool:
    """Whether a path, all links followed, is outside the shop; a loop of links isn't."""
    # Not Path.resolve: before Python 3.13 that raises an error on a link to itself.
    return not Path(os.path.realpath(path)).is_relative_to(os.path.realpath(shop))


def link_out(shop: Path, path: Path) -> Finding:
    """Return the finding for a link that leads out of the shop."""
    return mistake("link", path.relative_to(shop).as_posix(),
                   "this link leads out of the shop",
                   "files outside aren't under the shop's version control",
                   "put the file itself here")  # fmt: skip


def decode(file: str, raw: bytes) -> Source | Finding:
    """Turn the bytes of a file into text."""
    revision = hashlib.sha256(raw).hexdigest()[:7]
    for mark, name in OTHER_ENCODINGS.items():
        if raw.startswith(mark):
            return _encoding(file, raw, 0, f"the file is saved as {name}")
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        return _encoding(file, raw, error.start, "this file isn't UTF-8")
    may_have_control = raw.translate(None, PLAIN_BYTES)  # a tenth of the search's time
    if may_have_control and (control := CONTROL_CHARACTER.search(text)):
        return _control_character(file, text, control.start())
    if conflict := CONFLICT_START.search(text):
        return _conflict(file, text, conflict.start())
    if left := CONFLICT_LEFT.search(text):
        return _left_by_a_merge(file, text, left)
    return Source(file, text, revision)


def _encoding(file: str, raw: bytes, index: int, message: str) -> Finding:
    before = raw[:index].decode("utf-8", "replace")
    at = at_index(file, before, len(before))
    why = "characters such as ° and Ω would be garbled"
    return mistake("encoding", at, message, why, "save the file as UTF-8")


def _control_character(file: str, text: str, index: int) -> Finding:
    message = f"there is a control character here (U+{ord(text[index]):04X})"
    at = at_index(file, text, index)
    finding = mistake("encoding", at, message, "it is invisible and breaks the text", "delete it")
    return with_edit(finding, Edit(at, text[index], ""))


def _conflict(file: str, text: str, index: int) -> Finding:
    """Return the finding for the first place where a merge left two versions."""
    marks = {mark[0][0]: at_index(file, text, mark.start()).line
             for mark in reversed(list(CONFLICT.finditer(text, index)))}  # fmt: skip
    first, middle, last = (marks.get(sign, 0) for sign in "<=>")
    one, other = _lines(first + 1, marks.get("|", middle) - 1), _lines(middle + 1, last - 1)
    signs = ", ".join(str(line) for line in sorted(marks.values()))
    return mistake("merge-conflict", at_index(file, text, index, 7),
                   "two versions of the same lines begin here, left by a merge",
                   "a tech would get both, or neither",
                   f"keep {one} or {other}, and delete the rest of lines {first} to {last}"
                   if middle and last else f"keep one version; delete lines {signs}")  # fmt: skip


def _left_by_a_merge(file: str, text: str, left: re.Match[str]) -> Finding:
    """Return the finding for the marks of a merge whose start is deleted already."""
    marks = [at_index(file, text, mark.start()).line for mark in CONFLICT.finditer(text)]
    numbers = " and ".join(str(line) for line in marks)
    return mistake("merge-conflict", at_index(file, text, left.start(), 7),
                   "this line is left over from a merge",
                   "the lines above it may be there twice, or in the wrong version",
                   f"read those around it once more, and delete line{'s' * (len(marks) > 1)} "
                   f"{numbers}")  # fmt: skip


def _lines(first: int, last: int) -> str:
    if last < first:
        return "nothing"
    return f"line {first}" if first == last else f"lines {first} to {last}"


def at_index(file: str, text: str, index: int, length: int = 1) -> Position:
    """Return the position of a character in a text."""
    line = text.count("\n", 0, index) + 1
    column = index - text.rfind("\n", 0, index)
    return Position(file, line, column, line, column + length)


def mistake(rule: str, at: Position | str, message: str, why: str, hint: str) -> Finding:
    """Return a finding of severity error about a text; `at` may be a file as a whole."""
    place = Position(at, 1, 1, 1, 1) if isinstance(at, str) else at
    return Finding(rule, Severity.ERROR, place, message, why, hint)
