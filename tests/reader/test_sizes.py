"""Anything too large to follow is reported before it takes time and memory."""

import subprocess
import sys
from pathlib import Path

import pytest

import builder
from builder.model.finding import Finding
from builder.reader.articles import article_from
from builder.reader.sizes import (
    LONGEST_ARTICLE,
    LONGEST_PARAGRAPH,
    MOST_CHANCES,
    MOST_PARTS,
    MOST_PARTS_OF,
)
from builder.reader.source import MAX_FILE_BYTES, Source
from builder.reader.trees import tree_from

from .conftest import SHOP

REPO = Path(builder.__file__).parents[1]  # where subprocesses find our code
SOUND = (SHOP / "trees/horn/silent.yml").read_text("utf-8")
HEAD = "---\ntitle: A\npurpose: B\n---\n"


def of_article(body: str) -> list[Finding]:
    """Return the findings of an article with this body."""
    return article_from(Source("kb/how-to/a.md", HEAD + body, ""))[1]


def chain(steps: int) -> str:
    """Write a tree of steps one after the other."""
    head = SOUND[: SOUND.index("steps:")]
    actions = (f"  s{n}: {{action: Do it, then: s{n + 1}}}\n" for n in range(1, steps))
    return f"{head}steps:\n{''.join(actions)}  s{steps}: {{stop: Done, kind: not-found}}\n"


def test_a_tree_of_many_steps_is_judged(tmp_path: Path) -> None:
    """Five hundred steps are read."""
    tree, findings = tree_from(Source("trees/horn/a.yml", chain(MOST_PARTS), ""))
    assert tree
    assert not findings


def test_a_tree_of_too_many_steps_is_told_once_and_read_no_further() -> None:
    """The finding is at `steps`; nothing else is reported, and nothing is computed."""
    tree, findings = tree_from(Source("trees/horn/a.yml", chain(20_000), ""))
    assert tree is None
    [found] = findings
    assert found.rule == "size"
    assert SOUND.split("\n")[found.at.line - 1] == "steps:"


def with_chances(count: int) -> str:
    """Write a tree of checks in which so many results have a chance."""
    head = SOUND[: SOUND.index("steps:")]
    checks = (
        f"  s{n}:\n    check: Look\n    at_most: 2\n    spent: s{count}\n    results:\n"
        f"      - {{result: good, branch: s{n + 1}}}\n"
        f"      - {{result: again, branch: s{n}, chance: 0.1}}\n"
        for n in range(count)
    )
    return f"{head}steps:\n{''.join(checks)}  s{count}: {{stop: Done, kind: not-found}}\n"


def test_a_tree_of_many_ways_back_by_chance_is_read() -> None:
    """A hundred are more than anyone writes."""
    tree, findings = tree_from(Source("trees/horn/a.yml", with_chances(MOST_CHANCES), ""))
    assert tree
    assert not findings


def test_a_tree_of_too_many_ways_back_by_chance_is_read_no_further() -> None:
    """Its exact minutes would take too long; the finding is at the first that is too many."""
    text = with_chances(MOST_CHANCES + 3)
    tree, [found] = tree_from(Source("trees/horn/a.yml", text, ""))
    assert tree is None
    assert found.rule == "size"
    assert text.split("\n")[: found.at.line][-1].endswith("chance: 0.1}")
    assert sum("chance: " in line for line in text.split("\n")[: found.at.line]) == MOST_CHANCES + 1


MANY = {
    "results": "      results:\n"
    + "        - {result: x, branch: y}\n" * (MOST_PARTS_OF["results"] + 1),
    "readings": "      readings:\n"
    + "".join(f"        r{n}: {{unit: V}}\n" for n in range(MOST_PARTS_OF["readings"] + 1)),
    "tools": f"      tools: [{'multimeter, ' * (MOST_PARTS + 1)}]\n",
}


@pytest.mark.parametrize("name", MANY)
def test_a_step_of_too_many_parts_is_reported(name: str) -> None:
    """Thousands of results in one check took minutes to hold against each other."""
    text = f"steps:\n    a:\n      check: x\n{MANY[name]}"
    tree, findings = tree_from(Source("trees/horn/a.yml", text, ""))
    assert tree is None
    assert [(one.rule, one.at.line) for one in findings] == [("size", 4)]


LONG = {
    "an article": ("some words\n\n" * (LONGEST_ARTICLE // 10), "size", 1),
    "a paragraph": ("short\n\n" + "some words\n" * (LONGEST_PARAGRAPH // 9), "size", 407),
    "brackets": ("short\n\n" + "[" * 1000, "depth", 7),
    "brackets closed": ("[" * 9 + "x" + "]" * 9, "depth", 5),
    "brackets of addresses": ("[a](" * 100, "depth", 5),
    "brackets over lines": ("[a][\n" * 9, "depth", 13),
    "lists": ("1. " * 20, "depth", 5),
    "lists of two kinds": ("- 1. " * 20, "depth", 5),
    "lists far in": (" " * 40 + "- x", "depth", 5),
    "quotes": (">" * 20 + " x", "depth", 5),
    "quotes and lists": ("> - " * 20 + " x", "depth", 5),
    "tabs": ("\t" * 20 + "- x", "depth", 5),
}


@pytest.mark.parametrize("name", LONG)
def test_an_article_too_long_or_too_deep_is_reported(name: str) -> None:
    """Markdown would take minutes, or go deeper than Python can; the finding is on the line."""
    body, rule, line = LONG[name]
    findings = [one for one in of_article(body) if one.rule != "tab"]
    assert [(one.rule, one.at.line) for one in findings] == [(rule, line)]
    assert all(one.message and one.why and one.hint for one in findings)


PLAIN = (
    "- a\n    - b\n        - c\n            1. d\n",
    "A rule:\n\n---\n\n* * *\n",
    "Measure (see [the plug](plug.md), pin 2 (ground)) :( and a) b) c)\n",
    "| a | b |\n|---|---|\n" + "| `[0]` | (1) |\n" * 100,
    "        code [[x]]\n",
)


@pytest.mark.parametrize("body", PLAIN)
def test_an_article_as_people_write_it_is_taken(body: str) -> None:
    """Lists in lists, rules, links in brackets and long tables are no mistakes."""
    assert of_article(body) == []


SLOW = """
from builder.pages.prose import html_of
from builder.reader.articles import article_from
from builder.reader.source import MAX_FILE_BYTES, Source
import sys
paragraph = (sys.argv[1] * 4000)[:3990]
body = (paragraph + "\\n\\n") * 16
article, findings = article_from(Source("kb/how-to/a.md", sys.argv[2] + body, ""))
if article:
    html_of(article.body)
"""


@pytest.mark.parametrize("unit", ["[", "![", "[a](", "[a][", "1. ", "*a **b ", "`", "> - ", "<a"])
def test_no_article_takes_minutes_or_ends_in_a_traceback(unit: str) -> None:
    """The longest article of the worst text is refused, or a page within seconds."""
    subprocess.run([sys.executable, "-c", SLOW, unit, HEAD], cwd=REPO, check=True, timeout=60)


TEXTS = {
    "comments": "a: b #c\n" * 120_000,
    "silences": "# silence: a because b\n" * 45_000,
    "quotes and comments": "a: 'b' #c\n" * 100_000,
    "line ends": "a\u2028" * 250_000,
    "tabs": "\ta\n" * 250_000,
    "anchors": "- &a b\n" * 140_000,
    "brackets": "- ]\n" * 250_000,
    "colons": "a: b: c\n" * 130_000,
    "keys": "a:\n" * 300_000,
    "keys written twice": "".join(f"a{n}: b\n" for n in range(50_000)) * 2,
    "steps": "steps:\n" + "  a: {check: x}\n" * 65_000,
    "wrong steps": "steps:\n" + "".join(f"  a{n}: {{chek: x}}\n" for n in range(50_000)),
}


def test_knowledge_full_of_mistakes_takes_no_minutes(tmp_path: Path) -> None:
    """Ten thousand wrong DTCs are reported, each on its line."""
    (tmp_path / "kb").mkdir()
    wrong = "".join(f"P{n}: {{x: y}}\n" for n in range(10_000))
    (tmp_path / "kb/codes.yml").write_text(wrong)
    script = (
        "import sys; from pathlib import Path;"
        "from builder.reader.knowledge_files import read_knowledge;"
        "print(len(read_knowledge(Path(sys.argv[1]))[1]))"
    )
    run = subprocess.run(
        [sys.executable, "-c", script, str(tmp_path)],
        capture_output=True, text=True, cwd=REPO, check=True, timeout=60,
    )  # fmt: skip
    assert int(run.stdout) > 20_000


@pytest.mark.parametrize("name", TEXTS)
def test_no_file_takes_minutes(name: str) -> None:
    """Each mistake is found in a time that does not grow with the others."""
    text = TEXTS[name].encode()[: MAX_FILE_BYTES // 4].decode("utf-8", "ignore")
    script = (
        "import sys; from builder.reader.source import Source; from builder.reader.trees import *;"
        "tree_from(Source('trees/a/b.yml', sys.stdin.buffer.read().decode(), ''))"
    )
    subprocess.run(
        [sys.executable, "-c", script], input=text.encode(), cwd=REPO, check=True, timeout=60
    )
