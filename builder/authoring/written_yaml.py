"""Plain values as YAML, in the style in which people write trees.

In: maps, lists and texts. Out: lines. What is short stays on one line; a text has quotes only where
YAML needs them. Read again, it is the same.
"""

import json
import re
from collections.abc import Iterator, Mapping, Sequence

Plain = str | Sequence["Plain"] | Mapping[str, "Plain"]

_WIDEST = 96  # columns
_LONGEST_COMMENT = 300  # characters
_STARTS = re.compile(r"[A-Za-z0-9<(/.+°±Ω]|-(?=[0-9.])")
_ENDS_PLAIN = re.compile(r"(?:: |:$| #|\s$)")
_BRACKETS = re.compile(r"[,\[\]{}]")
_ALWAYS_BLOCK = frozenset({"steps", "results", "do", "symptom", "words"})


def yaml_lines(value: Mapping[str, Plain], indent: int = 0) -> Iterator[str]:
    """Yield the lines of a map."""
    for name, one in value.items():
        yield from _entry(f"{' ' * indent}{scalar(name)}:", name, one, indent)


def scalar(text: str, *, in_brackets: bool = False) -> str:
    """Write a text, in quotes where YAML needs them."""
    is_plain = (
        _STARTS.match(text)
        and not _ENDS_PLAIN.search(text)
        and text.isprintable()
        and not (in_brackets and _BRACKETS.search(text))
    )
    quoted = text if is_plain else json.dumps(text, ensure_ascii=False)
    return "".join(one if one.isprintable() else f"\\U{ord(one):08x}" for one in quoted)


def flow(value: Plain) -> str:
    """Write a value on one line."""
    if isinstance(value, str):
        return scalar(value, in_brackets=True)
    if isinstance(value, Mapping):
        pairs = (f"{scalar(name, in_brackets=True)}: {flow(one)}" for name, one in value.items())
        return f"{{{', '.join(pairs)}}}"
    return f"[{', '.join(map(flow, value))}]"


def comment(text: str) -> str:
    """Return a text as a comment on a line of its own, which silences no rule."""
    plain = " ".join(text.split()).replace("silence:", "silence")
    return f"# {''.join(filter(str.isprintable, plain))[:_LONGEST_COMMENT]}".rstrip()


def _entry(head: str, name: str, value: Plain, indent: int) -> Iterator[str]:
    """Yield what comes after a key, or after the dash of an item."""
    if isinstance(value, str):
        yield f"{head} {scalar(value)}"
    elif not value or (name not in _ALWAYS_BLOCK and _fits(f"{head} {flow(value)}")):
        yield f"{head} {flow(value)}"
    elif isinstance(value, Mapping):
        yield head
        yield from yaml_lines(value, indent + 2)
    else:
        yield head
        for one in value:
            yield from _item(one, indent + 2)


def _item(value: Plain, indent: int) -> Iterator[str]:
    dash = f"{' ' * indent}-"
    if isinstance(value, str):
        yield f"{dash} {scalar(value)}"
    elif isinstance(value, Mapping) and ("means" in value or not _fits(f"{dash} {flow(value)}")):
        first, *others = yaml_lines(value, indent + 2)
        yield f"{dash} {first.lstrip()}"
        yield from others
    else:
        yield f"{dash} {flow(value)}"


def _fits(line: str) -> bool:
    return len(line) <= _WIDEST
