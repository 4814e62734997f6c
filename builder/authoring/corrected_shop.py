"""The files of a shop put right: tried in a copy, and written only when they read better.

In: a shop, its findings, and a function that checks a shop. Out: the corrected files; written on
request, each in one go, unless the author has changed it meanwhile.
"""

import os
import shutil
from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import suppress
from pathlib import Path
from tempfile import TemporaryDirectory, mkstemp

from builder.authoring.corrections import Correcting, correcting
from builder.model.correction import CorrectedFile
from builder.model.finding import Finding
from builder.reader.source import MAX_FILE_BYTES, file_problem

READ = ("trees", "kb", "site_config")  # the folders that a check reads
Judge = Callable[[Path], Sequence[Finding]]


def corrected_files(
    shop: Path, findings: Iterable[Finding], judge: Judge
) -> tuple[CorrectedFile, ...]:
    """Return the files that can be put right; nothing is written to the shop.

    All files go forward together, so that a check of the copy serves every one of them.
    """
    running = dict(_started(shop, findings))
    if not running:
        return ()
    done: list[CorrectedFile] = []
    with TemporaryDirectory(prefix="baytree-") as folder:
        copy = Path(os.path.realpath(folder)) / "shop"
        _copy(shop, copy)
        texts = {file: next(one) for file, one in running.items()}
        while texts:
            for file, text in texts.items():
                (copy / file).write_bytes(text.encode())
            found = _by_file(judge(copy))
            texts = {}
            for file, one in list(running.items()):
                try:
                    texts[file] = one.send(found.get(file, []))
                except StopIteration as end:
                    done.append(end.value)
                    (copy / file).write_bytes(end.value.after.encode())
                    del running[file]
    return tuple(one for one in done if one.corrections)


def _started(shop: Path, findings: Iterable[Finding]) -> Iterator[tuple[str, Correcting]]:
    """Yield the files with something to try; their first text is still to be asked for."""
    for file, of_file in _by_file(findings).items():
        text = _text(shop, file) if any(finding.edit for finding in of_file) else None
        if text is not None:
            yield file, correcting(file, text, of_file)


def _by_file(findings: Iterable[Finding]) -> dict[str, list[Finding]]:
    by_file: dict[str, list[Finding]] = defaultdict(list)
    for finding in findings:
        by_file[finding.at.file].append(finding)
    return by_file


def _text(shop: Path, file: str) -> str | None:
    """Return the text of a file with all its bytes; None for what is no text.

    Also None behind a link, where the copy would lead back to the author's own file.
    """
    path = shop / file
    if os.path.realpath(path) != str(Path(os.path.realpath(shop)) / file):
        return None
    if file_problem(shop, path, MAX_FILE_BYTES):
        return None
    with suppress(OSError, UnicodeDecodeError):
        return path.read_bytes().decode("utf-8")
    return None


def _copy(shop: Path, copy: Path) -> None:
    """Copy what a check reads, as far as it can be read; a link stays a link."""
    for name in READ:
        if (shop / name).is_dir():
            with suppress(shutil.Error):  # raised at the end, for what could not be copied
                shutil.copytree(shop / name, copy / name, symlinks=True)


def write_corrected(shop: Path, files: Iterable[CorrectedFile]) -> Iterator[str]:
    """Write the files, and yield those that were left alone because they have changed since.

    A reader sees the old file or the new one, never a half. Raises OSError.
    """
    for one in files:
        path = shop / one.file
        if _text(shop, one.file) != one.before:
            yield one.file
            continue
        _replace(path, one.after.encode())


def _replace(path: Path, content: bytes) -> None:
    handle, name = mkstemp(dir=path.parent, prefix=f".{path.name}.")
    try:
        with os.fdopen(handle, "wb") as new:
            new.write(content)
            new.flush()
            os.fsync(handle)
        shutil.copymode(path, name)
        Path(name).replace(path)  # only now: Windows replaces no file by one that is open
    except OSError:
        Path(name).unlink(missing_ok=True)
        raise
