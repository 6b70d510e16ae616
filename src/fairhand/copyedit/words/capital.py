"""A capital that is missing: *english*, *monday*, *i think*, a sentence that opens small.

**Source**: MLA 9, 2.91–2.99; APA 7, 6.13–6.15; Chicago 17, 8.37–8.88 (from memory); which words have their capital
everywhere is told by the dictionaries of SCOWL. What usage writes small (*french fries*) is let be.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from fairhand.copyedit.own_prose import OwnParagraph
from fairhand.language.lexicon import find_word
from fairhand.manuscript.bare import OPAQUE
from fairhand.model.span import Span

Kind = Literal["name", "pronoun", "sentence"]

_OF_NATIONS = re.compile(r"(?:ian|ean|ese|ish|ism|ist|[a-z]{3}an|islamic|nordic|hispanic|celtic)s?\Z")
_SHORT = frozenset(
    "mondays tuesdays wednesdays thursdays fridays saturdays sundays york june july iraq iran cuba peru asia mali"
    " rome oslo jews arab arabs serb serbs thai turk turks thais celts zulu maori inuit hindu hindus islam latin"
    " greek greeks irish dutch swiss czech bonn".split()
)
_SHORTEST = 5
_COUNTED = 66
"""How often a word is counted, at least, that is no word of a nation: seldom ones are of other languages."""
_BEFORE_THINGS = frozenset(
    "fries toast door doors window windows horn press dressing bread polish cheese oven roll blind blinds numeral"
    " numerals ink nut nuts sprouts delight roulette whispers measles leather bun muffin muffins breakfast".split()
)
_LEFT = frozenset("gothic bohemian caesarean cesarean manila xerox mandarin afghan gaussian boolean".split())
_BOTH = {
    "roman": "empire army law republic emperor emperors soldiers senate citizens catholic catholics world",
    "danish": "king government people army language parliament crown law writer author",
    "polish": "king government people army language parliament writer poet immigrants border author",
    "welsh": "language people government assembly writer poet parliament coast border miners",
    "catholic": "church priest priests bishop bishops faith school schools countries country minority majority",
    "protestant": "church churches reformation minority majority countries faith ministers",
    "french": "",
    "dutch": "",
    "christian": "",
    "japan": "",
    "pacific": "ocean coast islands",
    "byzantine": "empire emperor emperors church",
    "ottoman": "empire rule state army government sultan",
    "viking": "ships ship raids raid settlements settlement invasions",
    "soviet": "union government army russia era regime republic",
}
"""Words that are written small in another sense, with what follows where they are names; nothing where they nearly
always are."""
_MONTHS = ("may", "august")
_SMALL = re.compile(r"(?<![A-Za-z'’])[a-z]{3,}(?![A-Za-z])")
_ADDRESS = re.compile(rf"[@./_\\#{OPAQUE}]")
_IN = re.compile(r"\b(?:in|since|until|by|of|last|next|early|late|mid|during)\s\Z")
_MONTH_ENDS = re.compile(
    r"(?:\s+(?:1[5-9]|20)\d\d\b|\s+\d{1,2},|[.,;]|\s+(?:of\s+(?:1\d|20)\d\d|and\s+(?:june|july|april|september)))"
)
_BEFORE_I = frozenset(
    "that when what than then and but how why if as so or because whether while since until after where which"
    " think before though although".split()
)
_PRONOUN = re.compile(
    r"(?<![\w.'’*(\[-])i(?: (am|was|have|had|will|would|think|thought|believe|feel|felt|found|find|do|did|don['’]t|can"
    r"|could|want|wanted|need|know|knew|saw|see|say|said|went|go|agree|must|should|may|might|never|always|also|read|came"
    r"|got|learned|learnt|wrote|grew|argue|suggest|understand|use|used|chose|looked|asked) |['’](?:m|ve|ll|d)\b)"
)
_OPENS = re.compile(rf"(?<![.\w])([a-z]{{3,}}|{OPAQUE}\)|\))(\.) ([a-z]+(?:['’][a-z]+)?)(?= [a-z])")
_SHORTENED = frozenset(
    "etc fig figs vol vols eds esp ref refs sec min max col lib cap gen rev sen gov inc ltd viz sic ser var sub"
    " ssp spp pop lit obs est dept ave approx resp incl temp conc calc hist biol univ proc prof assoc dist chap"
    " chaps ext intl natl misc trans orig eqn eqns suppl dim diam aff cit abbr nov ann bull sect ibid anon lbs"
    " ins hrs mins secs yrs pts gal gals doz oz tsp tbsp pcs avg amt qty hdqrs capt lieut sgt hon esq comp illus"
    " narr perf dir intro pref app apps arr adapt cont contd abr aug biog bibliog def prop props subst sing plur"
    " masc fem neut pron adj adv prep conj interj obj subj phr syn ant".split()
)


@dataclass(frozen=True, slots=True)
class SmallLetter:
    """A word that wants a capital."""

    span: Span
    """Its place in the draft."""
    instead: str
    kind: Kind


def find_small_letters(own: OwnParagraph, surnames: Collection[str] = ()) -> Iterator[SmallLetter]:
    """The words of a paragraph that want a capital.

    Args:
        own: A paragraph of the writer's own prose.
        surnames: Names of the authors in the list of sources.

    >>> own = OwnParagraph("On monday i saw the english coast. it rained.", 0, ())
    >>> [found.instead for found in find_small_letters(own)]
    ['Monday', 'English', 'It']
    """
    for start, instead, kind in sorted({*_names(own.text, surnames), *_pronouns(own.text), *_openings(own.text)}):
        yield SmallLetter(Span(start, start + len(instead)).shifted(own.start), instead, kind)


def _names(text: str, surnames: Collection[str]) -> Iterator[tuple[int, str, Kind]]:
    for found in _SMALL.finditer(text):
        word = found[0]
        if not (_is_name(word) or word in _BOTH or word.capitalize() in surnames):
            continue
        before, after = text[max(0, found.start() - 12) : found.start()], text[found.end() : found.end() + 40]
        if _ADDRESS.search(before[-1:]) or (_ADDRESS.match(after) and after[:1] != ".") or re.match(r"\.\w", after):
            continue
        whole = before[-1:] != "-" and after[:1] != "-"
        if (whole or _OF_NATIONS.search(word)) and _is_name_here(word, before, after):
            yield found.start(), word.capitalize(), "name"


@lru_cache(maxsize=8192)
def _is_name(word: str) -> bool:
    """Whether a word in small letters has its capital everywhere."""
    if word in _LEFT or word in _MONTHS:
        return word in _MONTHS
    small = find_word(word)
    if small is not None and small.countries:
        return False
    capital = find_word(word.capitalize())
    if capital is None or not capital.countries:
        return False
    if word in _SHORT:
        return True
    nation = _OF_NATIONS.search(word) is not None
    return small is not None and len(word) >= _SHORTEST and (nation or small.weight >= _COUNTED)


def _is_name_here(word: str, before: str, after: str) -> bool:
    """Whether it is written so among these neighbours."""
    following = re.match(r"\s([a-z]+)", after)
    beside = following[1] if following else ""
    if word in _MONTHS:
        return _IN.search(before) is not None and _MONTH_ENDS.match(after) is not None
    if word in _BOTH:
        return beside in _BOTH[word].split() or (not _BOTH[word] and beside not in _BEFORE_THINGS)
    if beside in _BEFORE_THINGS:
        return False
    return _is_name(word) or find_word(word) is None


def _pronouns(text: str) -> Iterator[tuple[int, str, Kind]]:
    for found in _PRONOUN.finditer(text):
        before = text[max(0, found.start() - 12) : found.start()].split()
        opens = not before or before[-1][-1] in ".,;:?!" or before[-1].lower() in _BEFORE_I
        if opens or found[1] is None:
            yield found.start(), "I", "pronoun"


def _openings(text: str) -> Iterator[tuple[int, str, Kind]]:
    for found in _OPENS.finditer(text):
        before, word = found[1], found[3]
        if before in _SHORTENED or (before.isalpha() and not _is_spelled(before)):
            continue
        if _is_spelled(word):
            yield found.start(3), word[0].upper() + word[1:], "sentence"


def _is_spelled(word: str) -> bool:
    known = find_word(word)
    return known is not None and bool(known.countries)
