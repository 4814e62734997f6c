"""The rows of the walk's tables that come from a tree or a procedure.

In: filled in by `compile_tree` and what it uses. Out: read by the reducer. `walk_tables` says how
rows are written.
"""

from typing import Literal, NotRequired, TypedDict

from builder.walk.rows import ComputedRow, CutPair, ReadingRow

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
    parts: NotRequired[list[str]]  # the things that an answer stands for, where it is more than one
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
    put_back: NotRequired[str]  # told before the engine is started, and at the end
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
    told: NotRequired[bool]  # told or looked up, not seen on the vehicle
    sets_up: NotRequired[bool]  # a module is programmed, configured and the like here
    cannot_test: NotRequired[Target]
    by: NotRequired[ByRow]
    # fixes and stops
    cause: NotRequired[str]
    tell: NotRequired[str]  # to the customer; `<step>` quotes a reading
    replaces: NotRequired[str]  # the module; what its record says of fitting it is added
    torques: NotRequired[list[str]]  # names in the vehicle's file
    several_places: NotRequired[bool]  # it is of one of several like parts, and doesn't say which
    proved_by: NotRequired[list[tuple[str, list[str]]]]  # checks and the results that will do
    verify: NotRequired[list[VerifyRow]]
    still_there: NotRequired[Target]
    options: NotRequired[list[tuple[str, str]]]  # of a fix: what can be done, by ID, as it reads
    hours: NotRequired[str]  # of the repair, as estimated
    part_names: NotRequired[list[str]]  # of the estimate, so that those used are called the same
    drive: NotRequired[str]
    why: NotRequired[str]
    stop: NotRequired[str]  # the kind of a stop


class AskRow(TypedDict):
    """A question asked once, before the first step."""

    ask: str
    one_of: list[str]
    codes: NotRequired[dict[str, str]]  # DTCs, and the answers that they stand for


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
    returns: NotRequired[list[str]]
    never_on: NotRequired[list[str]]
    every_time: NotRequired[bool]  # run again wherever it is named
