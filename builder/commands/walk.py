"""`baytree walk`: follow a tree at the terminal, or play a file of events."""

import argparse
import json
import sys
from collections.abc import Callable, Mapping
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from builder.commands.place import shop_of
from builder.commands.tree_names import tree_in_shop
from builder.commands.vehicle_names import vehicle_named
from builder.model.library import Library
from builder.walk.events import Done, Start, WriteUp
from builder.walk.job_state import JobState, Refused
from builder.walk.walk_tables import WalkTables

Look = Callable[[JobState], str]

NAME = "walk"
HELP = "follow a tree step by step"
CAUTION = (
    "The vehicle maker's service information, local codes and licensed practice come first.\n"
    "Type ? for help."
)


def add_flags(parser: argparse.ArgumentParser) -> None:
    """Add the flags."""
    parser.add_argument("tree", metavar="TREE", help="tree ID")
    parser.add_argument("--vehicle", metavar="ID", default="", help="vehicle, such as tern")
    parser.add_argument("--complaint", metavar="WORDS", default="", help="the customer's words")
    parser.add_argument("--replay", metavar="FILE", help="play a record or a list of events")
    parser.add_argument("--format", choices=("text", "story", "json"), default="text",
                        help="steps, the story for the repair order, or the record")  # fmt: skip


def run(options: argparse.Namespace) -> int:
    """Walk, then print the record."""
    from builder.commands.shop_tables import tables_of_shop
    from builder.walk.record import record_of
    from builder.walk.screen_text import record_lines

    shop = shop_of(options)
    options.tree = tree_in_shop(options.tree, shop)
    tables, trees = tables_of_shop(shop, options.tree)
    if options.vehicle:
        options.vehicle = str(vehicle_named(options.vehicle, trees.library).id)
    if not options.replay:
        print(CAUTION, file=sys.stderr)
    start = Start(
        tree=options.tree, vehicle=options.vehicle, complaint=options.complaint, at=time_now()
    )
    state = _replayed(tables, options) if options.replay else None
    state = state or at_terminal(tables, start, library=trees.library)
    if isinstance(state, Refused):
        print(f"baytree: {options.replay or options.tree}: {state.message}", file=sys.stderr)
        return 2
    record = record_of(state)
    if options.format == "json":
        print(json.dumps(record, indent=2, ensure_ascii=False))
    elif options.format == "story":
        from builder.commands.records import PlayedJob, story_by
        from builder.walk.story import story_lines

        tree = trees.tree(state.frames[0].inside)
        print(
            *story_lines(story_by(PlayedJob(record, tables, state, tree, trees.library))), sep="\n"
        )
    else:
        print(*record_lines(record, tables.shop["parts"]), sep="\n")
    return 0


def time_now() -> str:
    """Return the time now, to the second."""
    return datetime.now(UTC).strftime("%Y-%m-%dT%H:%M:%SZ")


def at_terminal(
    tables: WalkTables, start: Start, look: Look | None = None, library: Library | None = None
) -> JobState | Refused:
    """Ask at the terminal until the walk is left; `look` says what a simulated vehicle shows.

    With the library it asks at an end for what the papers still need. What is shown goes to
    standard error.
    """
    from builder.walk.paper_names import not_on_papers
    from builder.walk.reduce import reduce_event
    from builder.walk.screen import screen
    from builder.walk.screen_text import screen_lines
    from builder.walk.still_to_write import asked_lines
    from builder.walk.typed_line import event_of_line

    state: JobState | Refused = reduce_event(tables, JobState(), start)
    while isinstance(state, JobState):
        shown = screen(tables, state)
        hazards, parts = tables.shop["hazards"], tables.shop["parts"]
        print(*screen_lines(shown, hazards, parts), sep="\n", file=sys.stderr)
        for words in asked_lines(tables, state, library) if library else ():
            print(words, file=sys.stderr)
        line = _line(state, look, parts)
        if line is None:
            return state
        event = event_of_line(line, shown, time_now(), parts)
        if isinstance(event, WriteUp):
            event = not_on_papers(tables, state, event) or event
        following = event if isinstance(event, Refused) else reduce_event(tables, state, event)
        if isinstance(following, Refused):
            print(f"  {following.message}", file=sys.stderr)
        else:
            state = following
            _say_what_was_left(event)
    return state


def _say_what_was_left(event: object) -> None:
    from builder.walk.typed_line import NOT_DONE

    if isinstance(event, Done) and NOT_DONE in event.wrote:
        print(f"  not ticked, so kept as not done: {event.wrote[NOT_DONE]}\n"
              "  If it was done: back, tick each line, done", file=sys.stderr)  # fmt: skip


def _line(state: JobState, look: Look | None, parts: Mapping[str, str]) -> str | None:
    """Return what is typed; None to leave. `parts` are the names of parts by ID."""
    from builder.walk.record import record_of
    from builder.walk.screen_text import record_lines
    from builder.walk.typed_line import HELP as TYPED

    while True:
        print("> ", end="", file=sys.stderr, flush=True)
        line = sys.stdin.readline()
        match line.strip().casefold():
            case "quit" | "exit":
                return None
            case "" if not line:
                return None
            case "?" | "help":
                print(TYPED, file=sys.stderr)
            case "look" if look:
                print(f"  {look(state)}", file=sys.stderr)
            case "list":
                print(*record_lines(record_of(state), parts), sep="\n", file=sys.stderr)
            case _:
                return line


def _replayed(tables: WalkTables, options: argparse.Namespace) -> JobState | Refused:
    """Play a file: a record, or a list of events that may leave out the start."""
    from builder.walk.event_files import event_from
    from builder.walk.reduce import replay

    rows = _rows(Path(options.replay))
    if isinstance(rows, Refused):
        return rows
    events = [event_from(row) for row in rows]
    for number, event in enumerate(events, 1):
        if isinstance(event, Refused):
            return Refused(f"event {number}: {event.message}")
    good = [event for event in events if not isinstance(event, Refused)]
    if not good or not isinstance(good[0], Start):
        good.insert(0, Start(tree=options.tree, vehicle=options.vehicle))
    elif good[0].tree != options.tree:
        return Refused(f"this is a walk of `{good[0].tree}`, not of `{options.tree}`")
    return replay(tables, good)


def _rows(path: Path) -> list[Any] | Refused:
    try:
        content = json.loads(path.read_text("utf-8"))
    except ValueError as error:
        return Refused(f"no JSON: {error}")
    rows = content.get("events") if isinstance(content, dict) else content
    return rows if isinstance(rows, list) else Refused("no record, and no list of events")
