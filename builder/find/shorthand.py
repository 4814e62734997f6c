"""What people type short, written out.

In: the words of a query as typed. Out: the same, each short form as the words that it stands for.
The page does the same with the list from here (`search-query.js`). Common practice of the trade, no
source.
"""

from collections.abc import Iterable
from functools import cache

# What is meant, and how it is written short on repair orders and on phones. A slash between single
# letters is no word of its own: `w/o` is `wo`.
SHORTHAND = {
    "brake": "brk brks bks",
    "braking": "brkng brkg braken",
    "pedal": "ped pdl peddal peddle pedle petal",
    "trailer": "trlr tlr",
    "headlight": "hdlp hdlps hdlt hdlts hdlmp headlite headlites",
    "light": "lt lts ltg lite lites lmp lmps",
    "windshield": "ws wshld windsheild winshield windsheld",
    "no start": "ns",
    "crank no start": "cns",
    "says": "sez",
    "overheats": "ovht",
    "not working": "inop dnw",
    "key on engine off": "koeo",
    "engine running": "koer",
    "module": "mod mdl",
    "assist": "asst",
    "forward": "fwd",
    "forward collision warning": "fcw",
    "lane keep": "lka ldw lks",
    "emergency braking": "aeb",
    "parking brake": "epb pbrake pkbrk",
    "switch": "sw swt",
    "circuit": "ckt",
    "ground": "gnd grnd",
    "connector": "conn",
    "check": "chk chkd",
    "check engine light": "cel",
    "driver": "drvr drv",
    "week": "wk",
    "transmission": "trans xmsn",
    "battery": "btry batry batery battry",
    "replaced": "repl replcd rplcd",
    "installed": "inst instld",
    "service": "svc",
    "inspection": "insp",
    "power": "pwr",
    "intermittent": "intermit intmt intrmt",
    "accelerating": "accel",
    "slowing down": "decel",
    "vehicle": "veh",
    "passenger": "psgr pasgr",
    "front": "frt",
    "left front": "lf",
    "right front": "rf",
    "left rear": "lr",
    "right rear": "rr",
    "left": "lh",
    "right": "rh rite",
    "highway": "hwy hiway fwy mwy mway",
    "vibration": "vib vibr vibs",
    "vibrates": "vibes",
    "wheel": "weel wheal whl whls",
    "with": "w wi",
    "without": "wo",
    "because": "bc cuz coz bcuz",
    "and": "n nd",
    "your": "ur",
    "through": "thru",
    "something": "smth sumthin sth",
    "speed": "spd",
    "voltage drop": "vdrop",
    "charge": "chg chrg",
    "charging": "chgng chrgng",
    "hybrid": "hyb hibrid",
    "message": "msg msgs",
    "unavailable": "unavail",
    "level": "lvl",
    "coolant": "clnt coolent",
    "weekend": "wknd wkend",
    "months": "mos",
    "little": "lil",
    "steering": "str strg stg steerin stearing",
    "airbag": "abag",
    "engine": "eng engin",
    "exhaust": "exh exhst exaust exhuast",
    "smoke": "smk smoak smok",
    "smoking": "smkg smkng",
    "throttle": "thrtl thr",
    "parked": "prkd pkd",
    "radiator": "rad",
    "hydraulic": "hyd",
    "suspension": "susp",
    "leaking": "lkg lkng",
    "burning": "brng burnin",
    "electrical": "elec",
    "heated": "htd",
    "fuel": "feul fuell fule",
    "gas": "gass gaz",
    "column": "collum collumn colum",
    "brakes": "braks",
    "sick": "sik",
    "vapor": "vapour vaper",
    "out": "oot",
    "off": "aff",
    "down": "doon",
    "to": "tae",
    "over": "ower",
    "from": "frae",
    "after": "efter",
    "nothing": "naethin naething nowt nada nuthin nuttin",
    "volume": "vol",
    "wide open throttle": "wot",
    "ball joint": "bj",
    "door": "dr drs",
    "night": "nite",
    "filter": "fltr",
    "holder": "hldr",
    "actuator": "actr",
    "button": "btn btns",
    "warranty": "warr wty",
    "garage": "grg",
    "": "cust custs cs cx sts rn lol lmao lmfao omg tbh ngl idk fr af smh bruh bro",
}


@cache
def short_forms() -> dict[str, tuple[str, ...]]:
    """Each short form with the words it stands for; none for what says nothing."""
    return {
        short: tuple(meant.split()) for meant, each in SHORTHAND.items() for short in each.split()
    }


def write_out(words: Iterable[str]) -> list[str]:
    """Put in the place of each short form what it stands for."""
    return [meant for word in words for meant in short_forms().get(word, (word,))]
