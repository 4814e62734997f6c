"""What the record of a job says beside the tree's words: typed for the papers, answered, noted.

In: a state at a fix, its evidence. Out: texts. They tell which of several things it was, and where.
"""

from collections.abc import Iterable, Mapping

from builder.walk.complaint_lines import AFTER, CAUSED, NEXT, REST
from builder.walk.job_state import JobState
from builder.walk.measured import MeasuredCheck
from builder.walk.steps_taken import StepTaken
from builder.wording.bay_shorthand import written_out
from builder.wording.several_places import is_placed

PLACE = "where"  # name of the tech's own words for it: a side, an axle, a cylinder
NOT_OF_CAUSE = (REST, AFTER, CAUSED, NEXT, "codes", "chosen", "declined", "time", "handed")
OF_PAPERS = (*NOT_OF_CAUSE, PLACE, "cause", "repair", "parts")  # these name no check
OF_CHECK = "#"  # ahead of a check's name that is also one of these: `#codes`
LONGEST_WORDS = 200  # characters of the tech's own words


def own_words(state: JobState) -> Mapping[str, str]:
    """Return what the tech wrote for the papers, each as the part of a sentence."""
    end = state.end
    own = state.write_up.get(f"{end.inside}#{end.step}", {}) if end else {}
    words = {name: " ".join(own[name].split())[:LONGEST_WORDS].rstrip(".") for name in own}
    return {name: written_out(text) for name, text in words.items()}


def words_of_check(own: Mapping[str, str], step: str) -> str:
    """Return what the tech wrote was seen at a check; a check may be called like a paper's part."""
    marked = own.get(f"{OF_CHECK}{step}", "")
    return marked or ("" if step in OF_PAPERS else own.get(step, ""))


def known_words(own: Mapping[str, str], evidence: Iterable[MeasuredCheck]) -> tuple[str, ...]:
    """Return what tells which of several things it was: what was typed, answered, or meant by it.

    What is left of the complaint, or how it is after the repair, tells nothing of the cause.
    """
    typed = [text for name, text in own.items() if name not in NOT_OF_CAUSE]
    answers = [text for one in evidence for text in (one.seen or one.result, one.means)]
    return tuple(filter(None, [*typed, *answers]))


def known_place(
    own: Mapping[str, str], filled: Mapping[str, str], evidence: Iterable[StepTaken]
) -> str:
    """Return where the fault is as somebody typed it for the papers, a question, or a note."""
    noted = [text for one in evidence for text in one.entry.wrote.values()]
    placed = (text for text in (*filled.values(), *noted) if is_placed(text))
    return own.get(PLACE) or next(placed, "")
