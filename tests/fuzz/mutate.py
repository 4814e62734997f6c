"""Mutants of a shop: bytes, lines and the structure of its files, changed by a seeded chance.

In: a shop's folder, one of its files and a chance. Out: the shop with that file changed or moved,
and a `Mutant`: what was done, and which paths are no longer as they were.
"""

import random
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import yaml
from moves import MOVES

Chance = random.Random
Loader = getattr(yaml, "CBaseLoader", yaml.BaseLoader)
Dumper = getattr(yaml, "CSafeDumper", yaml.SafeDumper)
# What an author, an editor or an attacker leaves behind.
BYTES = (b"\0", b"\xff", b"\xc3", b"\t", b"\r", b"\n", b"{", b"}", b"[", b"]", b":", b"-", b"#",
         b"'", b'"', b"&", b"*", b"!", b"|", b">", b"\xe2\x80\xa8", b"\xef\xbb\xbf", b"9", b" ",
         b"\xf0\x9f\x94\xa7", b"\x7f", b"`", b"<", b"%", b"@", b"\\", b"=", b"~", b",")  # fmt: skip
VALUES = ("", "0", "-1", "1e999", "9" * 400, "0.0", "yes", "null", "next", "back", "otherwise",
          "OL", "nowhere", "a/b#c", "#", "/", "..", "../../x", "index", "README", "below",
          "below 1", "1 to 0", "above OL", "0.1 to 0.2", "2026-02-30", "P0", "U3FFF-FF", "x" * 5000,
          "é" * 61, "\u202e", "<b>", "{{x}}", "a: b", " x ", "%s", "$", "1,5", "１", "∞", [], {},
          [[]], [{}], {"": ""}, {"a": {"b": ["c"]}}, ["", ""], None)  # fmt: skip
YAML, TEXT = (".yml", ".yaml"), (".md", ".svg")
MOVED = 0.4  # share of the files that are moved, linked or deleted where this may be


@dataclass(frozen=True, slots=True)
class Mutant:
    """What was done to one file of a shop."""

    file: str  # relative to the shop
    kinds: tuple[str, ...]
    touched: tuple[Path, ...]  # relative to the shop: what must be restored

    def __str__(self) -> str:
        """Return it for people."""
        return f"{self.file}: {', '.join(self.kinds)}"


def mutate(shop: Path, file: str, chance: Chance, may_move: bool = True) -> Mutant:
    """Edit a file one to three times, or move it; it does differ afterward.

    Of files that are changed together only the last may be moved: another may be in the way.
    """
    path = shop / file
    if may_move and chance.random() < MOVED:
        move = chance.choice(MOVES)
        touched = move(shop, Path(file), chance)
        return Mutant(file, (move.__name__,), tuple(touched))
    kinds = KINDS if path.suffix in YAML else KINDS[:2] if path.suffix in TEXT else KINDS[:1]
    before = content = path.read_bytes()
    done: list[str] = []
    for _ in range(chance.choice((1, 1, 2, 3))):
        kind = chance.choice(kinds)
        content = kind(content, chance)
        done.append(kind.__name__)
    while content == before:
        content = bytes_(content, chance)
        done.append(bytes_.__name__)
    path.write_bytes(content)
    return Mutant(file, tuple(done), (Path(file),))


def bytes_(content: bytes, chance: Chance) -> bytes:
    """Put in, take out or write over a few bytes anywhere."""
    for _ in range(chance.choice((1, 1, 1, 2, 5, 20))):
        at = chance.randrange(len(content) + 1)
        gone = chance.choice((0, 0, 1, 1, 2, 30))
        typed = chance.choice((b"", chance.choice(BYTES), chance.choice(BYTES) * 50))
        content = content[:at] + typed + content[at + gone :]
    return content


def lines(content: bytes, chance: Chance) -> bytes:
    """Drop, double, swap or shift lines."""
    all_ = content.split(b"\n")
    one, other = (chance.randrange(len(all_)) for _ in range(2))
    match chance.randrange(6):
        case 0:
            del all_[one]
        case 1:
            all_.insert(other, all_[one])
        case 2:
            all_[one], all_[other] = all_[other], all_[one]
        case 3:
            all_[one] = b"  " * chance.randrange(5) + all_[one].lstrip()
        case 4:
            del all_[min(one, other) : max(one, other)]
        case _:
            all_[one] = all_[one] + all_[other].lstrip()
    return b"\n".join(all_)


def structure(content: bytes, chance: Chance) -> bytes:
    """Swap, drop, double or replace a value somewhere in the structure."""
    try:
        root = yaml.load(content, Loader=Loader)
        for _ in range(chance.choice((1, 1, 2, 4))):
            places = list(_places(root))
            if places:
                _change(chance, places)
        return yaml.dump(
            root, Dumper=Dumper, sort_keys=False, allow_unicode=True, width=1000, encoding="utf-8"
        )
    except (yaml.YAMLError, UnicodeError, RecursionError):
        return content  # it is no longer YAML, after an earlier change


KINDS: tuple[Callable[[bytes, Chance], bytes], ...] = (bytes_, lines, structure, structure)


def _places(node: Any) -> Iterator[tuple[Any, Any]]:
    """Yield every place of the structure: a map or list, and a key or number in it."""
    keys = node if isinstance(node, dict) else range(len(node)) if isinstance(node, list) else ()
    for key in keys:
        yield node, key
        yield from _places(node[key])


def _change(chance: Chance, places: list[tuple[Any, Any]]) -> None:
    (owner, key), (other, name) = chance.choice(places), chance.choice(places)
    value = _copy(other[name])
    match chance.randrange(6):
        case 0:
            del owner[key]
        case 1:
            owner[key] = chance.choice(VALUES)
        case 2 if isinstance(owner, dict):
            owner[name if isinstance(name, str) else "x"] = value
        case 3 if isinstance(owner, dict):
            owner[str(chance.choice(VALUES[:40]))] = owner.pop(key)
        case 4 if isinstance(owner, list):
            owner.insert(key, value)
        case _:
            owner[key] = value


def _copy(node: Any) -> Any:
    """Copy a value, so that it becomes no alias when it is written."""
    if isinstance(node, dict):
        return {key: _copy(value) for key, value in node.items()}
    return [_copy(value) for value in node] if isinstance(node, list) else node
