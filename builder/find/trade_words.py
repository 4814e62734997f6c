"""Words of the trade: what a complaint is about, what it does, and what is no complaint.

In: nothing. Out: `TRADE_WORDS`: the parts and systems of a vehicle, what people complain of, and
what they ask for who have no complaint (a price, a size), as they are typed. No tree need have any
of them: that is the point. A word from here that a tree hasn't tells that the complaint isn't that
tree's, and is no misspelled word of one that it has (`boost` is no `boot`). Common practice of the
trade, no source. Words with a meaning everywhere (light, sensor, switch, module, engine) name no
subject by themselves.
"""

from typing import NamedTuple

from builder.find.lone_parts import LONE_PARTS
from builder.find.lone_things import LONE_THINGS


class TradeWords(NamedTuple):
    """Words of the trade by what they say; phrases as they are typed."""

    subjects: tuple[str, ...] = ()
    lone: tuple[str, ...] = ()
    complaints: tuple[str, ...] = ()
    errands: tuple[str, ...] = ()


def _phrases(text: str) -> tuple[str, ...]:
    return tuple(" ".join(phrase.split()) for phrase in text.split(","))


# Parts that are named in passing, too: blamed, or beside what the complaint is about.
SUBJECTS = _phrases(
    """
    abs, ac, actuator, adaptive cruise, adblue, air box, air pump, air spring, air vent, airbag,
    airbox, airflow, alignment, alternator, amplifier, antifreeze, aux, awd, axle, axle boot,
    axle seal, back glass, back seat, backlight, balance shaft, battery, beeper, blind spot,
    blower fan, body kit, body shop, bolt, boost, booster, bracket, brake, brake caliper
    bracket, brake drum, brake duct, brake dust, brake fluid, brake hose, brake light, brake
    line, brake pad, brake pedal pad, brake shoe, bulb, burn oil, caliper, cam seal, camera,
    camshaft, canister, cargo cover, cargo net, carpet, cat shield, catalytic converter, center
    brake light, center cap, center console, chain, charge port, charger, charging cable, chime,
    clip, clock spring, clutch cable, clutch disc, coil, coil spring, combustion, compressor,
    condenser, console lid, coolant, coolant hose, coolant tank, cowl, crank pulley, crankcase,
    crankshaft, cruise, cv axle, cv boot, cv joint, cylinder, damper, dash light, dashboard,
    daytime running light, dead pedal, def, def fluid, defroster, diesel exhaust fluid, diff,
    dimmer switch, dipstick, disc, display, dome, door, door ajar, door glass seal, door latch,
    door panel, door speaker, downpipe, drain plug, egr, egr valve, emergency brake, emissions,
    engine bay, engine mount, engine oil, esp, evaporator, expansion tank, fan, fan clutch, fan
    shroud, fender flare, filler neck, flex pipe, frame, front strut, fuel, fuel cap, fuel
    economy, fuel filter, fuel line, fuel mileage, fuel pump, fuel sender, fuel tank, fuel tank
    strap, fuse, gas mileage, gasket, gauge, gear stick, gearbox, glass, grab handle, ground
    effects, harmonic balancer, hazard light, hazard switch, head gasket, header, headlight,
    headlight bulb, headlight switch, heater, heater core, heater hose, high beam, high mount
    brake light, hill assist, hill hold, hill start, hinge, home charger, hood, hose, hub, hud,
    hybrid, idler pulley, ignition key, ignition lock, info display, injector, inner fender,
    instrument panel, intake manifold, intake runner, intercooler, inverter, key, key blade,
    keyless entry, knob, knock sensor, lane assist, lane keep, latch, leaf spring, leather,
    lever, lifter, liftgate, light bar, limited slip, locks, low beam, manifold, map pocket,
    marker light, master cylinder, message center, microphone, mileage, mode door, motor mount,
    mount, oil, oil burner, oil cap, oil cooler, oil filter, oil filter housing, oil gauge, oil
    level, oil light, oil line, oil pressure, over bumps, overdrive, overhead console, panel,
    parking brake, parking brake cable, parking light, passenger floor, pcv, pedal, pedal pad,
    phone, phone charger, pickup bed, piston, piston ring, power door lock, power mirror, power
    socket, power steering, power steering hose, power steering pump, power window, primer,
    proximity sensor, pulley, quarter glass, radar, radar detector, radiator, radiator cap,
    radiator hose, rail, rear axle, rear floor, rear glass, rear shock, rearview mirror,
    receiver, recirculation, refrigerant, regulator, release, release bearing, reservoir,
    resistor, resonator, reverse gear, ride, ride height, road noise, rocker arm, rod, roof,
    roof rail, rotor, running light, safety chain, satellite radio, screen, seal, seat, seat
    cushion, secondary air, service light, shift cable, shift solenoid, shifter, shocks, side
    marker, sidewall, snow plow, solenoid, sonar, spare wheel, spark plug, spark plug tube,
    speed bump, splash guard, sport mode, stability control, stalk, starter, steering, steering
    column, steering damper, steering fluid, steering rack, steering shaft, steering wheel, step
    bar, stick, stop light, strut mount, strut tower, subframe, sun shade, sunshade, swirl flap,
    synchro, tach, tail lamp, tail light, thermostat, throttle, throttle body, tie rod, tie rod
    end, timing belt, timing chain, timing cover, tire, tire iron, tire noise, tire plug, torque
    converter, torsion bar, traction control, trailer, trailer brake controller, transmission,
    transmission cooler, transmission fluid, transmission mount, transmission pan, trip
    computer, trunk, trunk release, turbo, turbocharger, tweeter, undercarriage, universal
    joint, vacuum, vacuum pump, valve, valve cover, valve stem, vent, vent window, wastegate,
    water leak, water pump, wheel, wheel arch, wheel bearing, wheel cover, wheel stud, wheel
    well, window, window regulator, window tint, windshield, wing, wiper arm, wiper fluid, wiper
    motor, wiper stalk, wiring
    """
)

COMPLAINTS = _phrases(
    """
    backfire, bald, beep, bend, bent, blank, blink, blurry, bog, bounce, bouncy, broken off, bubble,
    burn, buzz, cancel, chatter, chip, chirp, choppy, clang, click, clunk, corroded, crack, crackle,
    crank, creak, creaks, creaky, crooked, crunch, cupped, cupping, dangle, delaminate, dented,
    detach, dim, dirty, discolor, drag, drain, drift, drip, drone, droops, erratic, etched, fade,
    faded, fell off, flash, flicker, floaty, fog, foggy, frozen, fuzzy, grind, groan, growl, hang,
    hesitate, hiss, honk, howl, hum, jam, jammed, jerk, judder, knock, leak, leaking, lean, loose,
    lost communication, loud, lumpy, milky, misfire, mist, moan, mold, moldy, musty, noise, noisy,
    odor, overcharge, overfill, overheat, peel, peeling, ping, pop, pull, pulsate, rattle, retract,
    rich, roar, rotted, rough, rub, rust, sag, saggy, scrape, scratch, scratched, screech, seep,
    seize, seized, shake, shimmy, shudder, slip, sloppy, smell, smoke, snapped, soaked, spongy,
    squeak, squeaky, squeal, squealing, squirt, squish, stain, stained, stall, static, sticky,
    stink, stolen, streak, stripped, stuck, surge, sway, sweat, tap, thud, tick, torn, unlatch,
    vibrate, wander, wear, weep, weeping, weeps, wet, whine, whir, whistle, wiggles, wobble, worn,
    worn unevenly
    """
)

ERRANDS = _phrases(
    """
    accessory, additive, adjuster, aftermarket, appointment, apprentice, apprenticeship, back
    order, backordered, beginner, bolt pattern, book, brand, bulletin, buy, buying, capacities,
    capacity, charge per hour, charge to look, cheapest, claim, class, color, color code,
    compatible, conversion, core charge, cost, coupon, course, courtesy car, coveralls, credit
    card, curb weight, deductible, deposit, diagram, discount, dmv, do you sell, donate, due,
    emissions test, estimate, extended warranty, finance, financing, firing order, fluid flush,
    handbook, hiring, hourly rate, how many liters, how many quarts, how often, inspection
    sticker, interval, invoice, itemized, job opening, junkyard price, kit, labor, labor rate,
    labour, labour rate, lease, lease return, legal, lien, loaner, loaner car, logbook,
    maintenance plan, mileage log, mix, mod, mods, mot, octane, oem, oil type, oil weight,
    opening hours, overcharged, owner manual, owners manual, paint code, part number, pay plan,
    payload, payment, per hour, pick up time, pickup time, polish, pre purchase, prepurchase,
    price, procedure, quote, recall, recall notice, receipt, recommend, refund, registration,
    rego, removal, rental, rental car, resale, ride home, roadworthy, rotate, rotation, safety
    sticker, salary, saturday, schedule, scrap, scrap value, second opinion, sell, selling,
    service contract, service history, service interval, service plan, shipping, shuttle, size,
    smog check, sticker, sunday, supplier, tax, teach, tightening torque, tinting, tool rental,
    torque spec, torque wrench, total loss, tow bill, tow rating, towing capacity, trade in,
    training, tune up, uber, vin, viscosity, waiting room, warranty, wax, weight oil, what size,
    wholesale, winter storage, worth fixing, worth it, worth repairing, youtube
    """
)

TRADE_WORDS = TradeWords(SUBJECTS, _phrases(f"{LONE_PARTS},{LONE_THINGS}"), COMPLAINTS, ERRANDS)
