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
    never no non nor not unable wasnt werent without wont wouldnt cannae
    dinnae doesnae willnae"""
)

# A number before one of these is a distance or a time: both count nothing, as `150 miles` beside
# `100 miles` shows. A reading (`psi`, `volts`) counts.
MEASURES = _word_set(
    """mile miles mi kilometer kilometers kilometre kilometres km kms second seconds sec secs minute
    minutes min mins hour hours hr hrs day days week weeks month months year years yr yrs"""
)

# Numbers that are written out, before a distance or a time.
NUMBER_WORDS = _word_set(
    "two three four five six seven eight nine ten twelve fifteen twenty thirty"
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
    recent recently reckon reckons regular regularly remember replace replaced replacing reply
    rest result ridiculous road
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

# They count like any other word, are never taken for misspelled ones (`brown` is no `blown`,
# `hanging` no `changing`), and nothing is corrected to them. Shorter ones are never corrected.
ORDINARY_WORDS = _word_set(
    """
    above accident adult airport alive allow ambulance angry animal ankle anniversary
    annoyed apartment appear apple appointment arch arrive arriving atlas baby badge bake
    ball balloon banana banged barn base basement basket bath beach bear beard beast beauty
    bedroom beer begin beige bell bench bend bike bird birthday bite bitter blanket blast
    bleed blessing blond blood bloom blow blown blue board boat bone bonus boots border born
    borrow bottle bottom bowl brain branch brand brass brave bread breath breathe breeze
    brick bride bridge brief bright brighter brown brush brushed bucket buddy budget bull
    bumped bunch burger bury butter buzz cake camp camper camping candle candy capital card
    careful cargo cave ceiling cell century chair chalk champion character charity chart
    cheek cheese cherry chest chew chicken chief chilly chin chips chocolate choice choose
    church circle class climb cloth clothes cloud clown club coast coat coffee coin colder
    comfort concert cook cookie copper copy corn corner cottage cotton couch cough count
    couple court cousin coworker crash crawl crazy cream credit creek crew cried crime crisp
    crossed crowd crowded curb cure curl curtain curve custom cute daily dance danger dark
    daughter deaf dealership death deck deep deeper deer delay deliver dentist desert desk
    diamond dime dish dive dock doctor doll dollar donkey dozen drag drama draw drawer dream
    dress drew drove drown duck dull dumb dusty duty eagle earn east eating elbow elephant
    empty enemy energy engage enjoy equal escape event evil exam excuse exercise exhausted
    exit extreme face factory fairy fake false fame fancy fantasy farmer fast faster father
    fear feather feed feet fell fence fever field fight film finger finish fish fist flag
    flavor flesh flight flock flood floor flopping flour flower foam fold fool force foreign
    forest fork fort frame freedom fresh frog frost frosty fruit fund funeral gain gallon
    game garden garlic gate gather geyser ghost giant gift glance glimpse glue goat gold
    golf goose grain gram granddaughter grandma grandpa grandson grape grass grave gravel
    gravity gray green greet grey groceries grocery ground guard guest guide guitar guts
    habit hail hair hammer hang hanging harbor hard harder harm harvest hauling head heading
    health healthy heap heart heaven heavier heavy hedge heel height hell herd hero hide
    high hike hill hillside hint hire hobby hold hole holiday holy honey hood hook hooked
    hotel hotter huge human humid humor hungry hunt hurt husband icon insect insurance
    interstate iron island item jacket jail jazz jeans jelly jewel joke judge juice jump
    jungle junk jury kettle kick kicked kill king kiss kitchen kite knee knife knit label
    labor ladder lake lamb lane lanes language laptop larger lawn lawyer lazy leaf league
    leaning lease lemon length lesson level library lift lifting limb lime limit line lion
    liquid liquor load loan lobby locate lodge loop lord loss lost loyal luggage lumber lung
    lying magic mail male mall marble march maroon marriage mask mass match math meal meat
    medal medical medicine medium melody melon member memory mental menu merry mess metal
    microwave midnight mild milk mill minor mint mistake mobile model modern moist monkey
    monster moon moral mosquito motel motorcycle mountain mouse mouth movie muddy murder
    muscle museum music mystery nail naked narrow nation nature neat neck needle
    neighborhood nephew nerve nest night noise north nose note novel nudged nurse ocean
    offer olive onion orange orchard organ oven overhead pace pack package page paint pair
    palace palm panic pants parade park parkway parrot party pass passport paste patch path
    patient peace peach peanut pear peek pencil penny pepper pickle pile pill pillow pilot
    pine pink pipe pirate pizza plane planet plant plastic plate play pocket poem poison
    poked pole police polish polite pond pool poor porch port post potato pound powder power
    practice pray press pride priest prince print prison prize proof proud puddle puppy
    purple purse push pushing puzzle puzzled quarrel queen quest quiet quieter quilt rabbit
    raccoon race rage rain rainbow rainy raise ranch range rare razor reach receipt refuse
    region regret relax relief rent rental rescue restaurant rice rich ride riding rifle
    ring rise risk river roast robot rock roll romance roommate root rope rose rotten
    rougher royal rubber rule rural rush sail salad salmon salt sand sandwich sauce sausage
    save scale scar scare scared scene school science scissors score scraped scream seam
    seams secret seed senior sentence series serve shadow shape share sharp sheep sheet
    shelf shell shine ship shirt shoe shoes shoot shop shore short shorter shout shovel
    shower sick sidewalk silence silent silk silver sing sink skate skill skin skirt slammed
    sleep sleeping sleeve slice slope slower smart smile smoother snack snake snow snowy
    soap soccer sock soda sofa soft softer soil soldier solid song sore soul soup sour south
    space spare speak speech speed spend spice spider spirit split spoil spoke spokes spoon sport
    spray spread squeezed squelch squirrel stable stage stair stamp stand star steak steal steam
    steel stem stitch stomach stone storm stove straight stranger straw stream strength
    stress stretch strike string strip strong stubborn student studio study stuffed style
    sugar suit sunny supper surface surprise swamp swear sweat sweater sweet swim swing
    sword table tablet tail talent tall tame tank tape tapped target task taste taxi teach
    teacher team tear teeth temper tennis tent terrified thick thicker thief thin throat
    throw thumb thunder ticket tide tidy tiger tighter tile tissue title toast toilet tomato
    tongue tool tooth torch touch tough tour tower track trade tradition train trash tray
    treat tree trick tricky trip tropical trunk trust tube tugged tune turkey turquoise
    turtle twin uber ugly umbrella uniform union unique universe upset useless valley value
    vegetable vegetables victory view village vine violet visible voice vote wage wagon
    waist wake walk wall wallet warm warmer warn wash waste water wave weaker weapon weather
    wedding weed weekend weight whale wheat whip whisper white wide widow wind windy wine
    wing winter wire wise wolf wood wool worm wrap wreck wrist yanked yellow youth zebra
    zero"""
)
