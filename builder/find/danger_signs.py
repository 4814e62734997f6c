"""The signs of each danger, and what is none.

In: nothing. Out: `SIGNS` and `HARMLESS`, both by the names of `dangers.py`. Signs are parted by
semicolons. All words or phrases of a sign, parted by commas, must stand near its first, in any
order; one in capitals is a group of `danger_words.py`: a sign pairs what something is with what
happens to it, and is never one person's sentence. Behind `unless` stands what takes the sign
away, near it. `HARMLESS` is taken out before the signs of its danger are looked for: phrases parted
by commas, and behind a plus those that stand right after them. Common practice of the trade, no
source.
"""

SIGNS = {
    "fire": """
        SMOKES, INSIDE unless cigarette; SMOKES, engine bay; SMOKES, PLACE unless TAIL, SPILLED;
        SMOKES unless TAIL, SPILLED; flame; in flame; fire, PLACE unless cylinder, order, start,
        up; on fire; catch fire; into fire; engine fire; electrical fire; battery fire; wiring
        fire; car fire; van fire; little fire; small fire; fire department; extinguisher unless
        mount, holder, bracket, keep, expire; ember; GLOWS, HOT METAL unless DISPLAY; GLOWS, WIRES
        unless DISPLAY; orange glow; spark, WIRES unless SPARK TALK; spark, PLACE unless SPARK
        TALK; spark fly; arc, WIRES; BURNS, STUFF unless SPILLED, bulb, oil, fan; burn up; burn
        down; SMELLS, BURNT unless SPILLED, new, oil, ASKS, asking; leak, cigarette; lighter,
        BURNS; hot, BURNS; sizzle unless ASKS, summer; WIRES, HEATS unless seat, air; hot ~ touch
        unless seat, air; hot ~ hold; in smoke; thermal runaway; oil, LEAKS, HOT METAL unless
        gasket, pan, seal; fluid, LEAKS, HOT METAL unless brake, washer; grass, park; rag, engine
        """,
    "fuel": """
        FUEL, SMELLS unless dipstick; FUEL, LEAKS unless conditioning, refrigerant; gas station,
        SMELLS; FUEL PART, RUINED unless click, tick, ASKS; FUEL PART, LEAKS; raw fuel; raw gas;
        FUEL, hiss; FUEL, WETTED unless gauge, light, pedal, strut, door; FUEL, hot pipe; FUEL, HOT
        METAL, on; pinhole; SMELLS, raw; siphon, mouth; tank, LEAKS, SMELLS unless washer, def
        """,
    "brakes": """
        no brake unless NOISES; no all brake; BRAKES, FAILS unless NOISES, communication, ASKS;
        BRAKES, NOT STOP unless NOISES; PRESSED, NOT STOP unless ELSE, OTHER PEDAL; not ~ stop
        unless ELSE, PARKED, without, engine, run; VEHICLE, NOT STOP unless ELSE, PARKED; forever ~
        stop; stop ~ forever unless after, start; stop power; stop distance; red light, through;
        PRESSED, brake, nothing unless TO START; PRESSED, pedal, nothing unless OTHER PEDAL, TO
        START; BRAKES, STRENGTH; STRENGTH, slow; reservoir, GONE, drive unless washer; stop,
        STRENGTH; pump, BRAKES unless vacuum, abs, controller; pump, PRESSED, stop; pump, times;
        pedal, SOFT unless OTHER PEDAL, mat, pad; brake, SOFT unless pad, ASKS, NOISES; pedal,
        FLOORED unless OTHER PEDAL, mat; foot, firewall; foot, FLOORED unless wet, gas, cold, heat,
        rest; BRAKE PART, BREAKS unless light, NOISES, ASKS; BRAKE PART, LEAKS; brake fluid, LEAKS;
        brake fluid, GONE unless ASKS; brake, fluid, tire; fluid, wheel, LEAKS; brake, lock up;
        brakes lock; BRAKES, ITSELF unless light; line, BREAKS, pump; PARK BRAKE, to stop;
        handbrake, stop; PARK BRAKE, HARM; low air, brake; pad, fall out; brake, only, pump
        """,
    "steering": """
        no steering unless ASKS; no power steering; not ~ steer; STEERING, FREE unless ON WHEEL;
        power steering, FAILS, ON ROAD; STEERING, FAILS unless ON WHEEL; wander, lane; STEER PART,
        BREAKS unless DRIPS, FRAME TALK; not turn, wheel unless key, TO START; wheel, turn,
        STRAIGHT unless ON WHEEL, TO START, point; turn, go straight; no control unless volume,
        climate, traction, cruise; wheel, in hand; free play, turn; DARTS, TOWARD; STEERING, ITSELF
        unless ON WHEEL; wheel, not follow
        """,
    "high voltage": """
        hv unless ASKS; high voltage unless charge, alternator, regulator, bulb, rev, ASKS; orange,
        LINE unless SMALL WIRE; isolation fault; ELECTRIC, CRASHED; electric, CRASHED unless
        window, seat; ELECTRIC, HURTS unless mileage, mpg, ASKS, fan, range, heater; HIGH PART,
        TAMPER unless ASKS, fan, filter; SHOCKS unless ASKS; shock, charge unless absorber, ASKS;
        shock, car body; CHARGES, CHARGE HURTS unless phone, usb; interlock
        """,
    "airbag": """
        AIRBAG unless LOOKS, second key on; AIRBAG, ITSELF; AIRBAG, bulge; AIRBAG, VIOLENT unless
        LOOKS; bag, TAMPER, steering wheel; bag, seat, VIOLENT; side bag; AIRBAG, TAMPER unless
        bulb, recall; yellow, LINE, TAMPER unless SMALL WIRE; yellow, LINE, AIRBAG PLACE unless
        SMALL WIRE; clock spring, TAMPER; clockspring unless ASKS; steering wheel, TAMPER, battery
        """,
    "restraint": """
        SEAT BELT, BELT FAILS unless SEAT TALK; belt, not lock; strap, anchor; seatback, BREAKS;
        belt, bolt, off; seat, SEAT FAILS unless SEAT TALK, conditioning, AIRBAG, lamp, kid, belt;
        child seat, BREAKS unless lamp, light; car seat, anchor; isofix, BREAKS; seat, slide back;
        seat, slide backward; seat, slide ~ accelerate; seat, slide ~ drive; seat, slide ~ brake
        """,
    "wheel": """
        WHEEL, OFF unless WHEEL DRESS; NUTS, UNTIGHT unless WHEEL DRESS; sidewall, BURSTS; TIRE,
        BURSTS unless plug, ASKS, steering, light; forget, torque; not torque; wheel bearing, let
        go; no front wheel; no rear wheel; wheel, lean; tread, peel; tire, shred; TIRE, OFF unless
        ASKS, NOISES, light
        """,
    "runaway": """
        FORWARD, VEHICLE; GAS PEDAL, STICKS unless set, ASKS, button; gas, stick unless door, cap,
        gauge; throttle, stay; pedal, floor mat; pedal, stay down unless clutch; diesel, RACES;
        RACES, ITSELF unless wiper, window, door, seat, fan; unintended acceleration; sudden
        acceleration; keep speeding; keep accelerate; RACES, NOT STOP; RACES, brake unless shake,
        noise, light; RACES, into; RACES, reverse, put; lunge, light; runaway; pull forward, brake;
        RACES, foot off; push forward, brake
        """,
    "raised vehicle": """
        LIFT, BENEATH unless OTHER LIFT, fit; LIFT, BREAKS unless OTHER LIFT; jack, hiss; off jack;
        LIFT, rolling; off lift; no jack stand; only jack; off stand; fall, under it; instead ~
        jack stand; hold ~ up, LIFT
        """,
    "rolling": """
        MOVES, PARKED unless window, seat, mirror, button, switch, wiper, out park; roll away;
        roll, itself; creep, itself; move, itself unless seat, window, mirror, wiper, needle; roll
        ~ into; PARK BRAKE, NOT HOLD unless ASKS; park not hold; not stay ~ park; GEARS, ITSELF
        unless wiper, light, mirror; MOVES, NOBODY; MOVES, itself, overnight; MOVES, itself,
        street; roll, chock; out park, roll; VEHICLE, MOVES, itself unless window, seat, mirror;
        slip out park; drop ~ reverse; jump ~ park; PARKED, NOT HOLD unless window, seat, door,
        open; jump, reverse, ITSELF; start in gear; chock it unless ASKS; roll, fence
        """,
    "exhaust gas": """
        exhaust, INDOORS unless rattle, drone, hanger, tip, noise, filter; fume, INDOORS unless
        canister, evap, paint; fume, SICK; full, fume; fill, fume; fill, exhaust unless filter,
        fluid; full, exhaust unless filter, system; SMELLS, SICK unless coolant; exhaust, SICK;
        exhaust, SMELLS unless egg, sulfur, sulphur, tip, white; tailpipe, SMELLS, INDOORS;
        tailpipe, BREAKS, INDOORS; RUNS, CLOSED unless opener, remote, program; SICK, TRAVELS; kid,
        SICK unless vent; monoxide; co alarm; co meter; faint, wheel; co detector; leave, RUNS,
        garage; sleep, engine; idle, garage unless rough
        """,
    "battery": """
        battery, BATTERY HURTS unless SMALL BATTERY; acid, BODY; acid, LEAKS; acid, bubble; acid,
        boil; acid, charger; swell, charger; balloon, charger; cells, eye; JUMPS, BACKWARD; wrench,
        terminal unless ASKS; wrench, battery unless ASKS; charge, sulfur; charge, hiss; hiss,
        smell
        """,
    "scalds and splashes": """
        steam, INSIDE; steam unless tailpipe, exhaust, window, glass, fog, mirror, clean; COOLANT,
        SHOOTS OUT unless nozzle, washer, ASKS, air, warm, cold; scald; CAPS, OPEN UP, STILL HOT;
        CAPS, BLOWS OFF unless hub, ASKS; hose, steam; FLUID, SPLASHES, BODY unless seat; freeze,
        HANDS, FLUID; burn, BODY, COOLANT
        """,
    "crushing": """
        MOVING, GRABS, BODY unless seat belt, ASKS, glove, light; TURNING, HANDS unless seat;
        spring compressor unless where, rent, price; compress, spring, slip; spring, shoot; spring,
        VIOLENT unless clip, seat, leaf, sag, corner; torsion bar, VIOLENT; snap ring, fly; spring,
        still load; spring, tension; strut nut; fan blade, BREAKS; start itself, BODY
        """,
    "open on the road": """
        HOOD, OPENS unless stay up, cable, strut, ASKS, scoop, insulation, ornament, pad; safety
        catch; DOORS, OPENS, ON ROAD unless ASKS, wind, noise; DOORS, fly open; PANE, BLOWS OFF
        unless ASKS, washer, wiper, nozzle; PANE, pop out; DOORS, OPENS, kid unless lock release;
        PANE, explode; PANE, shatter
        """,
    "broken frame": """
        BEARING PART, BREAKS unless FRAME TALK; TOWED, PARTS unless FRAME TALK, socket, ball joint;
        trailer, no light, night; trailer, no light, drive
        """,
    "no sight": """
        LIGHTS, GO DARK, NIGHT unless dash, dome, inside, stay; headlight, GO DARK, BUSY; all
        light, GO DARK, BUSY; NOT SEE, road; NOT SEE, windshield; not ~ see out; not ~ see
        anything; NOT SEE, WEATHER; wiper, VIOLENT, WEATHER; NOT SEE, WEATHER; wiper, FAILS,
        WEATHER; wiper, stop, WEATHER; block view
        """,
    "quits in traffic": """
        DIES, BUSY unless radio, wiper, conditioning, phone, cruise, screen
        """,
    "harm": """
        NEARLY, HARM unless mile; HANDS, WOUNDS unless ASKS, HAND TALK; foot, SCALDS; feet, SCALDS;
        finger, no; fingertip, no; hospital; ambulance; emergency room; kid, lock in; kid, stick
        in; kid, inside, lock; kid, trap; kid, HARM
        """,
}

HARMLESS = {
    "fire": """
        fire up, fire right up, fire order, fire engine red, fire truck, fire wall, fire
        extinguisher mount, fire extinguisher bracket, fire extinguisher holder, burn out, burn
        orange, not fire, flame red, flame decal, flame graphic, flame paint, flame sticker, flame
        emblem, no smoke, no spark, no flame, no burn, not smoke, spark plug, spark knock, spark
        arrest, spark test, smoker, weak spark, glow plug, burn question, burn in; smoke + odor,
        side, marker, lens, glass, light, tail, headlight, window, mirror, gray, grey, color, tint,
        shop, test, tester, machine, detector, alarm, smell
        """,
    "fuel": """
        no smell, not smell, fume free, diesel exhaust, diesel fluid, conditioning gas; out, no +
        FUEL; FUEL + cap, door, pedal, strut, lift, prop, shock, charge, price
        """,
    "brakes": """
        parking brake, park brake, e brake light, handbrake light, emergency brake light, emergency
        brake cable, engine brake, trailer brake; brake + light, lamp, switch, dust, noise, job,
        controller, clean, cleaner, bulb, pad, pulsate, sensor
        """,
    "steering": """
        steering lamp, steering light, column shroud, column cover, column screw, full lock, lock
        to lock, wheel lock key, wheel lock miss, steering pump, steering fluid
        """,
    "high voltage": """
        shock absorber, shock mount, front shock, rear shock, static shock, air shock, shocking
        price, burn orange, orange peel, orange stripe, hybrid battery fan
        """,
    "airbag": """
        air bag suspension, air bag spring, airbag suspension
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
        steam clean, steam mop, steam up, steam wash, gas cap, fuel cap, fill cap, freeze door
        """,
    "crushing": """
        start fine
        """,
    "broken frame": """
        frame rail size, rust proof, rust inspection
        """,
    "harm": """
        child lock, child seat
        """,
}
