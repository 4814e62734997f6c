"""The words by which a question of a check is taken apart: verbs, and words for how a part is.

In: nothing. Out: `VERBS`; `STATES`, the surest first: the first of them ends the subject. `NOUNS`
are pairs of words in which such a word is part of a noun: `test light`, `leak test`.
"""

VERBS = frozenset((
    "accept", "agree", "answer", "ask", "bind", "block", "break", "burn", "catch", "change",
    "charge", "click", "come", "command", "connect", "crank", "deliver", "do", "dose", "drag",
    "drain", "drip", "drop", "escape", "explain", "feed", "feel", "finish", "fire", "fit", "flash",
    "flicker", "flow", "follow", "get", "give", "glow", "go", "grip", "happen", "have", "hear",
    "hold", "idle", "initialize", "jump", "keep", "leak", "leave", "let",
    "lift", "light", "list", "look",
    "make", "match", "misfire", "move", "name", "need", "open", "pass", "prove", "pull", "pulse",
    "quit", "rattle", "reach", "read", "respond", "return", "rise", "run", "say", "see", "set",
    "share", "shift", "show", "shut", "sink", "slide", "smell", "smooth", "spin", "stall", "start",
    "stay", "still", "stop", "take", "test", "touch", "turn", "work",
))  # fmt: skip
STATES = (
    frozenset((
        "OK", "above", "balanced", "bent", "black", "blocked", "broken", "clean", "clear",
        "clogged", "colder", "commanded", "cool", "cracked", "cupped", "current", "damaged",
        "dead", "dim", "dripping", "dry", "empty", "equal", "equally", "even", "ever", "filled",
        "firm", "free", "full", "glued", "good", "holding", "hot", "hotter", "installed", "intact",
        "kinked", "latched", "leaking", "listed", "loose", "loud", "low", "made", "more", "normal",
        "off", "one", "open", "passed", "plugged", "released", "replaced", "right", "rough",
        "round", "saved", "sealed", "set", "slow", "smooth", "snug", "softer", "still", "stored",
        "straight", "strong", "swollen", "there", "tight", "torqued", "trained", "warm", "wet",
        "wettest", "worked", "worn", "wrong",
    )),
    frozenset(("between", "too", "within")),
    frozenset(("on", "out")),
    frozenset(("a", "at", "the")),
)  # fmt: skip
NOUNS = frozenset((
    ("a", "light"), ("a", "test"), ("brake", "lights"), ("charge", "air"), ("charge", "cable"),
    ("dosing", "test"), ("full", "battery"), ("leak", "test"), ("light's", "glow"),
    ("noid", "light"), ("on", "the"), ("one", "cylinder"), ("one", "side"), ("one", "tire"),
    ("quarter", "full"), ("same", "light"), ("security", "light"), ("slide", "pins"),
    ("start", "button"), ("test", "drive"), ("test", "fluid"), ("test", "light"), ("test", "load"),
    ("the", "full"), ("the", "good"), ("the", "light"), ("the", "misfire"), ("the", "pull"),
    ("the", "right"), ("the", "set"),
))  # fmt: skip
PAST_FORMS = {"break": "broke", "run": "ran", "go": "went", "leave": "left"}
