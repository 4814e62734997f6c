"""The files of a shop as they were at a revision, from git.

In: a shop in a git repository, the name of a revision. Out: a folder with those files, or an error
that says what git has against it. Git runs no hook and no filter here, and nothing of the shop's
configuration is used: files are taken from its store of objects as they are.
"""

import subprocess
from collections.abc import Iterator
from pathlib import Path

from builder.rules.shared.close_names import closest_names

MAIN_BRANCHES = ("origin/HEAD", "origin/main", "origin/master", "main", "master")
MOST_LISTED = 5
FOLDERS = ("trees", "kb", "site_config")
REGULAR = ("100644", "100755")  # modes of git; a link could lead out of the folder


class RevisionError(OSError):
    """There is no such revision, or no repository."""


def base_of(shop: Path) -> str:
    """Return the revision at which the working tree left the main branch. Raises RevisionError."""
    for branch in MAIN_BRANCHES:
        answer = _run(shop, "merge-base", "HEAD", branch)
        if answer.returncode == 0:
            return answer.stdout.decode().strip()
    return _commit(shop, "HEAD")


def write_revision(shop: Path, revision: str, folder: Path) -> None:
    """Write the shop's trees and knowledge as they were. Raises RevisionError."""
    commit = _commit(shop, revision)
    entries = list(_entries(shop, commit))
    contents = _blobs(shop, [blob for blob, _ in entries])
    for name in FOLDERS:
        (folder / name).mkdir(parents=True, exist_ok=True)
    for (_, name), content in zip(entries, contents, strict=True):
        path = folder / name
        if not path.resolve().is_relative_to(folder.resolve()):
            continue  # a name that a damaged repository may hold
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content)


def _commit(shop: Path, revision: str) -> str:
    answer = _run(shop, "rev-parse", "--verify", "--quiet", "--end-of-options",
                  f"{revision}^{{commit}}")  # fmt: skip
    if answer.returncode == 0:
        return answer.stdout.decode().strip()
    if _run(shop, "rev-parse", "--git-dir").returncode:
        raise RevisionError(f"{shop} is not in a git repository, so there is nothing to compare")
    raise RevisionError(f"there is no revision `{revision}`; {_revisions(shop, revision)}")


def _revisions(shop: Path, revision: str) -> str:
    """Return which branch or tag may be meant, or how to list them."""
    answer = _run(shop, "for-each-ref", "--format=%(refname:short)")
    names = answer.stdout.decode(errors="replace").split("\n")
    if close := " or ".join(f"`{one}`" for one in closest_names(revision, names)):
        return f"did you mean {close}?"
    listed = ", ".join(f"`{one}`" for one in names[:MOST_LISTED] if one)
    return f"branches and tags: {listed}; `git log --oneline` lists what is older"


def _entries(shop: Path, commit: str) -> Iterator[tuple[str, str]]:
    """Yield the object and the name of every regular file, relative to the shop."""
    answer = _run(shop, "ls-tree", "-r", "-z", commit, "--", *FOLDERS)
    for line in answer.stdout.decode(errors="surrogateescape").split("\0"):
        head, _, name = line.partition("\t")
        if head.split(" ")[0] in REGULAR:
            yield head.split(" ")[2], name


def _blobs(shop: Path, names: list[str]) -> list[bytes]:
    """Return the content of objects, in one call of git."""
    answer = _run(shop, "cat-file", "--batch", given="".join(f"{name}\n" for name in names))
    contents, rest = [], memoryview(answer.stdout)
    for _ in names:
        end = bytes(rest[:200]).index(b"\n")
        size = int(bytes(rest[:end]).split()[2])
        contents.append(bytes(rest[end + 1 : end + 1 + size]))
        rest = rest[end + 2 + size :]
    return contents


def _run(shop: Path, *words: str, given: str = "") -> "subprocess.CompletedProcess[bytes]":
    try:
        return subprocess.run(
            ["git", "-C", str(shop), *words], input=given.encode(), capture_output=True, check=False
        )
    except FileNotFoundError as error:
        raise RevisionError("git is not installed, and old revisions are in git") from error
