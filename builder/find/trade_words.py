"""Words of the trade: what a complaint is about, and what it does.

In: nothing. Out: the parts and systems of a vehicle, and what people complain of, as they are
typed. No tree need have any of them: that is the point. A word from here that a tree hasn't tells
that the complaint isn't that tree's, and is no misspelled word of one that it has (`boost` is no
`boot`). Common practice of the trade, no source. Words with a meaning everywhere (light, sensor,
switch, module, engine) name no subject by themselves.
"""


def _phrases(text: str) -> tuple[str, ...]:
    return tuple(" ".join(phrase.split()) for phrase in text.split(","))


SUBJECTS = _phrases(
    """
    abs, ac, actuator, adaptive cruise, adblue, air filter, air suspension, airbag, alarm,
    alignment, all wheel drive, alternator, antenna, antifreeze, armrest, ashtray, axle, axle seal,
    back seat, backup camera, backup light, badge, balance shaft, ball joint, battery, blind spot,
    blower, blower motor, bluetooth, body shop, bolt, boost, booster, bracket, brake, brake drum,
    brake fluid, brake hose, brake light, brake light bulb, brake line, brake pad, brake shoe, bulb,
    bumper, burn oil, bushing, cabin filter, caliper, camera, camshaft, canister, cargo light,
    carpet, catalytic converter, center console, central locking, charge port, charger, charging
    cable, charging port, child lock, chime, cigarette lighter, clock, clutch, clutch pedal, coil,
    combustion, compressor, condenser, control arm, convertible, coolant, cowl, crankcase,
    crankshaft, cruise control, cup holder, cv axle, cv boot, cv joint, cylinder, damper, dash
    light, dash lights, dashboard, daytime running light, def, def fluid, defroster, diesel exhaust
    fluid, differential, dipstick, disc, display, dome light, door, door handle, door lock, drain
    plug, drive belt, driveshaft, egr, egr valve, emergency brake, emissions, engine mount, engine
    oil, esp, evaporator, exhaust, exhaust manifold, expansion tank, fan, fender, floor mat,
    flywheel, fog light, four wheel drive, fuel, fuel cap, fuel door, fuel economy, fuel gauge, fuel
    mileage, fuel pump, fuse, gas door, gas gauge, gas mileage, gasket, gauge, gearbox, glass, glove
    box, glow plug, gps, grille, ground effects, hazard, hazard light, head gasket, headlight,
    headlight bulb, headliner, headrest, heat shield, heated seat, heated steering wheel, heater,
    heater core, high beam, hill start, hitch, home charger, hood, horn, hose, hub, hubcap, ignition
    key, ignition lock, injector, inner fender, instrument panel, intercooler, interior light,
    inverter, isofix, jack, key, key stuck, keyless entry, knob, lane assist, leather, lever,
    license plate, license plate light, lifter, liftgate, light bulb, locks, low beam, lug nut,
    manifold, map light, marker light, master cylinder, mat, mileage, mirror, moonroof, motor mount,
    mount, mud flap, muffler, navigation, odometer, oil, oil burner, oil change, oil consumption,
    oil filter, oil gauge, oil leak, oil level, oil light, oil pan, oil pressure, paint, panel,
    parking brake, parking light, parking sensor, parking sensors, passenger floor, pedal, phone,
    phone charger, pickup bed, piston, power door lock, power lock, power mirror, power outlet,
    power seat, power steering, power steering fluid, power window, pulley, quart of oil, quarter
    panel, radar, radiator, radio, rail, rear axle, rear camera, rear defrost, rear floor, rear view
    mirror, rear window, rear wiper, receiver, refrigerant, regulator, remote start, reservoir,
    resistor, reverse light, rim, road noise, rocker arm, rocker panel, rod, roof, roof rack, rotor,
    running board, screen, seal, seat, seat belt, seat heater, shifter, shock absorber, shocks, side
    mirror, side window, solenoid, spare tire, spark plug, speaker, speedometer, spoiler, spring,
    stability control, stalk, starter, steering, steering column, steering fluid, steering rack,
    steering wheel, stereo, stop light, strut, sun visor, sunroof, sunshade, suspension, sway bar,
    tachometer, tail light, tailpipe, tensioner, thermostat, throttle, throttle body, tie rod,
    timing, timing belt, timing chain, tire, tire noise, torque converter, touch screen,
    touchscreen, tow bar, tow hitch, traction control, trailer, transfer case, transmission,
    transmission fluid, trim, trunk, turbo, turbocharger, turn signal, undercarriage, upholstery,
    usb, vacuum, valve, valve cover, vent, visor, washer, washer fluid, washer pump, water leak,
    water pump, weatherstrip, wheel, wheel bearing, wheel nut, wheel well, winch, wind noise,
    window, window regulator, windshield, wing, wiper, wiper blade, wiring
    """
)

COMPLAINTS = _phrases(
    """
    backfire, beep, bend, bent, blank, blink, bog, bounce, broken off, burn, buzz, chatter, chirp,
    clang, click, clunk, corroded, crack, crackle, crank, creak, crooked, crunch, dent, dim, dirty,
    drag, drain, drift, drip, drone, erratic, fade, flash, flicker, foggy, frozen, fuzzy, grind,
    groan, growl, hesitate, hiss, hop, howl, hum, jam, jerk, knock, leak, leaking, lean,
    loose, loud, milky, misfire, mist, moan, mold, musty, noise, noisy, odor, overcharge, overfill,
    overheat, peel, ping, pop, pull, pulsate, rattle, retract, rich, roar, rough, rub, rust, sag,
    scrape, scratch, screech, seep, seize, shake, shimmy, shudder, slip, smell, smoke, soaked,
    spongy, squeak, squeal, squealing, stall, static, stick, sticky, stink, stolen, streak,
    stripped, stuck, surge, sway, tap, tick, torn, vibrate, wander, wear, wet, whine, whistle,
    wobble, worn
    """
)
