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

_VERBS = (
    "accept account acknowledge add address adduce admit advance advise advocate affirm agree allege allow "
    "analyse analyze announce answer anticipate appear apply appreciate argue ascribe ask assert assess associate "
    "assume attribute believe blame call capture caution challenge characterise characterize chart cite claim "
    "clarify classify collect combine comment compare complain concede conceive conclude concur confirm connect "
    "consider construe contend contest contradict contrast contribute convey count counter credit criticise "
    "criticize date deal declare deduce defend define demonstrate deny depict derive describe detail detect "
    "develop devise differ disagree discern discover discuss dismiss dispute distinguish divide document doubt "
    "draw echo elaborate elucidate emphasise emphasize employ endorse enumerate establish estimate evaluate "
    "examine exemplify explain explore expose express extend favor favour feel find focus follow forecast frame "
    "gather generalise generalize give go grant highlight hint hold hypothesise hypothesize identify illustrate "
    "imagine imply indicate infer insist interpret interview introduce investigate invite invoke issue judge "
    "justify label lament lay link list locate look maintain make map mean measure mention model name narrate "
    "neglect note notice object observe offer oppose outline paint paraphrase perceive pinpoint place point "
    "portray pose posit postulate praise predict prefer present presume presuppose proclaim produce propose prove "
    "provide publish put question quote raise read reaffirm realise realize reason recall reckon recognise "
    "recognize recommend record recount refer reflect refute regard reiterate reject relate rely remark remind "
    "repeat reply report represent reprint reproduce request resolve respond restate reveal review revisit say "
    "see seek set show situate speak specify speculate state stress study suggest summarise summarize support "
    "suppose surmise survey suspect take teach tell term test testify theorise theorize think trace track treat "
    "trust turn underline underscore understand urge use utilise utilize view voice warn weigh witness wonder "
    "write"
).split()
_IRREGULAR = (
    "argued drew found gave held laid led made meant put read said saw set showed shown spoke sought taught "
    "thought told took understood went wrote"
).split()


def _forms(verb: str) -> tuple[str, ...]:
    """The forms of a regular verb in which an author is reported."""
    if verb.endswith("e"):
        return verb, f"{verb}s", f"{verb}d", f"{verb[:-1]}ing"
    if verb.endswith("y") and verb[-2] not in "aeou":
        return verb, f"{verb[:-1]}ies", f"{verb[:-1]}ied", f"{verb}ing"
    return verb, f"{verb}s", f"{verb}es", f"{verb}ed", f"{verb}ing"


REPORTING = frozenset(form for verb in _VERBS for form in _forms(verb)) | frozenset(_IRREGULAR)
"""Verbs with which an author is reported, in every form."""
_BESIDE_VERB = frozenset("also once first later further never too has have had does do did could would".split())
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


BEFORE_AUTHOR = re.compile(
    r"\b(?:according\s+to|see(?:\s+also)?|cf\.|following|per|pace|unlike|whereas)\s+$", re.IGNORECASE
)
"""Words after which an author may be named."""

COUNTED = re.compile(
    r"\b(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen|seventeen|"
    r"eighteen|nineteen|(?:twen|thir|for|fif|six|seven|eigh|nine)ty(?:-\w{3,5})?|hundred|thousand|million|equation"
    r"|eqs?\.|"
    r"figures?|figs?\.|tables?|model|hypothesis|step|stage|example|item|clause|rule|section|chapter|type|no\.|number|"
    r"nos\.|question|case|point|condition|phase|aged?)\s*$",
    re.IGNORECASE,
)
"""Words before a number in parentheses that say what it counts."""
