"""What a walk shows, as lines for the terminal.

In: the map of `screen`, the cautions and parts of the shop. Out: lines of text. People read the
names of parts; the record keeps their IDs.
"""

from collections.abc import Iterator, Mapping
from typing import Any

from builder.graph.runs import with_values
from builder.walk.limit_text import limit_text
from builder.walk.shop_rows import HazardRow
from builder.wording.connector_words import wire_text

_KINDS = {"check": "Check", "action": "Do", "fix": "Fix", "stop": "Stop"}
_LINES = {"change": "Change", "do": "Do", "after": "Then", "put back": "Put back"}
_LIMITS = {"from": "lowest", "to": "highest"}


def screen_lines(
    shown: Mapping[str, Any], hazards: Mapping[str, HazardRow], parts: Mapping[str, str]
) -> Iterator[str]:
    """Yield the lines of a screen; `parts` are the names of parts and modules by ID."""
    yield ""
    if shown["phase"] == "paused":
        yield "Paused. Type `resume` to go on."
        return
    if shown["phase"] == "fill":
        yield from _to_fill(shown["asks"][0], parts)
        return
    yield " > ".join(shown["inside"])
    yield from _cautions(shown, hazards)
    title = f"{_KINDS[shown['kind']]}: {shown['text']}"
    yield title + (f" ({shown['item']})" if "item" in shown else "")
    if "now" in shown:
        yield f"  Now: {', '.join(shown['now'])}"
    yield from _to_do(shown)
    yield from _ways_on(shown)
    yield from _end(shown)


def _to_fill(ask: Mapping[str, Any], parts: Mapping[str, str]) -> Iterator[str]:
    question = f"{_looked_up(ask) or ask['ask'].removesuffix('?')}?"
    yield question + (" Several, with commas between." if ask.get("list") else "")
    for number, choice in enumerate(ask["one_of"], 1):
        offered = " (by a DTC that was read)" if choice in ask.get("offered", ()) else ""
        yield f"  {number}  {parts.get(choice, choice)}{offered}"
    if "codes" in ask:
        yield "  Or type a DTC."


def _looked_up(ask: Mapping[str, Any]) -> str:
    """Return the question for a spec; "" for another: nobody types what was measured."""
    limits = " and ".join(_LIMITS[name] for name in ask.get("limits", ()))
    words = f"Look it up for this vehicle: {ask['ask']}, {limits}, in"
    return f"{words} {ask['unit']}" if limits else ""


def _cautions(shown: Mapping[str, Any], hazards: Mapping[str, HazardRow]) -> Iterator[str]:
    for hazard in shown.get("hazards", ()):
        row = hazards[hazard["id"]]
        if hazard["full"]:
            yield f"  {row['signal']}: {row['hazard']}. {row['harm']}. {row['avoid']}."
        else:
            yield f"  {row['signal']}: {row['short']}"
    if "unread" in shown:
        yield "  Read this first, then press Enter."


def _to_do(shown: Mapping[str, Any]) -> Iterator[str]:
    for place in shown.get("at", ()):
        yield f"  At: {_place(place)}"
    if "when" in shown:
        yield f"  When: {', '.join(shown['when'])}"
    for number, line in enumerate(shown.get("lines", ()), 1):
        mark = "x" if line["ticked"] else " "
        yield f"  [{mark}] {_LINES[line['of']]}: {line['text']} (tick {number})"
    if shown.get("wait", "0") != "0":
        yield f"  Wait {shown['wait']} min"
    for at, text in enumerate(shown.get("write_down", ())):
        ahead = "" if at else "ANSWER" if shown["kind"] == "check" else "done"
        typed = f"{ahead}; {text}=WORDS".replace("done; ", "done ")
        yield f"  Write down: {text} (`{typed}`)"
    for torque in shown.get("torques", ()):
        name = torque["name"].replace("-", " ")
        yield f"  Torque: {name}, {torque.get('text', 'look it up')}"
    if "note" in shown:
        yield f"  Note: {shown['note']}"
    if "visit" in shown and shown["visit"][0] > 1:
        yield f"  Time {shown['visit'][0]} of at most {shown['visit'][1]}"


def _place(place: Mapping[str, Any]) -> str:
    """Return a place in words: `abs-module pin 1, power, red (RD) 4 mm², under the cowl`."""
    if "phrase" in place:
        return str(place["phrase"])
    if "noted" in place:
        return f"{place['name']}: {place['noted']}"
    if "fuse" in place and "pin" not in place:
        words = [f"fuse {place['fuse']}", f"{place['amps']} A" if "amps" in place else ""]
        return ", ".join(filter(None, [*words, place.get("box", ""), place.get("feeds", "")]))
    words = [f"{place['connector']} pin {place['pin']}", place["role"]]
    more = [wire_text(place.get("wire", "")), place.get("where", "")]
    return ", ".join(filter(None, [*words, *more]))


def _ways_on(shown: Mapping[str, Any]) -> Iterator[str]:
    if "look_up" in shown:
        yield f"  Look up: {shown['look_up']}"
    if shown["phase"] == "end":
        return
    for reading in shown.get("readings", ()):
        choices = " / ".join(reading.get("phrases", ()))
        yield f"  Read: {reading['name'] or 'the value'} {choices or 'in ' + reading['unit']}"
    for name, cuts in shown.get("ranges", {}).items():
        yield f"  Good: {name} {limit_text(cuts)}"
    if "procedure" in shown:
        yield f"  Procedure: {shown['procedure']} (type `run`)"
    if "earlier" in shown:
        yield f"  Proved earlier: {shown['earlier']['word']} (type `take`)"
    mark = "#" if "readings" in shown else ""
    for number, result in enumerate(shown.get("results", ()), 1):
        yield f"  {mark}{number}  {result['text']}" + (
            f" ({result['means']})" if "means" in result else ""
        )
    if "verify" in shown:
        test = shown["verify"]
        way = f"{test['text']} (`pass` or `fail`)" if test["text"] else "after the repair"
        yield f"  Test {test['index'] + 1} of {test['count']}: {way}"


def _end(shown: Mapping[str, Any]) -> Iterator[str]:
    if "cause" in shown:
        yield f"  Cause: {shown['cause']}"
    if "drive" in shown and "end" in shown and not shown["end"].get("verified"):
        yield f"  Drive it as it is: {shown['drive']}. {shown.get('why', '')}".rstrip()
    for number, test in enumerate(shown.get("tests", ()), 1):
        yield f"  Then verify {number}: {test}"
    if shown["phase"] != "end":
        return
    if "call" in shown:
        yield f"Nothing here fits. Call {', '.join(shown['call'].values())}."
    elif shown["end"]["kind"] == "fix":
        yield "Verified." if shown["end"]["verified"] else "Done, without a test."
    if "rejoin" in shown:
        yield f"Type `rejoin` to go back to {shown['rejoin']}."


def record_lines(record: Mapping[str, Any], parts: Mapping[str, str]) -> Iterator[str]:
    """Yield the steps of a record and its end; `parts` are the names of parts and modules by ID."""
    typed = {one["name"]: one["value"] for one in record["events"] if one["event"] == "fill"}
    filled = {name: parts.get(text, text) for name, text in typed.items() if isinstance(text, str)}
    for number, step in enumerate(record["steps"], 1):
        yield f"{number:3}  {with_values(_entry(step), filled)}"
    for step in record["struck"]:
        yield f"  -  {with_values(_entry(step), filled)} (struck out)"
    if record["end"]:
        yield f"end: {record['end']}"


def _entry(step: Mapping[str, Any]) -> str:
    readings = (
        f"{name} {one['value']} {one['unit']}".strip() for name, one in step["readings"].items()
    )
    more = [*readings, *([step["item"]] if "item" in step else [])]
    words = f"{step['in']}#{step['step']}: {step['result']}"
    return (
        words + (f" ({', '.join(more)})" if more else "") + (", stated" if step["stated"] else "")
    )
