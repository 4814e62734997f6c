"""Things of a vehicle that are the subject wherever they are named, area by area.

In: nothing. Out: `LONE_THINGS`, as they are typed, parted by commas: what a look about a vehicle
shows, from its glass to its load bed. `trade_words.py` reads them beside `lone_parts.py`, which has
them by the letter. Common practice of the trade, no source.
"""

_GLASS = """
    rear slider, sliding rear window, sliding window, slider window, slider, wind deflector,
    window deflector, vent visor, quarter window, pitted windshield, rock hit, blind spot
    mirror, rear view, mirror housing, mirror arm, mirror bracket, windshield sticker, window
    crank, crank window, roll up handle, haze inside, greasy haze, film inside, mirror glass,
    side mirror, regular gas
"""

_LAMPS = """
    overhead light, ceiling lights, roof light, cab light, tag light, plate light, clearance
    light, position light, sidelight, light strip, led strip, led bar, underglow, halo, bulb
    out, brake bulb, stop lamp, turn bulb, cloudy, hazy, headlight wiper, headlight adjust,
    headlight adjuster, aim headlights, aim the headlights, tail light lens, warning triangle,
    flashers, blinker clicks, signal clicks
"""

_SEATS = """
    recline, seat bottom, seat control, seat button, bucket seat, seat base, seam, stitching,
    cloth seat, seat belt guide, seat belt twisted, belt wont retract, belt slow, buckle button,
    frayed, seat cloth
"""

_CABIN = """
    dash pad, dash plastic, dash vent, air outlet, only blows at, only blows on, only blows out,
    blows at feet only, vent slat, vent fin, vent door, vent flap, power plug, 12v plug,
    lighter, button worn, sticky buttons, button labels, pedal cover, pedal rubber, floor vinyl,
    floor board cover, cigarette, cigar, mouse, rodent, rat, skunk, vomit, puke, spilled,
    spilled milk, pet smell, gym, vinegar
"""

_SOUND_AND_SCREEN = """
    am radio, satellite, podcast, music, song, playlist, no sound, sound quality, volume, fader,
    call quality, contacts, text messages, maps, software update, over the air, reverse picture,
    backup picture, back up picture, backing camera, cd changer, tape deck, cassette deck, rear
    screen, screen froze, frozen screen, screen black, buttons on the wheel, wheel buttons,
    speech, antenna ball, hiss from the speaker
"""

_INSTRUMENTS = """
    gauge cluster, speedometer, gas hand, gas reading, tank gauge, miles to empty, range to
    empty, hour meter, average mpg, ambient, thermometer reads, maintenance required,
    maintenance reminder, maintenance light, maintenance message, service due, service soon,
    service interval light, oil change light, oil change message, change oil, change engine oil,
    oil reset, reset the oil, oil minder, reset service, reminder light, inspection due, chime
    wont stop
"""

_BODY = """
    door pull, door jamb, door stay, weather seal, undercoat, rustproofing, rusted out, rot,
    rotted out, bed floor, rocker, grill guard, brush guard, bull bar, nerf bar, hood wont shut,
    trunk wont stay up, trunk wont stay open, hatch wont stay up, liftgate wont stay up,
    tailgate wont stay up, port door, port cover, tailgate handle, truck tailgate, tail gate
    handle, license bracket, fuel filler door, door wont stay open, door hold open, hail damage,
    body damage, deer
"""

_LOCKS_AND_KEYS = """
    key cut, cut a key, cut keys, extra key, key copy, copy of the key, key made, make a key,
    make me a key, key blank, key shell, key case, fob case, fob cover, fob shell, fob range,
    locked my keys, keys locked, locked keys, locked out, lockout, key broke, key broken, broken
    key, key broke off, bent key, hard to turn in the door, tumbler, rekey, unlock button, lock
    pin, key sticks
"""

_SENSORS_AND_HELP = """
    parking sonar, proximity beeper, backup beeper, bumper sensor, lane change, speed limiter,
    seat reminder, rear seat reminder, tilt steering, memory mirrors, auto hold
"""

_LOAD_AND_TRUCK = """
    box truck, air brakes, air dryer, air tank, slack adjuster, glad hands, engine brake,
    exhaust brake, retarder, bunk, hydraulics, hydraulic pump, outrigger, mower, spare cable,
    spare holder, tire carrier, bike carrier, cargo straps, bed extender, cap window, generator
    set, reefer unit, cargo light
"""

_ENGINE_AND_DRIVE = """
    hood prop, leak down the block, oil seep, oil weep, gear whine, clutch adjust, puddle of
    oil, engine paint, snorkel, block heater plug, winter front, oil cooler leak, coolant flush,
    exhaust, bed tilt, arrow light
"""

_ASKED = """
    which oil, what oil, which fluid, ac buttons
"""

LONE_THINGS = ",".join(
    (
        _GLASS, _LAMPS, _SEATS, _CABIN, _SOUND_AND_SCREEN, _INSTRUMENTS, _BODY,
        _LOCKS_AND_KEYS, _SENSORS_AND_HELP, _LOAD_AND_TRUCK, _ENGINE_AND_DRIVE, _ASKED,
    )
)  # fmt: skip
