"""Write a whole shop of generated trees, for benchmarks: `generate.py DIR --trees 1000 --seed 1`.

In: a folder, a number and a seed. Out: `trees/`, `kb/` and `site_config/`; the same seed gives the
same files. Every tree is sound, of 5 to 80 steps, with weights, actions, ways back, cautions,
limits and handoffs; its symptom has eight phrasings. The words come from a vocabulary of 3,000,
a few of them much more often than the others, as in real text.
"""

import argparse
import random
from pathlib import Path

from grow import HAZARDS, STEMS, Draft, steps_of

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
    codes = ", ".join(f"P{pick.randint(0, 3)}{pick.randint(0, 999):03d}" for _ in range(2))
    return "\n".join([
        "format: 1", f"title: {title}", "status: ready", f"system: {system}", "symptom:",
        "  words:", *words, f"  lamps: [{pick.choice(LAMPS)}]", f"  codes: [{codes}]",
        "applies_to: any", f"written: {{by: {pick.choice(PEOPLE)}, date: 2026-03-02}}",
        f"reviewed: {{by: {pick.choice(PEOPLE)}, date: 2026-09-01}}", "", "steps:",
        *steps_of(draft), "",
    ])  # fmt: skip


def knowledge() -> dict[str, str]:
    """Write the files that the trees lean on."""
    caution = (
        "{signal: WARNING, hazard: It can hurt, harm: Cuts and burns, avoid: Keep clear of it}"
    )
    lists = {"systems": (SYSTEMS, "{{name: {}}}"), "lamps": (LAMPS, "{{name: The {} lamp}}"),
             "tools": (TOOLS, "{{name: {}}}"), "hazards": (HAZARDS, caution)}  # fmt: skip
    found = {
        f"kb/{kind}.yml": "".join(
            f"{name}: {pattern if kind == 'hazards' else pattern.format(name.capitalize())}\n"
            for name in names
        )
        for kind, (names, pattern) in lists.items()
    }
    found["kb/how-to/voltage-drop.md"] = (
        "---\ntitle: Voltage drop\npurpose: Finds a resistance that only shows under load.\n"
        "reviewed: {by: A. Nobody, date: 2026-09-01}\n"
        "tools: [multimeter]\n---\n\nMeasure along the wire, with the load on.\n"
    )
    found["site_config/shop.yml"] = (
        "shop: A generated shop\nsite_address: https://charts.example/\nlabor_rate: 140.00\n"
        "currency: USD\ntax_percent: 8\nstuck: {call: foreman, phone: 14}\n"
    )
    return found


def shop(folder: Path, trees: int, seed: int) -> None:
    """Write a shop of so many trees."""
    chance, words, phrases, ids = random.Random(seed), vocabulary(), set[str](), list[str]()
    for name, text in knowledge().items():
        write(folder / name, text)
    for number in range(trees):
        system = SYSTEMS[number % len(SYSTEMS)]
        own = chance.sample(words, 4)
        others = chance.sample(ids, min(2, len(ids)))  # earlier ones: no ring of handoffs
        draft = Draft(chance, words, own, others, room=chance.randint(SMALLEST, LARGEST))
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
    options = asked.parse_args()
    shop(options.folder, options.trees, options.seed)
