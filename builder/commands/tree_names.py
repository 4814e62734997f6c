"""Which tree someone means: by its ID, its file, or its name alone.

In: words of the command line, and the IDs of the shop's trees. Out: an ID.
"""

from collections.abc import Collection
from pathlib import Path

from builder.model.library import NotThereError
from builder.reader.file_names import meant_name
from builder.reader.trees import tree_id, tree_names
from builder.rules.shared.close_names import closest_names

ENDINGS = (".yml", ".yaml")


def tree_named(words: str, ids: Collection[str]) -> str:
    """Return the ID of a tree: `body/horn`, `trees/body/horn.yml`, or `horn` if there is one.

    Raises NotThereError, with the trees that were likely meant.
    """
    plain = _plain(words)
    named = [id_ for id_ in ids if plain == id_ or ("/" not in plain and _slug(id_) == plain)]
    if len(named) == 1:
        return named[0]
    likely = named or _same_letters(plain, ids) or closest_names(plain, ids)
    if not likely:
        by_slug = {_slug(id_): id_ for id_ in ids}
        likely = [by_slug[slug] for slug in closest_names(_slug(plain), by_slug)]
    message = f"there {'are several trees' if named else 'is no tree'} `{words}`"
    if not likely:
        raise NotThereError(f"{message}; `baytree find WORDS` lists trees by what they are about")
    raise NotThereError(f"{message}: did you mean {' or '.join(f'`{id_}`' for id_ in likely)}?")


def tree_in_shop(words: str, shop: Path) -> str:
    """Return the ID of a tree of a shop. Raises NotThereError."""
    return tree_named(words, [tree_id(name) for name in tree_names(shop)])


def files_named(words: str, shop: Path) -> tuple[Path, ...]:
    """Return a file, all files of a folder, or the file of a tree by its ID or name.

    Raises NotThereError.
    """
    for path in (Path(words), shop / words):
        if path.is_dir():
            return tuple(file for file in path.rglob("*") if file.is_file())
        if path.exists() or path.is_symlink():
            return (path,)
    files = {tree_id(name): name for name in tree_names(shop)}
    is_other_file = "/" in words and Path(words).suffix and not words.endswith(ENDINGS)
    if is_other_file or Path(words).is_absolute():
        raise NotThereError(f"there is no file `{words}` in {shop}")
    if _plain(words) not in files and (other := _under_another_name(words, shop)):
        raise NotThereError(f"there is no file `{words}`, but `{other.name}` beside it: rename it")
    return (shop / files[tree_named(words, files)],)


def _under_another_name(words: str, shop: Path) -> Path | None:
    """Return a file that isn't read because of its name, such as `horn.yml.txt` for `horn.yml`."""
    meant = shop / "trees" / f"{_plain(words)}.yml"
    others = meant.parent.iterdir() if meant.parent.is_dir() else ()
    folder = f"trees/{_plain(words).rpartition('/')[0]}"
    for one in others:
        is_other = one.is_file() and one.suffix not in ENDINGS
        if is_other and meant_name(f"{folder}/{one.name}") == f"trees/{_plain(words)}":
            return one
    return None


def _same_letters(plain: str, ids: Collection[str]) -> list[str]:
    """Return the trees that differ in hyphens alone: `nodrive` is `no-drive`."""
    bare = plain.replace("-", "").replace("_", "").casefold()
    by_letters = {id_: id_.replace("-", "") for id_ in ids}
    return [id_ for id_, letters in by_letters.items()
            if bare in (letters, letters.rpartition("/")[2])]  # fmt: skip


def _plain(words: str) -> str:
    """Return what a file's path and an ID have in common."""
    plain = words.replace("\\", "/").removesuffix("/")
    for ending in ENDINGS:
        plain = plain.removesuffix(ending)
    return plain.rpartition("trees/")[2]


def _slug(id_: str) -> str:
    return id_.rpartition("/")[2]
