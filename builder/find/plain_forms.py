"""Words in the form that the signs of danger have them in.

In: words as typed. Out: their stems in plain form (`smelt` is `smell`, `won't` is `not`), without
the small words. Regular endings come off as everywhere. The page does the same with the lists from
here (`search-safety.js`).
"""

from collections.abc import Iterable
from functools import cache

from builder.find.word_forms import stem_word

# They are passed over.
SMALL_WORDS = """
    a am an and are be been being by completely did do does even had has have having he her his
    i im is its ive just kind like literally my of our quite really she so some that
    the their these they this those totally very was we were would you your
"""

# Irregular forms behind the one that stands for them.
PLAIN_FORMS = {
    "not": """
        aint arent barely cannae canna didnae dinnae doesnae isnae wasnae willnae winnae wouldnae
        cannot cant couldnt didnt doesnt dont hardly isnt never refuses scarcely unable wasnt werent
        wont wouldnt
        """,
    "no": "nae lose loses losing lost without zero",
    "bend": "bent",
    "bite": "bit bitten",
    "blow": "blew blown",
    "break": "broke broken",
    "burn": "burnt",
    "burst": "bust busted bursted",
    "catch": "caught",
    "come": "came",
    "creep": "crept",
    "drive": "driven drove",
    "fall": "fallen fel fell",
    "fly": "flew flies flown flung",
    "forget": "forgot forgotten",
    "freeze": "froze frozen",
    "get": "got gotten",
    "give": "gave given",
    "die": "died dies dying",
    "go": "goes going went",
    "handbrake": "ebrake",
    "hold": "held",
    "keep": "kept",
    "kid": """
        babies baby boy boys children daughter dog grandbaby grandkid grandkids girl girls
        granddaughter grandson infant kiddo kids nephew niece puppy son sons toddler toddlers twins
        """,
    "leave": "left",
    "let": "lets letting",
    "lie": "laid lay laying lying",
    "lock": "lockup",
    "run": "ran running",
    "shake": "shook",
    "shatter": "shattered",
    "shoot": "shot",
    "sink": "sank sunk",
    "slide": "slid",
    "smell": "smelt",
    "spin": "spun",
    "spring": "sprang sprung",
    "stand": "stood",
    "stick": "stuck",
    "stink": "stank stunk",
    "strike": "struck",
    "sweep": "swept",
    "swell": "swole swollen",
    "swing": "swung",
    "take": "taken took",
    "tear": "tore torn",
    "through": "thru",
    "throw": "threw thrown",
    "tire": "tyre tyres tyer tyers",
    "hang": "hinging hingin hung",
    "floor": "flair flor",
    "deploy": "deployed deploys deploying",
    "zap": "zapped zapping zaps",
    "van": "minivan pickup suv truck vehicle wagon",
    "rear": "reared",
    "wake": "woke",
}


@cache
def plain_forms() -> dict[str, str]:
    """Irregular forms, each with the one that stands for it; "" of small words."""
    forms = dict.fromkeys(SMALL_WORDS.split(), "")
    for plain, others in PLAIN_FORMS.items():
        forms |= dict.fromkeys(others.split(), plain)
    return forms


def plain_stems(words: Iterable[str]) -> list[str]:
    """Stems in their plain form, without the small words."""
    plain = (plain_forms().get(word, word) for word in words)
    return [stem_word(word) for word in plain if word]
