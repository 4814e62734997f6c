"""What is no danger, though its words are near one.

In: nothing. Out: `HARMLESS`, by the names of `dangers.py`: what is taken out before the signs of
its danger are looked for. Phrases are parted by commas, and behind a plus stand those that follow
right after them. Common practice of the trade, no source.
"""

HARMLESS = {
    "fire": """
        fire up, fire right up, fire order, fire engine red, fire truck, fire wall, fire
        extinguisher mount, fire extinguisher bracket, fire extinguisher holder, burn out, burn
        orange, not fire, flame red, flame decal, flame graphic, flame paint, flame sticker, flame
        emblem, no smoke, no spark, no flame, no burn, not smoke, spark plug, spark knock, spark
        arrest, spark test, smoker, weak spark, glow plug, burn question, burn in, smoke deal, flame
        job, fire extinguisher, fire sale, fire insurance; smoke + odor, side, marker, lens, glass,
        light, tail, headlight, window, mirror, gray, grey, color, tint, shop, test, tester,
        machine, detector, alarm, smell
        """,
    "fuel": """
        no smell, not smell, fume free, diesel exhaust, diesel fluid, conditioning gas, lawn mower,
        mower, shirt smell, clothes smell; out, no + FUEL; FUEL + cap, door, pedal, strut, lift,
        prop, shock, charge, price
        """,
    "brakes": """
        parking brake, park brake, e brake light, handbrake light, emergency brake light, emergency
        brake cable, engine brake, trailer brake, break fluid which, break fluid type; brake +
        light, lamp, switch, dust, noise, job, controller, clean, cleaner, bulb, pad, pulsate,
        sensor
        """,
    "steering": """
        steering lamp, steering light, column shroud, column cover, column screw, full lock, lock to
        lock, wheel lock key, wheel lock miss, steering pump, steering fluid
        """,
    "high voltage": """
        shock absorber, shock mount, front shock, rear shock, static shock, air shock, shocking
        price, burn orange, orange peel, orange stripe, hybrid battery fan
        """,
    "airbag": """
        air bag suspension, air bag spring, airbag suspension, test light, test lamp
        """,
    "restraint": """
        not fold, not move, seat cover
        """,
    "wheel": """
        center cap, cap fall off, let go wheel, let go steering, fifth wheel, spare wheel
        """,
    "runaway": """
        throttle body, pads
        """,
    "raised vehicle": """
        lift gate, lift kit, gas lift, highway ramp, exit ramp, aux jack, jack handle, jack point,
        lift door, lift to close, lift pump, valve lift, stand on, kit install
        """,
    "rolling": """
        roll away tool, rollaway, not come out, not go into, hold open, not start
        """,
    "exhaust gas": """
        sick tired, fume free, diesel exhaust fluid, exhaust fluid, exhaust manifold gasket
        """,
    "battery": """
        acid rain, battery saver, battery light, battery tray
        """,
    "scalds and splashes": """
        steam clean, steam mop, steam up, steam wash, gas cap, fuel cap, fill cap, freeze door,
        steam ~ after rain
        """,
    "crushing": """
        start fine
        """,
    "broken frame": """
        frame rail size, rust proof, rust inspection, winch rust
        """,
    "harm": """
        child lock, child seat, throw up
        """,
}
