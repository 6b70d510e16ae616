"""Words that make one modifier before a noun, and are hyphened there; all from memory of the three manuals."""

from __future__ import annotations

TWO_BEFORE_NOUN = frozenset(
    (first, second)
    for firsts, seconds in (
        ("long short medium near", "term"),
        ("long", "lasting"),
        ("long short", "lived distance range"),
        ("low", "paid cost"),
        ("high low", "speed risk tech"),
        ("follow", "up"),
        ("ever never", "changing growing increasing ending present expanding"),
        ("good", "looking"),
        ("low high middle", "income"),
        ("low high", "quality level profile ranking paying"),
        ("middle working upper lower", "class"),
        ("full part", "time"),
        ("large small", "scale"),
        ("wide far", "ranging reaching"),
        ("so", "called"),
        ("decision policy", "making"),
        ("problem", "solving"),
        ("world", "famous renowned class"),
        ("first second third", "person"),
        ("first second third", "rate"),
        ("old", "fashioned"),
        ("open", "ended minded"),
        ("narrow broad absent", "minded"),
        ("thought", "provoking"),
        ("time", "consuming"),
        ("labour labor", "intensive"),
        ("award prize", "winning"),
        ("right left", "wing"),
        ("cross", "sectional cultural"),
        ("user", "friendly"),
        ("cost", "effective"),
        ("family", "owned run"),
        ("state government privately", "owned run funded"),
        ("man self", "made"),
        ("in", "depth house"),
    )
    for first in firsts.split()
    for second in seconds.split()
)
"""Two words that are hyphened before a noun in MLA, APA and Chicago alike."""
MORE_BEFORE_NOUN = frozenset(
    {
        ("face", "to", "face"),
        ("day", "to", "day"),
        ("state", "of", "the", "art"),
        ("up", "to", "date"),
        ("out", "of", "date"),
        ("step", "by", "step"),
        ("door", "to", "door"),
        ("case", "by", "case"),
        ("hand", "to", "hand"),
        ("one", "to", "one"),
        ("matter", "of", "fact"),
        ("run", "of", "the", "mill"),
        ("larger", "than", "life"),
        ("word", "for", "word"),
        ("behind", "the", "scenes"),
        ("around", "the", "clock"),
    }
)
ENDED = frozenset(
    "blooded hearted eyed haired handed headed legged minded sided skinned tempered footed faced sighted seated"
    " rooted dimensional fetched".split()
)
"""Words that stand only in compounds: *cold-blooded*."""
LANGUAGES = frozenset("english french german spanish italian arabic russian chinese portuguese dutch turkish".split())
KIN = frozenset("mother father sister brother son daughter mothers fathers sisters brothers sons daughters".split())
YEARS = frozenset("first second third fourth final".split())
PARTICIPLES = frozenset("based related oriented driven led owned funded run sponsored controlled dependent".split())
"""Those that a noun qualifies: *community-based*."""
WELL = frozenset({"well", "ill"})
WELL_WHAT = frozenset(
    "known established defined documented written advised respected educated paid intentioned meaning trained"
    " developed designed built informed researched planned founded prepared timed kept dressed read organized"
    " organised received regarded connected suited equipped balanced deserved fed off studied understood"
    " supported worn loved".split()
)
"""After *well* and *ill*."""
SELF = frozenset(
    "esteem confidence confident respect control discipline conscious consciousness aware awareness interest"
    " image worth pity defence defense doubt reliance reliant sufficient sufficiency expression evident taught"
    " made driving employed employment report reported reports identity help knowledge deception government"
    " portrait portraits destructive harm sacrifice determination fulfilling fulfilment preservation efficacy"
    " regulation assessment centered centred righteous absorbed contained assured imposed described proclaimed"
    " appointed".split()
)
"""After *self*, always with a hyphen."""
EX = frozenset(
    "president husband wife soldier soldiers minister convict convicts prisoner prisoners slave slaves boyfriend"
    " girlfriend wives husbands officer officers chairman director member members mayor".split()
)
PREFIXES = frozenset("non pre anti multi co semi inter intra ultra neo".split())
"""Beginnings that are no words, and stand alone in no good sentence."""
AFTER_POST = frozenset("war modern colonial industrial graduate secondary".split())
"""After *post*, which is a word too."""
OPEN_IN_BRITAIN = frozenset("non anti co post pre semi".split())
"""Beginnings that British dictionaries keep apart with a hyphen where American ones close up."""
UNITS_BEFORE_NOUN = frozenset(
    "year month week day hour minute second mile page point storey story room pound kilometre kilometer metre"
    " meter foot inch acre step part way volume".split()
)
"""Measures that make one modifier with their number: *a ten-year plan*."""
LATIN = frozenset("sequitur grata sine qua plus ultra obstante compos rata bono est placet licet fiction".split())
TENS = frozenset("twenty thirty forty fifty sixty seventy eighty ninety".split())
NUMBERS = frozenset(
    "two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen"
    " eighteen nineteen hundred thousand".split()
)
UNITS = frozenset(
    "one two three four five six seven eight nine first second third fourth fifth sixth seventh eighth ninth".split()
)
ORDINALS = frozenset(
    "tenth eleventh twelfth thirteenth fourteenth fifteenth sixteenth seventeenth eighteenth nineteenth"
    " twentieth".split()
)
