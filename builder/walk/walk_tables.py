"""The tables that a walk follows, in Python and in the page's script: lists and maps for JSON.

In: filled by `compile_tree` and `compile_shop`. Out: read by the reducer (`reduce`, `screen`,
`record`) and by the page's script, which do nothing but follow them.

A key that would be empty is left out. Minutes and numbers of readings are exact decimals as text;
counts are whole numbers. Texts may hold placeholders, `<module>`: `texts` fills them in.

`Target`, where a walk goes, is one text: `belt` is a step beside this one, `charging/overcharge`
or `charging/overcharge#pulley` another tree, `back`, `next`, and in a procedure `return: good`.
`""` is nowhere: the person to call.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal, NotRequired, TypedDict

from builder.model.conditions import Conditions
from builder.walk.rows import ComputedRow, CutPair, ReadingRow, ToolRow

PROCEDURES = "procedures/"
Target = str
StateRow = tuple[str, str, str]  # condition, part, current; "" where it takes none
Kind = Literal["check", "action", "fix", "stop", "return"]


class WalkResultRow(TypedDict):
    """A result of a check: its words, the range of each reading that it names, where it leads."""

    text: str
    to: Target
    ranges: dict[str, CutPair]  # {} for a phrase
    otherwise: NotRequired[bool]  # covers what the results above it leave
    places: NotRequired[dict[str, str]]  # by reading with a spec: below, within, above, none
    means: NotRequired[str]
    answers: NotRequired[dict[str, str]]  # `with`: what the other tree asks


class ByRow(TypedDict):
    """The procedure that finds the result of a check, and what fills its `takes`."""

    procedure: str
    takes: dict[str, str]


class WhereRow(TypedDict):
    """Where a step works: words, the pins of a part or a connector, or the fuse of a part."""

    phrase: NotRequired[str]
    part: NotRequired[str]
    connector: NotRequired[str]
    pins: NotRequired[list[str]]  # roles of a part's pins, numbers of a connector's
    fuse: NotRequired[str]  # the part that it feeds


class VerifyRow(TypedDict):
    """One test after the repair: in words, or a check of this tree, or a procedure."""

    text: NotRequired[str]
    step: NotRequired[str]
    by: NotRequired[ByRow]
    passes: NotRequired[list[str]]  # the results that pass


class WalkStepRow(TypedDict):
    """One step. `readings`, `computed`, `results` and `tools` are there in every check."""

    kind: Kind
    text: str
    # what is told beside the text
    note: NotRequired[str]
    do: NotRequired[list[str]]  # done before the answer
    where: NotRequired[WhereRow]
    when: NotRequired[list[str]]  # conditions in free text
    write_down: NotRequired[list[str]]
    how_to: NotRequired[str]
    picture: NotRequired[tuple[str, str]]  # file, what it shows
    minutes: NotRequired[str]  # work
    wait: NotRequired[str]  # minutes that are no work
    people: NotRequired[int]
    put_back: NotRequired[str]  # told before the job ends
    # states and hazards
    needs: NotRequired[list[StateRow]]
    hook_up: NotRequired[str]  # the state in which the lines are done, before the others
    hazards: NotRequired[list[str]]
    # how the walk goes on
    at_most: NotRequired[int]
    spent: NotRequired[Target]
    after: NotRequired[list[str]]  # steps done before it where it verifies a repair
    each: NotRequired[tuple[str, str]]  # the item's name, the name of its list
    list_step: NotRequired[str]  # the step that `next` of this step goes to
    then: NotRequired[Target]  # of an action
    word: NotRequired[str]  # of a `return`
    # checks
    readings: NotRequired[list[ReadingRow]]
    computed: NotRequired[list[ComputedRow]]
    results: NotRequired[list[WalkResultRow]]
    tools: NotRequired[list[str]]
    figure: NotRequired[list[str]]  # the names of the spec to look up, as `follow` has them
    look_up: NotRequired[str]  # that spec in words
    specs: NotRequired[dict[str, str]]  # by reading, the shop's spec
    several: NotRequired[bool]  # more than one result may be true: the first counts
    cannot_test: NotRequired[Target]
    by: NotRequired[ByRow]
    # fixes and stops
    cause: NotRequired[str]
    tell: NotRequired[str]  # to the customer; `<step>` quotes a reading
    replaces: NotRequired[str]  # the module; what its record says of fitting it is added
    torques: NotRequired[list[str]]  # names in the vehicle's file
    proved_by: NotRequired[list[tuple[str, list[str]]]]  # checks and the results that will do
    verify: NotRequired[list[VerifyRow]]
    still_there: NotRequired[Target]
    drive: NotRequired[str]
    why: NotRequired[str]
    stop: NotRequired[str]  # the kind of a stop


class AskRow(TypedDict):
    """A question asked once, before the first step."""

    ask: str
    one_of: list[str]


class TreeTable(TypedDict):
    """A tree or, with `returns`, a procedure."""

    id: str  # `charging/lamp-on`, `procedures/battery-proof`
    title: str
    revision: str
    start: str
    steps: dict[str, WalkStepRow]
    asks: NotRequired[dict[str, AskRow]]  # of a procedure, what it takes
    defaults: NotRequired[dict[str, str]]  # answers where nothing else is given
    lists: NotRequired[dict[str, list[str]]]
    drive: NotRequired[str]
    why: NotRequired[str]
    note: NotRequired[str]
    returns: NotRequired[list[str]]
    never_on: NotRequired[list[str]]


class ConditionRow(TypedDict):
    """A condition of the shop, for the planner of states; the keys are those of the format."""

    group: NotRequired[str]
    normal: NotRequired[bool]
    takes: NotRequired[str]  # part, current
    text: NotRequired[str]
    enter: NotRequired[list[str]]
    undo: NotRequired[list[str]]
    excludes: NotRequired[list[str]]
    changed_with: NotRequired[list[str]]
    minutes: NotRequired[str]
    wait: NotRequired[str]
    hazards: NotRequired[list[str]]


class HazardRow(TypedDict):
    """A caution: the signal word, one line of it, and its three parts."""

    signal: str  # DANGER, WARNING, CAUTION, NOTICE
    short: str
    hazard: str
    harm: str
    avoid: str


class GoodRow(TypedDict):
    """What is good of a spec: a range for each load ("" for any), or what to look up."""

    ranges: NotRequired[dict[str, CutPair]]
    look_up: NotRequired[list[str]]  # from, to; or one of them
    source: NotRequired[str]


class SpecRow(TypedDict):
    """What can be measured, and what is good where the vehicle says nothing."""

    text: str
    unit: str
    low: str
    high: str
    good: GoodRow


class PinRow(TypedDict):
    """One pin of a connector; of these words only the role is always there."""

    role: str
    circuit: NotRequired[str]
    wire: NotRequired[str]
    to: NotRequired[str]
    fuse: NotRequired[str]


class ConnectorRow(TypedDict):
    """A connector of a part; its pins by number."""

    of: str
    pins: dict[str, PinRow]
    where: NotRequired[str]
    rows: NotRequired[int]
    columns: NotRequired[int]


class FuseRow(TypedDict):
    """A fuse: its box, amperes, what it feeds."""

    box: str
    amps: str
    feeds: NotRequired[str]


class TorqueRow(TypedDict):
    """A torque in newton meters."""

    newton_meters: str
    note: NotRequired[str]


class VehicleTable(TypedDict):
    """A vehicle: its words, the items of its lists, its specs, connectors, fuses and torques."""

    text: str
    lists: NotRequired[dict[str, list[str]]]
    specs: NotRequired[dict[str, GoodRow]]
    connectors: NotRequired[dict[str, ConnectorRow]]
    fuses: NotRequired[dict[str, FuseRow]]
    torques: NotRequired[dict[str, TorqueRow]]


class FittingRow(TypedDict):
    """How a module is fitted: added to every fix that replaces it."""

    do: NotRequired[list[str]]
    when: NotRequired[list[str]]
    needs: NotRequired[list[StateRow]]
    hazards: NotRequired[list[str]]
    torques: NotRequired[list[str]]


class ShopTable(TypedDict):
    """What all trees of a shop share; a page may hold only the entries that its tree names."""

    conditions: dict[str, ConditionRow]  # in the order of the file
    hazards: dict[str, HazardRow]
    tools: dict[str, ToolRow]
    procedures: dict[str, TreeTable]
    specs: dict[str, SpecRow]
    vehicles: dict[str, VehicleTable]
    modules: dict[str, FittingRow]
    stuck: dict[str, str]  # the person to call: call, phone


@dataclass(frozen=True, slots=True, repr=False)
class WalkTables:
    """All that a walk may come to: the shop, and trees by ID, each loaded when it is needed."""

    shop: ShopTable
    trees: Mapping[str, TreeTable]
    conditions: Conditions  # of the shop, for the planner of states

    def __getitem__(self, inside: str) -> TreeTable:
        """Return a tree, or a procedure as `procedures/<name>`. Raises KeyError."""
        name = inside.removeprefix(PROCEDURES)
        return self.trees[inside] if name == inside else self.shop["procedures"][name]
