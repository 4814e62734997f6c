"""Words of the trade: what a complaint is about, what it does, and what is no complaint.

In: nothing. Out: `TRADE_WORDS`: the parts and systems of a vehicle, what people complain of, and
what they ask for who have no complaint (a price, a size), as they are typed. No tree need have any
of them: that is the point. A word from here that a tree hasn't tells that the complaint isn't that
tree's, and is no misspelled word of one that it has (`boost` is no `boot`). Common practice of the
trade, no source. Words with a meaning everywhere (light, sensor, switch, module, engine) name no
subject by themselves.
"""

from typing import NamedTuple


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
    axle seal, back glass, back seat, backlight, badge, balance shaft, battery, beeper, blind
    spot, blower fan, body kit, body shop, bolt, boost, booster, bracket, brake, brake caliper
    bracket, brake drum, brake duct, brake dust, brake fluid, brake hose, brake light, brake
    line, brake pad, brake pedal pad, brake shoe, bulb, bump stop, burn oil, caliper, cam seal,
    camera, camshaft, canister, cargo cover, cargo light, cargo net, carpet, cat shield,
    catalytic converter, center brake light, center cap, center console, central locking, chain,
    charge port, charger, charging cable, charging port, chime, clip, clock spring, clutch
    cable, clutch disc, coil, coil spring, combustion, compressor, condenser, console lid,
    coolant, coolant hose, coolant tank, cowl, crank pulley, crankcase, crankshaft, cruise, cv
    axle, cv boot, cv joint, cylinder, damper, dash light, dash lights, dashboard, daytime
    running light, dead pedal, def, def fluid, defroster, diesel exhaust fluid, diff, dimmer
    switch, dipstick, disc, display, dome, door, door ajar, door glass seal, door latch, door
    panel, door speaker, downpipe, drain plug, egr, egr valve, emergency brake, emissions,
    engine bay, engine mount, engine oil, esp, evaporator, exhaust, expansion tank, fan, fan
    clutch, fan shroud, fender flare, filler neck, flex pipe, frame, front strut, fuel, fuel
    cap, fuel economy, fuel filter, fuel line, fuel mileage, fuel pump, fuel sender, fuel tank,
    fuel tank strap, fuse, gas mileage, gasket, gauge, gear stick, gearbox, glass, grab handle,
    ground effects, harmonic balancer, hazard light, hazard switch, head gasket, header,
    headlight, headlight bulb, headlight switch, heater, heater core, heater hose, high beam,
    high mount brake light, hill assist, hill hold, hill start, hinge, home charger, hood, hood
    prop, hose, hub, hud, hybrid, idler pulley, ignition key, ignition lock, info display,
    injector, inner fender, instrument panel, intake manifold, intake runner, intercooler,
    inverter, key, key blade, keyless entry, knob, knock sensor, lane assist, lane keep, latch,
    leaf spring, leather, lever, lifter, liftgate, light bar, limited slip, locks, low beam,
    maintenance light, manifold, map pocket, marker light, master cylinder, message center,
    microphone, mileage, mode door, motor mount, mount, oil, oil burner, oil cap, oil change
    light, oil cooler, oil filter, oil filter housing, oil gauge, oil level, oil life, oil
    light, oil line, oil pressure, over bumps, overdrive, overhead console, panel, parking
    assist, parking brake, parking brake cable, parking light, parking sensors, passenger floor,
    pcv, pedal, pedal pad, phone, phone charger, pickup bed, piston, piston ring, power door
    lock, power mirror, power socket, power steering, power steering hose, power steering pump,
    power window, primer, proximity sensor, puddle light, pulley, quarter glass, radar, radar
    detector, radiator, radiator cap, radiator hose, rail, rear axle, rear floor, rear glass,
    rear shock, rearview mirror, receiver, recirculation, refrigerant, regulator, release,
    release bearing, reservoir, resistor, resonator, reverse gear, ride, ride height, road
    noise, rocker arm, rod, roof, roof rail, rotor, running light, running lights, safety chain,
    satellite radio, screen, seal, seat, seat cushion, secondary air, service due, service
    light, shift cable, shift solenoid, shifter, shocks, side marker, sidewall, snorkel, snow
    plow, solenoid, sonar, spare wheel, spark plug, spark plug tube, speed bump, speed limiter,
    speedometer, splash guard, sport mode, stability control, stalk, starter, steering, steering
    column, steering damper, steering fluid, steering rack, steering shaft, steering wheel, step
    bar, stick, stop light, strut mount, strut tower, subframe, sun shade, sunglass holder,
    sunshade, swirl flap, synchro, tach, tail lamp, tail light, tailgate handle, telescoping,
    thermostat, throttle, throttle body, tie rod, tie rod end, tilt, timing belt, timing chain,
    timing cover, tire, tire iron, tire noise, tire plug, torque converter, torsion bar,
    traction control, trailer, trailer brake controller, transmission, transmission cooler,
    transmission fluid, transmission mount, transmission pan, trip computer, trunk, trunk
    release, trunk strut, turbo, turbocharger, tweeter, undercarriage, universal joint, vacuum,
    vacuum pump, valve, valve cover, valve stem, vent, vent window, wastegate, water leak, water
    pump, wheel, wheel arch, wheel bearing, wheel cover, wheel stud, wheel well, window, window
    regulator, window tint, windshield, wing, wiper arm, wiper fluid, wiper motor, wiper stalk,
    wiring
    """
)

# Whoever names one of these, complains of it: it is seldom named in passing.
LONE_SUBJECTS = _phrases(
    """
    12 volt socket, 2 wheel drive, 4 wheel drive, 4wd, 4x4, aerial, air filter, air freshener,
    air intake, air ride, air suspension, alarm, all seasons, all wheel drive, ambient light,
    ambient temperature, antenna, anti roll bar, app, arch liner, arm rest, armrest, ash tray,
    ashtray, auto lights, auto start stop, auto stop, aux jack, awning, back box, back glass
    defrost, back window defrost, back window lines, backup camera, backup light, ball hitch,
    ball joint, ball mount, bearing buddy, bed cover, bed liner, bell housing, belt, belt
    retracts, bike rack, bird droppings, blades, blinker lever, blinker stalk, block heater,
    blow off valve, blower, blower motor, blue smoke, bluetooth, bonnet wrap, bouncy ride, brake
    controller, brake light bulb, bumper, bumper cover, bushing, bushings, cabin air filter,
    cabin filter, camper shell, cap latch, cargo blind, carpet cleaning, carrier bearing, cat
    back, catch can, cd, cd player, ceiling cloth, ceiling fabric, central lock, ceramic
    coating, charger pad, charging pad, check strap, child lock, child seat, chrome trim, cigar
    lighter, cigarette burn, cigarette lighter, clear coat, clock, clutch, clutch pedal, coat
    hook, coil springs, coin, compass, control arm, convertible, convertible top, cornering
    light, courtesy light, cruise button, cruise control, cruise set, cruise stalk, cubby, cup
    holder, cupholder, curb rash, dab, dash cam, dash cover, dash crack, decal, defog lines,
    defogger, defrost line, defroster line, dent, detailing, differential, dome light, door
    check, door check strap, door code, door dent, door ding, door handle, door hinge, door
    lock, door lock cylinder, door mirror, door seal, door trim, drain bolt, drive belt, driver
    seat, driveshaft, drop link, dual mass flywheel, edge wear, electric range, emblem, end
    links, engine cover, engine knock, engine tick, equalizer, ev range, exhaust hanger, exhaust
    manifold, exhaust pipe, exhaust tip, fender, fifth wheel, filler flap, floor carpet, floor
    mat, flywheel, fog light, foggy lines, fold flat, four wheel, four wheel drive, fuel door,
    fuel flap, fuel gauge, gaiter, garage door, garage door opener, garage opener, garage
    remote, gas door, gas flap, gas gauge, gear indicator, gear knob, gear linkage, gear
    selector, glass roof, glove box, glove box latch, glove compartment, glovebox, glow plug,
    gps, grille, guide lines, hail dent, handle broke, handle broke off, handle came off, handle
    fell off, handle ripped, handle snapped, hands free, handsfree, hardtop, hatch strut,
    hazard, head rest, head unit, head up display, headlight lens, headlight washer, headliner,
    headrest, heat shield, heated mirror, heated rear window, heated seat, heated steering
    wheel, heated windscreen, heated windshield, hitch, hood latch, hood release, hood strut,
    hook for tow, hooter, horn, horn honks, hub cap, hubcap, hyper flash, idler, ignition
    barrel, inside edge, inside handle, inspection light, interior light, interior mirror,
    intermittent setting, intermittent wipe, isofix, jack, jump pack, key chain, key in the
    door, key ring, key stuck, key turns in the door, keychain, keypad, lanyard, leaf coil
    spring, leaf springs, license plate, license plate lamp, license plate light, lift kit,
    lifter tick, light bulb, light sensor, lighter socket, like feet, like socks, load cover,
    low one corner, low range, lug bolt, lug nut, lug nut cover, lug pattern, lumbar, man
    transmission, manual gearbox, manual trans, manual transmission, map light, map update, mic,
    mirror, mirror glass, moon roof, moonroof, mud flap, mud guard, muffler, navigation, number
    plate, number plate light, odometer, odor from the vents, oil change, oil consumption, oil
    leak, oil pan, one pedal, open from inside, open from outside, open from the inside, open
    only from outside, opens from outside, opens from the inside, opens from the outside, out of
    3rd, out of 5th, out of fifth, outside door handle, outside edge, outside handle, outside
    temperature, own parts, paddle shifter, paint, panic button, parcel shelf, parcel tray, park
    assist, parking sensor, pet hair, phone holder, phone mount, pickup tailgate, pin stripe,
    pinion, plastic trim, plow, point socket, pops out, pops out of gear, power lock, power
    outlet, power point, power seat, power steering fluid, prop shaft, prop shaft bearing, quart
    every, quart of oil, quarter panel, rack boot, radio, rain sensor, range dropped, readiness
    monitor, rear camera, rear defogger, rear defrost, rear heater, rear main, rear main seal,
    rear shocks, rear springs, rear view mirror, rear window defogger, rear window heat, rear
    wiper, rear wiper arm, recliner, remote start, remote starter, reverse camera, reverse
    light, reversing sensors, ride quality, rim, rocker panel, rod knock, roller blind, roof
    cloth, roof fabric, roof glass, roof lining, roof rack, rough ride, run flat, run flats,
    running board, running boards, sags, salt spreader, sat nav, sd card, seat belt, seat belt
    buckle light, seat belt chime, seat belt retract, seat belt slow, seat cooler, seat cover,
    seat heater, seat memory, seat motor, seat rail, seat stain, seat track, serpentine, service
    reminder, set speed, shade, shift boot, shift knob, shift linkage, shifter boot, shock
    absorber, shoulders worn, side door, side mirror, side step, signal lever, sim card, siren,
    sits crooked, sits low, sits lower, sits too low, skid plate, skirt, slave cylinder, sliding
    door, smell from the vents, smell from vents, smells from the vents, smoke smell, snow
    chains, snow tires, sock smell, soft top, spare tire, speaker, speed control, speed limit
    sign, splash shield, splitter, spoiler, spot light, spring, squirters, stabilizer bar,
    stabilizer link, start stop, state inspection, steering wheel buttons, steering wheel
    control, steering wheel cover, steering wheel heater, steering wheel leather, stereo, stick
    shift, stone chips, stop start, storage, store, strut, subscription, subwoofer, summer
    tires, sump, sun blind, sun roof, sun visor, sunroof, sunroof drain, sunvisor, surround
    view, suspension, sway bar, sway bars, tachometer, tail pipe, tailgate cable, tailgate
    latch, tailgate on the pickup, tailpipe, tensioner, third brake light, third row, throwout
    bearing, tick from the engine, tick noise from engine, timing valve cover, tint, tint film,
    tire chains, tire rotation, tire wear, tonneau, topper, torsion beam, touch screen,
    touchscreen, tow bar, tow hitch, tow hook, tow mirror, towbar, transfer box, transfer case,
    tread, tree sap, trim, trim panel, trim piece, trip meter, truck bed, trunk curtain, trunk
    latch, trunk lid, trunk light, turbo whistle, turn signal, turn signal lever, turn signal
    stalk, u joint, undertray, uneven wear, upholstery, usb, usb port, valance, valve stem cap,
    valve tap, valve tick, vanity light, vents smell, visor, voice, voice command, volume
    button, warm lines, wash glass, washer, washer bottle, washer fluid, washer jet, washer
    nozzle, washer pump, washer tank, washing water, wearing on the inside, weather strip,
    weatherstrip, wet dog, wet sock, wheel bolts, wheel gap, wheel lock, wheel lock key, wheel
    nut, wheel spacer, wheel trim, wifi, winch, wind noise, windshield chip, wing mirror, winter
    tires, wiper, wiper blade, wiper washer, wireless charger, worn shoulders, wrench light,
    yellow lens
    """
)

COMPLAINTS = _phrases(
    """
    backfire, bald, beep, bend, bent, blank, blink, blurry, bog, bounce, bouncy, broken off,
    bubble, burn, buzz, cancel, chatter, chip, chirp, choppy, clang, click, clunk, corroded,
    crack, crackle, crank, creak, creaks, creaky, crooked, crunch, cupped, cupping, dangle,
    delaminate, dented, detach, dim, dirty, discolor, drag, drain, drift, drip, drone, droops,
    erratic, etched, fade, faded, fell off, flash, flicker, floaty, fog, foggy, frozen, fuzzy,
    grind, groan, growl, hang, hesitate, hiss, honk, howl, hum, jam, jammed, jerk, judder,
    knock, leak, leaking, lean, loose, lost communication, loud, lumpy, milky, misfire, mist,
    moan, mold, moldy, musty, noise, noisy, odor, overcharge, overfill, overheat, peel, peeling,
    ping, pop, pull, pulsate, rattle, retract, rich, roar, rotted, rough, rub, rust, sag, saggy,
    scrape, scratch, scratched, screech, seep, seize, seized, shake, shimmy, shudder, slip,
    sloppy, smell, smoke, snapped, soaked, spongy, squeak, squeaky, squeal, squealing, squirt,
    squish, stain, stained, stall, static, sticky, stink, stolen, streak, stripped, stuck,
    surge, sway, sweat, tap, thud, tick, torn, unlatch, vibrate, wander, wear, weep, weeping,
    weeps, wet, whine, whir, whistle, wiggles, wobble, worn, worn unevenly
    """
)

ERRANDS = _phrases(
    """
    accessory, additive, aftermarket, appointment, apprentice, beginner, book, brand, buy,
    capacity, charge per hour, class, color, compatible, conversion, cost, coupon, course,
    coveralls, diagram, discount, due, estimate, finance, fitment, hourly rate, how do i check,
    how often, inspection sticker, interval, invoice, kit, labor, labor rate, labour, labour
    rate, lease, legal, loaner, mix, octane, oem, opening hours, owners manual, part number,
    payload, per hour, polish, price, procedure, quote, recall notice, receipt, recommend,
    refund, registration, removal, rental, resale, retrofit, rotate, rotation, saturday,
    schedule, second opinion, sell, service history, size, smog check, sticker, sunday, tax,
    torque wrench, tow bill, trade in, training, vin, warranty, wax, what oil, what size, which
    oil, wholesale, winter storage, worth it
    """
)

TRADE_WORDS = TradeWords(SUBJECTS, LONE_SUBJECTS, COMPLAINTS, ERRANDS)
