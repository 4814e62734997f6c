"""Write a whole shop of generated trees, for benchmarks: `generate.py DIR --trees 1000 --seed 1`.

In: a folder, a number and a seed. Out: `trees/`, `kb/` and `site_config/`; the same seed gives the
same files. Every tree is sound, of 5 to 80 steps, with weights, actions, ways back, cautions,
limits and handoffs; every third of them, or every one with `--states-in-every 1`, names states of
the vehicle and runs a procedure. A symptom has eight phrasings. The words come from a vocabulary of
3,000, a few of them much more often than the others, as in real text.
"""

import argparse
import random
from pathlib import Path

from grow import STEMS, Draft, steps_of

SAMPLES = Path(__file__).parents[1] / "samples" / "kb"
VOCABULARY = 3000
SYSTEMS = ("battery", "starting", "charging", "engine", "fuel", "cooling", "climate", "gearbox",
           "suspension", "tyres", "body", "lighting", "wiring", "network")  # fmt: skip
LAMPS = ("charging", "engine", "abs", "coolant temperature", "oil pressure", "tyre pressure")
TOOLS = ("multimeter", "scan-tool", "inspection-lamp", "pressure-gauge", "low-current-clamp")
PEOPLE = ("R. Osei", "M. Lind", "T. Abara", "J. Varga")
SMALLEST, LARGEST = 5, 76  # steps to begin with; the last ends come on top


def vocabulary() -> list[str]:
    """Return the 3,000 different words, common ones first: plain parts, then what they make up."""
    compounds = [first + second for second in STEMS["second"] for first in STEMS["first"]]
    random.Random(0).shuffle(compounds)
    return list(dict.fromkeys([*STEMS["first"], *STEMS["second"], *compounds]))[:VOCABULARY]


def tree(draft: Draft, system: str, phrases: set[str]) -> str:
    """Write a tree; `phrases` are those of the trees before it, for no two may be the same."""
    pick = draft.chance
    title = f"{draft.own[0].capitalize()} {pick.choice(STEMS['plain'])}, {draft.own[1]}"
    words: list[str] = []
    while len(words) < 8:
        said = draft.fill(pick.choice(STEMS["complaints"]))
        if said not in phrases:
            phrases.add(said)
            words.append(f"    - {said}")
    author, reviewer = pick.sample(PEOPLE, 2)
    codes = ", ".join(f"P{pick.randint(0, 3)}{pick.randint(0, 999):03d}" for _ in range(2))
    return "\n".join([
        f"title: {title}", "status: ready", f"system: {system}", "drive: with care",
        "why: It may get worse", "symptom:",
        "  words:", *words, f"  lamps: [{pick.choice(LAMPS)}]", f"  codes: [{codes}]",
        "applies_to: any", f"written: {{by: {author}, date: 2026-03-02}}",
        f"reviewed: {{by: {reviewer}, date: 2026-09-01}}", "", "steps:",
        *steps_of(draft), "",
    ])  # fmt: skip


def knowledge() -> dict[str, str]:
    """Write the files that the trees lean on."""
    lists = {"systems": (SYSTEMS, "{{name: {}}}"), "lamps": (LAMPS, "{{name: The {} lamp}}"),
             "tools": (TOOLS, "{{name: {}}}")}  # fmt: skip
    found = {
        f"kb/{kind}.yml": "".join(
            f"{name}: {pattern.format(name.capitalize())}\n" for name in names
        )
        for kind, (names, pattern) in lists.items()
    }
    found["kb/how-to/voltage-drop.md"] = (
        "---\ntitle: Voltage drop\npurpose: Finds a resistance that only shows under load.\n"
        "reviewed: {by: A. Nobody, date: 2026-09-01}\n"
        "tools: [multimeter]\n---\n\nMeasure along the wire, with the load on.\n"
    )
    found["kb/conditions.yml"] = (SAMPLES / "conditions.yml").read_text("utf-8")
    found["kb/glossary.yml"] = (SAMPLES / "glossary.yml").read_text("utf-8")
    found["kb/hazards.yml"] = (SAMPLES / "hazards.yml").read_text("utf-8")
    found["kb/parts.yml"] = "alternator: {name: Alternator}\n"
    found["kb/procedures/battery-proof.yml"] = PROOF
    found["site_config/shop.yml"] = (
        "shop: A generated shop\nsite_address: https://charts.example/\nlabor_rate: 140.00\n"
        "currency: USD\ntax_percent: 8\nstuck: {call: foreman, phone: 14}\n"
        f"most_steps: {LARGEST}\n"
    )
    return found


PROOF = """\
title: Is the battery good enough to test with?
returns: [good, bad]
steps:
  case:
    check: Is the battery case good?
    when: [key-off, loads-off]
    minutes: 2
    hazards: [battery-gas]
    results:
      - {result: yes, branch: posts}
      - {result: no, return: bad}
  posts:
    action: Clean the posts
    when: [battery-disconnected]
    minutes: 8
    then: load
  load:
    check: What does the battery tester show?
    when: [key-off, {plugged-in: alternator}]
    tools: [multimeter]
    minutes: 4
    does: [check-supply]
    at_most: 2
    spent: worn-out
    results:
      - {result: good, done: yes, return: good}
      - {result: corroded, branch: posts}
      - {result: replace, return: bad}
  worn-out:
    return: bad
"""


def shop(folder: Path, trees: int, seed: int, states_in_every: int = 3) -> None:
    """Write a shop of so many trees; the first of every so many names states."""
    chance, words, phrases, ids = random.Random(seed), vocabulary(), set[str](), list[str]()
    for name, text in knowledge().items():
        write(folder / name, text)
    for number in range(trees):
        system = SYSTEMS[number % len(SYSTEMS)]
        own = chance.sample(words, 4)
        others = chance.sample(ids, min(2, len(ids)))  # earlier ones: no ring of handoffs
        room = chance.randint(SMALLEST, LARGEST)
        draft = Draft(chance, words, own, others, room=room,
                      states=number % states_in_every == 0)  # fmt: skip
        id_ = f"{system}/{own[0]}-{own[1]}-{number + 1}"
        write(folder / "trees" / f"{id_}.yml", tree(draft, system, phrases))
        ids.append(id_)


def write(path: Path, text: str) -> None:
    """Write a file and the folders above it."""
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8", newline="\n")


if __name__ == "__main__":
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("folder", type=Path, metavar="DIR")
    asked.add_argument("--trees", type=int, default=1000)
    asked.add_argument("--seed", type=int, default=1)
    asked.add_argument("--states-in-every", type=int, default=3)
    options = asked.parse_args()
    shop(options.folder, options.trees, options.seed, options.states_in_every)
