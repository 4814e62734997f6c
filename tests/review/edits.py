"""Edits of a tree's text, each by its lines: some change what it means, some don't.

In: the lines of a file and dice. Out: the lines after one edit, or None where it doesn't fit.
"""

import random
import re
from collections.abc import Callable

Lines = list[str]
Edit = Callable[[Lines, random.Random], Lines | None]
STEP = re.compile(r"^  ([a-z][\w-]*):(?= |$)")


def places(lines: Lines, pattern: str) -> list[int]:
    """Return the lines below `steps:` that have a pattern."""
    start = lines.index("steps:")
    return [i for i in range(start + 1, len(lines)) if re.search(pattern, lines[i])]


def replaced(pattern: str, replace: Callable[[re.Match[str]], str]) -> Edit:
    """Return an edit that replaces one match in one line of a step."""

    def edit(lines: Lines, dice: random.Random) -> Lines | None:
        spots = places(lines, pattern)
        if not spots:
            return None
        i = dice.choice(spots)
        line = re.sub(pattern, replace, lines[i], count=1)
        return None if line == lines[i] else [*lines[:i], line, *lines[i + 1 :]]

    return edit


def steps_of(lines: Lines) -> list[tuple[str, int, int]]:
    """Return name, first line and end of every step."""
    starts = [(m[1], i) for i in places(lines, STEP.pattern) if (m := STEP.match(lines[i]))]
    ends = [*(i for _, i in starts[1:]), len(lines)]
    return [(name, i, end) for (name, i), end in zip(starts, ends, strict=True)]


def rename_step(lines: Lines, dice: random.Random) -> Lines | None:
    """Rename a step wherever it is named."""
    name = dice.choice(steps_of(lines))[0]
    if len(re.findall(rf"\b{name}\b", "\n".join(lines).replace(f"{name}-", ""))) > 6:
        return None
    named = re.compile(rf"(?<![\w/#-]){name}(?![\w/#-])")
    words = re.compile(rf"^  {name}:|(branch|then|spent|cannot_test|still_there|same_as): {name}\b"
                       rf"|(after|results|verify|proved_by):.*|^ +[\w' -]+: {name}$"
                       rf"|<{name}[.>]|^ +- {{?{name}\b")  # fmt: skip
    renamed = [words.sub(lambda m: named.sub(f"{name}-two", m[0]), line) for line in lines]
    left = [line for line in renamed if re.search(rf": {name}\b(?!-)", line)]
    return None if left else renamed


def remove_step(lines: Lines, dice: random.Random) -> Lines | None:
    """Delete a step that isn't the first."""
    _, first, end = dice.choice(steps_of(lines)[1:])
    return [*lines[:first], *lines[end:]]


def add_step(lines: Lines, dice: random.Random) -> Lines | None:
    """Add a step that nothing else is like."""
    number = dice.randrange(100)
    return [*lines, f"  extra-{number}:", f"    stop: Call station {number} about a new idea"]


def remove_result(lines: Lines, dice: random.Random) -> Lines | None:
    """Delete a result that has one line."""
    spots = [
        *places(lines, r"^ +- \{result:.*\}$"),
        *(i for i in places(lines, r"^      [\w' ,-]+: [\w/#-]+$") if in_results(lines, i)),
    ]
    if not spots:
        return None
    i = dice.choice(spots)
    return [*lines[:i], *lines[i + 1 :]]


def add_result(lines: Lines, dice: random.Random) -> Lines | None:
    """Add a result to a map of results."""
    spots = [i for i in places(lines, r"^    results:$")
             if i + 1 < len(lines) and not lines[i + 1].lstrip().startswith("-")]  # fmt: skip
    if not spots:
        return None
    i = dice.choice(spots)
    target = dice.choice(steps_of(lines))[0]
    return [*lines[: i + 1], f"      something odd {dice.randrange(9)}: {target}", *lines[i + 1 :]]


def in_results(lines: Lines, i: int) -> bool:
    """Return whether a line is an entry of a map of results."""
    while i > 0 and re.match(r"^      ", lines[i]):
        i -= 1
    return lines[i].strip() == "results:"


def lead_elsewhere(lines: Lines, dice: random.Random) -> Lines | None:
    """Let a result or an action lead to another step."""
    pattern = r"(branch|then|spent|cannot_test|still_there): ([\w-]+)(?=[,}]|$)"
    spots = places(lines, pattern)
    if not spots:
        return None
    i = dice.choice(spots)
    old = re.search(pattern, lines[i])
    assert old
    target = dice.choice([name for name, _, _ in steps_of(lines) if name != old[2]])
    line = lines[i].replace(old[0], f"{old[1]}: {target}", 1)
    return [*lines[:i], line, *lines[i + 1 :]]


def drop_item(key: str) -> Edit:
    """Return an edit that takes the last item out of a list of two or more on one line."""
    return replaced(rf"^(    {key}: \[.*), [^,\[\]{{}}]+\]", lambda m: f"{m[1]}]")


def plus_one(match: re.Match[str]) -> str:
    """Count one up."""
    return f"{match[1]}{int(match[2]) + 1}"


HEAD = {
    "title": (r"^title: (.*)", r"title: \1 again"),
    "why": (r"^why: (.*)", r"why: Because it may stop."),
    "drive": (r"^drive: (yes|with care)", "drive: no"),
}


def edit_head(lines: Lines, dice: random.Random) -> Lines | None:
    """Change one line of the head."""
    pattern, new = HEAD[dice.choice(sorted(HEAD))]
    edited = [re.sub(pattern, new, line) for line in lines]
    return None if edited == lines else edited


MEANING: dict[str, tuple[Edit, str]] = {  # the edit, and the kind of its change
    "minutes": (replaced(r"^(    minutes: )(\d+)$", plus_one), "minutes changed"),
    "wait": (replaced(r"^(    wait: )(\d+)$", plus_one), "minutes changed"),
    "at most": (replaced(r"^(    at_most: )(\d+)$", plus_one), "limit changed"),
    "weight": (replaced(r"^(    weight: )(\d+)$", plus_one), "chance changed"),
    "note": (replaced(r"^(    note: \w+)", lambda m: f"{m[1]} always"), "text changed"),
    "line": (replaced(r"^(      - )([A-Z][a-z]+ the)", lambda m: f"{m[1]}Slowly {m[2]}"),
             "text changed"),
    "check": (replaced(r"^(    check: \w+)", lambda m: f"{m[1]} now"), "text changed"),
    "action": (replaced(r"^(    action: \w+)", lambda m: f"{m[1]} all"), "text changed"),
    "cause": (replaced(r"^(    cause: \w+)", lambda m: f"{m[1]} old"), "text changed"),
    "hazard": (drop_item("hazards"), "hazard changed"),
    "state": (replaced(r"^(    when: \[)(key-off|key-on|engine-running)(?=[,\]])",
                       lambda m: f"{m[1]}{'key-on' if m[2] != 'key-on' else 'key-off'}"),
              "state changed"),
    "tool": (drop_item("tools"), "text changed"),
    "spec": (replaced(r"(result: )(below|within|above) spec",
                      lambda m: f"{m[1]}{'above' if m[2] == 'below' else 'below'} spec"), ""),
    "target": (lead_elsewhere, "branch changed"),
    "rename": (rename_step, "step renamed"),
    "remove": (remove_step, "step removed"),
    "add": (add_step, "step added"),
    "remove result": (remove_result, "result removed"),
    "add result": (add_result, "result added"),
    "head": (edit_head, ""),
}  # fmt: skip


def add_comments(lines: Lines, dice: random.Random) -> Lines | None:
    """Write a comment and a blank line somewhere."""
    i = dice.choice([first for _, first, _ in steps_of(lines)])
    return [*lines[:i], "  # somebody thought of this", "", *lines[i:]]


def move_step(lines: Lines, dice: random.Random) -> Lines | None:
    """Move a step to the end; the first stays, as a job starts there."""
    steps = steps_of(lines)
    name, first, end = dice.choice(steps[1:])
    block = lines[first:end]
    if any("each:" in line or "next" in line for line in lines) or name == steps[-1][0]:
        return None
    return [*lines[:first], *lines[end:], *block]


def swap_keys(lines: Lines, dice: random.Random) -> Lines | None:
    """Swap two neighboring keys of a step that have a line each."""
    one_line = r"^    (minutes|wait|weight|cause|how_to|tools|hazards|note|fix|stop): \S"
    spots = places(lines, one_line)
    pairs = [i for i in spots if i + 1 in spots]
    if not pairs:
        return None
    i = dice.choice(pairs)
    return [*lines[:i], lines[i + 1], lines[i], *lines[i + 2 :]]


NO_MEANING: dict[str, Edit] = {
    "comments": add_comments,
    "move": move_step,
    "swap keys": swap_keys,
    "decimals": replaced(r"^(    minutes: \d+)$", lambda m: f"{m[1]}.0"),
    "quotes": replaced(r"^    note: ([^\"':#{\[]+)$", lambda m: f'    note: "{m[1]}"'),
    "comment behind": replaced(r"^(    minutes: \d+)$", lambda m: f"{m[1]}  # or so"),
    "turned list": replaced(r"^(    (?:tools|hazards): \[)([\w-]+), ([\w-]+)\]",
                            lambda m: f"{m[1]}{m[3]}, {m[2]}]"),
    "block list": replaced(r"^    tools: \[([\w-]+)\]$", lambda m: f"    tools:\n      - {m[1]}"),
    "long results": replaced(r"^    results: \{yes: ([\w-]+), no: ([\w-]+)\}$",
                             lambda m: "    results:\n      - result: no\n        branch: "
                                       f"{m[2]}\n      - {{branch: {m[1]}, result: yes}}"),
    "fuller words": replaced(r"^(    stop: [A-Z].*)$", lambda m: f"{m[1]}  # as before"),
}  # fmt: skip
