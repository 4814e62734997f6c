"""What a chart says of a tree, with the rarer ways out."""

from dataclasses import replace

import pytest
from shop import tree_of

from builder.chart.flow import START, flow_of
from builder.chart.text_block import box_text
from builder.chart.undrawn_ways import ordinal
from builder.model.checks import Check
from builder.model.knowledge import Signal
from builder.model.library import Library
from builder.model.text import Number, Text
from builder.model.tree import Tree
from builder.plan.numbering import numbering
from builder.wording.results import NO_BREAK


def test_the_numbers_are_those_of_the_tree(trees: tuple[Tree, ...], library: Library) -> None:
    """Page, walk and chart agree on the number of every step."""
    for tree in trees:
        flow = flow_of(tree, library)
        assert flow.numbers == numbering(tree)


def test_the_chart_begins_at_a_start(small: Tree) -> None:
    """A terminator stands before the first step, as ISO 5807 has it."""
    flow = flow_of(small)
    first = flow.sections[0].blocks
    assert first[0].step == START
    assert first[1].step == "record"


def test_the_head_of_a_section_names_at_most_three_origins(
    trees: tuple[Tree, ...], library: Library
) -> None:
    """An ellipsis shows that there are more, and only then."""
    heads = 0
    for flow in (flow_of(tree, library) for tree in trees):
        for head in (section.blocks[0].step for section in flow.sections[1:]):
            leading = {name for name, out in flow.edges.items() for e in out if e.target == head}
            origin = flow.nodes[head].facts[0]
            assert origin.count(",") == min(len(leading), 3) - 1
            assert origin.endswith("…") == (len(leading) > 3)
            heads += 1
    assert heads


def test_ways_back_are_said_in_the_box(small: Tree) -> None:
    """A failed verification, a spent try and a way back name the step to go to."""
    nodes = flow_of(small).nodes
    assert nodes["weak"].notes == ("still there: go to 2",)
    assert nodes["settle"].notes == ("then back to 2",)
    assert nodes["charge"].ways_on == ("then go to 2",)
    assert nodes["which"].notes == ("take the first that fits",)


def test_a_list_goes_on_with_its_next_item(small: Tree) -> None:
    """`next` is a connector to the step of the list, and says which item comes."""
    edge = flow_of(small).edges["fuse"][0]
    assert (edge.target, edge.means) == ("fuse", "next fuse")


def test_the_last_try_is_a_line_if_nothing_else_leads_there(small: Tree) -> None:
    """The fix that only a second flat battery leads to is drawn."""
    edges = flow_of(small).edges["charge"]
    assert [(edge.label, edge.target) for edge in edges] == [
        ("", "rest"),
        ("the second time", "weak"),
    ]


def test_the_minutes_stand_apart_with_their_word(small: Tree) -> None:
    """ "Headlamps on for one minute 2 min" would read as three; work and waiting are told apart."""
    step = replace(small.steps["record"], wait=Number("60"))
    tree = replace(small, steps={**small.steps, "record": step})
    node = flow_of(tree).nodes["record"]
    facts = [fact.replace(NO_BREAK, " ") for fact in (node.work, *node.facts)]
    assert facts == ["work 6 min", "wait 60 min"]
    first, second = box_text(flow_of(tree).nodes["record"]).paragraphs
    assert "work" not in " ".join(word.text for word in first)
    assert second[0].text.startswith("work")


@pytest.mark.parametrize(
    ("number", "said"),
    [
        (2, "second"), (3, "third"), (10, "tenth"), (11, "11th"), (21, "21st"), (22, "22nd"),
        (23, "23rd"), (24, "24th"), (101, "101st"), (111, "111th"), (112, "112th"), (113, "113th"),
    ],
)  # fmt: skip
def test_a_try_is_counted_as_people_say_it(number: int, said: str) -> None:
    """At most once means: the second time, go elsewhere."""
    assert ordinal(number) == said


def test_the_head_of_a_section_says_where_it_is_reached_from(
    trees: tuple[Tree, ...], library: Library
) -> None:
    """A section right under another does not look like its next step."""
    heads = 0
    for tree in trees:
        flow = flow_of(tree, library)
        for section in flow.sections[1:]:
            head = section.blocks[0].step
            sources = {flow.nodes[edge.source].number for out in flow.edges.values()
                       for edge in out if edge.target == head}  # fmt: skip
            if sources:
                said = flow.nodes[head].facts[0].replace(NO_BREAK, " ").removesuffix("…")
                assert set(said.removeprefix("from ").split(", ")) <= sources, (tree.id, head)
                heads += 1
    assert heads


def test_what_cannot_be_tested_is_a_result(small: Tree) -> None:
    """A check that cannot be made has its own way out."""
    assert ("can't test", "ask") in [
        (edge.label, edge.target) for edge in flow_of(small).edges["rest"]
    ]


def test_a_handoff_names_the_other_tree(small: Tree, library: Library) -> None:
    """The title if the shop has the tree, its id if not; and the number of the step, if known."""
    known = replace(library, entry_numbers={"network/module-silent#answers": 4})
    (node,) = (n for n in flow_of(small, known).nodes.values() if n.kind == "handoff")
    assert node.text.replace(NO_BREAK, " ") == "Tree: One module is silent, step 4"
    (node,) = (n for n in flow_of(small, library).nodes.values() if n.kind == "handoff")
    assert node.text.replace(NO_BREAK, " ") == "Tree: One module is silent, step answers"
    (bare,) = (n for n in flow_of(small).nodes.values() if n.kind == "handoff")
    assert bare.text.replace(NO_BREAK, " ") == "Tree: network/module-silent, step answers"


def test_the_gravest_hazard_gives_the_signal_word(small: Tree, library: Library) -> None:
    """Several hazards on one step: the word for the greatest (ANSI Z535.4)."""
    hazards = {str(hazard.signal): hazard.id for hazard in library.hazards.values()}
    step = replace(small.steps["rest"], hazards=(hazards["NOTICE"], hazards["WARNING"]))
    tree = replace(small, steps={**small.steps, "rest": step})
    assert flow_of(tree, library).nodes["rest"].caution is Signal.WARNING


def test_a_tree_of_one_step_has_a_chart() -> None:
    """The first line of a new tree can be looked at."""
    tree = tree_of("""\
        format: 2
        title: One step
        status: draft
        system: charging
        symptom: {words: [it is so]}
        steps:
          only: {stop: Ask the foreman, kind: foreman}
        """)
    assert [block.step for block in flow_of(tree).sections[0].blocks] == [START, "only"]


def test_results_of_which_the_first_that_fits_counts_keep_their_order(small: Tree) -> None:
    """They are drawn from first to last as they are listed; no likelier one is moved down."""
    flow = flow_of(small)
    (block,) = (b for section in flow.sections for b in section.blocks if b.step == "which")
    drawn = [side.edge_index for side in block.sides]
    drawn += [] if block.down is None else [block.down]
    labels = [flow.edges["which"][index].label for index in drawn]
    assert labels[:3] == ["charging", "another", "none"]


def test_a_way_back_names_every_step_that_leads_there(small: Tree) -> None:
    """In the order of their numbers; the step before, where none is known."""
    fuse = small.steps["fuse"]
    assert isinstance(fuse.body, Check)
    *others, last = fuse.body.results
    back = replace(last, branch=replace(last.branch, step=Text("settle"), text=Text("settle")))
    fuse = replace(fuse, body=replace(fuse.body, results=(*others, back)))
    tree = replace(small, steps={**small.steps, "fuse": fuse})
    nodes = flow_of(tree).nodes
    numbers = sorted(int(nodes[name].number) for name in ("rest", "fuse"))
    assert list(set(numbers)) != numbers  # else the order would be luck
    assert nodes["settle"].notes == (f"then back to {numbers[0]} or {numbers[1]}",)
