"""Mutants of a shop: bytes, lines and the structure of its files, changed by a seeded chance.

In: a shop's folder and a chance. Out: the shop with one file changed, and what was done to it.
"""

import random
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import yaml

Chance = random.Random
# What an author, an editor or an attacker leaves behind.
BYTES = (b"\0", b"\xff", b"\xc3", b"\t", b"\r", b"\n", b"{", b"}", b"[", b"]", b":", b"-", b"#",
         b"'", b'"', b"&", b"*", b"!", b"|", b">", b"\xe2\x80\xa8", b"\xef\xbb\xbf", b"9", b" ",
         b"\xf0\x9f\x94\xa7", b"\x7f", b"`", b"<", b"%", b"@", b"\\", b"=", b"~", b",")  # fmt: skip
VALUES = ("", "0", "-1", "1e999", "9" * 400, "0.0", "yes", "null", "next", "back", "otherwise",
          "OL", "nowhere", "a/b#c", "#", "/", "..", "../../x", "index", "README", "below",
          "below 1", "1 to 0", "above OL", "0.1 to 0.2", "2026-02-30", "P0", "U3FFF-FF", "x" * 5000,
          "é" * 61, "\u202e", "<b>", "{{x}}", "a: b", " x ", "%s", "$", "1,5", "１", "∞", [], {},
          [[]], [{}], {"": ""}, {"a": {"b": ["c"]}}, ["", ""], None)  # fmt: skip
TEXT = (".yml", ".yaml", ".md", ".svg")


def mutate(shop: Path, chance: Chance) -> str:
    """Change one file of a shop, one to three times, and tell which and how."""
    file = chance.choice(sorted(path for path in shop.rglob("*") if path.suffix in TEXT))
    kinds = (*(KINDS if file.suffix in (".yml", ".yaml") else KINDS[:2]),)
    content = file.read_bytes()
    done: list[str] = []
    for _ in range(chance.choice((1, 1, 2, 3))):
        kind = chance.choice(kinds)
        content = kind(content, chance)
        done.append(kind.__name__.strip("_"))
    file.write_bytes(content)
    return f"{file.relative_to(shop).as_posix()}: {', '.join(done)}"


def _bytes(content: bytes, chance: Chance) -> bytes:
    """Put in, take out or write over a few bytes anywhere."""
    for _ in range(chance.choice((1, 1, 1, 2, 5, 20))):
        at = chance.randrange(len(content) + 1)
        gone = chance.choice((0, 0, 1, 1, 2, 30))
        typed = chance.choice((b"", chance.choice(BYTES), chance.choice(BYTES) * 50))
        content = content[:at] + typed + content[at + gone :]
    return content


def _lines(content: bytes, chance: Chance) -> bytes:
    """Drop, double, swap or shift lines."""
    lines = content.split(b"\n")
    one, other = (chance.randrange(len(lines)) for _ in range(2))
    match chance.randrange(6):
        case 0:
            del lines[one]
        case 1:
            lines.insert(other, lines[one])
        case 2:
            lines[one], lines[other] = lines[other], lines[one]
        case 3:
            lines[one] = b"  " * chance.randrange(5) + lines[one].lstrip()
        case 4:
            del lines[min(one, other) : max(one, other)]
        case _:
            lines[one] = lines[one] + lines[other].lstrip()
    return b"\n".join(lines)


def _nodes(content: bytes, chance: Chance) -> bytes:
    """Swap, drop, double or replace a value somewhere in the structure."""
    try:
        root = yaml.load(content, Loader=yaml.BaseLoader)
    except (yaml.YAMLError, UnicodeDecodeError, RecursionError):
        return content
    for _ in range(chance.choice((1, 1, 2, 4))):
        places = list(_places(root))
        if places:
            _change(chance, places)
    return yaml.safe_dump(root, sort_keys=False, allow_unicode=True, width=1000).encode(
        "utf-8", "surrogatepass"
    )


KINDS: tuple[Callable[[bytes, Chance], bytes], ...] = (_bytes, _lines, _nodes, _nodes)


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
