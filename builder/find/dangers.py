"""What can hurt somebody, and the words that tell of it.

In: nothing. Out: `DANGERS`, the gravest first, each with its safety line; `WORD_GROUPS`, words that
are one to a sign; `HARMLESS`, phrases that use these words for something else. They are the same in
every shop, so that no shop can lose them. Common practice of the trade, no source; each line says
to stop and to get a qualified person.

Signs are parted by semicolons. All words or phrases of a sign, parted by commas, must stand near
each other, in any order; one in capitals is a group. Behind `unless`, what takes the sign away.
Endings don't matter: `brake` is `brakes` too.
"""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Danger:
    """Something that can hurt somebody."""

    name: str
    text: str  # the safety line
    signs: str


WORD_GROUPS = {
    "FUEL": "gas, gasoline, petrol, fuel, diesel",
    "SMELL": "smell, smelt, stink, stank, reek, odor, fume, vapor, stench, whiff",
    "LEAK": "leak, drip, pour, puddle, gush, spray, spew, spill, dribble, squirt, wet, pool",
    "BURN": "burning, burnt, scorched, singed",
    "STUFF": "plastic, rubber, electrical, electric, wire, insulation, carpet, fuse box",
    "PLACE": (
        "hood, bonnet, dash, dashboard, engine, engine bay, cabin, inside, interior, vent, "
        "wire, wheel, brake, battery, outlet, socket, radio, column, console, seat, under, "
        "fuse box, alternator, motor, floor, compartment, trunk, charger, light switch"
    ),
    "TAIL": (
        "exhaust, tailpipe, tail pipe, muffler, out the back, blue, black, white, gray, grey, "
        "start, startup, accelerate, floor it, rev, throttle, oil"
    ),
    "ELECTRIC": (
        "hybrid, ev, electric car, electric vehicle, traction battery, drive battery, phev"
    ),
    "HURT": (
        "crack, damage, crash, flood, puncture, swell, swollen, bulge, smoke, shock, "
        "isolation, insulation, arc, spark, accident"
    ),
    "FAIL": (
        "fail, failure, gone, quit, went out, gave out, gave up, stopped working, dont work, "
        "not working, doesnt work, didnt work, arent working"
    ),
    "HALT": (
        "wont stop, cant stop, doesnt stop, didnt stop, not stop, cannot stop, couldnt stop, "
        "barely stop, hardly stop, never stop"
    ),
    "VEHICLE": "car, truck, vehicle, van, suv, pickup",
    "ELSE": (
        "beep, chime, ding, noise, alarm, horn, wiper, fan, flash, blink, click, crank, "
        "light, squeak, squeal, radio, leak, running, blower, washer, window, shake, rattle, "
        "pull, drift"
    ),
    "BREAK": (
        "burst, broke, broken, blew, ruptured, snapped, cut, leak, rusted through, ripped, torn, "
        "tore"
    ),
    "ITSELF": "by itself, on its own, itself, without me, by themselves, for no reason",
    "RACE": (
        "speed up, accelerate, take off, took off, race, surges forward, lunge, lurches forward"
    ),
    "STUCK": (
        "stuck, sticks, jam, wide open, hung, stays down, stays on the floor, wont come up, "
        "wont come back, doesnt come back"
    ),
    "MELTS": (
        "plastic, rubber, wire, connector, plug, fuse, harness, socket, outlet, relay, "
        "insulation, dash, terminal, cable, fuse box, hose, carpet"
    ),
    "ON THE WHEEL": (
        "heater, heated, control, button, audio, light, lamp, radio, cruise, cover, module, "
        "fluid, key, engine, leather"
    ),
    "STEER": "steering, steering wheel",
    "LOCKED": (
        "locked up, locked, seized, jammed, froze, frozen, wont turn, stuck, cant turn, came "
        "off, came loose, spins, disconnected"
    ),
    "OFF": "fall off, fell off, came off, come off",
    "LOOSE": "loose, missing, broken, sheared, came off, fell off",
    "BLOWN": "blew out, blowout, blew, burst, exploded, bulge, bubble, cord, cords showing",
    "ROLL": "roll, moves, creeps away, rolls away",
    "SICK": "headache, dizzy, sick, sleepy, nauseous, passed out, carbon monoxide",
}

# They are taken out before anything is looked for.
HARMLESS = """
    brake controller, brake dust, brake job, brake lamp, brake light, brake light bulb, brake noise,
    brake switch, e brake, emergency brake, engine brake, filler cap, front shocks, fuel cap, fuel
    door, fuel economy, fuel gauge, fuel mileage, fuel pressure, fuel trim, gas cap, gas door, gas
    fee, gas gauge, gas mileage, gas station, hand brake, handbrake, no brake noise, no smoke, no
    spark, parking brake, rear shocks, shock absorber, shock mount, smoke detector, smoke machine,
    smoke shop, smoke test, smoke tester, smoked lights, spark knock, spark plug, static shock,
    steam clean, steam up, trailer brake, weak spark
"""

DANGERS = (
    Danger(
        "fire",
        "WARNING: This can become a fire. Stop, switch off, get everyone out and away. If "
        "it burns, call the fire department. Do not start it; get a qualified tech.",
        """
        smoke, PLACE; smoke unless TAIL; smoulder; smolder; BURN, SMELL; burning, STUFF;
        burnt, STUFF; SMELL, electrical; SMELL, plastic; SMELL, rubber; SMELL, wiring; melt,
        MELTS; caught fire; caught on fire; catch fire; on fire; a fire; engine fire;
        electrical fire; wiring fire; fire under the; fire underneath; fire in the engine;
        engine bay fire; under hood fire; fire in the dash; fire hazard; car fire; truck
        fire; vehicle fire; fire extinguisher; fire department; flame; sparks unless plug;
        sparking; arcing; overheating battery
        """,
    ),
    Danger(
        "fuel",
        "WARNING: Fuel ignites at a spark. Stop, switch off, get everyone out. Do not start or "
        "drive it; get a qualified tech.",
        """
        FUEL, SMELL; FUEL, LEAK; fuel line, BREAK; smells of gas; raw gas; raw fuel
        """,
    ),
    Danger(
        "brakes",
        "WARNING: The vehicle may not stop. Pull over where it is safe. Do not drive it; tow it "
        "to a qualified tech.",
        """
        no brake; zero brakes; without brakes; brake, FAIL; lost brakes; lost all brakes;
        lost my brakes; lost the brakes; losing brakes; losing my brakes; brake line, BREAK;
        brake hose, BREAK; caliper hose, BREAK; pedal, sinks unless clutch; brake, keeps
        rolling; pedal, keeps rolling unless clutch; brake, rolled through; brake fluid,
        LEAK; brake, HALT; pedal, HALT; VEHICLE, HALT unless ELSE; pedal, to the floor
        unless clutch; pedal, on the floor unless clutch; pedal, hits the floor unless
        clutch
        """,
    ),
    Danger(
        "steering",
        "WARNING: Steering can fail at any moment. Stop where it is safe. Do not drive it; tow "
        "it to a qualified tech.",
        """
        no steering; lost steering; lost the steering; lost my steering; lost all steering;
        lost power steering; losing steering; steering lost; cant steer; cannot steer; wont
        steer; couldnt steer; doesnt steer; unable to steer; STEER, LOCKED unless ON THE
        WHEEL; steering, FAIL unless ON THE WHEEL; tie rod, BREAK; ball joint, BREAK;
        steering, stiff unless ON THE WHEEL; STEER, apart; steering shaft, LOOSE; steering
        column, LOOSE; cant turn the wheel; cant turn the steering wheel
        """,
    ),
    Danger(
        "high voltage",
        "DANGER: High voltage kills. Stop, keep clear, touch nothing orange. Do not open or "
        "unplug it; get a tech qualified for high voltage.",
        """
        hv; high voltage unless alternator, charging, regulator, bulb, rev; orange cable;
        orange wire; orange connector; isolation fault; ELECTRIC, HURT; got a shock; got
        shocked; electric shock; shocked me; get a shock; electrocuted; zapped; zap,
        ELECTRIC; tingle, ELECTRIC; inverter, HURT
        """,
    ),
    Danger(
        "airbag",
        "WARNING: Airbags and pretensioners can fire, or fail in a crash. Stop. Do not probe, "
        "unplug, or remove one; get a qualified tech.",
        """
        airbag; air bag; crash bag; srs; squib; pretensioner; pre tensioner; seat belt
        tensioner
        """,
    ),
    Danger(
        "wheel",
        "WARNING: A wheel can come off or a tire burst. Stop where it is safe. Do not drive it; "
        "tow it to a qualified tech.",
        """
        wheel, OFF unless steering; wheel, coming off unless steering; wheel, coming loose
        unless steering; wheel is loose; tire, OFF; lug nut, LOOSE; lugs, LOOSE; wheel nuts,
        LOOSE; wheel studs, LOOSE; tire, BLOWN; tyre, BLOWN
        """,
    ),
    Danger(
        "runaway",
        "WARNING: The vehicle can speed up by itself. Brake hard, shift to neutral, stop, "
        "switch off. Do not drive it; tow it to a qualified tech.",
        """
        throttle, STUCK; gas pedal, STUCK; accelerator, STUCK; RACE, ITSELF; unintended
        acceleration; sudden acceleration; wont slow down; runaway
        """,
    ),
    Danger(
        "rolling",
        "WARNING: The vehicle can roll and crush people. Stop, chock the wheels, keep everyone "
        "clear. Do not drive it; get a qualified tech.",
        """
        ROLL, in park; ROLL, while parked; ROLL, parked; rolls away; wont stay in park; wont
        hold in park; jumped out of park; slipped off the jack; fell off the jack; fell off
        the lift
        """,
    ),
    Danger(
        "exhaust gas",
        "WARNING: Exhaust gas holds carbon monoxide, which kills. Stop, get everyone into fresh "
        "air. Do not drive it; get a qualified tech.",
        """
        exhaust, SMELL, inside; exhaust, SMELL, cabin; exhaust, SMELL, in the car; exhaust
        fumes; exhaust, leak, inside; SMELL, SICK; exhaust, SICK; carbon monoxide; makes me
        dizzy; headache
        """,
    ),
    Danger(
        "battery",
        "WARNING: A battery can burst and spray acid. Stop, keep sparks and people away. Do not "
        "charge or jump it; get a qualified tech.",
        """
        battery, exploded; battery, blew up; battery, swollen; battery, bulging; battery,
        acid; battery, boiling
        """,
    ),
    Danger(
        "hot coolant",
        "WARNING: Hot coolant scalds. Stop, switch off, let it cool. Do not open a cap or hose; "
        "get a qualified tech.",
        """
        steam; coolant, spray; scalded; radiator cap, hot; radiator cap, blew
        """,
    ),
)
