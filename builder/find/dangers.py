"""What can hurt somebody, the gravest first, each with its safety line.

In: nothing. Out: `DANGERS`, with the signs that tell of them. They are the same in every shop, so
that no shop can lose them. Common practice of the trade, no source; each line says to stop and to
get a qualified person.
"""

from dataclasses import dataclass

from builder.find.danger_signs import SIGNS
from builder.find.harm_signs import HARM_SIGNS
from builder.find.harmless_words import HARMLESS


@dataclass(frozen=True, slots=True)
class Danger:
    """Something that can hurt somebody."""

    name: str
    text: str  # the safety line
    signs: str
    harmless: str


_LINES = {
    "fire": (
        "WARNING: This can become a fire. Stop, switch off, get everyone out and away. If it "
        "burns, call the fire department. Do not start it; get a qualified tech."
    ),
    "fuel": (
        "WARNING: Fuel ignites at a spark. Stop, switch off, get everyone out. Do not start "
        "or drive it; get a qualified tech."
    ),
    "brakes": (
        "WARNING: The vehicle may not stop. Pull over where it is safe. Do not drive it; tow "
        "it to a qualified tech."
    ),
    "steering": (
        "WARNING: Steering can fail at any moment. Stop where it is safe. Do not drive it; "
        "tow it to a qualified tech."
    ),
    "high voltage": (
        "DANGER: High voltage kills. Stop, keep clear, touch nothing orange. Do not open or "
        "unplug it; get a tech qualified for high voltage."
    ),
    "airbag": (
        "WARNING: Airbags and pretensioners can fire, or fail in a crash. Stop. Do not probe, "
        "unplug, or remove one; get a qualified tech."
    ),
    "restraint": (
        "WARNING: A belt or seat that does not hold cannot save anyone in a crash. Stop. Do "
        "not drive with that seat in use; get a qualified tech."
    ),
    "wheel": (
        "WARNING: A wheel can come off or a tire burst. Stop where it is safe. Do not drive "
        "it; tow it to a qualified tech."
    ),
    "runaway": (
        "WARNING: The vehicle can speed up by itself. Brake hard, shift to neutral, stop, "
        "switch off. Do not drive it; tow it to a qualified tech."
    ),
    "raised vehicle": (
        "WARNING: A car on a jack can fall and crush. Stop, get out from under it. Do not go "
        "under without rated stands on firm ground; get a qualified tech."
    ),
    "rolling": (
        "WARNING: The vehicle can roll and crush people. Stop, chock the wheels, keep "
        "everyone clear. Do not drive it; get a qualified tech."
    ),
    "water": (
        "WARNING: Water carries and traps vehicles. Stop, get everyone out to high ground, call "
        "for help. Do not start or drive it; get a qualified tech."
    ),
    "exhaust gas": (
        "WARNING: Exhaust gas holds carbon monoxide, which kills. Stop, get everyone into "
        "fresh air. Do not drive it; get a qualified tech."
    ),
    "battery": (
        "WARNING: A battery can burst and spray acid. Stop, keep sparks and people away. Do "
        "not charge or jump it; get a qualified tech."
    ),
    "scalds and splashes": (
        "WARNING: Hot coolant scalds, and fluids burn eyes and skin. Stop, switch off, let it "
        "cool; rinse with water. Do not open a cap or hose; get a qualified tech."
    ),
    "crushing": (
        "WARNING: Parts that move or are under load can crush and cut. Stop, keep hands and "
        "people clear. Do not run it or touch it; get a qualified tech."
    ),
    "open on the road": (
        "WARNING: What opens on the road can blind you or hit others. Stop where it is safe. "
        "Do not drive it until it is held shut; get a qualified tech."
    ),
    "broken frame": (
        "WARNING: What carries or pulls the vehicle can break away. Stop where it is safe. Do "
        "not drive or tow with it; get a qualified tech."
    ),
    "no sight": (
        "WARNING: Nobody can drive without sight and lights. Pull over where it is safe, "
        "hazard lights on. Do not drive on; get a qualified tech."
    ),
    "quits in traffic": (
        "WARNING: An engine that quits takes the power brakes and steering along. Pull over "
        "where it is safe. Do not drive it; tow it to a qualified tech."
    ),
    "harm": (
        "WARNING: Somebody was hurt, or nearly. Stop, keep people clear, call for help if "
        "needed. Do not drive it; get a qualified tech."
    ),
}

DANGERS = tuple(
    Danger(name, text, (SIGNS | HARM_SIGNS)[name], HARMLESS.get(name, ""))
    for name, text in _LINES.items()
)
