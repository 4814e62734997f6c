"""Trees and procedures at random whose steps need states of the vehicle.

In: hypothesis' draws, and conditions. Out: trees that the reader could have read.
"""

from dataclasses import replace

from hypothesis import strategies as st

from builder.model.checks import Branch, Check, Result
from builder.model.conditions import Takes, VehicleState
from builder.model.ends import Fix, Return, Stop, StopKind, Verification
from builder.model.procedures import Procedure
from builder.model.text import NOWHERE, Number, Text
from builder.model.tree import Action, Need, Status, Step, Symptom, Tree, Where

from .random_conditions import needs_of
from .vehicle_by_hand import Kinds

WORDS = ("good", "bad")


def branch(name: str) -> Branch:
    """Return a branch to a step, `back` or `next`."""
    return Branch(Text(name)) if name in ("back", "next") else Branch(Text(name), name)


def returning(word: str) -> Branch:
    """Return a branch out of a procedure."""
    return Branch(Text(word), returns=True)


def result(number: int, to: Branch, word: str = "") -> Result:
    """Return a result of a check."""
    return Result(NOWHERE, Text(word or f"result {number}"), to)


def tree(name: str, steps: list[Step], folder: str = "trees") -> Tree:
    """Return a tree of some steps."""
    return Tree(
        id=name, file=f"{folder}/{name}.yml", at=NOWHERE, title=Text(name), status=Status.READY,
        system=Text("charging"), symptom=Symptom((Text("it fails"),)),
        steps={str(step.id): step for step in steps}, revision="",
    )  # fmt: skip


def needing(step: Step, states: list[VehicleState], kinds: Kinds) -> Step:
    """Return a step with states that it needs; loads are all at one part."""
    loads = [one for one in states if kinds[one.condition].takes is Takes.CURRENT]
    part = loads[0].part if loads else ""
    kept = [one for one in states if one not in loads or one.part == part]
    needs = tuple(
        Need(Text(one.condition), Text(one.value or one.part) if one.value or one.part else None)
        for one in kept
    )
    return replace(step, needs=needs, where=Where(NOWHERE, part=Text(part)) if part else None)


@st.composite
def steps_of(draw, kinds: Kinds, counted: bool, words: tuple[str, ...] = ()) -> list[Step]:
    """Draw the steps of a tree, or with words those of a procedure; some may be used up."""
    names = [f"{'inner' if words else 'step'}-{n}" for n in range(draw(st.integers(2, 5)))]
    made = []
    for number, name in enumerate(names):
        step = Step(Text(name), NOWHERE, Text(name), draw(bodies(names, number, words)))
        if draw(st.booleans()):
            step = needing(step, draw(needs_of(kinds)), kinds)
        if isinstance(step.body, Return):
            step = replace(step, text=Text(words[0]))
        elif isinstance(step.body, Check | Action) and counted and draw(st.booleans()):
            spent = branch(draw(st.sampled_from(names)))
            step = replace(step, at_most=Number(str(draw(st.integers(1, 2)))), spent=spent)
        made.append(step)
    return made


@st.composite
def bodies(
    draw, names: list[str], number: int, words: tuple[str, ...]
) -> Check | Action | Fix | Stop | Return:
    """Draw what a step is."""
    kinds = ["check", "check", "action", *(["return"] if words else ["fix", "stop", "by"])]
    targets = st.sampled_from(names).map(branch)
    onward = targets | st.sampled_from(words).map(returning) if words else targets
    match draw(st.sampled_from(kinds if number else ["check"])):
        case "check":
            leads = draw(st.lists(onward, min_size=1, max_size=3))
            given = tuple(result(n, to) for n, to in enumerate(leads))
            return Check(given, cannot_test=draw(st.none() | targets))
        case "by":
            given = tuple(result(n, draw(targets), word) for n, word in enumerate(WORDS))
            return Check(given, by=Text("procedure"), cannot_test=draw(st.none() | targets))
        case "action":
            return Action(draw(targets | st.just(branch("back"))))
        case "fix":
            verify = draw(st.lists(st.sampled_from([*names, "procedure", "it works"]), max_size=2))
            proofs = tuple(Verification(Text(name)) for name in verify)
            return Fix(Text("worn"), verify=proofs, still_there=draw(st.none() | targets))
        case "return":
            return Return()
    return Stop(StopKind.FOREMAN)


@st.composite
def walkable(draw, kinds: Kinds, counted: bool) -> tuple[Tree, dict[str, Procedure]]:
    """Draw a tree and the procedure that it may run."""
    steps = draw(steps_of(kinds, counted))
    inner = draw(steps_of(kinds, counted, WORDS))
    body = tree("procedures/procedure", inner, "kb")
    return tree("charging/case", steps), {
        "procedure": Procedure("procedure", body, tuple(map(Text, WORDS)))
    }
