"""What happens where there is danger, in groups of words for one event.

In: nothing. Out: `DANGER_EVENTS`: names, each with its words, parted by semicolons.
`danger_words.py` reads them. Common practice of the trade, no source.
"""

DANGER_EVENTS = """
    FORWARD: jump forward, lurch forward, lunge forward, shoot forward, surge forward, leap forward,
    jump ahead, into shop front, into storefront;
    VIOLENT: break, burst, blow, rupture, snap, rip, tear, pop, fall, fly, come off, come out, come
    loose, come down, come up, slip, split, puncture, apart, separate, detach, sever, shear,
    collapse, let go, let loose, give way, fold, explode, shred, jump, tip, drop, hiss, crush, slam,
    kick, whip, shoot, disintegrate, crack, bend, hang, dangle, shatter, swing, launch, pull out,
    pull loose, slide off, slide out, roll off, erupt, blast, come ~ out, come ~ off, come ~ apart,
    cave in, rear up, go bang;
    BREAKS: VIOLENT, cut, rust, rot, off, hole, bulge, swell, disconnect, fray, chafe, fail, sway,
    lean, drag, unlatch, unhook, unhitch, slide, walk out, back out, back itself, strip, sink,
    shift, wobble, crumble, beat, not ~ hold, not ~ stay, not ~ lock, not ~ latch, not ~ catch, in
    half, in two, balloon, loose, gone, go out, flop, twist, buckle, tilt, drift, creep, settle,
    lower, bounce, unbolt, not bolt, undone, spin, eat through, leak down, bleed down, roll, peel,
    missing, creak, through floor, hit floor, hit ground, wiggle;
    LEAKS: leak, drip, pour, puddle, gush, spray, spew, spill, dribble, squirt, wet, pool, spurt,
    stream, trickle, seep, weep, ooze, splash, mist, dump, piss, drench, soak, flood, overflow, all
    over, everywhere, run out, run down, run onto, shoot out, come out, on ground, on driveway, on
    floor, run across, run along, run under, run over, run to, leek, spray on, jet, small pool, drop
    drop, drop on;
    SMELLS: smell, stink, reek, odor, fume, vapor, stench, whiff, scent, aroma;
    FAILS: gone, go out, go away, give out, zero, fail, failure, quit, stop work, not ~ work,
    useless, fade, not ~ hold, not ~ grab, not ~ respond, not ~ bite, not ~ engage, disappear,
    vanish, die, dead, give up, cut out, conk out, nothing, not ~ anything, kaput, nowt, let go;
    ITSELF: itself, on own, themselves, without me, no reason, not ~ touch, nobody, no one, no
    driver, unattended, nowhere, no input, no warning, foot off, not ~ press, unintended, random, on
    ~ own, all alone;
    HEATS: hot, heat up, overheat, roast, cook, warm;
    CRASHED: crash, wreck, accident, collision, flood, submerge, under water, underwater, salt
    water, rollover, roll over, crush, crunch, impact, collide, fender bender;
    TAMPER: probe, unplug, disconnect, test, measure, check, ohm, ohmmeter, multimeter, meter, pull,
    remove, cut, chew, splice, jump, touch, open, take off, take apart, take out, jumper, poke,
    paper clip, pry, push, work on, bypass, tap, drill, get at, unbolt, hook, drain, discharge,
    ratchet, screwdriver, live, expose, skin, nick, rub, bare, junkyard, drop, hammer, resistor,
    plug in, carry, throw, fish, cover off, lid off, glove, snip, twist;
    SMOKES: haze, smoke, smoky, smoulder, smolder, wisp, plume, billow, gray ~ curl, grey ~ curl,
    gray ~ coming, grey ~ coming, gray ~ out, grey ~ out, gray ~ rise, grey ~ rise, white cloud,
    black cloud;
    GLOWS: glow, red hot, cherry, orange hot, white hot, redhot;
    BURNS: burn, scorch, singe, char, melt, molten, blacken, fry, toast, blister;
    BURNT: plastic, rubber, wiring, electrical, electric, insulation, burn, singe, scorch, acrid,
    campfire, hot, smoke, cook, ozone, barbecue, char, fish, fishy;
    GONE: gone, empty, low, disappear, dry, no, drop, vanish, keep add, top up;
    RUINED: VIOLENT, cut, rust, rot, hole, off, chafe, fray, disconnect, loose, rub through;
    NOT STOP: length ~ stop, length, keep move, not ~ stop, not ~ slow, no stop, not ~ halt, not ~
    time, take ~ forever, take ~ stop, forever ~ stop, long ~ stop, longer ~ stop, keep roll, keep
    go, keep coast, go through, roll through, sail through, coast through, slide through, run
    through, blow through, through red, through intersection, through stop, stop power, stop
    distance, trouble stop, hard to stop, slide into, roll into, sail into, nothing slow, slide
    right, car length, straight ~ crossroad, through ~ crossroad, past ~ sign, roll on through, run
    ~ sign, run ~ light, sail ~ through, miss ~ turn, keep on roll, blow ~ light, blow ~ sign;
    PRESSED: foot, feet, press, push, step, stomp, pump, leg, stand, hit, mash, slam, pedal, touch;
    FLOORED: to floor, on floor, hit floor, carpet, firewall, bottom, to metal, floorboard, to
    boards, all way, way down;
    SOFT: soft, spongy, mushy, squishy, nothing, no resistance, no pressure, no feel, drop, fade,
    sponge, sink, low, limp, flop, give way, pillow, marshmallow, pudding, jelly, mush, go away,
    disappear, creep, go down, dead, break, fall, snap;
    STRENGTH: both feet, two feet, both foot, both leg, two leg, all weight, all strength, stand on,
    full weight, all might;
    FREE: not ~ straighten, not ~ return, sudden, lock, seize, jam, freeze, not ~ turn, stick, come
    off, fall off, pull off, in hand, in lap, spin, disconnect, bind, stop turn, quit turn, nothing,
    separate, go loose, limp, feel loose, no connection, apart, no control, snap, break, jerk, yank,
    floppy, dead, no response, not ~ respond, come loose, free play, get tight, go tight, real
    tight, tight all;
    STRAIGHT: go straight, keep straight, not ~ follow, not ~ turn, not ~ respond, nothing, no
    response, stay straight, go forward, not steer;
    DARTS: dart, swerve, yank, veer, snatch, jerk, pull hard;
    OFF: wobble crazy, wobble violent, VIOLENT, ~ off, flop, lean, loose, wobble ~ off, wobble bad,
    roll away, pass me, pass us, in half, wobble out;
    UNTIGHT: gone, loose, loosen, missing, break, snap, shear, come off, fall off, back off, back
    out, unscrew, t ~ tight, fall out, finger tight, hand tight, strip, not ~ torque, forget, spin
    off, work off, only two, only three, no;
    BURSTS: thread, VIOLENT, blowout, bulge, bubble, cord, belt show, steel, egg, lump, gash, slice,
    delaminate, overinflate, balloon, canvas, blister, inflate, wire, fabric, chunk, peel, strip,
    knot, golf ball, 80 psi, 90 psi, 100 psi, off rim, ball on, tumor, potato, grapefruit;
    PARTS: off, unhitch, loose, disconnect, detach, let go, sway, fishtail, jackknife, not ~ latch,
    not ~ lock, whip, pass me, break away, unhook, separate, jump off, come off, pop off, jump,
    uncouple;
    STICKS: stick, jam, wide open, hang, stay down, stay on floor, to floor, not ~ come up, not ~
    back, not ~ close, not ~ return, not ~ release, not ~ let go, pin, bind, wedge, trap, not ~
    disengage, not ~ cancel, fray, not ~ turn off, not ~ shut off, stay open, floor mat;
    RACES: speed up, accelerate, take off, race, surge, lunge, lurch, move forward, rev, redline,
    full speed, wide open, full throttle, launch, shoot forward, leap, run away, runaway, scream,
    bolt, charge forward, jump;
    MOVES: roll, move, creep, coast, go backward, slide, crawl, jump, lurch, drift off, drift down,
    start, lunge, take off, inch;
    NOT HOLD: give out, not ~ hold, not ~ stay, not ~ lock, not ~ catch, slip out, jump out,
    pop out;
    DIES: die, stall, quit, cut out, shut off, shut down, shut itself, no power, dead, no ~ power,
    stop run, engine off, conk out;
    OPENS: VIOLENT, come open, fling, unlatch, open itself, not ~ latch, not ~ stay, bounce, lift
    up, not ~ lock, open while, lift at, lift ~ speed, lift ~ highway, rise, only held;
    GRABS: VIOLENT, pinch, catch, trap, grab, hit, squeeze, close on, roll up, shut on, take, suck
    in, cut, eat, start, pin, wind round, wrap round, lock round, wrap around, wind around;
    BELT FAILS: VIOLENT, not ~ latch, not ~ click, not ~ lock, not ~ buckle, not ~ hold, not ~ stay,
    not ~ catch, not ~ fasten, unlatch, undone, cut, fray, unbuckle, release, no tension, open
    itself, come open, off bolt;
    SEAT FAILS: not ~ bolt, loose, break, come off, unbolt, rock, not ~ lock, collapse, tip, fall,
    not ~ latch, rust, snap, go back, pull out;
    GO DARK: dark, go out, quit, die, cut out, black, fail, dead, no, off;
    NOT SEE: not ~ see, blind, visibility, block view;
    HURTS: CRASHED, crack, damage, puncture, swell, bulge, smoke, shock, isolation, arc, spark,
    hiss, smell, HEATS, burn, melt, leak, dent, zap, tingle, bang, pop, gurgle, soak, jolt, buzz,
    cut, bare, warp, bite, river, ditch, vapor, crackle, sizzle, pour, fizz, live;
    SHOCKS: shock me, get shock, electric shock, electrocute, zap, jolt, tingle, shock ~ plug;
    CHARGE HURTS: screwdriver, stick, spark, burn, melt, hot, smoke, arc, shock, brown, scorch,
    sizzle, pop, char, smell, black, turn black, go black, fish, crackle, bare wire, exposed, bare,
    frayed;
    SICK: stomach, headache, dizzy, sick, sleepy, nauseous, nausea, drowsy, pass out, faint, woozy,
    lightheaded, light headed, throw up, vomit, queasy, head hurt, groggy, eyes burn, cough, choke,
    unconscious, head ache, migraine, puke, feel ill, poorly, head pain, pain head, head pound,
    nauseated, kid cry;
    RUNS: run, warm up, idle, start, leave on;
    BATTERY HURTS: explode, blow, burst, swell, bulge, bloat, puff, acid, boil, hiss, egg, vent,
    smoke, smell, freeze, crack, split, on fire, steam, fizz, bubble, melt, gas, sulfur, sulphur,
    HEATS, rotten, balloon, leak, spark, arc, gurgle, warp, sizzle, foam, flash, 24v, pop, live,
    spit, weld, boom, bang;
    BACKWARD: backward, reverse, wrong way, wrong terminal, wrong post, polarity, crossed, wrong
    color, mix up, wrong cable, wrong side;
    OPEN UP: open, take, remove, unscrew, loosen, pop, undo, twist, pull, crack, top up, add;
    STILL HOT: hot, boil, bubble, overheat, steam, warm, pressure, scald, gurgle, hiss;
    SHOOTS OUT: shoot out, shoot at, explode, erupt, geyser, blow, spray, boil out, boil over,
    burst, blast, squirt, gush, spew, scald, hiss;
    BLOWS OFF: shoot, blow, fly off, explode, spray, erupt, burst, geyser;
    SPLASHES: splash, spray, eye, skin, freeze, frostbite, burn, squirt, face, scald, sting, inject,
    swallow, drink;
    NEARLY: nearly, almost, narrowly, close to, about, could, lucky;
    HARM: hit, crash, kill, run over, rear end, crush, wreck, hurt, pin, no control, roll over,
    flip, tip over, off road, into ditch, run ~ into, fell on;
    WOUNDS: burn, cut, pinch, bleed, slice, smash, scald, hurt, stitch, mangle, roll over, run over,
    pin, bite, spray, splash, trap, catch, inject, suck in, boil, acid, hot oil, zap, shock, sting,
    throw, whip, bang, cut off, crush, gash, broke off, go white, numb, puff up, swallow, degloved,
    fall on, fall onto, drop on, come down on, land on, explode, blow up, kick, slam;
    SCALDS: burn, scald, crush, roll over, run over, acid, boil, drop on, cut
"""
