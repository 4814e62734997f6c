"""What can hurt somebody, and the signs that tell of it.

In: nothing. Out: `DANGERS`, the gravest first, each with its safety line. They are the same in
every shop, so that no shop can lose them. Common practice of the trade, no source; each line says
to stop and to get a qualified person.

Signs are parted by semicolons. All words or phrases of a sign, parted by commas, must stand near
its first, in any order; one in capitals is a group of `danger_words.py`. Behind `unless` stands
what takes the sign away. Endings don't matter: `brake` is `brakes` too.
"""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Danger:
    """Something that can hurt somebody."""

    name: str
    text: str  # the safety line
    signs: str


DANGERS = (
    Danger(
        "fire",
        "WARNING: This can become a fire. Stop, switch off, get everyone out and away. If "
        "it burns, call the fire department. Do not start it; get a qualified tech.",
        """
        smoke, PLACE unless cigarette; smoke unless TAIL, cigarette, SPILLED; smoulder; smolder;
        BURN, SMELL unless SPILLED; burning, STUFF unless SPILLED; burnt, STUFF unless SPILLED;
        SMELL, electrical; SMELL, plastic; SMELL, rubber; SMELL, wiring; melt unless SPILLED;
        glow, WIRING; glow, GLOWER; burning, GLOWER; GLOWER, REDS; too hot to touch unless seat;
        WIRING, HEATS; WIRING, SMELL; WIRING, smoke; caught fire; caught on fire; catch fire; on
        fire; a fire; engine fire; electrical fire; wiring fire; fire under the; fire underneath;
        fire in the engine; engine bay fire; under hood fire; fire in the dash; fire hazard; car
        fire; truck fire; vehicle fire; fire extinguisher unless mount, holder, bracket; fire
        department; flame; grass, burn; glow, underneath; glowing red; sparks unless plug, knock;
        sparking; arcing; overheating battery
        """,
    ),
    Danger(
        "fuel",
        "WARNING: Fuel ignites at a spark. Stop, switch off, get everyone out. Do not start or "
        "drive it; get a qualified tech.",
        """
        FUEL, SMELL; filling station, SMELL; FUEL, LEAK; TANK, BREAK; TANK, LEAK; TANK, mist;
        smells of gas; raw gas; raw fuel; diesel, mist
        """,
    ),
    Danger(
        "brakes",
        "WARNING: The vehicle may not stop. Pull over where it is safe. Do not drive it; tow it "
        "to a qualified tech.",
        """
        no brake; zero brakes; without brakes; brake, FAIL unless NOISES, lost comm,
        communication; lost all brakes; lost my brakes; losing brakes; losing my brakes; brake
        line, BREAK; brake hose, BREAK; caliper hose, BREAK; pedal, sinks unless clutch; pedal,
        sank unless clutch; HALT, red light; HALT, stop sign; pedal, HALT unless OTHER PEDAL;
        brake fluid, LEAK; brake fluid, floor; brake fluid, disappear; brake fluid, dry; brake
        fluid, empty; brake fluid, gone; losing brake fluid; brake, HALT unless NOISES; PRESS,
        HALT unless ELSE, OTHER PEDAL; VEHICLE, HALT unless ELSE; PRESS, brake, nothing unless TO
        START; PRESS, pedal, nothing unless OTHER PEDAL, TO START; brake, STRENGTH; stop,
        STRENGTH; pump, brake unless vacuum, abs, controller; have to pump, stop; no pressure,
        pedal; no stopping; stopping power; pedal, SOFT unless OTHER PEDAL; brake, SOFT unless
        pad, pedal pad; only thing that stops; brake, fluid, tire; no pedal; pedal, FLOORED unless
        clutch, mat; foot, firewall; stopping distance; had to use, to stop
        """,
    ),
    Danger(
        "steering",
        "WARNING: Steering can fail at any moment. Stop where it is safe. Do not drive it; tow "
        "it to a qualified tech.",
        """
        no steering; lost the steering; lost my steering; lost all steering; lost power steering;
        losing steering; cant steer; cannot steer; wont steer; couldnt steer; doesnt steer; unable
        to steer; STEER, LOCKED unless ON THE WHEEL; steering, FAIL unless ON THE WHEEL; STEER
        PARTS, BREAK unless DRIPS; steering, stiff unless ON THE WHEEL; STEER, apart; steering
        shaft, LOOSE; steering column, LOOSE unless ON THE WHEEL; NOT TURN, wheel unless key;
        steering, loose unless ON THE WHEEL; NOT TURN, steering unless key; wheel, turn, STRAIGHT
        unless ON THE WHEEL, TO START, center, alignment, points; turned, went straight; follow
        the steering; not follow, wheel
        """,
    ),
    Danger(
        "high voltage",
        "DANGER: High voltage kills. Stop, keep clear, touch nothing orange. Do not open or "
        "unplug it; get a tech qualified for high voltage.",
        """
        hv; high voltage unless alternator, charging, regulator, bulb, rev; orange, CABLE unless
        SMALL WIRES; isolation fault; ELECTRIC, HURT unless mpg, warranty; HIGH PART, TAMPER; got
        a shock; got shocked; electric shock; shocked me; shock, SHOCKS; get a shock;
        electrocuted; zapped; inverter, HURT; tingle, touch
        """,
    ),
    Danger(
        "airbag",
        "WARNING: Airbags and pretensioners can fire, or fail in a crash. Stop. Do not probe, "
        "unplug, or remove one; get a qualified tech.",
        """
        airbag unless LOOKS; air bag unless LOOKS; crash bag; srs unless LOOKS; squib;
        pretensioner; pre tensioner; seat belt tensioner; yellow, CABLE, TAMPER unless SMALL
        WIRES; yellow, CABLE, seat; yellow, CABLE, column; yellow, CABLE, clock spring; yellow,
        CABLE, steering wheel
        """,
    ),
    Danger(
        "wheel",
        "WARNING: A wheel can come off or a tire burst. Stop where it is safe. Do not drive it; "
        "tow it to a qualified tech.",
        """
        wheel, OFF unless WHEEL DRESS, paint; wheel is loose; wheels are loose; wheel, came loose
        unless WHEEL DRESS; nuts, finger tight; nuts, hand tight; wheel, coming loose unless WHEEL
        DRESS; loose wheel; tire, OFF; NUTS, LOOSE unless WHEEL DRESS; wheel, nuts, loose; tire,
        BLOWN unless wrap; sidewall, BLOWN; wheel, bolts, LOOSE unless WHEEL DRESS; rim, bolts,
        LOOSE; rim, bolts, LOOSE unless WHEEL DRESS; tyre, BLOWN
        """,
    ),
    Danger(
        "runaway",
        "WARNING: The vehicle can speed up by itself. Brake hard, shift to neutral, stop, "
        "switch off. Do not drive it; tow it to a qualified tech.",
        """
        throttle, STUCK; gas pedal, STUCK; accelerator, STUCK; RACE, ITSELF; unintended
        acceleration; sudden acceleration; keeps speeding up; keeps accelerating; RACE, HALT;
        race, foot off; racing, foot off; revs, foot off; runaway
        """,
    ),
    Danger(
        "raised vehicle",
        "WARNING: A car on a jack can fall and crush. Stop, get out from under it. Do not "
        "go under without rated stands on firm ground; get a qualified tech.",
        """
        JACK, BENEATH unless OTHER JACK; JACK, SINKS unless OTHER JACK; off the jack; off the
        lift; no jack stands; just, JACK, change unless tire, wheel, spare; without jack stands;
        off the stands; under my, STANDS; was under it; im under it; under it when; STANDS,
        BENEATH; STANDS, SINKS; cinder block; instead of jack stands; hold the car up
        """,
    ),
    Danger(
        "rolling",
        "WARNING: The vehicle can roll and crush people. Stop, chock the wheels, keep everyone "
        "clear. Do not drive it; get a qualified tech.",
        """
        ROLL, in park; ROLL, while parked; ROLL, parked; rolls away; wont stay in park; wont hold
        in park; park doesnt hold; park wont hold; park not hold; jumped out of park; stay put in
        park
        """,
    ),
    Danger(
        "exhaust gas",
        "WARNING: Exhaust gas holds carbon monoxide, which kills. Stop, get everyone into fresh "
        "air. Do not drive it; get a qualified tech.",
        """
        exhaust, SMELL, INDOORS; exhaust fumes; fume, INDOORS unless canister, evap; exhaust,
        leak, INDOORS; SMELL, SICK; exhaust, SICK; exhaust gas, INDOORS; exhaust, into the cab;
        exhaust, into the cabin; exhaust, coming in; exhaust, INDOORS, eyes; RUNS, SHUT GARAGE
        unless opener, remote, program; idling, garage unless rough; SICK, OF TRAVEL unless alert;
        smells like exhaust; exhaust smell; smell exhaust; leave, RUNS, garage; carbon monoxide;
        monoxide; co alarm; co detector; dizzy; nauseous; drowsy; passed out; exhaust, SMELL
        unless egg, sulfur, tailpipe; fumes unless new, paint, machine, evap, canister; headache
        """,
    ),
    Danger(
        "battery",
        "WARNING: A battery can burst and spray acid. Stop, keep sparks and people away. Do not "
        "charge or jump it; get a qualified tech.",
        """
        battery, BATTERY HURT unless SMALL BATTERY; battery, HEATS unless SMALL BATTERY; acid,
        BODY; acid, spill; swelled, charger; swollen, charger; balloon, charger; eye, cells
        """,
    ),
    Danger(
        "hot coolant",
        "WARNING: Hot coolant scalds. Stop, switch off, let it cool. Do not open a cap or hose; "
        "get a qualified tech.",
        """
        steam unless GLASS; steam, hood; coolant, spray; coolant, SHOT OUT; reservoir, SHOT OUT;
        scalded; CAPS, OPEN, HOT; radiator cap, blew; radiator cap, hot; hot coolant, BODY; hot
        water, BODY; burned my, coolant
        """,
    ),
    Danger(
        "spring",
        "WARNING: A compressed spring can fly out and kill. Stop, keep clear of its line. Do not "
        "touch it under load; get a qualified tech.",
        """
        spring compressor unless where, rent, price; spring, shot out; spring, flew
        """,
    ),
)
