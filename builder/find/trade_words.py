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
    4wd, 4x4, abs, ac, actuator, adaptive cruise, adblue, air box, air filter, air pump, air ride,
    air spring, air suspension, air vent, airbag, airbox, airflow, alarm, alignment, all wheel
    drive, alternator, ambient light, amplifier, antenna, antifreeze, armrest, ashtray, auto stop,
    aux, awd, axle, axle boot, axle seal, back glass, back seat, backlight, backup camera, backup
    light, badge, balance shaft, ball joint, ball mount, battery, bed cover, bed liner, beeper,
    blind spot, blower, blower fan, blower motor, bluetooth, body kit, body shop, bolt, boost,
    booster, bracket, brake, brake caliper bracket, brake controller, brake drum, brake duct,
    brake dust, brake fluid, brake hose, brake light, brake light bulb, brake line, brake pad,
    brake pedal pad, brake shoe, bulb, bump stop, bumper, burn oil, bushing, cabin air filter,
    cabin filter, caliper, cam seal, camera, camper shell, camshaft, canister, cargo cover, cargo
    light, cargo net, carpet, carrier bearing, cat shield, catalytic converter, cd, cd player,
    center brake light, center cap, center console, central lock, central locking, chain, charge
    port, charger, charging cable, charging port, child lock, child seat, chime, cigarette
    lighter, clear coat, clip, clock, clutch, clutch cable, clutch disc, clutch pedal, coil, coil
    spring, combustion, compass, compressor, condenser, console lid, control arm, convertible,
    coolant, coolant hose, coolant tank, cornering light, courtesy light, cowl, crank pulley,
    crankcase, crankshaft, cruise, cruise control, cup holder, cupholder, cv axle, cv boot, cv
    joint, cylinder, damper, dash cam, dash light, dash lights, dashboard, daytime running light,
    dead pedal, def, def fluid, defroster, defroster line, diesel exhaust fluid, diff,
    differential, dimmer switch, dipstick, disc, display, dome, dome light, door, door ajar, door
    check, door glass seal, door handle, door hinge, door latch, door lock, door mirror, door
    panel, door seal, door speaker, downpipe, drain plug, drive belt, driveshaft, egr, egr valve,
    emergency brake, emissions, engine bay, engine cover, engine mount, engine oil, esp,
    evaporator, exhaust, exhaust hanger, exhaust manifold, exhaust pipe, exhaust tip, expansion
    tank, fan, fan clutch, fan shroud, fender, fender flare, filler neck, flex pipe, floor mat,
    flywheel, fog light, four by four, four wheel drive, frame, front strut, fuel, fuel cap, fuel
    door, fuel economy, fuel filter, fuel flap, fuel gauge, fuel line, fuel mileage, fuel pump,
    fuel sender, fuel tank, fuel tank strap, fuse, garage door opener, gas door, gas flap, gas
    gauge, gas mileage, gasket, gauge, gear stick, gearbox, glass, glove box, glove compartment,
    glovebox, glow plug, gps, grab handle, grille, ground effects, harmonic balancer, hatch strut,
    hazard, hazard light, hazard switch, head gasket, head up display, header, headlight,
    headlight bulb, headlight switch, headlight washer, headliner, headrest, heat shield, heated
    seat, heated steering wheel, heater, heater core, heater hose, high beam, high mount brake
    light, hill assist, hill hold, hill start, hinge, hitch, home charger, homelink, hood, hood
    latch, hood prop, hood release, hood strut, horn, hose, hub, hubcap, hud, hybrid, idler, idler
    pulley, ignition key, ignition lock, info display, injector, inner fender, instrument panel,
    intake manifold, intake runner, intercooler, interior light, inverter, isofix, jack, key, key
    blade, key stuck, keyless entry, knob, knock sensor, lane assist, lane keep, latch, leaf
    spring, leather, lever, license plate, license plate light, lifter, liftgate, light bar, light
    bulb, lighter socket, limited slip, locks, low beam, lug nut, lumbar, maintenance light,
    manifold, manual transmission, map light, map pocket, marker light, master cylinder, mat,
    message center, microphone, mileage, mirror, mode door, moon roof, moonroof, motor mount,
    mount, mud flap, muffler, navigation, odometer, oil, oil burner, oil cap, oil change, oil
    change light, oil consumption, oil cooler, oil filter, oil filter housing, oil gauge, oil
    leak, oil level, oil life, oil light, oil line, oil pan, oil pressure, overdrive, overhead
    console, paddle shifter, paint, panel, park assist, parking assist, parking brake, parking
    brake cable, parking light, parking sensor, parking sensors, passenger floor, pcv, pedal,
    pedal pad, phone, phone charger, pickup bed, pinion, piston, piston ring, plow, power door
    lock, power lock, power mirror, power outlet, power seat, power socket, power steering, power
    steering fluid, power steering hose, power steering pump, power window, primer, proximity
    sensor, puddle light, pulley, quart of oil, quarter glass, quarter panel, rack boot, radar,
    radar detector, radiator, radiator cap, radiator hose, radio, rail, rear axle, rear camera,
    rear defogger, rear defrost, rear floor, rear glass, rear heater, rear main seal, rear shock,
    rear view mirror, rear wiper, rearview mirror, receiver, recirculation, recliner, refrigerant,
    regulator, release, release bearing, remote start, reservoir, resistor, resonator, reverse
    light, ride, ride height, rim, road noise, rocker arm, rocker panel, rod, roof, roof rack,
    roof rail, rotor, running board, running light, running lights, safety chain, satellite radio,
    screen, seal, seat, seat belt, seat cover, seat cushion, seat heater, seat memory, seat motor,
    seat track, secondary air, service due, service light, shift boot, shift cable, shift knob,
    shift solenoid, shifter, shock absorber, shocks, side marker, side mirror, side step,
    sidewall, siren, skid plate, slave cylinder, sliding door, snorkel, snow plow, solenoid,
    sonar, spare tire, spare wheel, spark plug, spark plug tube, speaker, speed limiter,
    speedometer, splash guard, splash shield, spoiler, sport mode, spring, stability control,
    stabilizer bar, stabilizer link, stalk, start stop, starter, steering, steering column,
    steering damper, steering fluid, steering rack, steering shaft, steering wheel, steering wheel
    control, step bar, stereo, stick, stick shift, stop light, stop start, strut, strut mount,
    strut tower, subframe, subwoofer, sun shade, sun visor, sunglass holder, sunroof, sunshade,
    suspension, sway bar, swirl flap, synchro, tach, tachometer, tail lamp, tail light, tailgate
    handle, tailpipe, telescoping, tensioner, thermostat, third brake light, third row, throttle,
    throttle body, throwout bearing, tie rod, tie rod end, tilt, timing, timing belt, timing
    chain, timing cover, tire, tire iron, tire noise, tire plug, tonneau, torque converter,
    torsion bar, touch screen, touchscreen, tow bar, tow hitch, traction control, trailer, trailer
    brake controller, transfer case, transmission, transmission cooler, transmission fluid,
    transmission mount, transmission pan, tread, trim, trip computer, truck bed, trunk, trunk
    latch, trunk lid, trunk light, trunk release, trunk strut, turbo, turbocharger, turn signal,
    turn signal stalk, tweeter, u joint, undercarriage, universal joint, upholstery, usb, usb
    port, vacuum, vacuum pump, valve, valve cover, valve stem, vent, vent window, visor, voice
    command, washer, washer fluid, washer jet, washer nozzle, washer pump, wastegate, water leak,
    water pump, weather strip, weatherstrip, wheel, wheel arch, wheel bearing, wheel cover, wheel
    lock, wheel nut, wheel spacer, wheel stud, wheel well, wifi, winch, wind noise, window, window
    regulator, window tint, windshield, windshield chip, wing, wing mirror, wiper, wiper arm,
    wiper blade, wiper fluid, wiper motor, wiper stalk, wireless charger, wiring
    """
)

COMPLAINTS = _phrases(
    """
    backfire, beep, bend, bent, blank, blink, blurry, bog, bounce, broken off, bubble, burn, buzz,
    chatter, chip, chirp, choppy, clang, click, clunk, corroded, crack, crackle, crank, creak,
    creaky, crooked, crunch, dangle, delaminate, dent, detach, dim, dirty, discolor, drag, drain,
    drift, drip, drone, erratic, fade, fell off, flash, flicker, fog, foggy, frozen, fuzzy, grind,
    groan, growl, hang, hesitate, hiss, hop, howl, hum, jam, jerk, judder, knock, leak, leaking,
    lean, loose, lost communication, loud, lumpy, milky, misfire, mist, moan, mold, moldy, musty,
    noise, noisy, odor, overcharge, overfill, overheat, peel, ping, pop, pops out, pull, pulsate,
    rattle, retract, rich, roar, rotted, rough, rub, rust, sag, saggy, scrape, scratch, screech,
    seep, seize, shake, shimmy, shudder, slip, smell, smoke, soaked, spongy, squeak, squeaky,
    squeal, squealing, squirt, squish, stain, stall, static, stick, sticky, stink, stolen, streak,
    stripped, stuck, surge, sway, sweat, tap, thud, tick, torn, unlatch, vibrate, wander, wear,
    wet, whine, whir, whistle, wobble, worn
    """
)
