"""Whom and what a danger is about, in groups of words for one thing.

In: nothing. Out: `DANGER_SUBJECTS`: names, each with its words, parted by semicolons.
`danger_words.py` reads them. Common practice of the trade, no source.
"""

DANGER_SUBJECTS = """
    WETTED: footwell, carpet, back seat, spare tire well, trunk floor, boot floor;
    ON ROAD: highway, freeway, motorway, interstate, road, driving, mph, speed, traffic, lane,
    overtake, merge, curve, corner, intersection, downhill, moving, bridge, tunnel, cruising, turn,
    ramp, 50, 55, 60, 65, 70, 75, 80, roundabout, mway, 30, 40, 45, 90, 100, 110, 120, kph, kmh, km,
    off ramp, on ramp, junction, dual carriageway, uphill, passengers on board, down road, drive
    along, country lane, passing, school run, hill, grade, mountain, bypass, left hander, right
    hander, handers, on bend, bend;
    BODY: child, shop guy, eye, hand, face, skin, arm, finger, foot, feet, leg, thumb, wrist,
    sleeve, hair, knuckle, palm, elbow, chest, apprentice, kid, mechanic, knee, ear, toe, head,
    neck, me, him, wife, husband, mom, customer, somebody, someone, tech, shirt, hoodie, scarf,
    braid, ponytail, beard, necklace, lanyard, throat, cheek, lung, lip, tooth, teeth, dad, brother,
    uncle, grandad, grandpa, mum, sister, lad, worker, coworker, helper, pedestrian, pet,
    firefighter, guys, boss, foreman, bloke, chap, fella, lady, nan, bro, buddy, pal, tourist,
    passenger, old man, old lady, missus, staff, colleague, mate, driver hand, forehead, nose, shin,
    ankle, heel, hip, rib, forearm, scalp, lash, nail, wedding ring, glove, tie, jacket, pant leg,
    shoelace, belly, stomach, man, woman;
    PLACE: hood, bonnet, dash, dashboard, bay, compartment, cabin, inside, interior, vent, WIRES,
    wheel, brake, battery, radio, column, console, seat, under, underneath, beneath, alternator,
    floor, trunk, caliper, rotor, hub, starter, belt, carpet, bed, motor, turbo, door, armrest,
    headlight, tail light, wheel well, mirror, wheel arch, window switch, glove box, shifter, fuse,
    ceiling, dome light, rear, tailgate, charger, phone charger, shelf, air vent, heater, blower,
    under ~ dash, fuse panel, fuse board, panel;
    INSIDE: dash, seat, cabin, inside, vent, floor, console, column, radio, hood, bonnet, steering
    column;
    WIRES: wire, cable, harness, fuse, fusebox, connector, terminal, relay, strap, plug, outlet,
    charger, electrical, insulation, switch, socket, cord, charge port, circuit, loom;
    HOT METAL: underneath, beneath, catalytic, converter, cat, exhaust, manifold, turbo, rotor,
    brake, caliper, wheel, downpipe, header, hood, something, engine, under car, under van, dash,
    radio, hub, drum, turbine, alternator, starter, pipe, disc, muffler, heat shield, terminal, lug,
    battery post, outlet, plug;
    STUFF: plastic, rubber, carpet, hole, upholstery, trouser, pants, liner, hair, paper, foam,
    metal, leaves, grass, nest, me, WIRES, something, paint, seat, leg, back;
    FUEL: gas, gasoline, petrol, fuel, diesel, propane, kerosene, lighter fluid, ethanol, e85, lpg,
    filling station, lawnmower, lawn mower, refinery, carb, carburetor, pump at station, gas pump,
    station forecourt, forecourt, benzine, benzina, nafta, gasoil, unleaded, derv, super unleaded,
    premium, cng, lng, hydrogen, race gas, two stroke, jerry can, jerrycan, gas can, fuel can,
    petrol can;
    FUEL PART: tank strap, fuel filter, gas tank, fuel tank, petrol tank, fuel rail, injector, fuel
    hose, fuel line, gas line, petrol line, filler neck, filler hose, fuel pipe, diesel line, return
    line, fuel feed, fuel return, supply line, sender ring, fuel cooler, fuel coupling, petrol pipe,
    petrol hose, fuel connector, fuel injector, high pressure pump;
    BRAKES: brake, stopper, binder, anchor, footbrake, foot brake;
    BRAKE PART: brake shoe, brake line, brake hose, brake pipe, brake pedal, caliper, master
    cylinder, wheel cylinder, drum, rotor, brake disc, brake cable, brake booster, pedal bracket,
    break line, break hose, break fluid, break pedal, brake juice, brake liquid, brake oil;
    PARK BRAKE: handbrake, hand brake, parking brake, e brake, emergency brake, parkbrake, pull
    brake, side brake, park pawl;
    STEERING: steering, helm;
    STEER PART: steering joint, column, tie rod, track rod, ball joint, steering box, steering gear,
    rack, drag link, pitman arm, idler arm, knuckle, steering shaft, coupler, rag joint, control
    arm, wishbone, radius arm, trailing arm, intermediate shaft, lower arm, steering arm, front end,
    track rod end, tie rod end, power steer hose, lca, lower control arm, steering knuckle, steering
    bolt, stub axle, king pin, kingpin, steering linkage, center link, track bar, panhard bar, track
    control arm, drop arm, swivel, steering coupling, steering uj, steering column, outer tie rod,
    inner tie rod, column joint;
    TOWARD: oncoming, traffic, shoulder, ditch, lane, median, guardrail, itself, across road, across
    lane, other lane, next lane, verge, kerb, curb, barrier, ravine, cliff, edge, wall, tree, wrong
    side, hedge;
    WHEEL: wheel, hub, nearside wheel, offside wheel;
    NUTS: lug, lugnut, nut, wheel bolt, stud, hub bolt, wheel screw, wheel stud, wheel nut, lug
    bolt, lug stud, wheel lug;
    TIRE: tire, rim, sidewall, tread, retread, steer tire, drive tire, inner dual, outer dual,
    trailer tire, front tire, rear tire, tyre wall, side wall, recap, run on rim;
    BEARING PART: engine hang, frame, rail, subframe, crossmember, axle, driveshaft, drive shaft,
    prop shaft, propshaft, u joint, universal joint, half shaft, perch, tower, control arm,
    wishbone, hitch, coupler, tow bar, tow hook, carrier bearing, spindle, leaf spring, trailing
    arm, flywheel, weld, tongue, fifth wheel, safety chain, ball mount, gooseneck, radius arm,
    shackle, spare tire, roof box, engine drop, engine fall, bumper drag, tow strap, tow rope, tow
    chain, chain, recovery strap, winch cable, winch rope, drawbar, kingpin, king pin, receiver,
    pintle, tow eye, chassis rail, chassis, cab mount, body mount, spring hanger, hanger bracket,
    leaf pack, spring eye, trailing link, swing arm, coupling, ball hitch, lower ball joint, axle
    tube, cv shaft, center bearing, tow ball, suspension arm, spring seat, strut tower, shock tower,
    u bolt, ubolt;
    TOWED: trailer, fifth wheel, gooseneck, camper, caravan, trailer hook, trailer tongue, flatbed,
    car hauler, transporter, low loader, tow dolly, dolly, horse box, horsebox, boat trailer, stock
    trailer, utility trailer, car on trailer, gooseneck trailer;
    VEHICLE: car, van, it, rig, motorhome, bus, tractor, lorry, forklift, quad, atv;
    GAS PEDAL: throttle, gas pedal, accelerator, cruise, pedal ~ gas, go pedal, loud pedal, foot
    feed, accelerate pedal, gas stay, throttle plate, throttle cable, throttle pedal;
    PARKED: parked, in p, to p, PARK BRAKE, slope, incline, driveway, in park, ramp, parked up, left
    it, in house, indoors, at curb, street, parking lot, car park, to park, into park, shift ~ park,
    got out;
    NOBODY: nobody, no one, no driver, unattended, empty seat;
    GEARS: into reverse, to reverse, into drive, in gear, into gear, out park, into neutral;
    BUSY: at speed, highway, freeway, motorway, interstate, lane, traffic, intersection, train,
    railroad, crossing, merge, overtake, rear ended, left turn, middle, semi, 60, 65, 70, 75,
    bridge, tunnel, ramp, left lane, fast lane, carriageway, roundabout, rush hour, level crossing,
    passing lane, middle lane, a1, m25, lorry behind, semi behind, truck behind, junction,
    crossroads, pulling out, turning left, turning across, third lane, trucks behind, cars behind,
    bypass, slip road, fast road;
    LIFT: jack, hoist, lift, two post, four post, stand, ramp, block, brick, cinder, cinderblock,
    stump, log, crane, cherry picker, forklift, engine hoist, chain hoist, sill, spare tire, wheel
    rim, poster, poster arm, two poster, lift arm, post pad, lift pad, cric, trolley jack, floor
    jack, scissor jack, bottle jack, axle stand, jackstand, car lift, hi lift, high lift jack, lift
    rack, pallet, paving stone, breeze block, wood block, jack stand, tree trunk, spare wheel, wheel
    ~ under sill, jack leg;
    BENEATH: under it, under car, under van, underneath, beneath, under me, go under, work under,
    get under, lie under, while under, crawl, slide under, on me, in air, under there, onto, me
    under, safe, beneath it, foot ~ under, leg ~ under, arm ~ under, head ~ under, hand ~ under, on
    top ~ me, on chest, roll out, pin, person under, tech under, dad ~ under, husband ~ under, son ~
    under, brother ~ under, somebody under, someone under;
    HOOD: hood, bonnet, second catch, secondary catch, secondary latch, front lid, engine lid,
    bonnet catch, front cover, engine bonnet, motor cover, hood cover, front hood;
    LIDS: hood, bonnet, liftgate, tailgate, hatch, trunk lid, bootlid, boot lid, decklid;
    DOORS: door, windshield, windscreen, sunroof, roof, moonroof, glass, slider, LIDS, hatch door,
    rear door, side door, passenger door, sliding door, tail gate, barn door, cargo door, ramp door,
    back door, canopy, door wont, tilt cab, camper door, trunk, trunk lid;
    PANE: glass, sunroof, moonroof, windshield, window, roof, windscreen, door glass;
    MOVING: belt, fan, pulley, liftgate, tailgate, hatch, hood, bonnet, door, window, driveshaft,
    winch, press, engine, starter, trunk, sunroof, moonroof, roof, seat, soft top, boot, bed, gate,
    shutter, auto door, power door, sliding door, power liftgate, boot lid, decklid, convertible
    roof, crank, cooling fan, radiator fan, hub, chain, gear, tail lift, liftgate lift, tailgate
    lift, lift gate, pto, tire machine, balancer, wheel, seat motor, sliding roof;
    SEAT BELT: seat belt, seatbelt, safety belt, lap belt, shoulder belt, buckle, belt web, lap
    strap, harness belt, belt buckle, belt latch, safety harness, belt tongue, safetybelt, seat
    strap, lapbelt, belt anchor;
    LIGHTS: headlight, headlamp, all light, no light, both light, low beam, rear light, head light,
    every light, brake lights, tail lights, driving lights, light aw;
    NIGHT: night, dark, pitch, tunnel, country road, back road, tonight, midnight, after dark,
    unlit, fog, foggy, dark road, lane, evening, canyon, no moon, country lane, mountain road, pitch
    black, pitch dark;
    WEATHER: ice, rain, downpour, storm, snow, sleet, blizzard, fog;
    LINE: cord, wire, cable, line, harness, plug, connector, lead, conduit, loom;
    ELECTRIC: hybrid, ev, electric car, electric van, traction battery, drive battery, phev, pack,
    plug in, bev, inverter, traction motor, e van, electric bus, electric bike, e scooter, escooter,
    scooter battery, ebike, electric scooter, battery pack, cell pack, evs, battery car;
    HIGH PART: orange cable, hybrid battery, traction battery, drive battery, battery pack, ev
    battery, inverter, service plug, service disconnect, hybrid motor, high volt, manual disconnect,
    hybrid pack, bus bar, busbar, traction motor, hybrid compressor, traction pack, orange plug, big
    battery, main battery, traction cable, orange wire, high voltage battery, orange lead, orange
    harness, orange connector, orange lines, ev pack, ev motor, hv pack, high voltage cable, drive
    unit, dc link, contactor, hv cable, power electronics, traction inverter, hybrid inverter,
    hybrid converter;
    CHARGES: charge cable, charge cord, plug handle, charge port, charge plug, wall plug, wallbox,
    wall box, extension cord, charge station, evse, charge handle, outlet, inlet, charge point,
    granny cable, charging lead, type 2, charging gun, rapid charger, wall charger, plug socket,
    home charger;
    AIRBAG: wheel bag, seat bag, curtain bag, airbag, air bag, crash bag, srs, squib, pretensioner,
    pre tensioner, belt tensioner, side curtain, inflator, curtain, live bag, undeployed, air bag
    module, driver bag, passenger bag, knee bag, door bag, steering bag, bag in steering, bag in
    dash, bag in seat, bag in wheel, bag in door;
    AIRBAG PLACE: seat, column, clock spring, steering wheel, clockspring, dash, pillar, horn pad,
    under seat;
    INDOORS: full, inside, cabin, in car, in van, interior, vent, passenger, window, heater, floor,
    seat, hatch, tailgate, trunk, sleeper, camper, come in, kid, topper, back seat, rear seat,
    through floor, through vent, through dash, cockpit, bunk, into car, into cab, inside car,
    windows up;
    CLOSED: closed garage, shut garage, garage closed, garage with door, garage door, inside garage,
    indoors, closed shop, enclosed, attached garage, snow bank, snowbank, in garage, shut shop,
    closed bay, door shut, doors closed, door down, ventilation, tent, closed door, shop door, no
    vent, no window open, no ventilation, roller door down, underground, parkade, parking garage,
    inside ~ garage, shed, barn, workshop;
    TRAVELS: trip, ride, driving, window, behind wheel, in car, heater, exhaust, muffler, tailpipe,
    hour, commute, inside, fume, cabin, garage;
    JUMPS: jumper, cable, jump, lead, clamp, booster;
    CAPS: lid, radiator, cap, coolant tank, overflow, expansion tank, reservoir, thermostat housing,
    coolant hose, bleeder, degas, header tank;
    COOLANT: boil water, boil liquid, hot oil, coolant, antifreeze, hot water, green water,
    radiator, reservoir, heater hose, heater core, hot liquid, green stuff, pink stuff, hot stuff,
    green liquid, pink liquid, green fluid, pink water, boiling stuff, rad, radiator water,
    expansion tank, header tank, hot fluid, rusty water, steam;
    FLUID: acid, coolant, gasoline, gas, fuel, diesel, antifreeze, refrigerant, freon, def,
    chemical, cleaner, ac fitting, cells, fluid, hydraulic, line, hose, brake fluid, coolant bottle,
    solvent, thinner, r134, r134a, 134a, r1234yf, 1234yf, gas charge, washer fluid, electrolyte,
    adblue, urea, degreaser, trans fluid, transmission fluid, diff oil, gear oil, power steering
    fluid, atf, carb cleaner, brake clean, brakleen, battery juice, battery water, green water, hot
    oil, radiator water, ac gas;
    TURNING: fan, pulley, drive belt, serpentine belt, flywheel, winch, driveshaft, shaft,
    alternator belt, fan belt, pto, grinder, drill, electric fan, radiator fan, crank pulley, belts,
    power take off, lathe, prop shaft, driveline, wire wheel, bench grinder, tire machine, saw;
    HANDS: LIMBS, child, myself, apprentice, kid, mechanic, somebody, someone, tech, dad, brother,
    uncle, grandad, grandpa, mum, lad;
    LIMBS: fingertip, hand, finger, leg, thumb, wrist, face, eye, skin, knuckle, toe, sleeve, chest,
    elbow, lap, arm, scarf, ponytail, palm, cheek, throat, neck, head, lung, ear, mouth, teeth,
    hair, shin, ankle, heel, forearm, forehead, nose, fingernail, scalp, hoodie, pony tail, rib,
    beard, braid;
    TIPPER: dump bed, tipper, tip bed, dump body, tipper body, bucket, loader;
    GAS BOTTLE: gas bottle, gas cylinder, cylinder gas, oxygen bottle, propane tank, propane bottle,
    welding bottle, lpg tank;
    ROADSIDE: hard shoulder, outside lane, fast lane, level crossing, railway, tracks;
    WATERS: pond, river, lake, creek, ditch, canal, ford, sea, tide, flood water, floodwater,
    flooded road, water crossing, stream, flood, reservoir lake, boat ramp, dam, surf, marsh,
    lagoon, harbor, river crossing, bay water, arroyo;
    CARRIES: sink, float, nose down, carry, sweep, fall, slide, roll, stuck, trap, up to door,
    drown, submerge, under, wash away, water in, fill up, half under, go under, in up ~ to;
    FLOODED: flood water, floodwater, flooded street, flooded road, flooded underpass, high water,
    deep water, flash flood;
    BODGE: garden hose, speaker wire, household wire, house wire, lamp cord, duct tape, electrical
    tape, zip tie, cable tie, vise grip, coat hanger, jb weld, epoxy, super glue, hose clamp, rubber
    hose, compression fitting, patch, glue, string, rope, wire up, hold ~ wire, tie up, tape up,
    tape over, penny, foil, gum, with wire, with rope, with string, tie knot, bungee, ratchet strap,
    nail, twine, baling wire, bailing wire, haywire, shoelace, zip tied, tie ~ rope, tie ~ wire,
    stick ~ nail, bubble gum, fishing line, bolt cut, coat hanger wire, hose clip, jubilee, jubilee
    clip, plumber tape, plumbing, plastic pipe, plastic hose, fish tank, garden pipe, silicone,
    sikaflex, gorilla, gaffer, masking tape, scotch tape, electrician tape, hot glue, wood screw,
    drywall screw, wood, plywood, coat rack, clothes pin, paperclip, tin foil, beer can, coke can,
    soda can, hockey tape, belt ~ hold, paracord, tie down, tie wire, fence wire, chicken wire, self
    tapping;
    HOT PART: exhaust, manifold, turbo, catalytic, converter, cat, downpipe, header, hot engine, hot
    pipe, hot metal, hot motor
"""
