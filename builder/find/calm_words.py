"""What takes a sign of danger away, in groups of words: talk of parts, prices, looks and noises.

In: nothing. Out: `CALM_WORDS`: names, each with its words, parted by semicolons.
`danger_words.py` reads them. Common practice of the trade, no source.
"""

CALM_WORDS = """
    ASKS: price, cost, how much, number, size, torx, diagram, order, buy, sell, legal, recommend,
    how often, how many, how long, interval, color, brand, label, sticker, decal, emblem, badge,
    logo, recall, spec, fitment, upgrade, worth, diameter, compatible, adapter, aftermarket, oem,
    where, catalog, quote, discount, paint, manual, chart, type, best, kit, schedule, accessory,
    insurance, resale, warranty, lifespan, training, course, class, date, estimate, toy,
    certificate, qualified, invoice, which, dot, how wash, exam, what year, what size, who makes,
    costume, paperwork, exploded view, where to buy, ballpark, halloween, part number, dry clean,
    theory test, blown up drawing, homework, essay, english, translate, word for, explain word,
    symbol look, light look;
    TAIL: exhaust, tailpipe, pipe, muffler, out back, blue, black, white, gray, grey, start,
    startup, accelerate, floor it, rev, throttle, oil, burnout;
    SPILLED: crayon, candle, wax, snow, ice, chocolate, gum, cigarette, coffee, food, dinner,
    marshmallow, cigar, plow, orange, milk, spilt, spilled, sun, upholstery, tan, gap, buff, polish,
    walnut, compliments;
    DISPLAY: word, bulb, beam, lens, light, lamp, gauge, screen, display, dial, needle, cluster,
    icon, symbol, dash light, dim;
    SPARK TALK: knock, cylinder, coil, test, tester, timing;
    TO START: button, key, crank, starter, start, shift, ignition, gear, remote;
    OTHER PEDAL: clutch, gas, accelerator, throttle, dead pedal;
    ELSE: beep, chime, ding, noise, alarm, horn, wiper, fan, flash, blink, click, crank, light,
    lamp, squeak, squeal, radio, leak, blower, washer, window, shake, rattle, drift, buzz, hum,
    whine, music, screen, idle, charge, seat, mirror, phone, message, signal, warning, smell, motor,
    regen, update, drip, whistle, vibrate, nozzle, compressor, heater, liftgate, tailgate, sunroof,
    ring, clunk, siren, navigation, voice, door, hazard, blinker, four way, flasher;
    NOISES: squeak, squeal, noise, grind, click, groan, chirp, screech, scrape, rattle, vibrate,
    pulsate, dust, shudder, creak, chatter, shake, pull, drone, thump;
    DRIPS: screw, shroud, shift, leak, drip, fluid, boot, seal, ASKS, clunk, noise, grease, roof,
    bike, tilt;
    ON WHEEL: button, control, volume, radio, leather, horn, cover, peel, heat, key, trim, switch,
    cruise, airbag, stalk, paddle, sticky, crooked, center, tilt, telescope, adjust, squeak, noise,
    light, lamp, shroud, screw, fluid, pin, ignition, parked, shake, shimmy, vibrate, ASKS, damper;
    WHEEL DRESS: bearing grease, cap, cover, hubcap, lock, key, weight, liner, wrench, socket, trim,
    spacer, chrome, exhaust, manifold, shield, steering, ASKS, toy;
    FRAME TALK: noise, squeak, clunk, boot, grease, inspect, undercoat, plate, seat, door, window,
    fit, rattle, wire, seal, leak, pin, key, cover, ASKS, light, lamp, plug, fluid, roof, photo,
    picture, glass, sunroof, hum, mirror, adjust, flex pipe, prop rod, drone, thump, clutch, lift
    off, fender, hanger, rap, tap;
    OTHER LIFT: aux, headphone, audio, phone, handle, point, gate, liftgate, tailgate, leveling,
    hatch, suspension, spoiler, boat, window, glass, valve, engine block, strut, stand on, door,
    mirror, ASKS, support, missing;
    SEAT TALK: off lamp, guide, twist, motor, cover, heat, switch, trim, cushion, fold, pad, light,
    ASKS, extender, clean, retract, chime, leather, squeak, power, memory, handle, belt buckle,
    exit, stain, foam, bolster, pocket, flat;
    SMALL WIRE: horn button, radio, trailer, aux, light, stereo, bulb, spark, heater, thermostat,
    speaker, antenna, wiper, usb, subwoofer, camera, clip, stripe, ASKS;
    LOOKS: key on, 3 sec, few seconds, ASKS, cover, scratch, fade, peel, tag, off light, off lamp,
    stain, dirty, texture, bulb, suspension, spring, helper, made, clean, odor, indicator, worn,
    icon, then out, go out, lamp test, self test, expire, booster seat;
    SMALL BATTERY: lamp, fob, phone, remote, light, saver, tender, tube, coin, keyfob, clamp,
    bracket, radio, ASKS, key battery, key fob;
    HAND TALK: brake, lever, visor, trim, headliner, armrest, control arm, wiper arm, seat, second
    hand, hand control, handle, glass, other hand, eyelid, face plate, mirror, fan speed, only,
    ceiling, roof cloth, roof fabric, fabric, cloth, ice cream, sag, insurance, question, bill, dome
    light, knob, shifter, bumper, hook, cover, hand sanitizer, bracket, glove box, glove compartment
"""
