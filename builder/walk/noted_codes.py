"""The trouble codes that were written down on a walk, each with its status.

In: the steps as they were taken, what the job has of codes, the library. Out: lines. A
code without a status word beside it says so: current and history lead to different work. Where no
code is on record there are blanks: a repair order without its codes is asked back.
"""

import re
from collections.abc import Iterator, Sequence

from builder.model.library import Library
from builder.walk.steps_taken import StepTaken
from builder.wording.bay_shorthand import written_out
from builder.wording.sentences import capitalized

_CODE = re.compile(r"\b([PCBU][0-3][0-9A-F]{3}(?:-[0-9A-F]{2})?)\b", re.IGNORECASE)
_STATUS = re.compile(
    r"\b(current|active|present|pending|confirmed|permanent|stored|history|historic|intermittent)\b",
    re.IGNORECASE,
)
_JOINED = re.compile(r"[ ,;]+(?:and|with|plus|then)$")
_NO_WORDS = re.compile(r"\W*(?:DTCs?|codes?)?\W*", re.IGNORECASE)
_NO_TEXT_OF_CODE = re.compile(
    rf"{_STATUS.pattern}|\b(?:and|also|but|not|only)\b|\bin (?:the )?[\w-]+(?: module)?",
    re.IGNORECASE,
)
OF_JOB = "DTCs"  # typed for the job or its papers; all of it is kept
LONGEST_TOLD = 80  # characters beside a code
BEFORE, AFTERWARD = ", before the repair", ", after the repair"
NO_TEXT = "text ____________________"  # of a code that the shop has no words for
ONE_MORE = "DTC __________ status ____________ module ____________________"
NONE_RECORDED = "Before the repair: ☐ none stored  ☐ not scanned  ☐ these:"


def code_lines(
    taken: Sequence[StepTaken], job_codes: str, library: Library, own: str = ""
) -> list[str]:
    """Return every code with what it stands for and its status, before the repair or after.

    `own` is what the tech wrote of them for the papers: codes, `none stored`, `not scanned`.
    """
    lines = [*dict.fromkeys(_lines(taken, (job_codes, own), library))]
    is_known = any(line.endswith(BEFORE) for line in lines)
    return lines if is_known else [NONE_RECORDED, ONE_MORE, *lines]


def named_codes(
    taken: Sequence[StepTaken], of_job: Sequence[str], library: Library
) -> tuple[str, ...]:
    """Return the codes before the repair, each with what it stands for and its status.

    They are for a customer, who has no text to write in.
    """
    lines = dict.fromkeys(_lines(taken, of_job, library))
    return tuple(
        line.removesuffix(BEFORE).replace(f" ({NO_TEXT})", "")
        for line in lines
        if line.endswith(BEFORE) and _CODE.match(line)
    )


def note_lines(taken: Sequence[StepTaken]) -> list[str]:
    """Return what else was written down on the way, as it was typed."""
    notes = (
        f"{capitalized(name)}: {written_out(text)}"
        for one in taken
        if one.entry.kind != "fix"
        for name, text in one.entry.wrote.items()
        if "DTC" not in name
    )
    return [*dict.fromkeys(notes)]


def _lines(taken: Sequence[StepTaken], of_job: Sequence[str], library: Library) -> Iterator[str]:
    found = [*_told(taken, of_job, library)]
    for at, (text, when) in enumerate(found):
        # The same code with more beside it, such as where it is stored, says all of it.
        if not any(
            other.startswith(text) and (len(other) > len(text) or before < at)
            for before, (other, then) in enumerate(found)
            if then == when and before != at
        ):
            yield f"{text}{when}"


def _told(
    taken: Sequence[StepTaken], of_job: Sequence[str], library: Library
) -> Iterator[tuple[str, str]]:
    """Yield each code with what was typed of it, and before or after the repair."""
    texts = [(OF_JOB, text, BEFORE) for text in of_job if text]
    yield from ((f"As written down: {text}", BEFORE) for text in of_job if _says_ahead(text))
    for one in taken:
        when = AFTERWARD if one.verifies else BEFORE
        wrote = (*one.entry.wrote.items(), ("", one.entry.seen))
        texts += [(name, text, when) for name, text in wrote]
    for name, text, when in texts:
        codes = [*_with_words(text)]
        if "DTC" in name and not codes:
            yield f"{capitalized(name)}: {text}", when
        for code, status, typed in codes:
            known = library.codes.get(code.partition("-")[0])
            beside = typed if name and (status or name == OF_JOB) else ""
            if name != OF_JOB and len(beside) > LONGEST_TOLD:
                beside = ""
            has_own = not known and _says_more(beside)
            words = "" if has_own else f" ({known.short if known else NO_TEXT})"
            yield f"{code}{words}: {_with_status(beside, status)}", when


def _says_ahead(text: str) -> bool:
    """Whether something stands ahead of the first code: nobody knows which codes it is of."""
    first = _CODE.search(text)
    return bool(first and not _NO_WORDS.fullmatch(text[: first.start()]))


def _says_more(typed: str) -> bool:
    """Whether there are words beside a code's status and module: they are its text."""
    return bool(re.search(r"[^\W\d_]", _NO_TEXT_OF_CODE.sub("", typed)))


def _with_status(typed: str, status: str) -> str:
    return ", ".join(filter(None, [typed or status, "" if status else "status not recorded"]))


def codes_in(text: str) -> Iterator[tuple[str, str]]:
    """Yield each code of a text with the status words up to the next code."""
    for code, status, _ in _with_words(text):
        yield code, status


def _with_words(text: str) -> Iterator[tuple[str, str, str]]:
    """Yield each code with its status words, and all that was typed up to the next code."""
    found = [*_CODE.finditer(text)]
    for at, match in enumerate(found):
        end = found[at + 1].start() if at + 1 < len(found) else len(text)
        typed = text[match.end() : end]
        words = _STATUS.findall(typed)
        status = ", ".join(dict.fromkeys(word.lower() for word in words))
        yield match[1].upper(), status, _JOINED.sub("", _without_parentheses(typed))


def _without_parentheses(typed: str) -> str:
    """Return what was typed beside a code without what held them both; `EPS (not set up)` stays."""
    text = typed.strip(" ,;:=").lstrip(")").rstrip("(").strip(" ,;:=")
    if re.fullmatch(r"\([^()]*\)", text):
        return text[1:-1].strip()
    return text[:-1].rstrip() if text.count(")") > text.count("(") and text[-1] == ")" else text
