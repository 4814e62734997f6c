"""What happens where there is danger, in groups of words for one event.

In: nothing. Out: `DANGER_EVENTS`: names, each with its words, parted by semicolons.
`danger_words.py` reads them. Common practice of the trade, no source.
"""

DANGER_EVENTS = """
    FORWARD: jump forward, lurch forward, lunge forward, shoot forward, surge forward, leap forward,
    jump ahead, into shop front, into storefront, bolt forward, jump ~ forward, shoot ahead, surge
    ahead, lurch ahead, launch ~ wall, shoot backward, fly backward, jump backward, jump back, shoot
    back, surge backward, lurch backward, leap back, rocket, launch itself, bolt backward;
    VIOLENT: break, burst, blow, rupture, snap, rip, tear, pop, fall, fly, come off, come out, come
    loose, come down, come up, slip, split, puncture, apart, separate, detach, sever, shear,
    collapse, let go, let loose, give way, fold, explode, shred, jump, tip, drop, hiss, crush, slam,
    kick, whip, shoot, disintegrate, crack, bend, hang, dangle, shatter, swing, launch, pull out,
    pull loose, slide off, slide out, roll off, erupt, blast, come ~ out, come ~ off, come ~ apart,
    cave in, rear up, go bang, fracture, fall apart, in piece, pull apart, come adrift, part
    company, go pop, give out, smash, burst open, work loose, fall through;
    BREAKS: VIOLENT, cut, rust, rot, off, hole, bulge, swell, disconnect, fray, chafe, fail, sway,
    lean, drag, unlatch, unhook, unhitch, slide, walk out, back out, back itself, strip, sink,
    shift, wobble, crumble, beat, not ~ hold, not ~ stay, not ~ lock, not ~ latch, not ~ catch, in
    half, in two, balloon, loose, gone, go out, flop, twist, buckle, tilt, drift, creep, settle,
    lower, bounce, unbolt, not bolt, undone, spin, eat through, leak down, bleed down, roll, peel,
    missing, creak, through floor, hit floor, hit ground, wiggle, broke, crack through, rust
    through, rot through, rot out, rust out, unseat, lift off, go through, hang off, held ~ only,
    tear off, not ~ attach;
    LEAKS: leak, drip, pour, puddle, gush, spray, spew, spill, dribble, squirt, wet, pool, spurt,
    stream, trickle, seep, weep, ooze, splash, mist, dump, piss, drench, soak, flood, overflow, all
    over, everywhere, run out, run down, run onto, shoot out, come out, on ground, on driveway, on
    floor, run across, run along, run under, run over, run to, leek, spray on, jet, small pool, drop
    drop, drop on, wash down, shower, trail, blow out, wet patch, wet spot, fountain, all down, piss
    out, let out, pee, soak through, pulse out, piddle, issue from;
    SMELLS: smell, stink, reek, odor, fume, vapor, stench, whiff, scent, aroma, whiffy, pong, honk,
    niff, stinky, smell strong;
    FAILS: gone, go out, go away, give out, zero, fail, failure, quit, stop work, not ~ work,
    useless, fade, not ~ hold, not ~ grab, not ~ respond, not ~ bite, not ~ engage, disappear,
    vanish, die, dead, give up, cut out, conk out, nothing, not ~ anything, kaput, nowt, let go,
    finish, pack up, pack in, knackered, buggered, doing nothing, not ~ doing thing, not ~ doing
    anything, no good, not there, not ~ react, not ~ help, not ~ take, no bite, poof, give way, went
    bye, not ~ doing job, stop help, not ~ catch, on strike, not ~ come on, inoperative, inoperable,
    unresponsive, nonexistent, expire, no longer, depart, bugger all, naff all, sweet nothing, not ~
    doing bugger, cease, not ~ doing owt, nil, toast, fried, junk, history, shoot, go clean, done
    for, not worth ~ damn, not ~ thing;
    ITSELF: itself, on own, themselves, without me, no reason, not ~ touch, nobody, no one, no
    driver, unattended, nowhere, no input, no warning, foot off, not ~ press, unintended, random, on
    ~ own, all alone, no foot, foot up, foot ~ off, itselves, nobody ~ in it, nobody inside, not ~
    ask, own accord, own volition, unbidden, unprompted, uncommanded, no ~ input, move alone, start
    alone;
    HEATS: hot, heat up, overheat, roast, cook, warm;
    CRASHED: crash, wreck, accident, collision, flood, submerge, under water, underwater, salt
    water, rollover, roll over, crush, crunch, impact, collide, fender bender;
    TAMPER: probe, unplug, disconnect, test, measure, check, ohm, ohmmeter, multimeter, meter, pull,
    remove, cut, chew, splice, jump, touch, open, take off, take apart, take out, jumper, poke,
    paper clip, pry, push, work on, bypass, tap, drill, get at, unbolt, hook, drain, discharge,
    ratchet, screwdriver, live, expose, skin, nick, rub, bare, junkyard, drop, hammer, resistor,
    plug in, carry, throw, fish, cover off, lid off, glove, snip, twist, peel, plug back, unwire,
    wire up, resister, reconnect, scrap, dispose, throw out, burn, cook, heat gun, weld, soak, swap,
    pull out, yank, tug, knock, hit, lift off, put meter, hook ~ up, unscrew, dismantle,
    disassemble, mess with, fool with;
    SMOKES: haze, smoke, smoky, smoulder, smolder, wisp, plume, billow, gray ~ curl, grey ~ curl,
    gray ~ coming, grey ~ coming, gray ~ out, grey ~ out, gray ~ rise, grey ~ rise, white cloud,
    black cloud, smokey, puff smoke, smoke come, smoke out;
    GLOWS: glow, red hot, cherry, orange hot, white hot, redhot, dull red, bright red, bright
    orange;
    BURNS: burn, scorch, singe, char, melt, molten, blacken, fry, toast, blister, combust, fried,
    smolder, sear, black ~ up;
    BURNT: plastic, rubber, wiring, electrical, electric, insulation, burn, singe, scorch, acrid,
    campfire, hot, smoke, cook, ozone, barbecue, char, fish, fishy, bbq, match, burned hair,
    toaster, soldering, hot wire, tar, plastic bag, wood smoke, bonfire, fried, melted, cigarette ~
    no one;
    GONE: gone, empty, low, disappear, dry, no, drop, vanish, keep add, top up;
    RUINED: VIOLENT, cut, rust, rot, hole, off, chafe, fray, disconnect, loose, rub through;
    NOT STOP: length ~ stop, length, keep move, not ~ stop, not ~ slow, no stop, not ~ halt, not ~
    time, take ~ forever, take ~ stop, forever ~ stop, long ~ stop, longer ~ stop, keep roll, keep
    go, keep coast, roll through, sail through, coast through, slide through, run through, blow
    through, through red, through intersection, through stop, stop power, stop distance, trouble
    stop, hard to stop, slide into, roll into, sail into, nothing slow, slide right, car length,
    straight ~ crossroad, through ~ crossroad, past ~ sign, roll on through, run ~ sign, run ~
    light, sail ~ through, miss ~ turn, keep on roll, blow ~ light, blow ~ sign, not ~ pull up, not
    ~ come ~ stop, overshoot, slide past, fly past, sail past, coast past, blow past, run past, roll
    past, age ~ stop, age ~ pull up, all day ~ stop, half mile, stop when ~ want, block ~ stop, yard
    ~ stop, feet ~ stop, barge, freight train, end up ~ in, run into, plow into, mail box, mailbox,
    bumper ~ front, go through light, go through red, go through stop, go through junction, go
    through intersection, continue ahead, fail ~ halt, not ~ arrest, not ~ retard, clean through, go
    ~ clean through, straight through, keep come, not ~ come to rest, eat ~ stop, stop ~ train, stop
    ~ ship, stop ~ barge;
    PRESSED: foot, feet, press, push, step, stomp, pump, leg, stand, hit, mash, slam, pedal, touch,
    jump on;
    FLOORED: to floor, on floor, hit floor, carpet, firewall, bottom, to metal, floorboard, to
    boards, all way, way down, 2 floor, at floor, on boards, bottom out, 2 metal;
    SOFT: soft, spongy, mushy, squishy, nothing, no resistance, no pressure, no feel, drop, fade,
    sponge, sink, low, limp, flop, give way, pillow, marshmallow, pudding, jelly, mush, go away,
    disappear, creep, go down, dead, break, fall, snap, gone, air, slack, finish, hollow, empty, no
    push back, swim;
    STRENGTH: both feet, two feet, both foot, both leg, two leg, all weight, all strength, stand on,
    full weight, all might, all two feet, with two, whole weight, whole body, full body;
    FREE: not ~ straighten, not ~ return, sudden, lock, seize, jam, freeze, not ~ turn, stick, come
    off, fall off, pull off, in hand, in lap, spin, disconnect, bind, stop turn, quit turn, nothing,
    separate, go loose, limp, feel loose, no connection, apart, no control, snap, break, jerk, yank,
    floppy, dead, no response, not ~ respond, come loose, free play, get tight, go tight, real
    tight, tight all, no grip, slack, finish, fall apart, rattle loose, mind ~ own, own mind, block,
    stop respond, quit respond, heavy ~ sudden, pop apart, catch ~ then, hang up, stiff ~ sudden,
    vague, sloppy, slop, loose, play, rock solid, solid, not ~ unlock, no longer, go ~ on bypass;
    STRAIGHT: go straight, keep straight, not ~ follow, not ~ turn, not ~ respond, nothing, no
    response, stay straight, go forward, not steer, keep on straight, straight ahead, not ~ change
    direction, not ~ come round, not ~ come around, go other way, plow on, carry on, head straight,
    run wide, straight on, wide, off edge;
    DARTS: dart, swerve, yank, veer, snatch, jerk, pull hard, throw, shove, kick, hop, lunge, fling,
    pitch, jump, drag, whip, cross, shoot, dive;
    OFF: wobble crazy, wobble violent, VIOLENT, ~ off, flop, lean, loose, wobble ~ off, wobble bad,
    roll away, pass me, pass us, in half, wobble out, overtake, roll ahead, roll down road, bounce
    down, jump off, drop off, part company, part ways, half off, crooked ~ loose, leave ~ truck,
    leave ~ car, at angle, tilt, cocked, lay over, dance ~ loose, come past, go past me, roll past;
    UNTIGHT: gone, loose, loosen, missing, break, snap, shear, come off, fall off, back off, back
    out, unscrew, t ~ tight, fall out, finger tight, hand tight, strip, not ~ torque, forget, spin
    off, work off, only two, only three, no, finger loose, not ~ put, two left, three left, only ~
    left, one left, half, spin free, walk off, wobbly, not ~ done up, not ~ tight, undone, turn with
    finger, shear off, stretch, elongated, egg shape, back themselves off;
    BURSTS: thread, VIOLENT, blowout, bulge, bubble, cord, belt show, steel, egg, lump, gash, slice,
    delaminate, overinflate, balloon, canvas, blister, inflate, wire, fabric, chunk, peel, strip,
    knot, golf ball, 80 psi, 90 psi, 100 psi, off rim, ball on, tumor, potato, grapefruit, pregnant,
    hernia, pop out, goiter, swell, lemon, plum, orange size, tennis ball, fist, steel belt, inner
    layer, carcass, come apart, walk off, bald to cord;
    PARTS: off, unhitch, loose, disconnect, detach, let go, sway, fishtail, jackknife, not ~ latch,
    not ~ lock, whip, pass me, break away, unhook, separate, jump off, come off, pop off, jump,
    uncouple, break loose, push ~ truck, push ~ car, wag, swing, snake, flip, roll off, go ~ own
    way, pop off ball, unclip, come undone, tail ~ wag;
    STICKS: stick, jam, wide open, hang, stay down, stay on floor, to floor, not ~ come up, not ~
    back, not ~ close, not ~ return, not ~ release, not ~ let go, pin, bind, wedge, trap, not ~
    disengage, not ~ cancel, fray, not ~ turn off, not ~ shut off, stay open, floor mat, keep ~
    down, stay floored, stay on, stay to floor, not ~ spring back, not ~ pop back, not ~ rise, catch
    ~ mat, hook ~ mat, under mat, under floor mat, not ~ lift, glued, hang open, hang up, get hung,
    not ~ come back, not ~ let up, welded;
    RACES: speed up, accelerate, take off, race, surge, lunge, lurch, move forward, rev, redline,
    full speed, wide open, full throttle, launch, shoot forward, leap, run away, runaway, scream,
    bolt, charge forward, jump, go full, go nuts, go crazy, go wild, keep rev, surge ahead, jump
    ahead, spin up, high rev, rev itself, gun itself, pick up speed, gain speed;
    MOVES: roll, move, creep, coast, go backward, slide, crawl, jump, lurch, drift off, drift down,
    start, lunge, take off, inch, walk, wander, drive off, drive away, go down, go back, leave
    driveway, leave ~ driveway, roll back, slip back, slip down, travel, migrate, end up ~ street,
    end up ~ road, run away, escape, head down, trundle, back into, back itself, roll into, reverse
    itself, go for walk;
    NOT HOLD: give out, not ~ hold, not ~ stay, not ~ lock, not ~ catch, slip out, jump out, pop
    out, not ~ keep, not ~ grip, let go, not ~ bite, pop off, not ~ hold nothing, barely hold, hold
    nothing, not ~ stop it, useless, no good;
    DIES: die, stall, quit, cut out, shut off, shut down, shut itself, no power, dead, no ~ power,
    stop run, engine off, conk out, everything ~ off, all ~ off, engine ~ off, car ~ off, go silent,
    lost engine, engine stop, motor stop, car stop, car turn off, engine turn off, motor turn off,
    kill itself, motor off, go dead, coast to shoulder, lost drive, shut ~ off, turn ~ off, turn
    itself off;
    OPENS: VIOLENT, come open, fling, unlatch, open itself, not ~ latch, not ~ stay, bounce, lift
    up, not ~ lock, open while, lift at, lift ~ speed, lift ~ highway, rise, only held, open at,
    open ~ mph, open ~ speed, open ~ highway, open ~ motorway, open ~ freeway, open ~ corner, open ~
    turn, open ~ curve, open alone, not ~ stay shut, not ~ shut, not ~ close, pop up, swing open,
    flap, slide open, come undone, come up, blow open, spring open, open up, fly up, flip up, swing,
    fell open, held shut, hold ~ shut, hold ~ close, no catch, lift ~ fast, lift when, no ~ latch,
    no longer latch, no longer catch, swing out, gape, come ajar;
    GRABS: VIOLENT, pinch, catch, trap, grab, hit, squeeze, close on, roll up, shut on, take, suck
    in, cut, eat, start, pin, wind round, wrap round, lock round, wrap around, wind around, snag,
    drag, bite, pull in, chop, crush, nip, wedge, lock on, come down on, drop on, stick ~ in, stick
    ~ under, swallow, whack, keep ~ go up, keep ~ close, shut ~ on, go up on, come up on, up ~ on,
    nick, keep go;
    BELT FAILS: VIOLENT, not ~ latch, not ~ click, not ~ lock, not ~ buckle, not ~ hold, not ~ stay,
    not ~ catch, not ~ fasten, unlatch, undone, cut, fray, unbuckle, release, no tension, open
    itself, come open, off bolt, unclick, unclip, unsnap, let go, pop out, pop off, unfasten, slip
    out, pop loose, come out, not ~ clip, not ~ snap, not ~ go in, open ~ own, come off, spring
    open, won ~ lock, spit out, eject, half through, tear, hang ~ thread, not ~ restrain, not ~
    grab, not ~ tighten, not ~ stop me, no longer, no ~ catch, no ~ lock, open;
    SEAT FAILS: not ~ bolt, loose, break, come off, unbolt, rock, not ~ lock, collapse, tip, fall,
    not ~ latch, rust, snap, go back, pull out, go backward, slide backward, move ~ brake, move ~
    accelerate, slide ~ brake, flop, not ~ attach, adrift, pivot, tip ~ back, fall back, lay flat,
    recline itself, break loose, bolts out, snap back, fly back, fall through, lift up;
    GO DARK: dark, go out, quit, die, cut out, black, fail, dead, no, off, go black, black out,
    blackout, shut off, turn off, cut, blink out, vanish, all cut, go oot;
    NOT SEE: not ~ see, blind, visibility, block view, cant see, not ~ see ~ thing, see nothing,
    zero vis, snow blind, white out, whiteout, see ~ through, drive ~ blind;
    HURTS: CRASHED, crack, damage, puncture, swell, bulge, smoke, shock, isolation, arc, spark,
    hiss, smell, HEATS, burn, melt, leak, dent, zap, tingle, bang, pop, gurgle, soak, jolt, buzz,
    cut, bare, warp, bite, river, ditch, vapor, crackle, sizzle, pour, fizz, live, boil, swim,
    drown, salt, submerge, wet, hot, smolder, glow, blow up, flame, puff, bottom out, speed bump,
    scrape, tear, pierce, gouge, roast, hit bollard, crunch;
    SHOCKS: shock me, get shock, electric shock, electrocute, zap, jolt, tingle, shock ~ plug, take
    current, get current, current ~ through, electricity ~ through, knock ~ back, knock ~ down,
    throw ~ across, bit me, juice me, electricuted, electrecuted;
    CHARGE HURTS: screwdriver, stick, spark, burn, melt, hot, smoke, arc, shock, brown, scorch,
    sizzle, pop, char, smell, black, turn black, go black, fish, crackle, bare wire, exposed, bare,
    frayed, blister, bubble, smolder, tingle, buzz, hiss, glow, flame, crack, water inside, melt ~
    to, weld, stuck ~ melt, discolor, hum ~ smell, fizz;
    SICK: stomach, headache, dizzy, sick, sleepy, nauseous, nausea, drowsy, pass out, faint, woozy,
    lightheaded, light headed, throw up, vomit, queasy, head hurt, groggy, eyes burn, cough, choke,
    unconscious, head ache, migraine, puke, feel ill, poorly, head pain, pain head, head pound,
    nauseated, kid cry, funny head, head swim, head spin, head ~ heavy, want sleep, yawn, giddy,
    swimmy, tight chest, taste metal, fuzzy head, blackout, black out, barf, hurl, carsick, foggy
    head, knocked out, feel sick, feel funny, feel weird, feel rough, seeing double, cross eyed,
    eyes sting, eyes water, eyes run, eyes itch, throat burn;
    RUNS: run, warm up, idle, start, leave on;
    BATTERY HURTS: explode, blow, burst, swell, bulge, bloat, puff, acid, boil, hiss, egg, vent,
    smoke, smell, freeze, crack, split, on fire, steam, fizz, bubble, melt, gas, sulfur, sulphur,
    HEATS, rotten, balloon, leak, spark, arc, gurgle, warp, sizzle, foam, flash, 24v, pop, live,
    spit, weld, boom, bang, puffy, fat, pillow, pregnant, dome, bow, distort, smoky, egg smell, bad
    egg, fume, fart, sour, blister, cook, round, ball, rise up, deform, hot ~ touch, too hot;
    BACKWARD: backward, reverse, wrong way, wrong terminal, wrong post, polarity, crossed, wrong
    color, mix up, wrong cable, wrong side;
    OPEN UP: open, take, remove, unscrew, loosen, pop, undo, twist, pull, crack, top up, add;
    STILL HOT: hot, boil, bubble, overheat, steam, warm, pressure, scald, gurgle, hiss;
    SHOOTS OUT: shoot out, shoot at, explode, erupt, geyser, blow, spray, boil out, boil over,
    burst, blast, squirt, gush, spew, scald, hiss, spit, shower, all over, fountain, spray ~ face,
    jet, blow up, let go, vomit, puke, throw;
    BLOWS OFF: shoot, blow, fly off, explode, spray, erupt, burst, geyser;
    SPLASHES: splash, spray, eye, skin, freeze, frostbite, burn, squirt, face, scald, sting, inject,
    swallow, drink, vent, mist, shoot, spit, blow ~ in, hit ~ in, got ~ in, go ~ in, in eye, down
    throat, soak;
    NEARLY: nearly, almost, narrowly, close to, about, could, lucky, damn near, dang near, barely
    miss, near miss, could ~ kill, came close, nearly got, thank god, scare, terrified;
    HARM: hit, crash, kill, run over, rear end, crush, wreck, hurt, pin, no control, roll over,
    flip, tip over, off road, into ditch, run ~ into, fell on, die, clip, smash, total, smack, t
    bone, tbone, plow, dead, hit kid, fence, mailbox, wall, lake, river, cyclist, bicycle,
    pedestrian, guardrail, cliff, tree, light pole, telephone pole, death, end up under, pile up,
    take ~ out, splat, squash, flatten, meet maker, miss ~ truck, miss ~ kid, miss ~ car;
    WOUNDS: burn, cut, pinch, bleed, slice, smash, scald, hurt, stitch, mangle, roll over, run over,
    pin, bite, spray, splash, trap, catch, inject, suck in, boil, acid, hot oil, zap, shock, sting,
    throw, whip, bang, cut off, crush, gash, broke off, go white, numb, puff up, swallow, degloved,
    fall on, fall onto, drop on, come down on, land on, explode, blow up, kick, slam, chop, sever,
    blister, swollen, fracture, lacerate, stab, black eye, concussion, nip, smack, lopped, stung,
    need stitch, electrocute, pierce, penetrate, through glove, cop, singe, impale, gouge, contuse;
    SCALDS: burn, scald, crush, roll over, run over, acid, boil, drop on, cut;
    KEEPS GOING: keep go, keep on go, keep pull, keep on pull, keep climb, keep rev, keep drive,
    keep speed, keep move, keep push, keep run, more fast, faster, speed build, speed climb, speed
    up, still pull, still go, still push, still drive, still rev, still accelerate, not ~ slow, not
    ~ drop, not ~ come down, not ~ go down, not ~ back off, not ~ idle, climb, gain speed, pick up
    speed, want go, race, continue, gather speed, hasten, not ~ return, not ~ cease;
    FOOT OFF: foot off, foot up, foot ~ off, feet off, lift foot, lift off, let off, let off gas,
    off gas, off pedal, off accelerator, let go gas, let go pedal, no foot, not ~ touch, foot
    nowhere near, nobody touch, foot ~ nowhere near, back off gas, ease off, release gas, release ~
    pedal, release accelerator, take ~ foot, foot remove, remove foot, withdraw foot, foot withdraw,
    foot clear, raise foot, foot lift;
    OUT OF LINE: drift, wander, go, dart, swerve, yank, veer, dive, throw, jump, shoot, kick, shove,
    fling, pitch, hop, jerk, snatch, wrench;
    ESCAPED: roll, go, walk, leave, wander, drive off, head, escape, end up, slide, creep, run away,
    take off, start move;
    SCALE: hill, slope, incline, grade, driveway, ramp, downhill, camber;
    LIMB WOUNDS: tear, jam, split, skin, peel, break, bust, poke, scrape, raw, shave, slap, whack,
    open up, stick
"""
