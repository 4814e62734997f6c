"""One step of a draft that follows a path: copied from its tree, its branches along the path.

In: the visits of a step, and where each left to. Out: the step in plain values, and its comments.
An answer that the job never met leads to a step that isn't written yet.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from builder.authoring.placed_visits import PlacedVisit
from builder.authoring.repair_words import fix_words
from builder.authoring.source_steps import SourceStep
from builder.authoring.written_yaml import comment
from builder.graph.runs import with_values
from builder.walk.job_state import CANNOT_TEST, NONE_OF_THESE

_ELSEWHERE = frozenset({"each", "at_most", "spent", "after", "cannot_test", "then"})
_OF_RESULT = frozenset({"with", "weight", "chance"})  # of ways that the draft doesn't have
_NAMES_KEPT = frozenset({"at", "with", "when", "does", "by", "spec", "replaces", "readings",
                         "reading"})  # what is under these is an ID and no text  # fmt: skip
_ID = re.compile(r"[A-Za-z0-9]+([ ._-][A-Za-z0-9]+)*")
OTHER_RESULT = "anything else"
Words = dict[str, Any]


@dataclass(frozen=True, slots=True)
class DraftStep:
    """What a step of the draft is made from."""

    visits: tuple[PlacedVisit, ...]
    targets: Mapping[str, str]  # by exit, the step that the path went on to
    names: Mapping[tuple[str, str], str]  # by tree and step, the name in the draft
    gaps: Iterator[str]
    part_names: Mapping[str, str]  # of parts and modules, by ID
    goes_back: bool  # whether the path comes to a step twice

    @property
    def first(self) -> PlacedVisit:
        """The first of its visits."""
        return self.visits[0]


def step_words(step: DraftStep) -> Words:
    """Return the step in plain values."""
    source = step.first.source
    if source is None:
        return _from_file(step)
    words = _filled(source, step)
    kept = {key: value for key, value in words.items() if key not in _ELSEWHERE}
    after = [step.names[place] for one in source.step.after
             if (place := (source.tree.id, str(one))) in step.names]  # fmt: skip
    kept |= {"after": after} if after else {}
    match step.first.kind:
        case "check":
            return kept | _branches(source, step, kept) | _limit(source, step)
        case "action":
            return kept | {"then": _target(step, "action")} | _limit(source, step)
        case "fix":
            return fix_words(kept, source, step.names, step.targets.get("fix", ""))
        case _:
            return kept


def comments_of(step: DraftStep) -> list[str]:
    """Return what was remarked at a step, and what the author has to know of it."""
    first = step.first
    told = []
    if first.source is None:
        told.append(f"{first.visit.inside} has no step `{first.visit.step}` any more: "
                    "write its words, its conditions, and what is measured")  # fmt: skip
    elif first.kind == "check":
        lost = [to for exit_, to in step.targets.items() if not _is_told(first.source, exit_)]
        told += [f"From here the job went on to `{to}`: by which answer?" for to in lost]
    remarks = [*told, *(text for one in step.visits for text in one.visit.remarks)]
    return [*dict.fromkeys(map(comment, remarks))]


def _is_told(source: SourceStep, exit_: str) -> bool:
    """Whether the draft can say by which answer a check was left."""
    is_phrase = not {"reading", "readings", "spec", "figure", "by"} & set(source.written)
    return exit_ in source.results or exit_ == CANNOT_TEST or (is_phrase and bool(exit_))


def _target(step: DraftStep, exit_: str) -> str:
    return step.targets.get(exit_) or next(step.gaps)


def _branches(source: SourceStep, step: DraftStep, kept: Words) -> Words:
    """Return the results and `cannot_test` of a check, each with its branch in the draft."""
    written = kept.get("results", {})
    more = [exit_ for exit_ in step.targets
            if exit_ not in (*source.results, CANNOT_TEST) and _is_told(source, exit_)]  # fmt: skip
    if isinstance(written, Mapping):
        texts = dict(zip(source.results, written, strict=False))
        results: Any = {exit_: step.targets[exit_] for exit_ in more}
        results |= {text: _target(step, met) for met, text in texts.items()}
    else:
        results = [{"result": exit_, "branch": step.targets[exit_]} for exit_ in more]
        pairs = zip(source.results, written, strict=False)
        results += [_result(one, _target(step, met)) for met, one in pairs]
    away = step.targets.get(CANNOT_TEST)
    return ({"results": results} if results else {}) | ({"cannot_test": away} if away else {})


def _result(written: Words, target: str) -> Words:
    return {
        key: target if key in ("branch", "return") else value
        for key, value in written.items()
        if key not in _OF_RESULT
    }


def _limit(source: SourceStep, step: DraftStep) -> Words:
    """Return how often a step may be done, in a draft that goes back."""
    most = source.step.at_most
    if most is None or not step.goes_back:
        return {}
    return {"at_most": str(max(int(most), len(step.visits))), "spent": next(step.gaps)}


def _filled(source: SourceStep, step: DraftStep) -> Words:
    """Return the step as written, with what its placeholders stood for on this job."""
    values = step.first.filled or {}
    ids = {name: text for name, text in values.items() if _ID.fullmatch(text)}
    texts = {name: step.part_names.get(text, text) for name, text in values.items()}

    def filled(value: Any, is_id: bool) -> Any:
        if isinstance(value, Mapping):
            keys = value if is_id else [with_values(key, texts) for key in value]
            inside = [filled(one, is_id or key in _NAMES_KEPT) for key, one in value.items()]
            return dict(zip(keys, inside, strict=True))
        if isinstance(value, list):
            return [filled(one, is_id) for one in value]
        return with_values(value, ids if is_id else texts)

    words: Words = filled(source.written, False)
    return words


def _from_file(step: DraftStep) -> Words:
    """Return a step of which only the job's file knows: its name, and the answers that were met."""
    first = step.first
    words = first.visit.step.replace("-", " ").strip().capitalize()[:60] or "What was done here"
    match first.kind:
        case "check":
            met = {exit_[:60]: to for exit_, to in step.targets.items()
                   if exit_ not in (CANNOT_TEST, NONE_OF_THESE, "")}  # fmt: skip
            if "" in step.targets:
                met["as on this job"] = step.targets[""]
            away = step.targets.get(CANNOT_TEST)
            results = met if OTHER_RESULT in met else {**met, OTHER_RESULT: next(step.gaps)}
            return {"check": f"{words}?", "results": results} | (
                {"cannot_test": away} if away else {})  # fmt: skip
        case "action":
            return {"action": words, "then": _target(step, "action")}
        case "fix":
            again = step.targets.get("fix")
            return {"fix": words, "cause": "What was wrong",
                    "verify": ["what proves the repair, measured as before"]} | (
                        {"still_there": again} if again else {})  # fmt: skip
        case _:
            return {"stop": words}
