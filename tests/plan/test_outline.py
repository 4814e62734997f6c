"""The reading order: one place for every step, the heaviest way straight down."""

from hypothesis import given, settings
from hypothesis import strategies as st

from builder.plan.outline import Lead, Link, Side, Steps, order, outline


def steps(leads: dict[str, list[str | tuple[str, int]]], checks: str = "") -> Steps:
    """Make a graph; a target may come with a weight, and what leads nowhere is an end."""
    made = {
        step: [Lead(*target) if isinstance(target, tuple) else Lead(target) for target in targets]
        for step, targets in leads.items()
    }
    ends = frozenset(step for step, targets in made.items() if not targets)
    return Steps(next(iter(leads)), made, ends, frozenset(checks.split()))


def test_the_heaviest_way_runs_straight_down() -> None:
    """Weight comes before length, and a step that goes on comes before a heavier end."""
    graph = steps(
        {
            "a": [("b", 1), ("c", 3), ("x", 9)],
            "b": ["d"],
            "d": ["x"],
            "c": ["x"],
            "x": [],
        },
        "a b c d",
    )
    first, second = outline(graph)
    assert [block.step for block in first.blocks] == ["a", "c", "x"]
    assert [block.step for block in second.blocks] == ["b", "d", "x"]


def test_of_equal_ways_the_longest_runs_straight_down() -> None:
    """Without weights a reader follows the longest procedure."""
    graph = steps({"a": ["b", "c"], "b": ["x"], "c": ["d"], "d": ["x"], "x": []}, "a b c d")
    assert [block.step for block in outline(graph)[0].blocks] == ["a", "c", "d", "x"]


def test_of_ways_alike_the_first_in_the_file_runs_straight_down() -> None:
    """Same weight, same length: the author's order decides."""
    graph = steps({"a": ["b", "c"], "b": ["x"], "c": ["x"], "x": []}, "a b c")
    assert [block.step for block in outline(graph)[0].blocks] == ["a", "b", "x"]


def test_what_ends_at_once_stands_beside_its_check() -> None:
    """A fix, and an action that leads to a fix, are drawn where they are met."""
    graph = steps({"a": ["x", "do", "b"], "do": ["y"], "b": ["y"], "x": [], "y": []}, "a b")
    (section,) = outline(graph)
    assert section.blocks[0].sides == (
        Side(0, (Link(0, "x"),)),
        Side(1, (Link(1, "do"), Link(0, "y"))),
    )


def test_a_long_chain_becomes_a_section_of_its_own() -> None:
    """Two actions and their end stand beside a check; with one more they are read on their own."""
    graph = steps({"a": ["one", "b"], "one": ["two"], "two": ["x"], "b": ["y"], "x": [], "y": []},
                  "a b")  # fmt: skip
    assert len(outline(graph)) == 1
    longer = {"a": ["one", "b"], "one": ["two"], "two": ["more"], "more": ["x"], "b": ["c"],
              "c": ["d"], "d": ["e"], "e": ["y"], "x": [], "y": []}  # fmt: skip
    first, second = outline(steps(longer, "a b c d e"))
    assert [block.step for block in first.blocks] == ["a", "b", "c", "d", "e", "y"]
    assert [block.step for block in second.blocks] == ["one", "two", "more", "x"]


def test_a_step_met_again_is_a_connector() -> None:
    """Ways back and merged checks lead to the one place where the step stands."""
    graph = steps({"a": ["b", "c"], "b": ["c", "a"], "c": ["x"], "x": []}, "a b c")
    (section,) = outline(graph)
    assert [block.step for block in section.blocks] == ["a", "b", "c", "x"]
    assert section.blocks[0].sides == (Side(1),)
    assert section.blocks[1].sides == (Side(1),)


def test_side_sections_follow_in_the_order_met() -> None:
    """Each side section is followed by its own side sections before the next begins."""
    graph = steps(
        {
            "a": ["p", "q", ("b", 5)],
            "b": [("x", 1)],
            "p": ["r", ("x", 1)],
            "q": ["x"],
            "r": ["x"],
            "x": [],
        },
        "a b p q r",
    )
    heads = [section.blocks[0].step for section in outline(graph)]
    assert heads == ["a", "p", "q"]
    assert [step for step in order(outline(graph)) if step != "x"] == ["a", "b", "p", "r", "q"]


def test_what_cannot_be_reached_comes_last() -> None:
    """A half-written tree keeps all its steps."""
    graph = steps({"a": ["x"], "lost": ["y"], "x": [], "y": []}, "a lost")
    assert list(order(outline(graph))) == ["a", "x", "lost", "y"]


@st.composite
def graphs(draw: st.DrawFn) -> Steps:
    """Draw any graph at all, with loops and steps that nothing leads to."""
    count = draw(st.integers(1, 12))
    names = [str(number) for number in range(count)]
    leads = {
        name: [Lead(target, draw(st.integers(0, 3)))
               for target in draw(st.lists(st.sampled_from(names), max_size=4))]
        for name in names
    }  # fmt: skip
    ends = frozenset(name for name in names if not leads[name])
    checks = frozenset(draw(st.lists(st.sampled_from(names))))
    return Steps("0", leads, ends, checks)


@given(graphs())
@settings(max_examples=150, deadline=None)
def test_every_step_stands_somewhere_and_only_ends_stand_twice(graph: Steps) -> None:
    """Nothing is lost and nothing but an end is repeated, whatever the graph."""
    read = list(order(outline(graph)))
    assert set(read) == set(graph.leads)
    assert all(read.count(step) == 1 for step in graph.leads if step not in graph.ends)


@given(graphs())
@settings(max_examples=150, deadline=None)
def test_every_lead_is_drawn_once(graph: Steps) -> None:
    """Each way out of a block runs down or branches off, and never both."""
    for section in outline(graph):
        for block in section.blocks:
            drawn = [side.lead for side in block.sides]
            drawn += [block.down] if block.down is not None else []
            assert sorted(drawn) == list(range(len(graph.leads[block.step])))


def test_a_section_ends_with_an_end_that_is_drawn_again() -> None:
    """Ends that lead to each other, as failed proofs do, are drawn again but not without end."""
    leads = {"a": [Lead("b")], "b": [Lead("c")], "c": [Lead("b")]}
    sections = outline(Steps("a", leads, ends={"b", "c"}, checks={"a"}))
    assert [block.step for block in sections[0].blocks] == ["a", "b", "c", "b"]
