"""Lines typed at the terminal, as events."""

import re
from typing import Any

import pytest

from builder.walk import events
from builder.walk.job_state import Refused
from builder.walk.screen import screen
from builder.walk.screen_text import screen_lines
from builder.walk.typed_line import event_of_line
from tests.walk.drilled import drilled_shop
from tests.walk.played import started
from tests.walk.told_stories import SAMPLES

PHRASES: dict[str, Any] = {"results": [{"text": "yes"}, {"text": "no"}]}
READS: dict[str, Any] = {"readings": [{"name": "", "unit": "V"}]}
IN_SPEC: dict[str, Any] = {**READS, "results": [{"text": "in spec"}]}
NOTHING: dict[str, Any] = {"results": [{"text": "none"}]}
NOTED: dict[str, Any] = {**PHRASES, "kind": "check", "write_down": ["Which wheel"]}
WHEEL = {"Which wheel": "right front"}
PARTS = {"bcm": "body computer"}
UNREAD: dict[str, Any] = {"unread": ["heat"]}
ASKS: dict[str, Any] = {"asks": [{"name": "module", "ask": "Which", "one_of": ["pcm", "bcm"]}]}
LIST: dict[str, Any] = {"asks": [{"name": "places", "ask": "p", "one_of": [], "list": True}]}


@pytest.mark.parametrize(
    ("line", "shown", "event"),
    [
        ("2", PHRASES, events.Answer(result=1)),
        ("stated #2", READS, events.Answer(result=1, stated=True)),
        ("14.2 V", READS, events.Answer(readings={"": "14.2 V"})),
        ("14", READS, events.Answer(readings={"": "14"})),
        ("OL", READS, events.Answer(readings={"": "OL"})),
        ("13,3 V #2", READS, events.Answer(readings={"": "13,3 V"}, result=1)),
        (
            "plus=0,1 V; ground = 20 mV",
            READS,
            events.Answer(readings={"plus": "0,1 V", "ground": "20 mV"}),
        ),
        ("#3", READS, events.Answer(result=2)),
        ("done", {}, events.Done()),
        ("  Back ", {}, events.Back()),
        ("can't test", {}, events.CannotTest()),
        ("Can't test no lift here", {}, events.CannotTest(seen="no lift here")),
        ("none it smokes", {}, events.NoneOfThese(seen="it smokes")),
        ("tick 2", {}, events.Tick(line=1)),
        ("read", UNREAD, events.Acknowledge(hazards=("heat",))),
        ("", UNREAD, events.Acknowledge(hazards=("heat",))),
        ("run", {}, events.RunProcedure()),
        ("take", {}, events.TakeEarlier()),
        ("pass", {}, events.Verified(passed=True)),
        ("fail", {}, events.Verified(passed=False)),
        ("correct 3 2", {}, events.Correct(index=2, result=1)),
        ("correct 3 14 V #1", {}, events.Correct(index=2, readings={"": "14 V"}, result=0)),
        ("correct 3 14.2 V", {}, events.Correct(index=2, readings={"": "14.2 V"})),
        ("hand over R. Osei", {}, events.HandOver(to="R. Osei")),
        ("pause", {}, events.Pause()),
        ("2", ASKS, events.Fill(name="module", value="bcm")),
        ("pcm", ASKS, events.Fill(name="module", value="pcm")),
        ("Body  computer", ASKS, events.Fill(name="module", value="bcm")),
        ("u0100", ASKS, events.Fill(name="module", value="u0100")),
        ("No", PHRASES, events.Answer(result=1)),
        ("stated no", PHRASES, events.Answer(result=1, stated=True)),
        ("stated in spec", IN_SPEC, events.Answer(result=0, stated=True)),
        ("none", NOTHING, events.Answer(result=0)),
        ("none of it", NOTHING, events.NoneOfThese(seen="of it")),
        ("cap, neck", LIST, events.Fill(name="places", value=("cap", "neck"))),
        ("back", ASKS, events.Back()),
        ("2; Which wheel=right front", NOTED, events.Answer(result=1, wrote=WHEEL)),
        ("no; which=right front", NOTED, events.Answer(result=1, wrote=WHEEL)),
        (
            "none; which whel=right front",
            NOTED,
            events.NoneOfThese(seen="; which whel=right front"),
        ),
        (
            "2.1 V #1; which wheel=right front",
            {**NOTED, **READS},
            events.Answer(readings={"": "2.1 V"}, result=0, wrote=WHEEL),
        ),
        (
            "papers where left; which wheel=left",
            NOTED,
            events.WriteUp(name="where", text="left; which wheel=left"),
        ),
    ],
)
def test_a_line_is_an_event(line: str, shown: dict[str, Any], event: events.Event) -> None:
    """What the help says can be typed."""
    assert event_of_line(line, shown, "", PARTS) == event


def test_a_choice_that_there_is_not_is_refused() -> None:
    """The message asks for what stands there, not for IDs."""
    event = event_of_line("radio", ASKS, "", PARTS)
    assert isinstance(event, Refused)
    assert event.message == "`radio` isn't one of these: type a number, or the words beside it"


def test_an_empty_line_is_refused() -> None:
    """Nothing happens by pressing Enter where nothing is to be read."""
    assert isinstance(event_of_line(" ", PHRASES, ""), Refused)


def test_a_note_alone_is_no_answer() -> None:
    """What is written down stands behind the answer; alone it is refused, and says so."""
    event = event_of_line("which wheel=left", NOTED, "")
    assert isinstance(event, Refused)
    assert event.message.startswith("the answer is missing")


def test_the_prompt_shows_how_a_note_is_typed() -> None:
    """At a check behind the answer, elsewhere behind `done`."""
    tables = drilled_shop(SAMPLES).tables
    begun = started(tables, "charging/lamp-on")
    lines = [*screen_lines(screen(tables, begun), tables.shop["hazards"], tables.shop["parts"])]
    assert any(re.search(r"Write down: (.+) \(`done \1=WORDS`\)", one) for one in lines)
    shown = {**screen(tables, begun), "kind": "check", "write_down": ["which wheel", "play"]}
    lines = [*screen_lines(shown, tables.shop["hazards"], tables.shop["parts"])]
    assert "  Write down: which wheel (`ANSWER; which wheel=WORDS`)" in lines
    assert "  Write down: play (`; play=WORDS`)" in lines


def test_what_was_not_ticked_at_a_repair_is_not_done() -> None:
    """The record and the story say which lines were left out; a change of the vehicle isn't one."""
    lines = [
        {"text": "Turn the key off", "of": "change", "ticked": False},
        {"text": "Torque the post", "of": "do", "ticked": False},
        {"text": "Turn every pulley", "of": "do", "ticked": True},
    ]
    done = event_of_line("done", {"kind": "fix", "lines": lines}, "")
    assert done == events.Done(wrote={"not done": "Torque the post"})
    assert event_of_line("done", {"kind": "action", "lines": lines}, "") == events.Done()
