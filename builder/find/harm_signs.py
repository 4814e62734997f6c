"""The signs of harm to people: water, fumes, burns, crushing, no sight, somebody hurt.

In: nothing. Out: `HARM_SIGNS`, by the names of `dangers.py`, written as in `danger_signs.py`.
Common practice of the trade, no source.
"""

HARM_SIGNS = {
    "water": """
        WATERS, CARRIES unless carb, lawn, mower, ASKS, leak, hubcap; car, float; van, float;
        water, up to, door; water, up to, seat; water, rise, inside; ice, give way; FLOODED, drive
        unless carb, lawn, mower, ASKS, crank; drive into, water; drive through, water; flood,
        stuck; water, up to, window; WATERS, go in unless fish, ASKS; WATERS, end up in
        """,
    "exhaust gas": """
        exhaust, INDOORS unless rattle, drone, hanger, tip, noise, filter; fume, INDOORS unless
        canister, evap, paint; fume, SICK; full, fume; fill, fume; fill, exhaust unless filter,
        fluid; full, exhaust unless filter, system; SMELLS, SICK unless coolant, clean, dog;
        exhaust, SICK; exhaust, SMELLS unless egg, sulfur, sulphur, tip, white; tailpipe, SMELLS,
        INDOORS; tailpipe, BREAKS, INDOORS; RUNS, CLOSED unless opener, remote, program; SICK,
        TRAVELS; kid, SICK unless vent, clean, mess, carpet, high heaven, carsick; monoxide; co
        alarm; co meter; faint, wheel; co detector; leave, RUNS, garage; sleep, engine; idle,
        garage unless rough; snow, tailpipe; hose, exhaust; hose, tailpipe; cheek, red; red cheeks;
        engine on, faint; motor on, faint; leave, idle, warm; van, idle, asleep; asleep, engine;
        RUNS, garage, door; SICK, RUNS unless smooth; SICK, van unless clean, mess, carpet, seat,
        high heaven; generator, inside; generator, camper; generator, trailer; generator, horse;
        wheeze; breathe, paint; mask, paint unless ASKS; isocyanate; booth, mask; hard ~ breathe;
        co monitor; head, pain, TRAVELS unless ASKS; co, ppm; ppm, cab; co in cab; co in car;
        carbon monoxide; detector, idle; detector beep; door shut, warm it; overhead door, warm;
        nauseous, drive; hatch open, sick; hole, floor, pipe; woozy; snow, bumper, heater; crack
        pipe, sleeper; crack pipe, berth
        """,
    "battery": """
        battery, BATTERY HURTS unless SMALL BATTERY, cleaner; acid, BODY; acid, LEAKS unless
        cleaner; acid, bubble; acid, boil; acid, charger; swell, charger; balloon, charger; cells,
        eye; JUMPS, BACKWARD; wrench, terminal unless ASKS; wrench, battery unless ASKS; charge,
        sulfur; charge, hiss; hiss, smell; ring, post; ring, terminal unless ASKS; ring, positive;
        metal ~ across, battery; tool, across; spill, battery; battery, jeans; battery, clothes;
        battery, itch; acid, itch; overcharge, boil; battery, boil; rotten egg, boil; battery, in
        eye; liquid, battery, BODY; battery, boom; accumulator, BATTERY HURTS; accumulator, SMELLS;
        accumulator, fat; accumulator, HEATS; case, bulge unless phone, pillow, suitcase; rotten
        egg, bulge; cap, hiss, charge; cap hiss; case, swell; red to black; charger, all night,
        hiss
        """,
    "scalds and splashes": """
        steam, INSIDE; steam unless tailpipe, exhaust, window, glass, fog, mirror, clean; COOLANT,
        SHOOTS OUT unless nozzle, washer, ASKS, air, warm, cold; scald; CAPS, OPEN UP, STILL HOT;
        CAPS, BLOWS OFF unless hub, ASKS; hose, steam; FLUID, SPLASHES, BODY unless seat, washer,
        glass; freeze, HANDS, FLUID; burn, BODY, COOLANT; grease gun, HANDS; refrigerant, HANDS;
        high pressure, HANDS; hose, whip; air hose, hit; air, skin; compressed air, BODY; tank,
        bulge; swallow; drink, FLUID; drank, FLUID; lick, antifreeze; dog, antifreeze; cat,
        antifreeze; kid, antifreeze; taste, antifreeze; in eye unless keep, bird, sun, twinkle,
        visor, hair, flop, light, headlight; drink, COOLANT; drink, green; green, spray; green,
        hot; in tech eye; in ~ eyes unless sun, light, glare, headlight, sand, dust, visor,
        twinkle, keep; CAPS, OPEN UP, LIMBS unless hub, gas, lens; radiator cap, arm; radiator cap,
        face; radiator cap, hand; COOLANT, hot, LIMBS unless floor, air, blow, heat; hot,
        antifreeze, BODY; hot, coolant, BODY
        """,
    "crushing": """
        MOVING, GRABS, BODY unless seat belt, ASKS, glove, light, handle, fabric, cloth, ice cream,
        lining; TURNING, HANDS unless seat; spring compressor unless where, rent, price; compress,
        spring, slip; spring, shoot; spring, VIOLENT unless clip, seat, leaf, sag, corner, ASKS;
        torsion bar, VIOLENT; snap ring, fly; spring, still load; spring, tension; strut nut; fan
        blade, BREAKS; start itself, BODY; press, VIOLENT unless pedal, button; grinder, VIOLENT;
        TURNING, scarf; TURNING, hair; shaft, BODY, GRABS; get ~ finger; get ~ hand, MOVING; got ~
        hand, MOVING; finger, shut, door; finger, slider; sleeve, pull; sleeve, belt; pull in,
        belt; power close, finger; keep closing, finger; torch, spring; rear up, BENEATH; rear up,
        under; LIMBS, stick in, MOVING; LIMBS, stick, MOVING, keep; window, go up on, BODY; window,
        come up on, BODY; window, close on, BODY; spring, torch; cut coil; pipe, shift, cab
        """,
    "open on the road": """
        HOOD, OPENS unless stay up, cable, strut, ASKS, scoop, insulation, ornament, pad, prop,
        prop rod; safety catch; DOORS, OPENS, ON ROAD unless ASKS, wind, noise, molding, moulding,
        creak, rattle, squeak, trim; DOORS, fly open; PANE, BLOWS OFF unless ASKS, washer, wiper,
        nozzle, creak, rattle, noise; PANE, pop out; DOORS, OPENS, kid unless lock release; PANE,
        explode; PANE, shatter; windshield, fly out; windshield, flew; body mount, door; dor pop,
        freeway; door, pop open, freeway; HOOD, BODGE unless insulation, pad, stripe, sticker;
        PANE, cave in; door, hold ~ arm; door, not ~ stay shut unless glove, fuel, console, cup,
        ash, gas, filler, flap, locker, cabinet, vent, compartment; door, not ~ stay close unless
        glove, fuel, console, cup, ash, gas, filler, flap, locker, cabinet, vent, compartment;
        door, hold ~ shut, drive; door, hold ~ shut, ON ROAD; windscreen smash; windshield smash,
        ON ROAD; boot open, ON ROAD; boot pop, ON ROAD; boot fly, ON ROAD; door swing open unless
        glove, fuel, gas, console; door pop open unless glove, fuel, gas, console, filler; door
        come open unless glove, fuel, gas, console; door open itself; bag, freeway, OPENS; trunk
        fly open; tailgate fall open; load go out, road; load ~ out on road; first catch; hood, 1st
        catch; hood, catch, shake
        """,
    "broken frame": """
        BEARING PART, BREAKS unless FRAME TALK; TOWED, PARTS unless FRAME TALK, socket, ball joint;
        trailer, no light, night; trailer, no light, drive; hook, glass; hook, fly; strap, snap
        unless child, hinge, check; drive shaft, fall out; driveshaft, fall; drive shaft, freeway;
        chain, only, boat; only thing hold; hitch, only, chain; axle, fall; safety rope, hold;
        safety chain, hold; hook, jump, trailer; tow strap, VIOLENT; tow rope, VIOLENT; tow chain,
        VIOLENT; strap, break, through window; tow strap, break; recovery strap, break; jaws,
        close; ball, tongue, rope; tie w rope; load, shift, cab; trailer push; line whack; drive
        line, floor
        """,
    "no sight": """
        LIGHTS, GO DARK, NIGHT unless dash, dome, inside, stay; headlight, GO DARK, BUSY; all
        light, GO DARK, BUSY; NOT SEE, road; NOT SEE, windshield; not ~ see out; not ~ see
        anything; NOT SEE, WEATHER; wiper, VIOLENT, WEATHER unless blade; wiper, FAILS, WEATHER;
        wiper, stop, WEATHER; block view; no light, fog; no light, lane; headlight, black, road; no
        flare; pitch black unless paint, dash, display; light ~ go out, road unless dash, dome,
        warning; light, unlit road; light, country road, GO DARK; both headlight, out; headlight
        out, highway; headlight out, night; hood, not see; bonnet, not see; everything dark, road;
        no flashers; flashlight, drive; no tail light; TOWED, marker, out; peek; hole in ice
        """,
    "quits in traffic": """
        DIES, BUSY unless radio, wiper, conditioning, phone, cruise, screen, beep, assist; engine
        cut, BUSY; motor cut, BUSY; engine cut, ROADSIDE; DIES, ROADSIDE; DIES, wheel lock; engine
        quit, ON ROAD, steering
        """,
    "harm": """
        NEARLY, HARM unless mile, insurance; HANDS, WOUNDS unless ASKS, HAND TALK; LIMBS, VIOLENT
        unless ASKS, HAND TALK; foot, SCALDS; feet, SCALDS; finger, no; fingertip, no; hospital;
        ambulance; emergency room; kid, lock in; kid, stick in; kid, inside, lock; kid, trap; kid,
        HARM; bleed, BODY unless brake, BRAKES; not ~ breathe; not ~ wake; unconscious; pass out;
        faint unless smell, noise, sound, light, line; not ~ answer, under; swallow, FLUID; lung;
        chest, tight; choke, BODY; trap, under; throw, BODY unless rod, code, switch; asbestos; end
        it, hose; kill ~ myself; end it all; between, wall, bumper; pin, against; pin, under; hit,
        head; crush, BODY; belt, neck; belt, throat; window, neck; kid, windows up; kid, shut in;
        kid, hot sun; kid, latch; kid, boot; kid, trunk; kid, hot car; kid, cook; kid, keys inside;
        hot, sun, lock in; swallow unless pride, bird; got hit; dust, air hose; blow, dust, drum;
        blow, dust, brake; hold ~ plug wire; hold, coil wire; itchy skin; pedestrian unless ASKS,
        warning, sensor; poison; wheeze; breathing problem; choke ~ dust; seizure; siezure; heart
        attack; collapse, customer unless seat; fall, underneath; lick, FLUID; kid, inside, degree;
        kid, door, not ~ unlock; power line unless ASKS, steering; LIMBS, LIMB WOUNDS unless ASKS,
        HAND TALK, rest, sleeve, hole, fabric; pinned under; pinned between; trunk,
        brother; trunk lid, kid; trunk lid shut; door not open, dog; door not open, grandma; door
        not open, kid
        """,
}
