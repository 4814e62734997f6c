"""Seeded troubleshooting graphs that chart layouts are measured on.

In: a first seed. Out: 30 graphs of 7 to 80 nodes: a symptom, checks with two to five results,
fixes; some of these are reached by more than one way. The first set has the seeds from 1000 on.
"""

import random
from dataclasses import dataclass, field
from pathlib import Path

import yaml

SIZES = (8, 8, 10, 10, 12, 12, 14, 15, 16, 18, 20, 20, 22, 24, 26, 28, 30, 32, 35, 38, 40, 42, 45,
         48, 52, 56, 60, 66, 72, 80)  # fmt: skip
TEXTS = yaml.safe_load((Path(__file__).parent / "chart_texts.yml").read_text())


@dataclass
class Graph:
    """A graph that is being made; nodes are kind and text, edges from, to and label."""

    nodes: list[tuple[str, str]] = field(default_factory=list)
    edges: list[tuple[int, int, str]] = field(default_factory=list)

    def add(self, kind: str, text: str) -> int:
        """Add a node and return its number."""
        self.nodes.append((kind, text))
        return len(self.nodes) - 1

    def targets(self, node: int) -> set[int]:
        """Where a node leads."""
        return {to for source, to, _ in self.edges if source == node}


def graphs(first_seed: int) -> list[Graph]:
    """Return one graph of each size."""
    return [make(first_seed + number, size) for number, size in enumerate(SIZES)]


def make(seed: int, size: int) -> Graph:
    """Return a graph of about a size; tries that stay too small are thrown away."""
    for attempt in range(50):
        graph = _try_once(random.Random(seed * 100 + attempt), size)
        if len(graph.nodes) >= 0.93 * size - 1:
            return graph
    raise ValueError(f"no graph of {size} nodes from seed {seed}")


def _try_once(dice: random.Random, size: int) -> Graph:
    bush = dice.choice([0.15, 0.3, 0.3, 0.5])  # how evenly checks spread over branches
    graph = Graph()
    root = graph.add("symptom", dice.choice(TEXTS["symptoms"]))
    first = graph.add("check", dice.choice(TEXTS["checks"]))
    graph.edges.append((root, first, ""))
    waiting, above, fixes = [first], {first: {root, first}, root: {root}}, []
    while waiting:
        # Mostly go on with the newest check, as a procedure does; sometimes with another one.
        at = len(waiting) - 1 if dice.random() > bush else dice.randrange(len(waiting))
        check = waiting.pop(at)
        count = dice.choices([2, 3, 4, 5], [64, 23, 9, 4])[0]
        room = size - len(graph.nodes)
        if room < count and not waiting:
            count = max(2, min(count, room)) if room >= 2 else 2
        labels = list(dice.choice(TEXTS["results"][count]))
        goes_on = dice.randrange(count)
        for number, label in enumerate(labels):
            room = size - len(graph.nodes) - len(waiting) * 2
            shared = [fix for fix in fixes if fix not in graph.targets(check)]
            if (dice.random() < 0.08 or room <= 0) and shared:
                graph.edges.append((check, dice.choice(shared), label))
                continue
            later = [one for one in waiting if one not in above[check] | graph.targets(check)]
            if dice.random() < 0.04 and later:
                target = dice.choice(later)
                above[target] |= above[check]
            elif room >= 3 and (number == goes_on or dice.random() < bush * 0.7):
                target = graph.add("check", dice.choice(TEXTS["checks"]))
                above[target] = above[check] | {target}
                waiting.append(target)
            else:
                target = graph.add("fix", dice.choice(TEXTS["fixes"]))
                fixes.append(target)
            graph.edges.append((check, target, label))
    return graph
