"""A new name for a step, a tree or an article, wherever it is named; comments and blank lines stay.

In: a shop, the old and the new name. Out: the files that were written, or why none was. Texts are
edited at their positions, and so are links in Markdown.
"""

import re
from collections.abc import Callable, Iterator
from pathlib import Path

from builder.authoring.not_written import NotWritten
from builder.authoring.rename_links import (
    ARTICLES,
    rename_links_to_anchor,
    rename_links_to_page,
)
from builder.model.finding import Finding
from builder.model.text import Position, Text
from builder.reader.nodes import Map, Node, Seq
from builder.reader.source import leads_out, read_source
from builder.reader.step_references import NAMES_INSIDE, QUOTED_STEP, TO_STEPS
from builder.reader.trees import tree_files
from builder.reader.yaml_text import read_yaml
from builder.rules.shared.close_names import suggestion

_STEP = re.compile(r"[A-Za-z0-9]+([_-][A-Za-z0-9]+)*")
_TREE = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*/[a-z0-9]+(-[a-z0-9]+)*")
_ARTICLE = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
_HEAD_NAMES = ("asks", "takes", "lists")  # `<name>` may mean one of these, not a step
Places = Iterator[Position]


def rename_step(shop: Path, tree: str, old: str, new: str) -> tuple[Path, ...] | NotWritten:
    """Rename a step in its tree, and where other trees hand off to it."""
    if not _STEP.fullmatch(new):
        return NotWritten(f"`{new}` can't name a step", "use letters, digits and `-`")
    path = shop / "trees" / f"{tree}.yml"
    root = _root(shop, path)
    steps = root.value("steps") if root else None
    if not isinstance(steps, Map) or old not in steps:
        known = steps if isinstance(steps, Map) else ()
        hint = suggestion(old, known, "name a step of that tree")
        return NotWritten(f"`{tree}` has no step `{old}`", hint)
    if new in steps:
        return NotWritten(f"`{tree}` has a step `{new}` already", "choose another name")
    written = [_edited(shop, path, lambda root: _places_of_step(root, old), old, new)]
    whole = f"{tree}#{old}"
    written += [_edited(shop, file, lambda root: _targets(root, lambda text: text == whole),
                        whole, f"{tree}#{new}") for file in _naming(shop)]  # fmt: skip
    written += [_edited(shop, file, lambda root: _places_in_case(root, tree, old), old, new)
                for file in _cases(shop)]  # fmt: skip
    written += rename_links_to_anchor(shop, f"trees/{tree}", f"step-{old}", f"step-{new}")
    return tuple(dict.fromkeys(file for file in written if file))


def rename_tree(shop: Path, old: str, new: str) -> tuple[Path, ...] | NotWritten:
    """Move a tree's file, and rename it in every tree, procedure and closed job."""
    before, after = (shop / "trees" / f"{id_}.yml" for id_ in (old, new))
    if not _TREE.fullmatch(new):
        return NotWritten(f"`{new}` can't be a tree ID", "write it like `charging/lamp-on`")
    if after.exists() or after.is_symlink() or leads_out(shop, after):
        return NotWritten(f"trees/{new}.yml exists already, or is outside the shop",
                          "choose another name")  # fmt: skip
    systems = old.split("/")[0], new.split("/")[0]
    _edited(shop, before, _system, *systems)
    after.parent.mkdir(parents=True, exist_ok=True)
    before.rename(after)

    def is_tree(text: str) -> bool:
        return text.partition("#")[0] == old

    written = [_edited(shop, file, lambda root: _targets(root, is_tree), old, new)
               for file in (*_naming(shop), *_cases(shop))]  # fmt: skip
    written += rename_links_to_page(shop, f"trees/{old}", f"trees/{new}")
    return tuple(dict.fromkeys((after, *(file for file in written if file))))


def rename_procedure(shop: Path, old: str, new: str) -> tuple[Path, ...] | NotWritten:
    """Move a procedure's file, and rename it in what runs it, and in every closed job."""
    before, after = (shop / "kb" / "procedures" / f"{name}.yml" for name in (old, new))
    if not before.exists() or leads_out(shop, before):
        known = [file.stem for file in before.parent.glob("*.yml")]
        hint = suggestion(old, known, "name a file of kb/procedures, without .yml")
        return NotWritten(f"there is no procedure `{old}`", hint)
    if not _ARTICLE.fullmatch(new):
        return NotWritten(f"`{new}` can't name a procedure", "write it like `relay-test`")
    if after.exists() or after.is_symlink():
        return NotWritten(f"kb/procedures/{new}.yml exists already", "choose another name")
    before.rename(after)
    written = [_edited(shop, file, lambda root: _procedures_named(root, old), old, new)
               for file in (*_naming(shop), *_cases(shop))]  # fmt: skip
    written += rename_links_to_page(shop, f"procedures/{old}", f"procedures/{new}")
    return tuple(dict.fromkeys((after, *(file for file in written if file))))


def rename_article(shop: Path, old: str, new: str) -> tuple[Path, ...] | NotWritten:
    """Move an article's file, and rename it in every step and every link."""
    before, after = (shop / ARTICLES / f"{name}.md" for name in (old, new))
    if not before.exists() or leads_out(shop, before):
        return NotWritten(f"there is no article `{old}`", f"name a file of {ARTICLES}, without .md")
    if not _ARTICLE.fullmatch(new):
        return NotWritten(f"`{new}` can't name an article", "write it like `how-to/voltage-drop`")
    if after.exists() or after.is_symlink():
        return NotWritten(f"{ARTICLES}/{new}.md exists already", "choose another name")
    before.rename(after)
    written = [_edited(shop, file, lambda root: _articles_named(root, old), old, new)
               for file in _naming(shop)]  # fmt: skip
    written += rename_links_to_page(shop, f"how-to/{old}", f"how-to/{new}")
    return tuple(dict.fromkeys((after, *(file for file in written if file))))


def _naming(shop: Path) -> list[Path]:
    return [*tree_files(shop), *sorted((shop / "kb" / "procedures").glob("*.yml"))]


def _cases(shop: Path) -> list[Path]:
    return sorted((shop / "kb" / "cases").glob("*.yml"))


def _root(shop: Path, path: Path) -> Map | None:
    source = read_source(shop, path)
    root = None if isinstance(source, Finding) else read_yaml(source)[0]
    return root if isinstance(root, Map) else None


def _edited(
    shop: Path, path: Path, places: Callable[[Map], Places], old: str, new: str
) -> Path | None:
    """Replace a name at some places of a file; None where it isn't named."""
    source = read_source(shop, path)
    if isinstance(source, Finding) or old not in source.text:
        return None  # most files don't name it: nothing to parse
    root = _root(shop, path)
    spots = sorted(set(places(root)), reverse=True) if root else []
    if not spots:
        return None
    raw = path.read_bytes().decode()
    mark = len(raw) - len(raw.removeprefix("\ufeff"))  # a byte order mark has no column
    starts = [mark, *(match.end() for match in re.finditer("\n", raw))]
    for at in spots:
        first = starts[at.line - 1] + at.column - 1
        end = starts[at.end_line - 1] + at.end_column - 1
        named = re.sub(rf"(?<![\w#/-]){re.escape(old)}(?![\w/-])", lambda _: new, raw[first:end])
        raw = raw[:first] + named + raw[end:]
    path.write_bytes(raw.encode())
    return path


def _places_in_case(root: Map, tree: str, old: str) -> Places:
    """Yield where a closed job names a step of the tree, not one of a procedure or another tree."""
    here = root.value("tree")
    path = root.value("path")
    for item in path if isinstance(path, Seq) else ():
        if isinstance(item, Map) and (item.value("in") or here) == tree:
            step = item.value("step")
            if isinstance(step, Text) and step == old:
                yield step.at
    fix = root.value("fix")
    if here == tree and isinstance(fix, Text) and fix == old:
        yield fix.at


def _system(root: Map) -> Places:
    value = root.value("system")
    if isinstance(value, Text):
        yield value.at


def _targets(root: Map, is_named: Callable[[str], bool]) -> Places:
    """Yield where another tree, or a step in it, is named."""
    for key, node in _pairs(root, ""):
        named = key in TO_STEPS or key in ("results", "replaced_by", "tree", "in")
        if named and is_named(node):
            yield node.at


def _articles_named(root: Map, old: str) -> Places:
    yield from (node.at for key, node in _pairs(root, "") if key == "how_to" and node == old)


def _procedures_named(root: Map, old: str) -> Places:
    """Yield where a procedure is run: by a step, by what proves a repair, in a closed job."""
    steps = root.value("steps")
    is_step = isinstance(steps, Map) and old in steps  # `verify` means the step then
    for key, node in _pairs(root, ""):
        if node == old and (key in ("by", "in") or (key == "verify" and not is_step)):
            yield node.at
    yield from (node.at for key, node in _keys(root, "")
                if node == old and key == "verify" and not is_step)  # fmt: skip


def _places_of_step(root: Map, old: str) -> Places:
    steps = root.value("steps")
    assert isinstance(steps, Map)
    yield steps.key(old).at
    heads = (root.value(name) for name in _HEAD_NAMES)
    is_quoted = not any(isinstance(head, Map) and old in head for head in heads)
    for key, node in _pairs(root, ""):
        if (node == old and (key in TO_STEPS or key in NAMES_INSIDE or key == "results")) or (
            is_quoted and old in QUOTED_STEP.findall(node)
        ):
            yield node.at
    for key, node in _keys(root, ""):
        if node == old and key in NAMES_INSIDE:
            yield node.at


def _pairs(node: Node, key: str) -> Iterator[tuple[str, Text]]:
    """Yield every text with the key that it is under; a value in a map of results is `results`."""
    if isinstance(node, Map):
        for name, value in node.items():
            yield from _pairs(value, key if key == "results" else str(name))
    elif isinstance(node, Seq):
        for item in node:
            yield from _pairs(item, "" if key == "results" else key)
    else:
        yield key, node


def _keys(node: Node, key: str) -> Iterator[tuple[str, Text]]:
    """Yield every key of a map with the key that the map is under."""
    if isinstance(node, Map):
        for name, value in node.items():
            yield key, name
            yield from _keys(value, str(name))
    elif isinstance(node, Seq):
        for item in node:
            yield from _keys(item, key)
