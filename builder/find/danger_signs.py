"""The signs of what fails on the vehicle: fire, brakes, steering, wheels and the like.

In: nothing. Out: `SIGNS`, by the names of `dangers.py`. Signs are parted by semicolons. All words
or phrases of a sign, parted by commas, must stand near its first, in any order; one in capitals is
a group of `danger_words.py`: a sign pairs what something is with what happens to it, and is never
one person's sentence. Behind `unless` stands what takes the sign away, near it. Common practice of
the trade, no source.
"""

SIGNS = {
    "fire": """
        SMOKES, INSIDE unless cigarette; SMOKES, engine bay; SMOKES, PLACE unless TAIL, SPILLED;
        SMOKES unless TAIL, SPILLED; flame; fire, PLACE unless cylinder, order, start,
        up, ext; on fire; catch fire; into fire; engine fire; electrical fire; battery fire; wiring
        fire; car fire; van fire; little fire; small fire; fire department; extinguisher unless
        mount, holder, bracket, keep, expire; ember; GLOWS, HOT METAL unless DISPLAY; GLOWS, WIRES
        unless DISPLAY; orange glow unless DISPLAY, dash; spark, WIRES unless SPARK TALK; spark,
        PLACE unless SPARK TALK; spark fly; arc, WIRES; BURNS, STUFF unless SPILLED, bulb, oil,
        fan, defrost, ice, snow; burn up; burn down; SMELLS, BURNT unless SPILLED, new, oil, ASKS,
        asking; leak, cigarette; lighter, BURNS; hot, BURNS; sizzle unless ASKS, summer; WIRES,
        HEATS unless seat, air; hot ~ touch unless seat, air, day, summer, sun, steering; hot ~
        hold; in smoke; thermal runaway; oil, LEAKS, HOT PART unless gasket, pan, seal; fluid,
        LEAKS, HOT PART unless brake, washer; grass, park; rag, engine; smolder; smoulder; alight;
        ablaze; blaze; inferno; torch, LEAKS; torch, FUEL; weld, FUEL; weld, tank; acetylene; GAS
        BOTTLE, LEAKS; GAS BOTTLE, HEATS; GAS BOTTLE, hiss; heater, drain, tank; tank, space
        heater; carpet, HEATS unless seat, vent, SPILLED; outlet, black; socket, black unless ASKS;
        plate, black; ether, weld; cleaner, weld; straw, exhaust; hay, exhaust; rag, exhaust;
        penny, fuse; foil, fuse; nail, fuse; paper clip, fuse; bigger fuse; wire ~ fuse, bypass;
        WIRES, brown unless color, ASKS; plug, soft; plug, brown unless color, ASKS; BODGE, fuse;
        jump start, spark; jump start, smoke; house wire, WIRES; speaker wire, fan; battery,
        thermal; thermal warning; vapor, thick; vapors, shop unless canister, evap; lithium, swell;
        lithium, puff; pack, puff; puff up, battery; fire crew, cut; leave vehicle, warning; fire
        ext, use;
        fire ext, used; fire ext, spray; fire ext, empty; fire ext, discharge; extinguisher, use;
        extinguisher, empty; extinguisher, spray; battery, go up unless price, light, voltage,
        window, ASKS; go up, smoke; battery, catch; put ~ fire out; put out ~ fire; SMOKES, WIRES
        unless SPILLED; SMOKES, dash unless SPILLED; haze, panel; haze, fuse; smoke, smell, wheel;
        wheel, hot, smoke; SMOKES, wheel unless burnout, TAIL; WIRES, crackle; WIRES, pop unless
        speaker, noise; crackle, behind radio unless speaker; fire, under hood; fire, under bonnet;
        fire, under dash; fire, in dash; fire, behind; tail end, fire; grass, up under; stubble;
        grass, dry, fire; spit fire; bbq, engine; paint bubble, hood; weld, filler; weld itself;
        wrench, glow; tool, glow; put it out, again; put it out, start up; orange glow, hood; saw ~
        fire; see fire; seen fire; there fire unless order, code; fire come out; blow ~ fire out;
        grease, BURNS, HOT PART; flare up, under hood; flash up, in face; oil, on exhaust unless
        ASKS; oil, on manifold; oil, on header; oil, on turbo; grease, on manifold; fluid, on
        exhaust; fluid, on manifold; lit up, HOT PART unless light, lamp, dash, code; up torch; seat
        catch, heater; catch, beat ~ out; catch, throw dirt; something catch, under hood
        """,
    "fuel": """
        FUEL, SMELLS unless dipstick, freshener, freshner, coffee, candle, cologne, wash; FUEL,
        LEAKS unless conditioning, refrigerant, mower, carb, lawn; gas station, SMELLS; FUEL PART,
        RUINED unless click, tick, ASKS; FUEL PART, LEAKS; raw fuel; raw gas; FUEL, hiss; FUEL,
        WETTED unless gauge, light, pedal, strut, door; FUEL, hot pipe; FUEL, HOT METAL, on;
        pinhole; SMELLS, raw; siphon, mouth; tank, LEAKS, SMELLS unless washer, def; rainbow,
        LEAKS; rainbow, hot; BODGE, FUEL unless gauge, door, cap; BODGE, FUEL PART; pump, line
        open; fuel, bucket; gas, bucket; pump, bucket unless washer, coolant; vapor, eyes; puddle,
        eyes; tank, puddle; fuel, eyes water; vapor, thick; cng, dent; cng, crash; cng, leak; tank,
        LEAKS, hit unless washer, coolant, water, def; tank, drip unless washer, coolant, def,
        radiator, water, expansion, gray, holding, sewage; punctured ~ tank; hole ~ tank unless
        washer, coolant; tank leak unless washer, coolant, def, radiator, water, expansion, gray,
        air, ac, adblue; clean, FUEL, heater unless hose, core; FUEL, pilot light; tank, pilot
        light; tank, trouble light; open tank; tank, stove; go juice; overfill, hot; overfill, rain
        """,
    "brakes": """
        no brake unless NOISES; no all brake; BRAKES, FAILS unless NOISES, communication, ASKS;
        BRAKES, NOT STOP unless NOISES; PRESSED, NOT STOP unless ELSE, OTHER PEDAL; not ~ stop
        unless ELSE, PARKED, without, engine, run; VEHICLE, NOT STOP unless ELSE, PARKED; forever ~
        stop; stop ~ forever unless after, start; stop power; stop distance unless ASKS; red light,
        through; PRESSED, brake, nothing unless TO START; PRESSED, pedal, nothing unless OTHER
        PEDAL, TO START; BRAKES, STRENGTH; STRENGTH, slow; reservoir, GONE, drive unless washer;
        stop, STRENGTH; pump, BRAKES unless vacuum, abs, controller; pump, PRESSED, stop; pump,
        times; pedal, SOFT unless OTHER PEDAL, mat, pad, carpet; brake, SOFT unless pad, ASKS,
        NOISES; pedal, FLOORED unless OTHER PEDAL, mat, tear; foot, firewall; foot, FLOORED unless
        wet, gas, cold, heat, rest; BRAKE PART, BREAKS unless light, NOISES, ASKS; BRAKE PART,
        LEAKS; brake fluid, LEAKS; brake fluid, GONE unless ASKS; brake, fluid, tire; fluid, wheel,
        LEAKS; brake, lock up; brakes lock; BRAKES, ITSELF unless light; line, BREAKS, pump; PARK
        BRAKE, to stop; handbrake, stop; PARK BRAKE, HARM; low air, brake; pad, fall out; brake,
        only, pump; no breaks; breaks ~ gone; breaks ~ fail; ditch, stop; wall, stop unless start;
        slam, ITSELF unless door, window; BODGE, brake line; BODGE, BRAKE PART; BODGE, BRAKES
        unless light, lamp, pad; line, vise grip; hard line, BODGE; power steering fluid,
        reservoir; steering fluid, brake; oil, brake reservoir; metal to metal; pads ~ gone; pads ~
        metal; one ~ brake, get home; clamp, line, brake; pump, nothing, hit; BRAKES, hit, wall;
        brakes grab, spin; BRAKES, grab, ITSELF; pedal, stuck under; foot, stuck, pedal; BRAKES,
        spun; wheel lock, bend; wheel, lock up, bend; wheel, locked up, corner; stop, crash into;
        crash, hedge; footbrake, nothing; foot brake, nothing; stop, nothing there; stop, nothing
        happen unless TO START, ELSE; brake, FLOORED unless pad, NOISES, light, rotor, mat; BRAKES,
        hand one; nothing there, pedal; brake, all way down unless window, pad; run red light; run
        stop sign; run ~ stop sign; nothing there, PRESSED unless OTHER PEDAL, TO START, ELSE;
        nothing happen, PRESSED unless OTHER PEDAL, TO START, ELSE; PRESSED, not ~ brake unless
        NOISES, ELSE, TO START; not ~ stop, downhill; air pressure, drop unless tire, tpms, bag,
        spring, suspension, seat; air pressure, buzz; low air, buzz; lose air, brake; spring brake;
        brake, air, not ~ build; buzzer, air, brake; inside, tire, wet, pedal; pedal, reservoir,
        GONE; guardrail, stop; ditch, brake; wheel grab, lane; wheel grab, throw; grab ~ throw,
        lane; brake, throw ~ lane; trailer brake, FAILS unless controller, light, lamp, plug;
        brake, not ~ anything; first push, brake unless NOISES; rear end, brake; rear end, stop;
        brakes ~ finish; fluid, behind, wheel, PRESSED; pedal ~ go ~ floor; pedal right ~ floor;
        not stop, pedal; no brake, hill; no press, pedal; no pressure, circuit; trailer, BRAKES,
        FAILS unless controller, plug, light; throw ~ park, stop; put ~ park, get ~ stop; in park
        to get ~ stop; not ~ slow, pull, PARK BRAKE; nothing, clean through; nothing, straight
        through; through, light, nothing; PARK BRAKE, only, work unless light, lamp, one side;
        sink, mat; toes, mat; psi, buzzer; psi, drop, rolling; nothing ~ foot unless TO START,
        OTHER PEDAL, heat, vent; hand lever, stop; no pads; piston come out; line, spray, step;
        power steer oil, brake; spray, step on unless washer
        """,
    "steering": """
        no steering unless ASKS; no power steering; not ~ steer; STEERING, FREE unless ON WHEEL;
        power steering, FAILS, ON ROAD; STEERING, FAILS unless ON WHEEL; wander, lane; STEER PART,
        BREAKS unless DRIPS, FRAME TALK; not turn, wheel unless key, TO START; wheel, turn,
        STRAIGHT unless ON WHEEL, TO START, point; turn, go straight; no control unless volume,
        climate, traction, cruise; wheel, in hand; free play, turn; DARTS, TOWARD; STEERING, ITSELF
        unless ON WHEEL; wheel, not follow; STEER PART, wiggle; STEER PART, play unless light;
        BODGE, STEER PART; STEER PART, fall off; STEER PART, came off; STEER PART, LEAKS, HOT
        METAL; steering hose, header; wheel, tight, ON ROAD unless NUTS, bolt; turn, before, tire;
        steering lock, ON ROAD; steering, lock ~ up; BODGE, steering unless ON WHEEL; bolt, fall,
        steering; wheel, turn, nothing happen unless TO START, key; steering, no assist; wheel,
        fight back; go ~ where ~ want; go ~ wherever ~ want; not ~ make curve; not ~ make corner;
        not ~ make turn; not ~ make bend; turn it, nothing happen unless key, TO START; turn ~
        wheel, nothing unless key, TO START, ON WHEEL; column lock, ON ROAD; column, lock on;
        direction ~ block; direction ~ lock; OUT OF LINE, across lane unless drift, alignment; OUT
        OF LINE, into oncoming; steering, whole road; all over road; all over highway; all over
        motorway; all over lane; bolt hang, steering; not ~ keep ~ in lane unless camera, assist,
        light, message; STEER PART, hang unless FRAME TALK; wheel, come off, hand; wheel, off,
        column; steer, front wheel not; steer, wheels not unless ON WHEEL; turn, front wheel not
        unless key; steering ~ go, bypass; no control, ON ROAD unless volume, climate, radio,
        cruise, traction; nae control; turn left, go right unless signal, blinker; turn right, go
        left unless signal, blinker; turn ~ one way, go ~ other; lock ~ up, turn left; lock ~ up,
        turn right; not straighten; front tires, point; tires, different way; wheels, different way
        """,
    "high voltage": """
        hv unless ASKS; high voltage unless charge, alternator, regulator, bulb, rev, ASKS; orange,
        LINE unless SMALL WIRE; isolation fault; ELECTRIC, CRASHED; electric, CRASHED unless
        window, seat; ELECTRIC, HURTS unless mileage, mpg, ASKS, fan, range, heater; HIGH PART,
        TAMPER unless ASKS, fan, filter; SHOCKS unless ASKS, door, sock, sweater, static, dry;
        shock, charge unless absorber, ASKS; shock, car body; CHARGES, CHARGE HURTS unless phone,
        usb; interlock; glove, hybrid unless box, compartment; hybrid, lid; wait, disconnect; 300
        volt; 400 volt; 800 volt; 300v; 400v; 600 volt; water, battery box; mist, electric;
        ELECTRIC, mist; ELECTRIC, water, box; cut, ev unless ASKS; open, pack unless ASKS; no
        glove, pack; glove, rated unless ASKS; cable, bare, rain; charge, bare wire; charge,
        crackle; flood, charge, HURTS; current, electric car unless ASKS, range; get ~ belt,
        charge; belt off, charge; belt off ~ cable; hybrid battery, live; hybrid, cover off; bolt,
        live; safety plug; fog, plug in car; no glove, meter; meter say 380
        """,
    "airbag": """
        AIRBAG unless LOOKS, second key on; AIRBAG, ITSELF; AIRBAG, bulge; AIRBAG, VIOLENT unless
        LOOKS, trunk, cargo, shade; bag, TAMPER, steering wheel; bag, seat, VIOLENT; side bag;
        AIRBAG, TAMPER unless bulb, recall, costume, halloween; yellow, LINE, TAMPER unless SMALL
        WIRE; yellow, LINE, AIRBAG PLACE unless SMALL WIRE; clock spring, TAMPER; clockspring
        unless ASKS; steering wheel, TAMPER, battery; resistor, bag; hammer, crash sensor; hit,
        crash sensor; seat curtain; wheel pad, TAMPER; yellow, LINE, under seat; bag, plug, TAMPER;
        9 volt, seat; crash, curtains; bag, face down; yellow connector, TAMPER; bag wires; bag, go
        off unless ASKS; bag, deploy; bag, go bang; bag, fire unless up; bag, explode, wheel;
        airbag, hang; airbag, wire show; deploy, no crash; deploy, no collision; bag, 9 v; bag, 9v;
        unfired bag; bag, burn
        """,
    "restraint": """
        SEAT BELT, BELT FAILS unless SEAT TALK; belt, not lock; strap, anchor; seatback, BREAKS;
        belt, bolt, off; seat, SEAT FAILS unless SEAT TALK, conditioning, AIRBAG, lamp, kid, belt,
        coin, change; child seat, BREAKS unless lamp, light; car seat, anchor; isofix, BREAKS;
        seat, slide back; seat, slide backward; seat, slide ~ accelerate; seat, slide ~ drive;
        seat, slide ~ brake; belt, not hold, CRASHED; belt, not ~ hold me; belt, lock round; belt,
        keep tighten; belt, not ~ click unless drive belt, chime; belt, knot; belt, not ~ latch;
        belt, kid, BELT FAILS unless sticky, ice cream, drive; belt, not ~ let go; belt, not ~
        release, BODY; belt, not ~ unbuckle; belt, not ~ get out; not ~ get ~ out, belt; not ~ get
        ~ out, seat unless stain, smell, screw, bolt; belt, car seat, let go; car seat, let go;
        belt, kid, let go; belt, no longer unless drive, chime; belt, tug unless drive; buckle,
        open, stop; belt, open, stop; belt, open, brake; belt strap, fray; belt, half through
        """,
    "wheel": """
        WHEEL, OFF unless WHEEL DRESS; NUTS, UNTIGHT unless WHEEL DRESS; sidewall, BURSTS; TIRE,
        BURSTS unless plug, ASKS, steering, light; forget, torque; not torque; wheel bearing, let
        go; no front wheel; no rear wheel; wheel, lean; tread, peel; tire, shred; TIRE, OFF unless
        ASKS, NOISES, light; cords ~ show; cord ~ show; 120 psi; 130 psi; 140 psi; 150 psi; bead,
        VIOLENT; bead, bang; bead, ether; bead, starter fluid; bead, light; wheel, lock solid;
        bulge, tire; egg, tire; lump, tire unless vibrate, road; patch, sidewall; plug, sidewall;
        nut, hub cap; nut, hubcap; find ~ nut; bolt hole, metal; wheel, click, bolt; tire, crack,
        highway; tire, years old unless ASKS; old tire, highway; tire, from 2003; tire, fender,
        bang; wheel, fender, bang; spring, cut, tire; sidewall, bulge; bulge, side, tire; buldge,
        tire; cut thru, sidewall; tire, bulge; wheel, overtake; wheel, pass us; wheel, overtook;
        finger tight; hand tight unless cap, filter, drain, oil, ASKS; pass, own tire; pass, own
        wheel; drag, hub; wheel, ahead me; NUTS, leave on unless ASKS; NUTS, 2 leave; NUTS, only;
        NUTS, drive to; wheel, screw, UNTIGHT unless WHEEL DRESS, ON WHEEL, license, plate; dual,
        hiss; dual, bulge; dual, blow unless zone, air, hot, cold, vent; dual, off unless switch,
        zone; wheel, dance, loose; cord, rubber; see ~ wire, tire; see ~ cord; see ~ cords; wheel,
        squint; wheel, scrape arch; wheel, tuck; wheel, fold under; wheel, slack unless steering,
        bearing; tire, rock, hub; wheel, rock, hub; wheel, play, hub; no wheel, ON ROAD unless
        WHEEL DRESS, speed, light, ON WHEEL; wheel, move, hand unless shake, steering, vibrate;
        wheel, move ~ up down; ball joint, wheel unless noise, squeak, clunk, price; wheel, dance,
        screw; air ~ up, swell; tire, swell; nut inside, cap; on rim, ON ROAD; on ~ rim, mph; on
        rim, drive; tire ~ off rim; NUTS, inside, hubcap; NUTS, in, hubcap unless cover, missing,
        key, size; steel, show unless scratch, paint, exhaust; inner shoulder, steel; spin, lug;
        spin, nut; lug, finger; nut, finger; hub blue; bearing, blue; dual, walk; wheel, leave me;
        wheel, wobble, go
        """,
    "runaway": """
        FORWARD, VEHICLE; GAS PEDAL, STICKS unless set, ASKS, button; gas, stick unless door, cap,
        gauge; throttle, stay; pedal, floor mat; pedal, stay down unless clutch; diesel, RACES;
        RACES, ITSELF unless wiper, window, door, seat, fan; unintended acceleration; sudden
        acceleration; keep speeding unless button, lever, ASKS; keep accelerate; RACES, NOT STOP;
        RACES, brake unless shake, noise, light; RACES, into; RACES, reverse, put; lunge, light;
        runaway; pull forward, brake; RACES, foot off; push forward, brake; rev, stay; rev, top;
        rev ~ climb; full revs; drive ~ into, shop; drive ~ into, wall; drive ~ into, house; drive
        ~ into, store; RACES, not ~ quit unless blower, wiper, radio; RACES, not ~ shut unless
        blower, wiper, door; not ~ shut off, rev; not ~ turn off, rev; rev, moon; race, start,
        quit; FOOT OFF, KEEPS GOING unless ASKS, tire, clutch, brake light; foot ~ gas, keep go;
        keep on go, gas; climb, own accord; rev, own accord; take off on me; take off with me;
        diesel, own oil; not kill it, diesel; not kill it, engine; not ~ kill engine; throttle
        spring; GAS PEDAL, bungee; spring, hold, throttle
        """,
    "raised vehicle": """
        LIFT, BENEATH unless OTHER LIFT, fit; LIFT, BREAKS unless OTHER LIFT; jack, hiss; off jack;
        LIFT, rolling; off lift; no jack stand; only jack; off stand; fall, under it; instead ~
        jack stand; hold ~ up, LIFT; under car, come down; under it, come down; under, sill; prop,
        post; prop, wood; prop, brick; prop, stick; TIPPER, BENEATH; TIPPER, prop; forklift, rear;
        forklift, BENEATH; walk under; under, shift unless gear, transmission, lever; lean, under;
        nuts off, under; no stand, jack; no stands; only, floor jack; LIFT, rock unless chair,
        crawler; rack, rock; floor, collapse; four poster; lift, floor, collapse; four post, crack;
        LIFT, creep; LIFT, creep down; arms, creep; cab, tilt, BENEATH; tilt, fall, underneath;
        slide off, BENEATH; post, slide off; lean, underneath; fall off, post; fall, foot under;
        fall, leg under; fall, arm under; fall, hand under; fall, jack unless ASKS, OTHER LIFT;
        under car, slip; under it, slip; under van, slip; slip, jack; BODY, under car, BREAKS
        unless light, mat, hang; under car, fall; under, spare wheel; slide under, wheel; crawl
        under, wheel; under, block, hold; firewood; prop it; bed come down unless hydraulic, slow,
        not; lift lock; lock, one side, lift; pin, call unless card, dealer, order
        """,
    "rolling": """
        MOVES, PARKED unless window, seat, mirror, button, switch, wiper, out park; roll away;
        roll, itself; creep, itself; move, itself unless seat, window, mirror, wiper, needle; roll
        ~ into; PARK BRAKE, NOT HOLD unless ASKS; park not hold; not stay ~ park; GEARS, ITSELF
        unless wiper, light, mirror; MOVES, NOBODY; MOVES, itself, overnight; MOVES, itself,
        street; roll, chock; out park, roll; VEHICLE, MOVES, itself unless window, seat, mirror;
        slip out park; drop ~ reverse; jump ~ park; PARKED, NOT HOLD unless window, seat, door,
        open; jump, reverse, ITSELF; start in gear; chock it unless ASKS; roll, fence; drive, go
        backward; drive ~ backward; roll, gate; MOVES, pin; MOVES, gate; creep off; roll ~ over; go
        forward, reverse; shift ~ forward, pedestrian; into, pedestrian; PARK BRAKE, FAILS unless
        light, noise; handbrake, let go; handbrake, roll; roll down, drive, kids; roll, ITSELF
        unless window, seat, shade, wiper, door, sunroof; roll ~ down, in park; move alone; roll
        alone; jump in gear; jump into gear; screwdriver, start; in park, roll; MOVES, in park
        unless window, seat, mirror, wiper, shift, out park, shifter, lever, not; roll ~ down,
        driveway; ESCAPED, driveway, ITSELF; ESCAPED, SCALE, ITSELF; ESCAPED, SCALE, in p; ESCAPED,
        SCALE, in park; SCALE, PARK BRAKE, NOT HOLD; car, alone, SCALE; leave ~ driveway, itself;
        flatbed, loose; flatbed, roll; trailer, broke loose, roll; car, go back down unless window;
        car, go backward, hill; car, roll back, hill; take off down hill; go off down hill; run off
        down hill; come out park; out park, SCALE; chock, missing; creep, dock; run over mailbox;
        roll, mailbox; leave ~ hill, run
        """,
}
