"""What a chart says of a tree, with the rarer ways out."""

from dataclasses import replace

from shop import tree_of

from builder.chart.flow import START, flow_of
from builder.model.knowledge import Signal
from builder.model.library import Library
from builder.model.tree import Tree
from builder.plan.numbering import numbering


def test_the_numbers_are_those_of_the_tree(trees: tuple[Tree, ...], library: Library) -> None:
    """Page, walk and chart agree on the number of every step."""
    for tree in trees:
        flow = flow_of(tree, library)
        numbers = {name: int(node.number) for name, node in flow.nodes.items() if node.number}
        assert numbers == numbering(tree)


def test_the_chart_begins_at_a_start(small: Tree) -> None:
    """A terminator stands before the first step, as ISO 5807 has it."""
    flow = flow_of(small)
    first = flow.sections[0].blocks
    assert first[0].step == START
    assert first[1].step == "record"


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
    assert [(edge.label, edge.target) for edge in edges] == [("", "rest"), ("after once", "weak")]


def test_what_could_not_be_done_is_a_result(small: Tree) -> None:
    """A check that cannot be made has its own way out."""
    assert ("could not be done", "ask") in [
        (edge.label, edge.target) for edge in flow_of(small).edges["rest"]
    ]


def test_a_hand_over_names_the_other_tree(small: Tree, library: Library) -> None:
    """The title if the shop has the tree, its id if not."""
    (node,) = (n for n in flow_of(small, library).nodes.values() if n.kind == "hand-over")
    assert node.text == "Tree: One module does not answer, step answers"
    (bare,) = (n for n in flow_of(small).nodes.values() if n.kind == "hand-over")
    assert bare.text == "Tree: network/unit-silent, step answers"


def test_the_gravest_hazard_gives_the_signal_word(small: Tree, library: Library) -> None:
    """Several hazards on one step: the word for the greatest (ANSI Z535.4)."""
    hazards = {str(hazard.signal): hazard.id for hazard in library.hazards.values()}
    step = replace(small.steps["rest"], hazards=(hazards["NOTICE"], hazards["WARNING"]))
    tree = replace(small, steps={**small.steps, "rest": step})
    assert flow_of(tree, library).nodes["rest"].caution is Signal.WARNING


def test_a_tree_of_one_step_has_a_chart() -> None:
    """The first line of a new tree can be looked at."""
    tree = tree_of("""\
        format: 1
        title: One step
        status: draft
        system: charging
        symptom: {words: [it is so]}
        steps:
          only: {stop: Ask the foreman, kind: foreman}
        """)
    assert [block.step for block in flow_of(tree).sections[0].blocks] == [START, "only"]
