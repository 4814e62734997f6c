"""The schemas of specs, of parts, and of a vehicle's file.

In: the shapes of schemas, the colors of wires. Out: one schema for `kb/specs.yml`, `kb/parts.yml`
and `kb/vehicles/`.
"""

from builder.model.vehicle_data import PIN_ROLES, SEEN_FROM, TAB_SIDES
from builder.reader.schemas.shapes import (
    DATE,
    FORMAT,
    NAMES,
    OVER_LIMIT,
    WORDS,
    by_name,
    by_type,
    choice,
    count,
    decimal,
    pattern,
    record,
    several,
    slug,
    string,
)
from builder.trade.wire_colors import WIRE_COLORS

SOURCE = string("a source", "Where it comes from.", "maker's service information", 120)
GOOD_WORDS = "12.4 to 13.0, at most 0.5, at least 10.5, look it up"
GOOD = by_type(
    "a good range, or one for each load",
    f"What is good: {GOOD_WORDS}, or a range for each load.",
    {
        "string": string("a range", f"What is good: {GOOD_WORDS}.", "13.2 to 14.8", 40),
        "object": by_name("a range for each load", "What is good at each load.",
                          string("a range", "", "at most 0.2", 40), "{at 2 A: at most 0.2}"),
    },
    "13.2 to 14.8",
)  # fmt: skip
SPECS = by_name(
    "specs by name", "What can be measured, once for all trees.",
    record("a spec", "Something to measure, and what is good where the vehicle says nothing.",
           {"text": string("a few words", "What is measured.", "charging voltage", 60),
            "unit": string("a unit", "The unit the meter shows.", "V"),
            "from": decimal("a number", "The lowest that the meter can show here.", 0),
            "to": OVER_LIMIT,
            "resolution": decimal("a number", "The finest step the meter shows.", 0.01, 0),
            "good": GOOD,
            "origin": string("an origin",
                             "Where the limits come from.",
                             "common practice", 120)},
           ("text", "unit", "from", "to", "good"),
           "{text: charging voltage, unit: V, from: 0, to: 20, good: 13.2 to 14.8}"),
    "{charging-voltage: {text: charging voltage, unit: V, from: 0, to: 20, good: 13.2 to 14.8}}",
)  # fmt: skip
VEHICLE_PARTS = by_name(
    "parts by name", "Parts that trees name; a module's ID is a part's name too.",
    record("a part", "One part.", {"name": WORDS, "also_called": NAMES}, ("name",),
           "{name: Alternator, also_called: [generator]}"),
    "{alternator: {name: Alternator}}",
)  # fmt: skip
PIN = record(
    "a pin", "One pin of a connector.",
    {"role": choice("a role", "What the pin is for; trees ask for pins by it.", *PIN_ROLES),
     "circuit": string("a few words", "The circuit, as the wiring diagram calls it.", "run/start",
                       60),
     "wire": string("a wire", f"Its color by code ({', '.join(WIRE_COLORS)}; with a stripe RD/WH), "
                    "and its size.", "RD/WH 0.5 mm2", 28),
     "to": string("a place", "Where the wire leads.", "splice S211", 60),
     "fuse": string("a fuse", "The fuse that feeds it, from this file.", "21", 12)},
    ("role",), "{role: power, circuit: run/start, wire: PK/BK, fuse: 34}",
)  # fmt: skip
CONNECTOR = record(
    "a connector", "One connector of a part.",
    {"of": slug("a part", "The part it is plugged into: from kb/parts.yml or kb/modules/.",
                "alternator"),
     "where": string("a place", "Where to find it at the vehicle.", "Back of the alternator", 120),
     "rows": count("a whole number", "How many rows of pins it has; pin 1 is at the top left.", 2),
     "columns": count("a whole number", "How many pins are in a row; numbers run along the rows.",
                      4),
     "cavities": several("a list of rows",
                         "The pin numbers, row by row, where they don't run along the rows.",
                         several("a row", "", string("a pin number", "", "1", 4), "[3, 4]"),
                         "[[3, 4], [5, 7, 6], [1, 2]]"),
     "tab": choice("a side", "Where the locking tab is, in the drawing of its face.", *TAB_SIDES),
     "seen_from": choice("a side of a connector", "From which side its face is drawn.", *SEEN_FROM),
     "pins": by_name("pins by number", "Its pins.", PIN, "{1: {role: power}}")},
    ("of", "pins"), "{of: alternator, pins: {1: {role: command}}}",
)  # fmt: skip
FUSE = record(
    "a fuse", "One fuse.",
    {"box": string("a place", "The box it is in.", "under the hood", 60),
     "amps": decimal("amperes", "Its rating, in amperes.", 10, 0),
     "feeds": string("a few words", "What it feeds.", "ABS module run/start", 60)},
    ("box", "amps"), "{box: under the hood, amps: 10, feeds: ABS module}",
)  # fmt: skip
TORQUE = record(
    "a torque", "One tightening torque.",
    {"Nm": decimal("newton meters", "The torque, in newton meters.", 110, 0),
     "note": string("a note", "What else counts, such as new bolts.", "Use a new bolt each time",
                    120),
     "source": SOURCE},
    ("Nm",), "{Nm: 110, source: maker's service information}",
)  # fmt: skip
VEHICLE_SPEC = record(
    "a good range of this vehicle", "What is good on this vehicle.",
    {"good": GOOD, "source": SOURCE},
    ("good", "source"), "{good: 13.4 to 14.9, source: maker's service information}",
)  # fmt: skip
VEHICLE = record(
    "a vehicle", "A vehicle the shop works on.",
    {"format": FORMAT,
     "make": WORDS, "model": WORDS,
     "years": pattern("model years", "First and last model year.", "2017-2022",
                      r"^\d{4}(-\d{4})?$"),
     "note": string("a note", "What else to know about this vehicle.",
                    "12 V battery under the hood.", 400),
     "source": record("a source", "Who filled this in, from what, and when.",
                      {"by": WORDS, "from": string("a source", "The document.",
                                                   "service information", 120),
                       "date": DATE}, ("by", "from", "date"),
                      "{by: R. Osei, from: service information, date: 2026-03-02}"),
     "lists": by_name("lists by name", "Lists that steps go through with `each`.",
                      several("a list", "Its items.", WORDS, "[engine-module]"),
                      "{modules: [engine-module]}"),
     "specs": by_name("good ranges by spec", "What is good on this vehicle, where it differs.",
                      VEHICLE_SPEC,
                      "{charging-voltage: {good: 13.4 to 14.9, source: service information}}"),
     "connectors": by_name("connectors by name", "Its connectors.", CONNECTOR,
                           "{alternator: {of: alternator, pins: {1: {role: command}}}}"),
     "fuses": by_name("fuses by number", "Its fuses.", FUSE, "{21: {box: left, amps: 10}}"),
     "torques": by_name("torques by name", "Its tightening torques.", TORQUE,
                        "{lug-nuts: {Nm: 110}}")},
    ("make", "model"), "{make: Corvane, model: Tern, years: 2017-2022}",
)  # fmt: skip
