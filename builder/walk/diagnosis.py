"""What a walk found: the fix, what convicts it, what it means for driving.

In: the tables and a state that ended at a fix, or a tree and one of its fixes alone. Out: a
`Diagnosis`, from which the customer's sheet and the story are written. Only evidence of this path
is in it: the check that led to the fix, and those under `proved_by`. Without a walk there is none,
and a sentence that quotes a reading is left out.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from builder.graph.evidence import convicting_checks
from builder.graph.runs import with_values
from builder.graph.tree_graph import graph_of
from builder.model.ends import Drive, Fix
from builder.model.library import Library
from builder.model.tree import Tree
from builder.plan.drive_advice import DriveAdvice, drive_advice
from builder.walk.fix_words import drive_of, quoting
from builder.walk.job_state import JobState, Refused, WalkEnd, is_repairing, steps_before_repair
from builder.walk.known_words import (
    PLACE,
    known_place,
    known_words,
    own_words,
    words_of_check,
)
from builder.walk.measured import (
    MeasuredCheck,
    asked_words,
    legible_step,
    measured_check,
    named_values,
)
from builder.walk.path_proofs import path_proofs
from builder.walk.steps_taken import StepTaken, steps_taken
from builder.walk.told import row_of
from builder.walk.tree_rows import WalkStepRow
from builder.walk.walk_tables import WalkTables
from builder.walk.way_checks import checked_on_the_way, measured_run, parts_of_answer
from builder.wording.day_text import day_of_time
from builder.wording.one_of_several import narrowed, only_known
from builder.wording.placeholders import in_plain_words
from builder.wording.quotes import without_quotes
from builder.wording.sentences import capitalized
from builder.wording.several_places import at_place, has_several_places, is_placed
from builder.wording.unproved_cause import without_claims

DONE_AS_TEST = "Already done, only verify it"  # the note of a fix whose work was a check on the way


@dataclass(frozen=True, slots=True)
class Diagnosis:
    """A fix as it was proved.

    `to_measure` is what there is to write down where no walk was, `unproved` what the fix should
    rest on and nobody checked on this walk.
    """

    tree: str
    fix: str
    repair: str  # as the tech wrote it, else as proposed
    cause: str
    tell: str
    advice: DriveAdvice | None
    led: tuple[MeasuredCheck, ...] = ()  # what else on the way speaks for it, in its order
    evidence: tuple[MeasuredCheck, ...] = ()
    good: tuple[str, ...] = ()  # what else was tested and is good, by name
    to_measure: tuple[str, ...] = ()
    unproved: tuple[str, ...] = ()
    complaint: str = ""
    handed_off: bool = False  # the tree that the complaint led to was another
    vehicle: str = ""  # ID in the shop's list
    day: str = ""  # ISO date of the last event
    job: Mapping[str, str] = field(default_factory=dict)  # repair order, VIN and the like
    own_words: Mapping[str, str] = field(default_factory=dict)  # of the tech, for the papers
    known: tuple[str, ...] = ()  # what was answered or typed: of several things it names the one
    place: str = ""  # side, axle, cylinder
    codes: tuple[str, ...] = ()  # DTCs before the repair, each in words with its status
    proposed: str = ""  # the repair in the tree's words
    is_done: bool = False
    done_as_test: bool = False  # what is in `evidence` was seen with the work done
    verified: bool = False
    needs_place: bool = False  # it is of one of several like parts, and nothing says which


def diagnosis_alone(tree: Tree, fix: str) -> Diagnosis:
    """Return a fix without a walk. Raises KeyError, and ValueError if the step is no fix."""
    plain = in_plain_words(tree)
    step = plain.steps[fix]
    if not isinstance(step.body, Fix):
        raise ValueError(f"{tree.id}: step {fix} is a {step.kind}, not a fix")
    proofs = [str(proof.step) for proof in step.body.proved_by]
    entering = sorted(convicting_checks(tree, graph_of(tree, ()), fix))
    checks = dict.fromkeys([*proofs, *(entering if len(entering) == 1 else ())])
    return Diagnosis(
        tree=tree.id,
        fix=fix,
        repair=str(step.text),
        cause=without_quotes(str(step.body.cause)),
        tell=without_quotes(str(step.body.tell or "")),
        advice=drive_advice(tree, fix),
        to_measure=tuple(asked_words(plain.steps[one].text) for one in checks if one in tree.steps),
        needs_place=has_several_places(str(step.text), (str(one.part) for one in step.body.parts)),
    )


def diagnosis_of(tables: WalkTables, state: JobState, library: Library) -> Diagnosis | Refused:
    """Return what a walk found, or why it has found nothing to repair."""
    end = state.end
    if end is None or end.kind != "fix":
        where = f"ended at `{end.step}`, which repairs nothing" if end else "goes on"
        return Refused(f"this walk {where}: a customer's sheet needs a fix")
    row, base = row_of(tables, state.frames[0]), state.frames[0]
    taken = steps_taken(tables, state)
    before = before_repair(state, taken)
    words = _in_words(state, library)
    drive, why = drive_of(tables, state)
    own = own_words(state)
    proofs = [*evidence_of(tables, end, before)]
    evidence = tuple(_with_proof(tables, one, before, own, library) for one in proofs)
    known = known_words(own, evidence)
    place = known_place(own, base.filled, proofs)
    led = path_proofs(tables, end, before, proofs, library)
    repair = narrowed(without_quotes(quoting(tables, words, row["text"])), known)
    cause = narrowed(without_quotes(quoting(tables, words, row.get("cause", ""))), known)
    unproved = tuple(_unproved(tables, end, before))
    return Diagnosis(
        tree=end.inside,
        fix=end.step,
        repair=own.get("repair") or repair,
        proposed=repair,
        is_done=not is_repairing(state),
        done_as_test=bool(proofs) and row.get("note", "").startswith(DONE_AS_TEST),
        verified=bool(end.verified),
        cause=capitalized(own.get("cause", "")) or (without_claims(cause) if unproved else cause),
        tell=without_quotes(quoting(tables, words, row.get("tell", ""))),
        advice=DriveAdvice(Drive(drive), why) if drive else None,
        led=tuple(checked_on_the_way(tables, one, before, own, library) for one in led),
        evidence=evidence,
        unproved=unproved,
        own_words=own,
        known=known,
        place=place,
        needs_place=row.get("several_places", False) and not _is_known_where(place, own, evidence),
        complaint=state.complaint,
        handed_off=end.inside != state.tree,
        vehicle=state.vehicle,
        day=last_day(taken),
    )


def _in_words(state: JobState, library: Library) -> JobState:
    """Return a state to quote from: modules by their names, readings as they were typed."""
    base = state.frames[0]
    return replace(
        state,
        frames=(replace(base, filled=named_values(base.filled, library)),),
        steps=tuple(legible_step(one) for one in state.steps),
    )


def _is_known_where(place: str, own: Mapping[str, str], evidence: Sequence[MeasuredCheck]) -> bool:
    """Whether somebody said which of several like parts it is, or a blank asks for it already."""
    return any([place, *map(is_placed, own.values()), *(one.unwritten for one in evidence)])


def _with_proof(
    tables: WalkTables,
    taken: StepTaken,
    before: Sequence[StepTaken],
    own: Mapping[str, str],
    library: Library,
) -> MeasuredCheck:
    """Return a check of the evidence with what its procedure found, and what the tech saw."""
    row = _row(tables, taken)
    parts = parts_of_answer(tables, taken)
    check = measured_check(tables, taken, library)
    placed = filter(None, (own.get(name) for name in (PLACE, "repair", "cause")))
    return replace(
        check,
        asked=at_place(check.asked, placed),
        parts=parts,
        unwritten=tuple(one for one in row.get("write_down", ()) if one not in taken.entry.wrote),
        seen=words_of_check(own, taken.entry.step) or only_known(parts, [*own.values()]),
        inner=measured_run(tables, taken, before, library),
    )


def before_repair(state: JobState, taken: Sequence[StepTaken]) -> Sequence[StepTaken]:
    """Return the steps before the repair in which a walk ended."""
    return taken[: len(steps_before_repair(state))]


def evidence_of(
    tables: WalkTables, end: WalkEnd, before: Sequence[StepTaken]
) -> Iterator[StepTaken]:
    """Yield the check that led to a fix, then those that it rests on, each as it was last left.

    An answer that was only told rests on what was seen before it: that is yielded, too.
    """
    answered = _answered_in(end.inside, before)
    convicting = answered[-1] if answered and answered[-1] is before[-1] else None
    if convicting and target_taken(tables, convicting) != end.step:
        convicting = None
    shown = [convicting] if convicting else []
    if convicting and _row(tables, convicting).get("told"):
        seen = (one for one in reversed(answered) if not _row(tables, one).get("told"))
        shown += [*seen][:1]
    last = {one.entry.step: one for one in answered}
    for step, results in tables[end.inside]["steps"][end.step].get("proved_by", []):
        proof = last.get(step)
        if proof and proof not in shown and proof.entry.result in results:
            shown.append(proof)
    yield from shown


def _unproved(tables: WalkTables, end: WalkEnd, before: Sequence[StepTaken]) -> Iterator[str]:
    """Yield what a fix rests on and nobody checked, as where a walk began midway."""
    steps = tables[end.inside]["steps"]
    answered = {one.entry.step for one in _answered_in(end.inside, before)}
    for step, _ in steps[end.step].get("proved_by", []):
        if step not in answered:
            yield with_values(steps[step]["text"], before[-1].frame.filled if before else {})


def _answered_in(tree: str, before: Sequence[StepTaken]) -> list[StepTaken]:
    return [
        one
        for one in before
        if one.entry.kind == "check" and one.entry.inside == tree and not one.verifies
    ]


def _row(tables: WalkTables, one: StepTaken) -> WalkStepRow:
    return tables[one.entry.inside]["steps"][one.entry.step]


def target_taken(tables: WalkTables, taken: StepTaken) -> str:
    """Return where the result of a check led; an empty string if it had none."""
    results = _row(tables, taken).get("results", ())
    return next((one["to"] for one in results if one["text"] == taken.entry.result), "")


def last_day(taken: Sequence[StepTaken]) -> str:
    """Return the date of the last step that has a time, by the clock of the shop; else ""."""
    at = next((one.entry.at for one in reversed(taken) if one.entry.at), "")
    return day_of_time(at)
