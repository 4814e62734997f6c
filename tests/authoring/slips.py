"""Slips of authors, each on one line of a sound tree.

In: a line. Out: the line with the slip, or None where it can't be made there.
"""

import re
from collections.abc import Callable, Sequence

Slip = Callable[[str], str | None]

KEY = re.compile(r"( *(?:- )?)([a-z_]+): ([^\s'\"\[\]{}>|&*#%@`!-][^#\"']*?)(\s+#.*)?")
COMMON_KEYS = ("check", "result", "branch", "minutes", "title", "status", "cause", "then")


def value_of(*keys: str, change: Callable[[str], str]) -> Slip:
    """Return the slip that writes the value of some keys in another way."""

    def slipped(line: str) -> str | None:
        match = KEY.fullmatch(line)
        if not match or match[2] not in keys:
            return None
        new = change(match[3])
        return f"{match[1]}{match[2]}: {new}{match[4] or ''}" if new != match[3] else None

    return slipped


def key(change: Callable[[str], str]) -> Slip:
    """Return the slip that writes a key of a plain value, with its colon, in another way."""

    def slipped(line: str) -> str | None:
        match = KEY.fullmatch(line)
        if not match or match[2] not in COMMON_KEYS or ": " in match[3]:
            return None
        return f"{match[1]}{change(match[2])}{match[3]}{match[4] or ''}"

    return slipped


def pattern(old: str, new: str) -> Slip:
    """Return the slip that replaces what a pattern matches."""

    def slipped(line: str) -> str | None:
        text = re.sub(old, new, line, count=1)
        return text if text != line else None

    return slipped


# A fix puts these back as they were.
SURE: dict[str, Slip] = {
    "letters of a key swapped": key(lambda word: f"{word[:-3]}{word[-2]}{word[-3]}{word[-1]}: "),
    "capital in a key": key(lambda word: f"{word.title()}: "),
    "no space after a colon": key(lambda word: f"{word}:"),
    "tab after a colon": key(lambda word: f"{word}:\t"),
    "no-break space after a colon": key(lambda word: f"{word}:\u00a0"),
    "smart quotes": value_of("check", "title", "fix", change=lambda value: f"“{value}”"),
    "unit behind minutes": value_of("minutes", "wait", change=lambda value: f"{value} min"),
    "date as Americans write it": pattern(r"(\d{4})-0?(\d+)-0?(\d+)", r"\2/\3/\1"),
    "capital in the status": value_of("status", change=str.title),
    "DTC with the letter O": pattern(r"^(  codes: \[[PUBC])0(?=\d{3}\b)", r"\1O"),
    "range the wrong way": pattern(r"(result: )([\d.]+) to ([\d.]+)$", r"\1\3 to \2"),
    "brace left open": pattern(r"^( *reading: \{[^{}]*)\}$", r"\1"),
}
# These it puts back as they were, or leaves as typed: another name may be as near.
LIKELY: dict[str, Slip] = {
    "letter missing in a name": value_of(
        "branch", "then", "how_to", change=lambda value: value[:-2] + value[-1]
    ),
    "letter added to a name": value_of("branch", "then", change=lambda value: f"{value}s"),
    "letters of a name swapped": value_of(
        "branch", "then", "how_to", change=lambda value: value[:-3] + value[:-4:-1]
    ),
    "name of another step": value_of("branch", "then", change=lambda value: f"{value}-2"),
    "comparison sign": value_of("result", change=lambda value: re.sub("^below ", "< ", value)),
    "decimal comma": value_of("result", change=lambda value: re.sub(r"\.(?=\d)", ",", value)),
    "volts behind a limit": value_of(
        "result", change=lambda value: re.sub(r"(\d)$", r"\1 V", value)
    ),
    "list without brackets": pattern(r"^( *(?:tools|hazards|codes): )\[([^,\]]+)\]", r"\1\2"),
    "colon missing": pattern(r"^( *(?:check|fix|action|note|cause)):(?= [A-Z])", r"\1"),
    "one space too many": pattern(r"^    (?=(?:minutes|cause|tools|at_most): )", "     "),
    "dash missing": pattern(r"^( *)- (?=result: )", r"\1  "),
}


def places(lines: Sequence[str], slip: Slip) -> list[int]:
    """Return the lines where a slip can be made: those whose text ends with them."""
    return [at for at, line in enumerate(lines) if slip(line) and not _goes_on(lines, at)]


def _goes_on(lines: Sequence[str], at: int) -> bool:
    """Whether the text of a line continues below, where it is indented deeper."""
    below = next((line for line in lines[at + 1 :] if line.strip()), "")
    return _column(below) > _column(lines[at])


def _column(line: str) -> int:
    return len(line) - len(line.lstrip(" -"))
