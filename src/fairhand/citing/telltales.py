"""Words that tell citations from what only looks like them.

**Source**: common practice.
"""

from __future__ import annotations

import re

MONTHS = "January February March April May June July August September October November December".split()
MONTH = rf"(?:{'|'.join(MONTHS)}|Jan\.?|Feb\.?|Mar\.?|Apr\.?|Jun\.?|Jul\.?|Aug\.?|Sept?\.?|Oct\.?|Nov\.?|Dec\.?)"
"""A month, as part of a pattern."""

CALENDAR = frozenset(
    "january february march april may june july august september october november december jan feb mar apr jun jul aug "
    "sep sept oct nov dec monday tuesday wednesday thursday friday saturday sunday spring summer autumn fall winter "
    "christmas easter michaelmas".split()
)
"""Words beside a year that make it a date, folded."""

OPENERS = frozenset(
    "a about above accessed according after all also although an and approximately archived around as at because "
    "before between both born but by cf circa copyright credit cited c ca compare conversely created died during "
    "e each early equation est established every finally first for founded from further hence here how however if "
    "in indeed instead into its it late later like likewise mean meanwhile moreover nevertheless no nonetheless "
    "nor not note now of on once only opened or other our over page per photo photograph published reprinted "
    "reviewed revised several similarly since so some source still such suppose than that the their then there "
    "therefore these they this those though through thus to total translated under unlike until updated upon "
    "using we were what when where whereas whether which while who whose why with within without year yet".split()
)
"""Words with which a sentence, or a remark in a parenthesis, may open: no name begins with them."""

PRONOUNS = frozenset("he she it they we you i one who both neither many most few none nobody everybody".split())
"""Words that speak of somebody named before, or of nobody in particular: no author has such a name."""

LABELS = frozenset(
    (
        "act addendum annex apollo appendix article attachment band block book box case chapter chart class "
        "clause code col column condition diagram division edition episode eq equation event example exercise "
        "exhibit experiment fig figs figure figures form format formula game general gen grade graph group "
        "highway hypothesis illustration image interview issue item kilometre level line lines list map mark "
        "method mission mode model module no number observation option order page pages panel par para part "
        "paragraph participant period phase photo picture plate player point problem proposition psalm question "
        "ref region room route rule sample scene scenario scheme season section sections sec sentence series "
        "session set slide stage step stratum strategy student study sub subject supplement table tables task "
        "team test theorem tier topic trial type unit variable variant verse version vol volume wave week windows "
        "world year zone text texts file files data dataset movie video supporting supplementary supplemental age "
        "ages n p r t z f df sd se ci m"
    ).split()
)
"""Words before a number that make it that thing's own number, folded."""

EVENTS = frozenset(
    "accord act agreement amendment armistice ball battle bill blitz boycott census championship code coup "
    "conference congress constitution convention cup crisis decision declaration decree directive disaster "
    "earthquake edict election epidemic exhibition expedition famine festival fire flood games genocide gp "
    "hearing hurricane invasion jubilee law laws massacre mutiny olympics order outbreak pact pandemic plague "
    "protocol raid rebellion referendum regulation regulations reign revolt revolution riot rising rule siege "
    "statute statutes storm strike summit tour treaty trial uprising v war wars world".split()
)
"""Words that end the name of an event or a law, whose year follows it in parentheses."""

_VERBS_OF_SAYING = (
    "acknowledge add admit advise advocate affirm agree allege analyse analyze announce answer argue ascribe ask "
    "assert assess assume attribute believe caution characterise characterize cite claim clarify classify comment "
    "compare complain concede conceive conclude concur confirm consider construe contend contest contradict "
    "criticise criticize declare deduce deny disagree discern discuss dismiss dispute doubt elaborate elucidate "
    "emphasise emphasize endorse enumerate estimate explain generalise generalize hypothesise hypothesize infer "
    "insist interpret interview investigate judge justify lament maintain mention note object observe outline "
    "paraphrase pinpoint posit postulate praise predict presume presuppose proclaim propose quote reaffirm realise "
    "realize reason reckon recommend recount refute regard reiterate remark remind repeat reply report respond "
    "restate review say speculate state stress suggest summarise summarize suppose surmise suspect testify theorise "
    "theorize think understand urge warn wonder write"
).split()
"""What nobody and nothing does but somebody who writes or speaks."""
_OTHER_VERBS = (
    "accept account address adduce advance allow anticipate appear apply appreciate associate blame call capture "
    "challenge chart collect combine connect contrast contribute convey count counter credit date deal defend "
    "define demonstrate depict derive describe detail detect develop devise differ discover distinguish divide "
    "document draw echo employ establish evaluate examine exemplify explore expose express extend favor favour feel "
    "find focus follow forecast frame gather give go grant highlight hint hold identify illustrate imagine imply "
    "indicate introduce invite invoke issue label lay link list locate look make map mean measure model name "
    "narrate neglect notice offer oppose paint perceive place point portray pose prefer present produce prove "
    "provide publish put question raise read recall recognise recognize record refer reflect reject relate rely "
    "represent reprint reproduce request resolve reveal revisit see seek set show situate speak specify study "
    "support survey take teach tell term test trace track treat trust turn underline underscore use utilise utilize "
    "view voice weigh"
).split()
"""What an author does, and a place, a picture or a law too: *shows*, *finds*, *takes*."""
_SAID = "argued meant said spoke taught thought told understood wrote written".split()
_DID = "drawn drew found gave given held laid led made put read seen set showed shown sought taken took went".split()


def _forms(verb: str) -> tuple[str, ...]:
    """The forms of a regular verb in which an author is reported."""
    if verb.endswith("e"):
        return verb, f"{verb}s", f"{verb}d", f"{verb[:-1]}ing"
    if verb.endswith("y") and verb[-2] not in "aeou":
        return verb, f"{verb[:-1]}ies", f"{verb[:-1]}ied", f"{verb}ing"
    return verb, f"{verb}s", f"{verb}es", f"{verb}ed", f"{verb}ing"


SAYING = frozenset(form for verb in _VERBS_OF_SAYING for form in _forms(verb)) | frozenset(_SAID)
"""Verbs of which only an author can be the subject, in every form."""
REPORTING = SAYING | frozenset(form for verb in _OTHER_VERBS for form in _forms(verb)) | frozenset(_DID)
"""Verbs with which an author is reported, in every form."""
_BESIDE_VERB = frozenset(
    "also once first later further never not only too has have had does do did could would".split()
)
_WORD_AFTER = re.compile(r"\s*,?\s*(\w+)\b")
_NEXT_WORD = re.compile(r"\s+(\w+)\b")
_MOST_BESIDE = 3


def read_reporting(text: str, at: int, end: int | None = None) -> int | None:
    """Where a verb of reporting ends that stands at ``at``, adverbs and auxiliaries before it; None where none does.

    >>> read_reporting("Lind, rightly, has argued", 4), read_reporting("Lind also has argued that", 4)
    (None, 20)
    """
    last = len(text) if end is None else end
    found = _WORD_AFTER.match(text, at, last)
    for _ in range(_MOST_BESIDE + 1):
        if found is None:
            return None
        word = found[1]
        if word in REPORTING:
            return found.end()
        if word not in _BESIDE_VERB and not (word.endswith("ly") and len(word) > len("ably")):
            return None
        found = _NEXT_WORD.match(text, found.end(), last)
    return None


STUDIES = frozenset(
    "account accounts analyses analysis argument arguments article articles chapter chapters essay essays estimate "
    "estimates experiment experiments findings interpretation investigation investigations monograph paper papers "
    "reading readings report reports research review reviews studies study survey surveys theory thesis treatment view "
    "views work".split()
)
"""What an author has made, or done, that is cited."""

NAMED_THINGS = frozenset(
    "album ballad ballet band book cantata city comedy comic concerto database dataset district documentary drama "
    "exhibition festival film films game hotel magazine movie musical newspaper novel novels opera operetta "
    "package painting palace photograph picture play plays poem poems province region romance satire satellite "
    "sculpture series ship show software sonata song songs statue steamer story suburb symphony tale theatre town "
    "tragedy trilogy vessel village".split()
)
"""Nouns that stand right before the name of a work of art, a place or a thing: *the novel Emma (1815)*."""

VERBS_OF_AN_AUTHOR = frozenset(
    form
    for verb in (
        "agree answer ask cite contradict credit criticise criticize dispute echo follow invoke paraphrase quote refute"
    ).split()
    for form in _forms(verb)
) | {"told", "tells"}
"""Verbs whose object, named with a year, is an author: *I follow Lind (2019)*."""

RANKS = frozenset("emperor empress kaiser king pope prince princess queen saint sultan tsar".split())
"""Words before the name of a ruler, whose years follow it in parentheses."""

COUNTED = re.compile(
    r"\b(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen|seventeen|"
    r"eighteen|nineteen|(?:twen|thir|for|fif|six|seven|eigh|nine)ty(?:-\w{3,5})?|hundred|thousand|million|equation"
    r"|eqs?\.|"
    r"figures?|figs?\.|tables?|model|hypothesis|step|stage|example|item|clause|rule|section|chapter|type|no\.|number|"
    r"nos\.|question|case|point|condition|phase|aged?)\s*$",
    re.IGNORECASE,
)
"""Words before a number in parentheses that say what it counts."""
