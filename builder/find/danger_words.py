"""The words that tell of danger, in groups, and phrases that use them for something else.

In: nothing. Out: `WORD_GROUPS`, words that are one to a sign of `dangers.py`; `HARMLESS`, what is
taken out before anything is looked for. Endings don't matter: `brake` is `brakes` too. Common
practice of the trade, no source.
"""

WORD_GROUPS = {
    # What there is too much of, or what gets out
    "FUEL": "gas, gasoline, petrol, fuel, diesel",
    "SMELL": "smell, smelt, stink, stank, reek, odor, fume, vapor, stench, whiff",
    "LEAK": (
        "leak, drip, pour, puddle, gush, spray, spew, spill, dribble, squirt, wet, pool, spurt, "
        "all over, running out, runs out, shooting, on the ground, on the driveway, running down, "
        "runs down, running onto"
    ),
    "TANK": "gas tank, fuel tank, petrol tank, fuel rail, injector line, fuel hose, fuel line",
    # Fire
    "BURN": "burning, burnt, scorched, singed",
    "STUFF": (
        "plastic, rubber, electrical, electric, wire, insulation, carpet, fuse box, fuse panel"
    ),
    "PLACE": (
        "hood, bonnet, dash, dashboard, engine, engine bay, cabin, inside, interior, vent, wire, "
        "wheel, brake, battery, outlet, socket, radio, column, console, seat, under, fuse box, "
        "alternator, motor, floor, compartment, trunk, charger, light switch"
    ),
    "TAIL": (
        "exhaust, tailpipe, tail pipe, muffler, out the back, blue, black, white, gray, grey, "
        "start, startup, accelerate, floor it, rev, throttle, oil"
    ),
    "WIRING": (
        "wire, wiring, cable, harness, fuse, fuse box, fuse panel, connector, terminal, relay, "
        "strap, plug, outlet, charger"
    ),
    "GLOWER": "under hood, under the hood, catalytic, converter, cat, exhaust, manifold, turbo",
    "HEATS": (
        "red hot, is hot, gets hot, getting hot, got hot, very hot, too hot, so hot, really hot, "
        "hot to the touch, overheats"
    ),
    "SPILLED": (
        "crayon, candle, wax, snow, ice, chocolate, gum, cigarette, coffee, food, toast, dinner, "
        "marshmallow"
    ),
    # Brakes
    "FAIL": (
        "fail, failure, gone, quit, went out, gave out, gave up, stopped working, dont work, not "
        "working, doesnt work, didnt work, arent working, lost, no effect, useless, fade, dont "
        "hold, wont hold, doesnt hold, not hold, dont grab, wont grab, dont respond, went away"
    ),
    "HALT": (
        "wont stop, cant stop, doesnt stop, didnt stop, not stop, cannot stop, couldnt stop, "
        "barely stop, hardly stop, never stop, wont slow, didnt slow, not slow, doesnt slow, "
        "barely slow, hardly slow, keeps rolling, keeps going, kept going, just keeps moving, "
        "rolled through, went through, right through, took forever to stop, takes forever to "
        "stop, takes too long to stop, took too long to stop, long time to stop, a lot longer to "
        "stop, kept rolling, kept moving, still moving, still rolling, keeps moving, wouldnt "
        "stop, no stopping, stopping power, did not slow, will not slow, would not stop, did not "
        "stop, would not slow, coasts through, coasted through, rolls through, still hit"
    ),
    "PRESS": "press, push, step, stomp, pump, foot, feet, stand, stood, hit, mash, slam",
    "FLOORED": (
        "to the floor, on the floor, hits the floor, to the carpet, to the firewall, all the way "
        "down, bottoms out, to the metal"
    ),
    "VEHICLE": "car, truck, vehicle, van, suv, pickup",
    "STRENGTH": (
        "both feet, both legs, two feet, all my weight, all my strength, stand on, stood on"
    ),
    "TO START": "button, key, crank, starter, start, shift, ignition, gear",
    "OTHER PEDAL": "clutch, gas, accelerator, throttle",
    "ELSE": (
        "beep, chime, ding, noise, alarm, horn, wiper, fan, flash, blink, click, crank, light, "
        "squeak, squeal, radio, leak, running, blower, washer, window, shake, rattle, pull, drift"
    ),
    "NOISES": "squeak, squeal, noise, grind, click, groan",
    "BREAK": (
        "burst, broke, broken, blew, ruptured, snapped, cut, leak, rusted through, ripped, torn, "
        "tore, popped off, came off, hole, split, drip, puncture, crack, rotted, bulge, swollen, "
        "popped, came apart, fell apart"
    ),
    # High voltage
    "ELECTRIC": (
        "hybrid, ev, electric car, electric vehicle, traction battery, drive battery, phev, "
        "battery pack, pack, plug in"
    ),
    "HIGH PART": (
        "hybrid battery, traction battery, drive battery, battery pack, ev battery, inverter, "
        "service plug, service disconnect, hybrid motor, high volt"
    ),
    "HURT": (
        "crack, damage, crash, flood, puncture, swell, swollen, swelled, bulge, smoke, shock, "
        "isolation, insulation, arc, spark, accident, hiss, wreck, under water, underwater, "
        "submerged, smell, getting hot, gets hot, burn, melt, leak, dent, zap, tingle, rolled "
        "over, rollover, roll over, hit"
    ),
    "TAMPER": (
        "probe, back probe, unplug, disconnect, test, measure, check, ohm, ohmmeter, multimeter, "
        "meter, pull, remove, cut, chew, splice, jump, touch, open, take off, take apart, jumper, "
        "poke, pin, test light, paper clip, pry, push, disconnecting"
    ),
    "CABLE": "cable, wire, connector, plug, harness, lead, line",
    "SMALL WIRES": "radio, speaker, stereo, trailer, fog, dimmer, amp, spark plug, hitch",
    # Steering
    "ON THE WHEEL": (
        "heater, heated, control, button, audio, light, lamp, radio, cruise, cover, module, "
        "fluid, key, engine, leather, tilt, lever, telescope, trim, stalk, horn, squeak, rag"
    ),
    "STEER": "steering, steering wheel",
    "STEER PARTS": (
        "tie rod, ball joint, steering box, steering gear, steering rack, steering linkage, drag "
        "link, pitman arm, knuckle"
    ),
    "DRIPS": "leak, drip, fluid, boot, seal",
    "LOCKED": (
        "locked up, locked, seized, jammed, froze, frozen, wont turn, stuck, cant turn, came off, "
        "came loose, spins, disconnected, pulled off, in my hands, fell off, bind, stopped "
        "turning, quit turning, do anything, does nothing, did nothing, separated, no effect, "
        "went loose, feels loose, very loose, so loose"
    ),
    "NOT TURN": "cant turn, cannot turn, couldnt turn, unable to turn, could not turn",
    "STRAIGHT": (
        "goes straight, went straight, keeps straight, kept straight, doesnt follow, not follow, "
        "wont follow, doesnt turn, didnt turn, doesnt respond, not respond, nothing happens, "
        "nothing, no response, stayed straight, stay straight, still straight"
    ),
    # Wheels
    "OFF": "fall off, fell off, came off, come off",
    "NUTS": "lug, lug nut, wheel nut, wheel bolt, wheel stud, stud, wheel bolts, lug bolt",
    "LOOSE": (
        "loose, loosen, missing, broken, broke, sheared, came off, fell off, back off, backed "
        "off, snapped, unscrew, wont stay tight, fell out, gone, not tight, finger tight, hand "
        "tight"
    ),
    "WHEEL DRESS": (
        "steering, cap, cover, hubcap, lock, key, color, size, torque, weight, well, liner, "
        "wrench, hubcaps"
    ),
    "BLOWN": (
        "blew out, blowout, blew, burst, exploded, bulge, bubble, cord, cords showing, belt "
        "showing, coming apart, separating, shredded, split open, tread coming off, wires, steel "
        "showing, shreds, flew apart"
    ),
    # A vehicle that moves or falls
    "ITSELF": "by itself, on its own, itself, without me, by themselves, for no reason",
    "RACE": (
        "speed up, speeding up, accelerate, take off, took off, race, surges forward, lunge, "
        "lurches forward, moves forward, jumps forward, rev, surge, redline, full speed, max rpm, "
        "wide open"
    ),
    "STUCK": (
        "stuck, sticks, jam, wide open, hung, stays down, stays on the floor, wont come up, wont "
        "come back, doesnt come back, hang, hangs, wont close, wont return"
    ),
    "ROLL": "roll, moves, creeps away, rolls away, creep, crept, creeps, drifts off",
    "JACK": (
        "jack, floor jack, car jack, hoist, lift arm, the lift, our lift, two post lift, bottle "
        "jack, scissor jack, trolley jack"
    ),
    "BENEATH": (
        "under it, under the car, under the truck, under a car, underneath, beneath, im under, "
        "under my, go under, going under, work under, working under, crawl under, get under, lay "
        "under, while under"
    ),
    "SINKS": (
        "sink, sank, slip, fall, fell, drop, lowers, coming down, came down, tip, collapse, bleed "
        "down, leak down, kick out, gave way, unstable, wobble, leaning, tilt, lean, sliding, "
        "slid, punched, rocking, sway"
    ),
    "STANDS": "jack stand, stands, ramps, blocks, lift arms, bricks, cinder blocks, a log, stump",
    "OTHER JACK": "aux, headphone, audio, phone, handle, points, missing, point",
    # Gas, acid, scalds
    "SICK": (
        "headache, dizzy, sick, sleepy, nauseous, nausea, drowsy, passed out, faint, felt sick, "
        "feel sick, feels sick"
    ),
    "INDOORS": (
        "inside, cabin, in the cab, into the cab, in the car, in my car, in the truck, interior, "
        "vent, passenger compartment, filled, full of, windows up, windows are up, back seat, "
        "heater, floor, under my seat"
    ),
    "SHUT GARAGE": (
        "closed garage, shut garage, garage closed, garage with the door, garage door closed, "
        "garage door shut, garage door down, inside the garage, inside my garage, indoors, closed "
        "shop, enclosed garage, attached garage, shop with the doors, snow bank, snowbank"
    ),
    "RUNS": "run, warm, warm up, idle, engine, start",
    "BATTERY HURT": (
        "exploded, explode, blew up, swollen, swell, swelled, bulge, bloat, puffed, acid, boil, "
        "hiss, rotten egg, vent, smoke, smell, frozen, froze, case is cracked, cracked, on fire, "
        "steam, fizz, bubbling, melt, popped, gassing, sulfur, sulphur"
    ),
    "SMALL BATTERY": "fob, phone, remote, key, light, saver, warranty, tender, tube, tray",
    "BODY": "eye, eyes, hand, hands, face, skin, arm, finger",
    "CAPS": (
        "radiator, radiator cap, pressure cap, coolant cap, coolant tank, overflow tank, "
        "expansion tank, cap, reservoir, overflow, thermostat housing, coolant hose, radiator "
        "hose, bleeder"
    ),
    "OPEN": "open, take, took, remove, unscrew, loosen, pop, undo, twist, pull",
    "HOT": "hot, boil, bubble, bubbling, overheat, steam, still warm, pressure, scald",
    "GLASS": "windshield, window, glass, clean, fog, mirror",
    # A word of danger that is on a part, and no more
    "LOOKS": (
        "cover, scratch, fade, peel, sticker, decal, emblem, tag, label, recall, color, off "
        "light, off lamp, bulb test, part number, how many, worn, stain, dirty, texture, bulb, "
        "indicator"
    ),
    # What goes with others
    "SOFT": (
        "soft, spongy, mushy, squishy, nothing left, no resistance, no pressure, drops, dropped, "
        "fades, sponge, nothing there, nothing is there"
    ),
    "SHOT OUT": "shot out, exploded, erupted, geyser, blew out, sprayed, boiled out, shooting out",
    "OF TRAVEL": (
        "trip, ride, driving, drive, windows, behind the wheel, in the car, heater, exhaust, "
        "muffler, tailpipe, fume"
    ),
    "REDS": "bright red, cherry red, red hot, orange hot",
    "SHOCKS": "touch, charging, charger, plug, battery, cable, wire",
}

# They are taken out before anything is looked for.
HARMLESS = """
    acid rain, aux jack, battery saver, brake controller, brake dust, brake job, brake lamp, brake
    light, brake light bulb, brake noise, brake switch, burned out, burning oil, burns oil,
    cigarette smoke, e brake, electrical tape, emergency brake, engine brake, filler cap, fire
    engine red, flame red, fire truck, fire up, fires right up, fires up, firing order, front
    shocks, fuel cap, fuel door, fuel economy, fuel filter, fuel gauge, fuel mileage, fuel
    pressure, fuel range, fuel trim, full lock, gas cap, gas door, gas fee, gas gauge, gas lift,
    gas mileage, gas station, gas strut, glow plug, hand brake, handbrake, hot seat, hydraulic lift
    kit, lift gate, lift kit, lock to lock, no brake noise, no smoke, no spark, orange peel,
    parking brake, rear shocks, shock absorber, shock mount, sick of, smoke alarm, smoke colored,
    smoke detector, smoke gray, smoke grey, smoke lens, smoke machine, smoke shop, smoke smell,
    smoke test, smoke tester, smoke tint, smoked glass, smoked headlight, smoked lens, smoked
    lights, smoked tail, smoked window, smokers, spark knock, spark plug, static shock, steam
    clean, steam mop, steam up, steam wash, trailer brake, weak spark, wheel lock, window tint
"""
