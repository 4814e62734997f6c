"""What is typed at the terminal, as an event.

In: a line, what is shown, the time, the names of parts. Out: an `Event`, or a `Refused`. An answer
is a reading, or where nothing is read the number of a result, from 1, or its words; several
readings are `plus=0.1 V; ground=0.2 V`. A part is named by its number, its name, or its ID.
"""

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from typing import Any

from builder.model.typing_slip import slip_of
from builder.walk.events import (
    Acknowledge,
    Answer,
    Back,
    CannotTest,
    Correct,
    Done,
    Event,
    Fill,
    HandOver,
    NoneOfThese,
    Pause,
    Rejoin,
    Resume,
    RunProcedure,
    TakeEarlier,
    Tick,
    Verified,
    WriteUp,
)
from builder.walk.job_state import Refused
from builder.walk.read_codes import DTC
from builder.walk.to_fill import OTHER

HELP = """\
  2                        the second result, where nothing is read; or its words
  14.2 V                   a reading
  plus=0.1; ground=0.2 V   several readings
  14.2 V #2                a reading too close to call, taken as the second result
  2; which wheel=left      an answer, and behind it what was to be written down
  #2                       the second result, where nothing can be read
  stated #2                the second result, known but not measured here
  can't test               it can't be tested; if you like, WORDS behind it: what's in the way
  none WORDS               nothing fits, and what you saw
  done                     an action or a repair is done
  done oil added=2 oz      the same, with what was to be written down
  pass, fail               a test after the repair
  read                     the cautions are read
  tick 1                   line 1 is done
  run, take                run the procedure, or take what it proved earlier
  back                     undo the last entry
  correct 3 ANSWER         give step 3 of the list another answer
  papers cause WORDS       at an end, for the papers; or codes, chosen, time, where, repair,
                           parts, complaint, next, caused, after, handed, declined, or a check's
                           name; #codes is the check that is called like one of these
  list                     what was done so far
  pause, resume            a break
  hand over NAME           to somebody else
  rejoin                   back to the tree that led here
  quit                     leave"""

NOT_DONE = "not done"  # what a record calls lines of a repair that were left out
Shown = Mapping[str, Any]
NO_PARTS: Mapping[str, str] = {}
_PLAIN: Mapping[str, Callable[..., Event]] = {
    "done": Done,
    "back": Back,
    "pause": Pause,
    "resume": Resume,
    "rejoin": Rejoin,
    "run": RunProcedure,
    "take": TakeEarlier,
    "hand over": HandOver,
}
_CANNOT_TEST = re.compile(r"(?:can't|cannot) test\b[:,]? ?(.*)", re.IGNORECASE)


def event_of_line(
    line: str, shown: Shown, at: str, parts: Mapping[str, str] = NO_PARTS
) -> Event | Refused:
    """Return the event of a line; `parts` are the names of parts and modules by ID."""
    words = " ".join(line.split())
    command = words.casefold()
    if shown.get("asks"):
        return _fill(words, shown["asks"][0], at, parts)
    if noted := _with_notes(words, shown, at, parts):
        return noted
    if answer := _in_words(command, shown, at):
        return answer
    if command == "done":
        unticked = not_ticked(shown)
        return Done(wrote={NOT_DONE: "; ".join(unticked)} if unticked else {}, at=at)
    if command in _PLAIN:
        return _PLAIN[command](at=at)
    if command in ("read", "") and shown.get("unread"):
        return Acknowledge(hazards=tuple(shown["unread"]), at=at)
    if command in ("pass", "fail"):
        return Verified(passed=command == "pass", at=at)
    if event := _with_words(words, at):
        return event
    if not words:
        return Refused("type an answer, or ? for help")
    result, readings, stated = _answer(words, reads=bool(shown.get("readings")))
    return Answer(result=result, readings=readings, stated=stated, at=at)


def _with_notes(
    words: str, shown: Shown, at: str, parts: Mapping[str, str]
) -> Answer | Refused | None:
    """Return an answer with what was written down behind it: `2; which wheel=right front`."""
    if shown.get("kind") != "check" or not shown.get("write_down"):
        return None
    pieces = [one.partition("=") for one in words.split(";")]
    names = [
        _note_named(name.strip(), shown["write_down"]) if is_it else "" for name, is_it, _ in pieces
    ]
    wrote = {name: text.strip() for name, (_, _, text) in zip(names, pieces, strict=True) if name}
    rest = ";".join("".join(one) for name, one in zip(names, pieces, strict=True) if not name)
    if not wrote:
        return None
    if not rest.strip():
        return Refused(
            "the answer is missing: type it ahead of what is written down, `1; NAME=WORDS`"
        )
    event = event_of_line(rest, {**shown, "write_down": ()}, at, parts)
    return replace(event, wrote=wrote) if isinstance(event, Answer) else None


def _note_named(typed: str, lines: Sequence[str]) -> str:
    """Return the line to write down that a name, or its beginning, means; else ""."""
    by_name = {one.casefold(): one for one in lines}
    name = typed.casefold()
    begun = [one for one in by_name if len(name) > 2 and one.startswith(name)]
    meant = name if name in by_name else slip_of(name, by_name)
    return by_name.get(meant or (begun[0] if len(begun) == 1 else ""), "")


def _with_words(words: str, at: str) -> Event | None:
    """Return the event of a command with something behind it."""
    if match := _CANNOT_TEST.fullmatch(words):
        return CannotTest(seen=match[1], at=at)
    if words.casefold().startswith("none"):
        return NoneOfThese(seen=words[4:].strip(), at=at)
    if words.casefold().startswith("hand over "):
        return HandOver(to=words[10:], at=at)
    if match := re.fullmatch(r"done (.+=.+)", words, re.IGNORECASE):
        return Done(wrote=_by_name(match[1]), at=at)
    if match := re.fullmatch(r"papers (\S+) (.+)", words, re.IGNORECASE):
        return WriteUp(name=match[1].lower(), text=match[2], at=at)
    if match := re.fullmatch(r"tick ([0-9]+)", words, re.IGNORECASE):
        return Tick(line=int(match[1]) - 1, at=at)
    if match := re.fullmatch(r"correct ([0-9]+) (.+)", words, re.IGNORECASE):
        result, readings, stated = _answer(match[2], reads=False)
        index = int(match[1]) - 1
        return Correct(index=index, result=result, readings=readings, stated=stated, at=at)
    return None


def not_ticked(shown: Shown) -> list[str]:
    """Return the lines of a repair that nobody ticked."""
    lines = [one for one in shown.get("lines", ()) if one["of"] == "do"]
    if shown.get("kind") != "fix":
        return []
    return [str(one["text"]) for one in lines if not one["ticked"]]


def _in_words(command: str, shown: Shown, at: str) -> Answer | None:
    """Return the answer whose words were typed, where nothing is read or it's only stated."""
    stated = command.startswith("stated ")
    if command == "back" or (shown.get("readings") and not stated):
        return None
    typed = command.removeprefix("stated ")
    texts = [one["text"].casefold() for one in shown.get("results", ())]
    return Answer(result=texts.index(typed), stated=stated, at=at) if typed in texts else None


def _fill(words: str, ask: Mapping[str, Any], at: str, parts: Mapping[str, str]) -> Event | Refused:
    command = words.casefold()
    if command == "back":
        return Back(at=at)
    if "limits" in ask and (match := _CANNOT_TEST.fullmatch(words)):
        return CannotTest(seen=match[1], at=at)  # nobody can look up its spec
    if ask.get("list"):
        items = tuple(item.strip() for item in words.split(",") if item.strip())
        return Fill(name=ask["name"], value=items, at=at)
    choices: list[str] = ask["one_of"]
    if words.isdigit() and 0 < int(words) <= len(choices):
        return Fill(name=ask["name"], value=choices[int(words) - 1], at=at)
    names = {parts.get(one, one).casefold(): one for one in choices}
    names |= {one.casefold(): one for one in choices}
    chosen = names.get(words.casefold(), words)
    is_open = not choices or OTHER in choices
    if not is_open and chosen not in choices and not DTC.search(words.upper()):
        return Refused(f"`{words}` isn't one of these: type a number, or the words beside it")
    return Fill(name=ask["name"], value=chosen, at=at)


def _answer(words: str, reads: bool) -> tuple[int | None, Mapping[str, str], bool]:
    """Return the result counted from 0, the readings, and whether it is stated."""
    match = re.fullmatch(r"(?P<stated>stated )?(?P<typed>.*?) ?#(?P<number>[0-9]+)", words)
    typed = match["typed"] if match else words
    result = int(match["number"]) - 1 if match else None
    stated = bool(match and match["stated"])
    if not reads and typed.isdigit():
        result, typed = int(typed) - 1, ""
    if not typed:
        return result, {}, stated
    if "=" not in typed:
        return result, {"": typed}, stated
    return result, _by_name(typed), stated


def _by_name(typed: str) -> dict[str, str]:
    """Return texts by name: `plus=0.1; ground=0.2 V`."""
    pairs = (part.partition("=") for part in typed.split(";"))
    return {name.strip(): text.strip() for name, _, text in pairs}
