"""Common English words: those that say nothing, those that deny, those that say little.

In: nothing. Out: sets of words, folded as `word_forms` folds what is typed. Words that the trade
uses with a meaning of its own (run, start, dead, light, drop) are in none of them.
"""


def _word_set(text: str) -> frozenset[str]:
    return frozenset(text.split())


# They stay in their places for phrases such as "on and off", and count nothing.
STOP_WORDS = _word_set(
    """a about after again also always am an and are around as at be been before being bit but
    by came car cars client come comes coming could customer did do does doing done during
    even ever fine for from get gets getting go goes going gone got had has have having he
    her here his how i if in into is it its ive just keep keeps kept little longer may me
    mine my near need needs now of ok okay on only onto or our please properly quite really
    said says she should since so some stay stayed stays still suddenly than that the their
    them then there these they this those through to too truck under until up us van vehicle
    vehicles very was we well were what when whenever where which while who why will with
    would yet you your"""
)

# Each is bound to the next word that says something.
NEGATIONS = _word_set(
    """aint arent cannot cant couldnt didnt doesn doesnt dont dosent dosnt hasnt havent isnt neither
    never no non nor not unable wasnt werent without wont wouldnt"""
)

# A query in whole sentences is full of them. They count little, and are never taken for a
# misspelled word of the trade (`good` is no `hood`).
EVERYDAY_WORDS = _word_set(
    """
    able above across actual actually advice afternoon afterwards against ago agree all almost
    alone along already alright although amount annoying another answer any anybody anyhow anymore
    anyone anything anyway anywhere apart approx approximately area aside ask asked asking asks
    aunt autumn available away awful back bad badly basically because behind believe below besides
    best bet better between big bigger bits blame bloke bloody book boss both bother bought boy
    boyfriend bring bringing brings broke broken brother brought built business busy buy buying
    call called calling calls care carry case cause caused causes certain chance change changed
    cheap check checked child children city clean clearly clever clue college common company
    complete completely considering correct correctly cost costs country couple course crap crazy
    cup currently dad dads damn darn date day days deal dear decide decided definite definitely
    degree degrees difference different dinner direct directly dodgy double doubt downtown drink
    driver dude due dunno each earlier early easily easy eat eh eight eighty either eleven else
    end ended ending ends enough entire especially etc evening eventually every everybody everyone
    everything everywhere exact exactly example except expect expected expensive explain extra eye
    eyes fact fair fairly family far farm fault faults faulty feel feeling feels felt few fifteen
    fifty figure figured final finally find finding finds five folks follow following food foot
    forgot form forty forward found four fourth friday friend friends fully fun funny garage gave
    general generally gentleman gently girl girlfriend give given gives giving glad god gone gonna
    good gotta grand great group grow guess guy guys half hand handed handing handy happen
    happened happening happens happy hardly hate hear heard hello help helped helping hence here
    hers herself hey hi himself history home honest honestly hope hoped hoping horse hour hours
    house however hrs hundred hurry husband idea ideas im imagine immediately important impossible
    inch inside instead interested into ish issue issues itself job jobs join kid kids kilometre
    kilometres kind kinda km know knowing known knows lad ladies lady land large last lately later
    laugh learn least leave leaves leaving less let lets letter life like liked likely likes list
    listen literally live lives living local lol london lonely look looked looking looks lot lots
    love lovely luck lucky lunch mad main mainly make makes making man manage managed many mark
    market mate mates matter maybe mean means meant meet men mention met metre metres mid middle
    mile miles million mind mins minute minutes mom moment monday money month months mood more
    most mostly mother move much mum mums must myself name nearby nearly neighbor neighbour new
    news next nice nine ninety nobody noone nope normal normally nothing notice noticed noticing
    nowhere number numbers obvious obviously occasional occasionally odd off office often old
    older once one ones online opinion opposite order ordinary other others otherwise ought our
    ours out outside own owner paid paper parent parents part particular particularly partly past
    pay paying people per percent perfect perfectly perhaps period person phone pick picked
    picture piece place places plain plan plenty pls plus point possible possibly pounds present
    pretty previous previously price probably problem problems proper properly put puts putting
    quarter question quick quickly quid rather read ready real realise realize reason reasonably
    recent recently reckon reckons regular regularly remember reply rest result ridiculous road
    roads roughly round rubbish sad safe sale same sat saturday saw say saying school season
    second seconds secs see seeing seem seemed seems seen sees self sell send sense sent serious
    seriously set seven seventy several shall show showed showing shown shows sigh silly similar
    simple simply single sir sister site situation six sixty slight slightly small sold some
    somebody somehow someone something sometime sometimes somewhat somewhere son soon sorry sort
    sorts sound sounds special spent spot state step stock store story straightaway strange street
    stuff stupid such suggest summer sunday super suppose supposed sure take taken takes taking
    talk talking tell telling tells ten tend tends term terrible test text thank thanks thing
    things think thinking thinks third thirty though thought thousand three throughout thursday
    till time times tiny today together told tomorrow tonight took total totally toward towards
    town toy trouble true try trying tuesday twelve twenty twice two type ugh uncle understand
    unfortunately unless unlike unsure upon use useful using usual usually various via visit wait
    waiting wanna want wanted wants wasted watch way ways wednesday wee weird went west whatever
    whats wherever whether whichever whoever whole whom whose wife wild wish woman wonder
    wondering word words work worked works world worried worry worse worst worth wow write writing
    written wrong yard yeah year years yep yes yesterday yet young yours yourself yrs"""
)
