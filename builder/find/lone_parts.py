"""Parts of a vehicle that are the subject wherever they are named.

In: nothing. Out: `LONE_PARTS`, as they are typed, parted by commas. People who name one of
these complain of it: it is seldom named in passing. `trade_words.py` reads them. Common practice of
the trade, no source.
"""

LONE_PARTS = """
    110 outlet, 12 volt socket, 2 wheel drive, 4 high, 4 low, 4 ways, 4 wheel drive, 4wd, 4x4,
    4x4 light, 5 speed, 6 speed, ac drain, ac noise, ac odor, ac outlet, accessory belt, active
    grille, aerial, air bags in back, air compressor, air dam, air filter, air freshener, air
    intake, air ride, air suspension, alarm, alarm chirp, alarm siren, alignment price, all
    season, all weather, all wheel drive, alloy, am fm, ambient light, ambient temp, ambient
    temperature, antenna, anti roll bar, antiroll, arch liner, arm rest, armrest, ash tray,
    ashtray, auto climate, auto dim, auto high beam, auto lights, auto lock, auto park, auto
    stop, auto unlock, auto wipers, aux cable, aux input, aux jack, awning, axle leak, axle
    vent, baby seat, back box, back glass defrost, back up beeper, back up camera, back up
    lights, back up sensor, back window defrost, back window lines, backup alarm, backup camera,
    backup light, backup sensor, badges, bald inside, ball joint, ball mount, bass, battery
    bracket, battery cover, battery cutoff, battery disconnect switch, battery hold down,
    battery tender, beacon, bearing buddy, bed cover, bed lamp, bed liner, bed mat, bed rail,
    bed step, beeps when locked, bell housing, belt, belt chirp, belt noise, belt retracts, belt
    squeal, belt tensioner, bench seat, bike rack, bird droppings, bird poop, blades, blinker
    lever, blinker stalk, blinkers, block heater, blow off valve, blower, blower motor, blower
    rattle, blower speed, blower squeak, blower squeal, blue smoke, bluetooth, body molding,
    body roll, body side, bonnet cable, bonnet catch, bonnet wrap, boost gauge, booster pack,
    booster seat, boot hinge, boot light, boot torn, bottoming, bottoms out, bouncy ride, brake
    controller, brake lamp, broken spring, bug deflector, bug shield, bugs, bulkhead, bump
    stops, bumper, bun warmer, bunk heater, bushing, button light, cab heater, cabin filter, cam
    cover, camper shell, cap latch, captain chair, car alarm, car seat, cargo blind, cargo box,
    cargo lamp, cargo rail, cargo shade, cargo tray, carpet cleaning, carpet mats, carplay
    mount, carrier bearing, cassette, cat back, cat theft, catch can, catch tank, cb, cd, cd
    player, ceiling cloth, ceiling fabric, center armrest, center high mount, central lock,
    ceramic coating, chain rattle, charge cap, charge door, charge flap, charge light color,
    charge schedule, charge speed, charge timer, charger install, charger pad, charger
    subscription, charges slow, charging mat, charging pad, check strap, child lock, child seat,
    chirps when i lock, chrome trim, chrome wheel, cigar lighter, cigarette burn, cigarette
    lighter, cigarette socket, clear coat, clearcoat, click behind the dash, clicking in the
    dash, climate display, climate lights, clock, clothes hook, cloudy headlight, clunk over
    bumps, cluster lights, clutch, coat hook, coffee cup, coilover, coin slot, coin tray, cold
    knock, column noise, column tilt, comfort access, compass, compressor kit, compressor noise,
    condensation in the headlight, console rattle, console squeak, control arm, convertible,
    convertible top, convertible window, cooled seat, corner light, cornering lamp, courtesy
    light, cowl panel, crane, crank seal, creak over bumps, crease, cross traffic, cruise
    button, cruise control, cruise set, cruise stalk, cubby, cup holder, cupholder, curb rash,
    cv grease, dab, dash buzz, dash cam, dash camera, dash clicking, dash cover, dash crack,
    dash creak, dash light dimmer, dash lights too dim, dash mat, dash rattle, dash squeak, dash
    top, dash trim, daylight saving, daytime lights, deadbolt, decal, defog lines, defogger,
    defrost line, defroster line, demist, dent, detailing, diff fluid, diff whine, differential,
    differential whine, dings, dog guard, dome light, donut, donut spare, door bottom, door
    card, door check, door chime, door code, door creak, door cylinder, door dent, door ding,
    door drain, door edge, door handle, door hinge, door light, door pocket, door rubber, door
    sag, door seal, door sensor, door sill, door squeak, door stop, door trim, double lock,
    drain bolt, drain plug thread, drink holder, drips oil, drive belt, drive mode, driver
    attention, driver seat, driveshaft, driveshaft bushing, driving lights, drl, drop link,
    drowsiness, dual mass flywheel, dump bed, dump valve, dvd, easy entry, easy exit, ecall, eco
    button, eco mode, edge wear, eject, electric range, emblem, emergency call, end link, engine
    bay light, engine cover, engine heater, engine knock, engine tick, equaliser, ev noise, ev
    range, fan belt, fan noise, fan only on high, fan speeds, feathering, fender, fender liner,
    fifth wheel, filler door, filler flap, five speed, flasher relay, flex disc, flip glass,
    flood light, floor carpet, floor mat, flywheel, fog lamp, fog light, foggy headlight, foggy
    lines, fogs, fold flat, foot sensor, footwell light, four low, four ways, four wheel,
    fridge, front axle, front cover leak, front defrost, front diff, front lip, fuel
    consumption, fuel cover, fuel door, fuel flap, fuel gauge, fuel level, fuel lid, fuel
    needle, fuel pump noise, fuel pump whine, gaiter, garage button, garage door, garage opener,
    garage remote, gas cap light, gas cap tether, gas door, gas flap, gas gauge, gas lid, gas
    needle, gate remote, gauge light, gear boot, gear display, gear indicator, gear knob, gear
    lever, gear linkage, gear number, gear oil, gear selector, gearbox whine, gearshift,
    generator, giubo, glass roof, glass scratch, glass top, glasses holder, glove box, glove
    compartment, glove light, glovebox, glovebox light, glow plug, gooseneck, gps, grab bar,
    grease on the wheel, grill, grille insert, grinds into reverse, grinds into third, grinds
    second, guide lines, hail, hail dent, hand wave, handle broke, handle came off, handle fell
    off, handle ripped, handle snapped, hands free, handsfree, hard to fill, hard water,
    hardtop, harsh ride, hatch glass, hatch handle, hatch stays up, hazard, head rest, head
    restraint, head unit, head up, headache rack, headlight cover, headlight haze, headlight
    lens, headlight leveling, headlight seal, headlight tab, headliner, headphones, headrest,
    heat shield, heated rear window, heated seat, heated steering wheel, heated windscreen,
    heated windshield, heater knob, heater noise, height sensor, helper springs, high beam
    assist, hill descent, hill holder, hitch, hold speed, home charging, homelink, hood cable,
    hood gap, hood hinge, hood insulation, hood latch, hood lifter, hood light, hood ornament,
    hood pad, hood rattle, hood release, hood scoop, hook for tow, hooter, horn, hot seat,
    hotspot, house battery, household outlet, hub cap, hubcap, hubs locking, hyper flash,
    hyperflash, idler, idler noise, ignition barrel, infotainment, injector noise, injector
    tick, inner edge, inner liner, inner tie, inside edge, inside handle, inspection light,
    instrument cluster software, instrument light, intake hose, intake noise, interior light,
    intermittent setting, intermittent wipe, intermittent wipers, inverter outlet, isofix, jack,
    jack handle, jump pack, jump seat, jumper box, key chain, key in the door, key memory, key
    ring, key scratch, key stuck, key turns in the door, keychain, keyed my door, keypad, kick
    sensor, kingpin, kneel, knock over bumps, ladder, ladder rack, lanyard, latch anchor, leaf
    coil spring, leafs, leaking oil, leisure battery, letters, leveling kit, license plate, lift
    kit, lifter tick, liftgate glass, light bar switch, light bulb, light sensor, lighter plug,
    lighter socket, like feet, like socks, load cover, load floor, lock actuator, lock beep,
    lock button, lock cylinder, lock knob, lock nut, lock rod, locker, locking hubs, lojack,
    louver, low one corner, low range, lowering springs, lug bolt, lug caps, lug cover, lug key,
    lug nut, lug pattern, lug wrench, luggage net, lumbar, magnetic ride, man transmission,
    manifold leak, manifold tick, manual box, manual car, manual gearbox, manual hubs, manual
    shift, manual trans, manual transmission, manual truck, manual van, map light, map sd, map
    update, massage seat, mast, memory seat, mic, mirror, misfuel, moisture in the headlight,
    mood lighting, moon roof, moonroof, motion sensor, mpg, mud flap, mud guard, mudflap,
    mudguard, muffler, musty vents, navigation, night vision, nose dives, nozzle clicks, number
    plate, nut key, odo, odometer, odor from the vents, oh handle, oil burning, oil change, oil
    consumption, oil drip, oil filler, oil leak, oil on the driveway, oil on the floor, oil pan,
    oil sludge, oil spot, oil stain, oil temperature, oil usage, one pedal, open from inside,
    open from outside, open from the inside, open only from outside, opens from the outside,
    orange peel, out of 3rd, out of 5th, out of fifth, outer edge, outside edge, outside handle,
    outside temp, outside temperature, overload springs, overspray, own parts, oxidation,
    paddle, paint, pair my phone, pair phone, panhard, panic button, panorama, panoramic, parcel
    net, parcel shelf, parcel tray, park assist, park sensors, parking beeper, parking heater,
    partition, pdc, pedestrian noise, pet barrier, pet hair, phone app, phone charging, phone
    holder, phone link, phone mount, phone pairing, pickup tailgate, pin stripe, pinion, pinion
    seal, pinstripe, piston slap, plastic trim, plate bracket, plate frame, plate lamp, plough,
    plow, point socket, pollen filter, pops out, posi, power lock, power outlet, power point,
    power seat, power steering fluid, power steering leak, power steering noise, power strip,
    precondition, projector, prop shaft, ps fluid, ps leak, ps pump, pto, puddle lamp, pump
    clicks off, quart every, quart of oil, quarter panel, rack boot, rack leak, rack noise,
    radar detector wire, radio, rag top, ragtop, rain guard, rain sensor, range display, range
    dropped, range estimate, range loss, rash, rattle in the dash, rattle in the door, rattle
    over bumps, readiness monitor, reading light, rear ac, rear air, rear blind, rear camera,
    rear defogger, rear defrost, rear diff, rear end whine, rear entertainment, rear fan, rear
    fog, rear heater, rear main, rear outlet, rear plastic window, rear seal, rear springs, rear
    vents, rear window defogger, rear window heat, receiver cover, recirc, recirc button,
    recliner, reefer, reflector, refrigerator, regen braking, remote start, remote starter,
    repaint, repeater, resonator rattle, rev hang, reverse camera, reverse lamp, reverse light,
    reversing beeper, reversing sensors, ride control, ride quality, rim, rock chip, rod knock,
    roller blind, roller shade, roof antenna, roof box, roof cloth, roof fabric, roof glass,
    roof lining, roof molding, roof panel, roof rack, roof rattle, roof spoiler, roof trim, roof
    window, rotating beacon, rotors rusty, rough ride, rub fender, rubber seal, rubs in turns,
    run channel, run flat, running board, rust bubble, rust hole, rust spot, rusty fender,
    sagging, saggy rear, salt spreader, salter, sap, sat nav, scalloped, screen wash,
    screenwash, scuff, scuff plate, sd card, sealant, seat adjuster, seat anchor, seat belt,
    seat bolster, seat cooler, seat cover, seat creak, seat fabric, seat foam, seat frame, seat
    heat, seat heater, seat lever, seat memory, seat motor, seat net, seat pocket, seat
    position, seat rail, seat rattle, seat rocks, seat spring, seat squeak, seat stain, seat
    switch, seat track, seat warmer, second battery, self parking, serpentine, service message,
    service now, service reminder, set speed, shackle, shade, shark fin, shelves, shield rattle,
    shift boot, shift bushing, shift gate, shift knob, shift light, shift linkage, shift lock
    override, shift pattern, shifter boot, shifter bushing, shifter knob, shifter light, shock
    absorber, shoulders worn, side door, side molding, side repeater, side skirt, side step,
    sign recognition, signal lever, sill plate, sill trim, sim card, siren, sits crooked, sits
    low, sits lower, sits too low, six speed, skid plate, skirt, slave cylinder, slide out,
    slideout, sliding door, slow charging, slow to fill, smell from the vents, smell from vents,
    smoke smell, snorkus, snow chains, snow tire, snowplow, sock smell, soft top, solar panel,
    sos button, spare carrier, spare hoist, spare rim, spare tire, speaker, speed control, speed
    hump, speed limit sign, speed sign, speedo, splash liner, splash shield, splitter, spoiler,
    sport button, spot light, spotlight, spreader, spring, spring broke, spring clunk, spring
    noise, squeak in the dash, squeak in the seat, squeak over bumps, squirter, stabilizer,
    stabilizer bar, stabilizer link, start stop, state inspection, static on am, steering
    controls, steering cover, steering creak, steering groan, steering reservoir, steering rub,
    steering squeak, steering wheel control, steering wheel cover, steering wheel heater,
    steering wheel leather, steering whine, step light, stereo, stick shift, stick truck, stiff
    ride, stinky vents, stone chip, stop start, stopwatch, straight pipe, streaming, stripped
    drain, strobe, strut, studded, subframe bolt, subscription, subwoofer, summer tires, sump,
    sun blind, sun roof, sunglasses holder, sunroof, sunvisor, superlock, surround view,
    suspension, sway bar, sway control, sway link, swaybar, swirl marks, switch light, swivel
    seat, t top, tablet screen, tachograph, tachometer, tail lift, tail pipe, tailgate assist,
    tailgate cable, tailgate damper, tailgate hinge, tailgate latch, tailgate lock, tailgate on
    the pickup, tailpipe, tappet, targa, tarp, telematics, telescope, temp knob, temperature
    display, tensioner, tether, third brake, third row, third seat, thirsty, throttle response,
    throwout bearing, thunk over, tick from the engine, tick noise from engine, ticket holder,
    tie down, tilt lever, tilt sensor, tilt wheel, time for service, timing chain noise, timing
    rattle, timing valve cover, tint, tipper, tire age, tire brand, tire chains, tire date, tire
    gator, tire inflator, tire repair kit, tire rotation, tire rub, tire shine, tire size, tire
    wear, toll tag, toll transponder, tonneau, tool box, toolbox, top latch, top leak, top
    motor, top mount, topper, torn boot, torsion beam, touch screen, touchscreen, tow ball, tow
    bar, tow cover, tow eye, tow haul, tow hook, tow mode, tow package, towbar, track bar,
    tracker, traffic info, traffic sign, trailer assist, trailer brake, trailing arm, trans
    leak, trans mount, trans pan, transfer box, transfer case, transmission cooler line,
    transmission leak, transmission whine, tread, treble, tree sap, trim panel, trim piece, trip
    button, trip meter, truck bed, trunk button, trunk curtain, trunk hinge, trunk lamp, trunk
    latch, trunk lid, trunk light, trunk liner, trunk seal, trunk spring, trunk stays up, tuner,
    turbo noise, turbo whistle, turn signal, u joint, undertray, uneven wear, upholstery, usb,
    uses oil, vacuum pump noise, valance, valet, valve cap, valve cover gasket, valve stem cap,
    valve tap, valve tick, valve train, vanity, vent broke, vent louver, vent smell, ventilated
    seat, vents stuck, vinyl, visor, voice, wake up light, walk away lock, wall charger, warm
    lines, warm seat, wash glass, washer, washing water, wastegate rattle, water pump noise,
    water spots, watts link, wear bars, wearing on the inside, weather strip, weatherstrip,
    webasto, weight distribution, wet dog, wet sock, wheel bolts, wheel brace, wheel cover torn,
    wheel curb, wheel gap, wheel lip, wheel lock, wheel nut, wheel refinish, wheel rub, wheel
    spacer, wheel trim, wheel weights, wheel well liner, wheel wrench, wheelchair, wheelchair
    lift, wifi, winch, wind noise, window felt, window molding, window rattle, window rubber,
    window trim, window whistle, windshield chip, windshield molding, winter range, winter tire,
    wiper, wireless charger, wishbone, woofer, work light, worn shoulders, wrap, wrench light,
    wrong fuel, yellow headlight, yellow lens
"""
