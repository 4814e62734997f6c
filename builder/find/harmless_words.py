"""What is no danger, though its words are near one.

In: nothing. Out: `HARMLESS`, by the names of `dangers.py`: what is taken out before the signs of
its danger are looked for. Phrases are parted by commas, and behind a plus stand those that follow
right after them. Common practice of the trade, no source.
"""

HARMLESS = {
    "fire": """
        carpet burn hole, greasy haze, haze inside glass, lines only melt, on fire meaning, sweater
        spark, steam on hood, fire up, fire right up, fire order, fire engine red, fire truck, fire
        wall, fire extinguisher mount, fire extinguisher bracket, fire extinguisher holder, burn
        out, burn orange, not fire, flame red, flame decal, flame graphic, flame paint, flame
        sticker, flame emblem, no smoke, no spark, no flame, no burn, not smoke, spark plug, spark
        knock, spark arrest, spark test, smoker, weak spark, glow plug, burn question, burn in,
        smoke deal, flame job, fire sale, fire insurance, campfire smell, fire resistant, flame
        resistant, flame retardant, flame style, front turn lens, hot wire maf, hot wire sensor,
        house wiring, charger pad, oil spot, carbon fibre, carbon fiber, not melt, barn catch fire,
        house catch fire, barn fire, house fire, smoke hot, smokin hot, smoke system, smoke front
        turn, smoke lighter, campfire, fire pit, fireplace, fire department shirt, firewood, fire
        station, firehouse, fire alarm, smoke ~ brisket, smoke rib, smoke meat, smoke ~ ribs, on
        fire at work, on fire lately, on fire today, fire drill, house ~ on fire, fire department
        pickup, fire department decal, nothing hot, not hot, no heat, nothing burn, nothing smoke,
        fire decal, on fire compliment, on fire with compliments, glow in dark, then fire, slow
        then fire, burn walnut, sun burn, sunburn, sun ~ burn, buffing mark, burn pattern, before
        fire, old smoke, smoke smell leave, previous owner; smoke + odor, side, marker, lens,
        glass, light, tail, headlight, window, mirror, gray, grey, color, tint, shop, test, tester,
        machine, detector, alarm
        """,
    "fuel": """
        no smell, not smell, fume free, diesel exhaust, diesel fluid, conditioning gas, lawn mower,
        mower, shirt smell, clothes smell, recall letter, brake cleaner, carb cleaner, fuel leak
        recall, petrol station coffee, station coffee, gas station coffee, gas station food, gas
        money; out, no + FUEL; FUEL + cap, door, pedal, strut, lift, prop, shock, charge, price
        """,
    "brakes": """
        no brakes needed, no brake needed, orange after rain, parking brake, park brake, e brake
        light, handbrake light, emergency brake light, emergency brake cable, engine brake, trailer
        brake controller, trailer brake light, trailer brake magnet, trailer brake gain, break
        fluid which, break fluid type, water pump, timing belt, pour in brake fluid, exploded view,
        throwout bearing, release bearing, brake exam, noise go away, noise goes away, abs lamp
        alone, braking otherwise, brake otherwise; brake + light, lamp, switch, dust, noise, job,
        controller, clean, cleaner, bulb, pad, pulsate, sensor
        """,
    "steering": """
        steering lamp, steering light, column shroud, column cover, column screw, full lock, lock
        to lock, wheel lock key, wheel lock miss, steering pump, steering fluid, guide line, gear
        lever, shift lever, reverse picture, camera line, not move with steer, control ~ budget,
        control radio
        """,
    "high voltage": """
        shock absorber, shock mount, front shock, rear shock shock, air shock, shocking price, burn
        orange, orange peel, orange stripe, hybrid battery fan, orange not yellow, gas charge, gas
        charged shock, static, seat fabric, port door, port flap, port cap, port cover, charge
        door, static zap
        """,
    "airbag": """
        belt tensioner rattle, belt tensioner squeal, belt tensioner chirp, belt tensioner noise,
        tensioner pulley, air bag suspension, air bag spring, airbag suspension, test light, test
        lamp, trunk curtain, curtain trunk, window curtain, curtain rod, light what, vacuum bag,
        bag on vacuum, trash bag, garbage bag, grocery bag, golf bag
        """,
    "restraint": """
        not fold, not move, seat cover, not slide, not go back, not go forward
        """,
    "wheel": """
        center cap, cap fall off, let go wheel, let go steering, fifth wheel, spare wheel, blow out
        sale, blowout sale, not come off, not come loose, not come down, no blowout, not blowout, 6
        years old, six years old, rim bent, bent rim, bend rim, rim bend, tire pump, tire inflator,
        tire chain, snow chain
        """,
    "runaway": """
        runaway mice, throttle body, pads, runaway truck ramp, truck ramp, best seller, bleed
        brakes, charge to, revs it, through bulb
        """,
    "raised vehicle": """
        spare tire not come, spare tire missing, spare tire hoist, from stump, on stump, lift gate,
        lift kit, gas lift, highway ramp, exit ramp, aux jack, jack handle, jack point, lift door,
        lift to close, lift pump, valve lift, stand on, kit install, fifth jump, third jump, gear
        jump, bolt in block, lift off, tire winch, spare winch
        """,
    "rolling": """
        roll away tool, rollaway, not come out, not go into, hold open, not start, carpark, car
        park, hubcap roll, cap roll, roll over ~ miles, rolled over ~ miles, puddle on driveway,
        blue puddle
        """,
    "exhaust gas": """
        headache rack, choke knob, sick exhaust note, sick tired, fume free, diesel exhaust fluid,
        exhaust fluid, exhaust manifold gasket, carbon monoxide test
        """,
    "battery": """
        acid rain, battery saver, battery light, battery tray
        """,
    "scalds and splashes": """
        rain drop, steam clean, steam mop, steam up, steam wash, gas cap, fuel cap, fill cap,
        freeze door, steam ~ after rain, steamed about, gas bill
        """,
    "crushing": """
        ring under seat, start fine, last foot, first foot, back seat, back door, back window, back
        glass, filler door spring, door spring, spring break, holder spring, spring broke
        """,
    "broken frame": """
        spare tire not come, spare tire missing, spare tire hoist, headache rack, frame rail size,
        rust proof, rust inspection, winch rust, check strap, wiper arm, spindle motor, tire winch,
        spare winch, timing chain, timming chain, surface rust, ball rust on, ball rust
        tight, ball rust in, nut rust, pin rust in, mount rust in, bar rust in, ball not ~ unbolt
        """,
    "open on the road": """
        not stay open, clear over ~ roof, handle for ~ window, hood pull handle, greasy haze, glass
        line, glass lines, defrost line, not pop, not open, hood release handle, sunglass explode,
        sunglasses explode, bottle explode, soda explode, can explode, explode in trunk
        """,
    "water": """
        hubcap roll ~ ditch
        """,
    "harm": """
        poison green, choke knob, sick exhaust note, runaway mice, headache rack, child lock, child
        seat, throw up, ambulance conversion, crush sleeve, ambulance cabinet, ambulance chaser,
        heart attack see, heart attack bill, heart attack price, kill me with, kill time, die
        laugh, back pain, heartburn, price nearly kill, price almost kill, bill nearly kill, bill
        almost kill, price about kill, estimate nearly kill, heart attack when, poison free, choke
        cable, mirror got hit, got hit ~ mailbox, hook cover, phone die, not wake it, charger not
        wake, fire decal, beam faint, mailbox bumper, near gave ~ heart attack, near give me
        heart attack,
        heart attack discount, keep in trunk, sun in eyes, sun in ~ eyes, bumper crack, bleed screw
        """,
}
