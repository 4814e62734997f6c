"""Grow one generated tree, step by step, as lines of text.

In: a `Draft` with its random numbers, its words and its room. Out: the lines under `steps:`.
"""

import random
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path

import yaml

STEMS: dict[str, list[str]] = yaml.safe_load(
    (Path(__file__).parent / "stems.yml").read_text("utf-8")
)
HAZARDS = ("rotating-parts", "hot-parts", "battery-gas", "road-test")
DEEPEST = 12  # checks one below the other


@dataclass(frozen=True, slots=True)
class Measured:
    """Something that is measured: what, in which unit, from, to, resolution, and when.

    What the rules take only with a state that counts as a load, or as power off, has no words.
    """

    what: str
    unit: str
    top: int
    resolution: str
    when: str
    tool: str
    states: str


MEASURED = (
    Measured("Voltage at the {a}", "V", 16, "0.01", "warm at 1500 rpm", "multimeter",
             "engine-running, loads-on"),
    Measured("Resistance of the {a}", "ohm", 2000, "0.1", "", "multimeter",
             "{unplugged: alternator}, battery-disconnected"),
    Measured("Pressure at the {a}", "kPa", 700, "1", "warm at 600 rpm", "pressure-gauge",
             "engine-running"),
    Measured("Current into the {a}", "A", 200, "0.1", "cold at 600 rpm", "multimeter",
             "engine-running, loads-on"),
    Measured("Resting current of the {a}", "mA", 500, "1", "locked for 30 min", "low-current-clamp",
             "key-off, loads-off"),
    Measured("Temperature of the {a}", "C", 140, "0.1", "warm engine", "scan-tool",
             "engine-running"),
)  # fmt: skip


@dataclass(slots=True)
class Draft:
    """A tree in the making: its steps as lines of text, and the words it speaks in."""

    chance: random.Random
    words: Sequence[str]
    own: Sequence[str]  # the few words that the tree is about
    others: Sequence[str]  # trees that it may hand off to
    steps: dict[str, list[str]] = field(default_factory=dict)
    waiting: list[tuple[str, int]] = field(default_factory=list)  # checks to be written, and depth
    ends: list[str] = field(default_factory=list)
    room: int = 0
    states: bool = False  # whether its steps name states of the vehicle and run a procedure

    def word(self) -> str:
        """Pick a word: often one of the tree's own, else a common one, seldom a rare one."""
        if self.chance.random() < 0.3:
            return self.chance.choice(self.own)
        return self.words[int(len(self.words) * self.chance.random() ** 3)]

    def say(self, kind: str, most: int = 60) -> str:
        """Fill a pattern with words until it is short enough for its box."""
        while True:
            said = self.fill(self.chance.choice(STEMS[kind]))
            if len(said) <= most:
                return said[0].upper() + said[1:]

    def fill(self, pattern: str) -> str:
        """Put words into a pattern."""
        plain, pick = STEMS["plain"], self.chance.choice
        first = second = self.word()
        while second == first:
            second = self.word()
        return pattern.format(a=first, b=second, p=pick(plain), p2=pick(plain),
                              s=pick(STEMS["situations"]))  # fmt: skip

    def name(self, kind: str) -> str:
        """Name a new step and take its room."""
        self.room -= 1
        return f"{kind}-{len(self.steps) + len(self.waiting) + 1}"


def steps_of(draft: Draft) -> Iterator[str]:
    """Grow a tree from its first step; yield its lines."""
    draft.steps["record"] = [
        "action: Read and record the codes of every module", "minutes: 6", "tools: [scan-tool]",
        "does: [record-codes]", f"then: {'battery' if draft.states else new_check(draft, 1)}",
    ]  # fmt: skip
    if draft.states:
        draft.steps["battery"] = [
            "check: Is the battery good enough to test with?", "by: battery-proof",
            f"cannot_test: {end(draft)}", f"results: {{good: {new_check(draft, 1)}, "
            f"bad: {end(draft)}}}",
        ]  # fmt: skip
    while draft.waiting:
        name, depth = draft.waiting.pop(0)
        draft.steps[name] = []  # so that names go on counting
        draft.steps[name] = check(draft, name, depth)
    for name, lines in draft.steps.items():
        yield f"  {name}:"
        yield from (f"    {line}" for line in lines)


def new_check(draft: Draft, depth: int) -> str:
    """Queue a check."""
    name = draft.name("check")
    draft.waiting.append((name, depth))
    return name


def check(draft: Draft, name: str, depth: int) -> list[str]:
    """Write a check: phrases, one reading, or two."""
    kind = draft.chance.random()
    if kind < 0.4:
        lines, said = one_reading(draft)
    elif kind < 0.5:
        lines, said = two_readings(draft)
    else:
        state = draft.chance.choice(STEMS["states"])
        lines = [f"check: {draft.fill('{a}').capitalize()} {state}", *when(draft, "", "key-off")]
        said = draft.chance.sample(STEMS["answers"], draft.chance.choice((2, 2, 3, 4)))
    minutes = 4 + draft.chance.randint(1, 20) // 4
    lines += [f"minutes: {minutes}", *extras(draft), "results:"]
    for result, branch in zip(said, branches(draft, len(said), depth), strict=True):
        lines += [f"  - result: {result}", f"    branch: {branch}"]
    if kind >= 0.5 and draft.room > 1 and draft.chance.random() < 0.3:
        lines += ["  - result: cannot be told yet", f"    branch: {way_back(draft, name)}"]
    return lines


def one_reading(draft: Draft) -> tuple[list[str], list[str]]:
    """Write a reading with three ranges that leave no gap."""
    what = draft.chance.choice([one for one in MEASURED if draft.states or one.when])
    digits = len(what.resolution) - 2 if "." in what.resolution else 0
    low, high = sorted(draft.chance.sample(range(10, 90), 2))
    low_end, high_end = (f"{what.top * part / 100:.{digits}f}" for part in (low, high))
    lines = [f"check: {draft.fill(what.what)}", *when(draft, what.when, what.states),
             f"tools: [{what.tool}]", f"reading: {{unit: {what.unit}, from: 0, to: {what.top}, "
             f"resolution: {what.resolution}, origin: common practice}}"]  # fmt: skip
    return lines, [f"below {low_end}", f"{low_end} to {high_end}", f"above {high_end}"]


def two_readings(draft: Draft) -> tuple[list[str], list[str]]:
    """Write a voltage drop on both sides, or two voltages."""
    one = "{unit: V, from: 0, to: 16, resolution: 0.01, origin: common practice}"
    what = "Voltage drop at the {a} on both sides" if draft.states else "Voltage at the {a}, twice"
    lines = [f"check: {draft.fill(what)}",
             *when(draft, "warm at 1500 rpm", "engine-running, loads-on"),
             *(["how_to: voltage-drop"] if draft.states else []),
             "tools: [multimeter]", "readings:", f"  plus: {one}", f"  ground: {one}"]  # fmt: skip
    return lines, ["{plus: at most 0.5, ground: at most 0.2}", "{plus: above 0.5}",
                   "{plus: at most 0.5, ground: above 0.2}"]  # fmt: skip


def when(draft: Draft, words: str, states: str) -> Iterator[str]:
    """Write the conditions of a check, in words or as states."""
    if draft.states:
        plug = "" if "unplugged" in states else "{plugged-in: alternator}, "
        loads = "" if "loads" in states else ", loads-off"
        yield f"when: [{plug}{states}{loads}]"
    elif words:
        yield f"when: [{words}]"


def extras(draft: Draft) -> Iterator[str]:
    """Write what a step may carry: a note, a caution, a wait."""
    if draft.chance.random() < 0.3:
        yield "note: " + " ".join(draft.say("notes", 90) for _ in range(draft.chance.randint(1, 2)))
    if draft.chance.random() < 0.2:
        yield f"hazards: [{draft.chance.choice(HAZARDS)}]"
    if draft.chance.random() < 0.1:
        yield f"wait: {draft.chance.choice((5, 10, 30))}"


def branches(draft: Draft, number: int, depth: int) -> list[str]:
    """Choose where the results lead: on while there is room, and never all to one place."""
    chosen: list[str] = []
    for nth in range(number):
        kind, deep = draft.chance.random(), depth >= DEEPEST
        must = nth == 0 and not draft.waiting
        if draft.room > 1 and not deep and (must or kind < 0.3):
            chosen.append(new_check(draft, depth + 1))
        elif draft.room > 2 and not deep and kind < 0.4:
            chosen.append(action(draft, depth))
        elif draft.others and kind < 0.5:
            chosen.append(draft.chance.choice(draft.others))
        elif draft.ends and (draft.room < 1 or kind < 0.6):
            chosen.append(draft.chance.choice(draft.ends))
        else:
            chosen.append(end(draft))
    if len(set(chosen)) == 1:
        chosen[-1] = end(draft)
    return chosen


def action(draft: Draft, depth: int) -> str:
    """Write an action that a check follows."""
    name = draft.name("action")
    draft.steps[name] = []
    draft.steps[name] = [f"action: {draft.say('deeds')}",
                         f"minutes: {4 + draft.chance.randint(1, 10) // 2}",
                         *extras(draft), f"then: {new_check(draft, depth + 1)}"]  # fmt: skip
    return name


def way_back(draft: Draft, caller: str) -> str:
    """Write an action that goes back to its check, so often and then to an end."""
    name = draft.name("action")
    draft.steps[name] = []
    back = draft.chance.choice(("back", caller))
    draft.steps[name] = [f"action: {draft.say('deeds')}",
                         f"minutes: {4 + draft.chance.randint(1, 10) // 2}",
                         f"at_most: {draft.chance.randint(1, 3)}", f"spent: {end(draft, False)}",
                         f"then: {back}"]  # fmt: skip
    return name


def end(draft: Draft, proved: bool = True) -> str:
    """Write a fix, now and then a stop; what isn't proved sells no part."""
    if draft.chance.random() < 0.15:
        name = draft.name("stop")
        kind = draft.chance.choice(("foreman", "not-found", "customer"))
        draft.steps[name] = [f"stop: {draft.say('causes')}", f"kind: {kind}"]
        return name
    name = draft.name("fix")
    price = 100 + draft.chance.randint(5, 400) // 4
    sells, repair = proved and not draft.states, draft.say("repairs")
    if not sells:
        repair = repair.replace("Replace", "Repair")
    draft.steps[name] = [
        f"fix: {repair}", f"cause: {draft.say('causes')}",
        f"weight: {draft.chance.randint(1, 9)}",
        f"hours: {(15 + draft.chance.randint(2, 40) // 2) / 10}",  # like work takes alike
        "verify: [the same check again, same conditions]",
    ]  # fmt: skip
    if draft.states:
        draft.steps[name].append("when: [battery-disconnected]")
    if sells:
        parts = [
            "parts:",
            f"  - part: {draft.word()}",
            f"    price: {price} to {price + price // 5}",
        ]
        draft.steps[name] += parts
    draft.ends.append(name)
    return name
