"""Mutants of a shop in which a file isn't edited but moved, linked, deleted or in the way.

In: a shop's folder, one of its files and a chance. Out: the paths that are no longer as they were,
all relative to the shop. What can't be done on this disk (a name that is too long) is left undone.
"""

import os
import random
import shutil
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

# `{}` is the name of the file without its ending, `{e}` the ending.
NAMES = ("{}-2{e}", "{}", "{}.txt", "{}{e}.txt", "{}.yaml", "{}.md", "{}.YML", "{}.table.yml",
         "{}.yml", ".{}{e}", "._{}{e}", ".#{}{e}", "~{}{e}", "{}{e}~", "{}{e}.bak", "index{e}",
         "README{e}",
         "Index{e}", "{} 2{e}", "{}#2{e}", "{}%20{e}", "{}?{e}", "{}&<b>{e}", "{}`{e}", "{}'\"{e}",
         "é{e}", "e\u0301{e}", "\u202e{}{e}", "{}\n{e}", "{}\t{e}", "{}\u2028{e}", "\udcff{e}",
         "{}..{e}", "-{}{e}", "--help{e}", "{e}", "con{e}", "1{e}", "-{e}", "x" * 200 + "{e}",
         "{{x}}{e}", "{{{{x}}}}{e}", "$HOME{e}", "*{e}", "🔧{e}", "stop-halfway{e}")  # fmt: skip
FOLDERS = ("trees", "trees/horn", "trees/horn/deep/deeper", "trees/.hidden", "trees/UPPER", "kb",
           "kb/how-to", "kb/how-to/pictures", "kb/modules", "kb/cases", "kb/new", "site_config",
           "site_config/overrides", "trees/index", "trees/a b", "trees/é", "trees/#", "new",
           "trees/x.yml", "trees/\udcff")  # fmt: skip
Touched = list[Path]


def renamed(shop: Path, file: Path, chance: random.Random) -> Touched:
    """Give it another name in its folder; a file of that name is lost."""
    return _placed(shop, file, file.with_name(_name(file, chance)), shutil.move)


def moved(shop: Path, file: Path, chance: random.Random) -> Touched:
    """Put it into another folder, which may be new."""
    return _placed(shop, file, Path(chance.choice(FOLDERS)) / file.name, shutil.move)


def copied(shop: Path, file: Path, chance: random.Random) -> Touched:
    """Put a copy of it into a folder, with this name or another."""
    folder = chance.choice((file.parent.as_posix(), *FOLDERS))
    name = chance.choice((file.name, _name(file, chance)))
    return _placed(shop, file, Path(folder) / name, shutil.copyfile)


def exchanged(shop: Path, file: Path, chance: random.Random) -> Touched:
    """Exchange its content with that of another file."""
    other = _another(shop, file, chance)
    contents = (shop / file).read_bytes(), (shop / other).read_bytes()
    (shop / other).write_bytes(contents[0])
    (shop / file).write_bytes(contents[1])
    return [file, other]


def deleted(shop: Path, file: Path, _chance: random.Random) -> Touched:
    """Delete it."""
    (shop / file).unlink()
    return [file]


def emptied(shop: Path, file: Path, chance: random.Random) -> Touched:
    """Leave nothing in it, or nothing to read."""
    (shop / file).write_bytes(chance.choice((b"", b"\n", b" ", b"#", b"---\n", b"\xef\xbb\xbf")))
    return [file]


def made_a_folder(shop: Path, file: Path, chance: random.Random) -> Touched:
    """Put a folder of its name in its place, with the file in it or nothing."""
    content = (shop / file).read_bytes()
    (shop / file).unlink()
    (shop / file).mkdir()
    if chance.random() < 0.5:
        (shop / file / file.name).write_bytes(content)
    return [file]


def linked(shop: Path, file: Path, chance: random.Random) -> Touched:
    """Put a link in its place: to nothing, itself, another file, a folder, out of the shop."""
    inside = os.path.relpath(shop / _another(shop, file, chance), (shop / file).parent)
    target = chance.choice((inside, "nothing", file.name, ".", "..", "/etc/hostname", "/dev/zero"))
    (shop / file).unlink()
    (shop / file).symlink_to(target)
    return [file]


def made_a_pipe(shop: Path, file: Path, _chance: random.Random) -> Touched:
    """Put a pipe in its place: reading it would never end."""
    (shop / file).unlink()
    os.mkfifo(shop / file)
    return [file]


def folder_renamed(shop: Path, file: Path, chance: random.Random) -> Touched:
    """Give its folder another name, or delete it, or put a file in its place."""
    folder = chance.choice(file.parents[:-1])
    other = folder.with_name(
        chance.choice(("x", "X y", "é", "#", "index", ".x", "x.yml", "\udcff"))
    )
    shutil.move(shop / folder, shop / other)
    match chance.randrange(3):
        case 0:
            shutil.rmtree(shop / other)
        case 1:
            (shop / folder).write_bytes(b"x: y\n")
    return [folder, other]


MOVES: tuple[Callable[[Path, Path, random.Random], Touched], ...] = (
    renamed, renamed, moved, moved, copied, copied, exchanged, deleted, emptied, made_a_folder,
    linked, made_a_pipe, folder_renamed,
)  # fmt: skip


def _name(file: Path, chance: random.Random) -> str:
    return chance.choice(NAMES).format(file.stem, e=file.suffix)


def _another(shop: Path, file: Path, chance: random.Random) -> Path:
    files = (path.relative_to(shop) for path in sorted(shop.rglob("*")) if path.is_file())
    return chance.choice([path for path in files if path != file])


def _placed(shop: Path, file: Path, to: Path, place: Callable[[Path, Path], object]) -> Touched:
    """Move or copy a file, and return what is new: it, or the outermost new folder."""
    new = next((part for part in reversed(to.parents) if not (shop / part).exists()), to)
    with suppress(OSError, shutil.SameFileError):
        (shop / to).parent.mkdir(parents=True, exist_ok=True)
        place(shop / file, shop / to)
    return [file, new]
