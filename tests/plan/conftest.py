"""Trees for the tests of the plan: from the text of their steps, and random ones without loops."""

from collections.abc import Callable
from textwrap import dedent, indent

import pytest
from hypothesis import strategies as st

from builder.model.checks import Branch, Check, Result
from builder.model.ends import Fix, Stop
from builder.model.text import NOWHERE, Number, Text
from builder.model.tree import Step, Symptom, Tree
from builder.reader.source import Source, decode
from builder.reader.trees import tree_from

HEAD = """\
format: 2
title: A case of the tests
status: ready
system: charging
symptom: {words: [a symptom]}
"""
MakeTree = Callable[[str], Tree]


@pytest.fixture(scope="session")
def tree() -> MakeTree:
    """Return a function that reads steps as the reader does; a case must have no findings."""

    def read(text: str) -> Tree:
        text = dedent(text)
        head = "" if "steps:" in text else "steps:\n"
        body = text if not head else indent(text, "  ")
        source = decode("trees/charging/case.yml", (HEAD + head + body).encode())
        assert isinstance(source, Source)
        case_tree, findings = tree_from(source)
        assert case_tree is not None
        assert not findings, findings
        return case_tree

    return read


def step(name: str, body: Check | Fix | Stop, minutes: int = 0) -> Step:
    """Make a step with a kind and minutes only."""
    return Step(Text(name), NOWHERE, Text(name), body, minutes=Number(str(minutes)))


@st.composite
def acyclic_trees(draw: st.DrawFn, most_checks: int = 7) -> Tree:
    """Draw a tree whose checks lead only to later checks and fixes, with every step reachable."""
    checks = draw(st.integers(1, most_checks))
    fixes = draw(st.integers(1, 4))
    names = [f"check-{n}" for n in range(checks)] + [f"fix-{n}" for n in range(fixes)]
    targets_of: dict[str, list[str]] = {}
    for n in range(checks):
        later = st.sampled_from(names[n + 1 :])
        targets_of[names[n]] = draw(st.lists(later, min_size=1, max_size=4))
    for n, name in enumerate(names[1:], 1):  # an unreachable step gets an edge from an earlier one
        if not any(name in targets for targets in targets_of.values()):
            targets_of[draw(st.sampled_from(names[: min(n, checks)]))].append(name)
    steps = {
        name: step(name, Check(tuple(map(result_to, targets))), draw(st.integers(0, 30)))
        for name, targets in targets_of.items()
    }
    for name in names[checks:]:
        weight = Number(str(draw(st.integers(1, 9))))
        steps[name] = step(name, Fix(Text("cause"), weight), draw(st.integers(0, 5)))
    return Tree(
        "charging/random", "trees/charging/random.yml", NOWHERE, Text("Random"), Text("ready"),
        Text("charging"), Symptom((Text("a symptom"),)), steps, "0000000",
    )  # fmt: skip


def result_to(target: str) -> Result:
    """Make a result that leads to a step."""
    return Result(NOWHERE, Text(f"to {target}"), Branch(Text(target), target))


@pytest.fixture(scope="session")
def acyclic() -> st.SearchStrategy[Tree]:
    """Return the strategy, for tests that draw from it."""
    return acyclic_trees()
