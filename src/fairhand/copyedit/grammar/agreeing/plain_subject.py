"""The subject of *be*, *have* or *do* where the words alone show it: a noun with its article and what hangs on it.

The parser is not asked for more than parts of speech here: a noun phrase that opens a clause, prepositions with theirs,
and the verb right after.

**Source**: common practice in finding noun phrases by their parts of speech (S. Abney 1991, *Parsing by Chunks*).
"""

from __future__ import annotations

from fairhand.copyedit.grammar.clauses import FINITE, Clause
from fairhand.copyedit.grammar.number import OPEN

VERBS = frozenset("is are was were has have does do isn't aren't wasn't weren't".split())
TIMES = frozenset("year month week day night morning evening hour minute time summer winter season term".split())
QUANTITIES = frozenset("all some most half much".split())
_RELATING = frozenset("way ways time day reason moment extent degree".split())
"""Nouns that a clause may follow with nothing between."""
_OPENERS = frozenset("that because if although though while whereas when whether since unless until once".split())
"""Words that open a clause."""
_ADVERBS = frozenset(
    "also often usually still now never always generally clearly then sometimes rarely seldom already".split()
)
_STANDING = frozenset("latter former last first second".split())
"""Adjectives that stand for a noun."""
_ASIDES = frozenset("so as like unlike however though in".split())
"""Words that may open what commas part from a subject."""
_WITHIN = frozenset("DT PDT PRP$ CD JJ JJR JJS VBN NN NNS NNP POS HYPH RB RBS".split())
_NOUN_PARTS = frozenset("CD JJ JJR JJS VBN NN NNS NNP POS HYPH RBS".split())
_PREPOSITIONS = frozenset(
    "of in on for with between among from at by to within about against across under over behind near towards toward"
    " during throughout into through without outside inside beyond".split()
)


def plain_subject(clause: Clause, verb: int) -> int | None:
    """The chief noun of a subject that stands right before its verb; None where it is not plain.

    Args:
        clause: The sentence.
        verb: Index of a finite form of *be*, *have* or *do*.
    """
    words = clause.words
    if words[verb].key not in VERBS or words[verb].tag not in FINITE:
        return None
    last = verb
    while last and words[last - 1].key in _ADVERBS:
        last -= 1
    last = _before_aside(clause, last)
    first = last
    while first and (
        words[first - 1].tag in _WITHIN or words[first - 1].key in _PREPOSITIONS or _is_between(clause, first - 1)
    ):
        if words[first - 1].key in _OPENERS and words[first - 1].key not in _PREPOSITIONS:
            break
        first -= 1
    if first < last and words[first].tag == "RB" and first == 0:
        first += 1
    if any(words[n].key in _RELATING and words[n + 1].tag in _NOUN_PARTS for n in range(first, last - 1)):
        return None  # changes in the way food is grown
    if first == last or clause.hides(range(first, last)) or not _opens(clause, first):
        return None
    return _head(clause, first, last)


def _is_between(clause: Clause, link: int) -> bool:
    """Whether an *and* joins the two of *between the first row and the last*."""
    words = clause.words
    near = words[max(0, link - 6) : link]
    return words[link].key == "and" and any(each.key == "between" for each in near)


def _before_aside(clause: Clause, last: int) -> int:
    """Where a subject ends that commas part from its verb: *the cost of these weeks, so he reckoned, were*."""
    words = clause.words
    if last < 3 or words[last - 1].text != ",":
        return last
    comma = next((n for n in range(last - 3, max(0, last - 10), -1) if words[n].text == ","), None)
    if comma is None or words[comma + 1].key not in _ASIDES:
        return last
    return comma


def _opens(clause: Clause, first: int) -> bool:
    """Whether a clause begins there."""
    words = clause.words
    if first == 0 or (first == 1 and words[0].tag in ("RB", "CC")):
        return words[0].text[0].isalnum()
    before = words[first - 1]
    if before.key in _OPENERS:
        return before.tag in ("IN", "WRB", "WDT")
    if before.text == ";":
        return True
    if before.key in ("and", "but") and first > 1:
        return _joins_clauses(clause, first - 1)
    if before.text != ",":
        return False
    opening = words[0].tag in ("IN", "RB", "TO", "WRB") and sum(each.text == "," for each in words[:first]) == 1
    return opening and not any(clause.is_finite(n) for n in range(first) if words[0].tag not in ("IN", "WRB"))


def _joins_clauses(clause: Clause, link: int) -> bool:
    """Whether an *and* after a comma can join nothing but clauses: a verb stands before, and no other comma since."""
    words = clause.words
    if words[link - 1].text != ",":
        return False
    verb = next((n for n in range(link - 2, -1, -1) if clause.is_finite(n)), None)
    return verb is not None and not any(each.text == "," for each in words[verb : link - 1])


def _head(clause: Clause, first: int, last: int) -> int | None:
    """The last noun of the first phrase, where all that follows are prepositions with theirs."""
    words = clause.words
    if words[first].key in QUANTITIES and words[first + 1].key == "of" and words[first + 2].tag in ("DT", "PRP$"):
        head = _head(clause, first + 2, last)  # most of the letters, half of the water
        return None if head is not None and words[first].key == "all" and words[head].tag == "NN" else head
    at = _phrase_end(clause, first, last)
    if at is None:
        return None
    head = at - 1
    while at < last:
        if words[at].key not in _PREPOSITIONS or at + 1 >= last:
            return None
        end = _phrase_end(clause, at + 1, last)
        if end is not None and words[at].key == "between" and end < last and words[end].key == "and":
            end = _phrase_end(clause, end + 1, last)
        if end is None:
            return None
        at = end
    own = words[first:head]
    counted = any(each.tag == "CD" for each in own) and own[0].tag not in ("DT", "PRP$")
    if words[first].text.endswith("ing") or (words[first].key in ("every", "each") and words[head].key in TIMES):
        return None  # archiving raw sequences is; every year a million cases are
    opened = first > 0 and words[first - 1].key in _OPENERS and words[first - 1].key != "since"
    bare = not own and (not (opened or words[head].tag == "NNS") or words[head].key in OPEN)
    return None if counted or bare or words[head].tag not in ("NN", "NNS") else head


def _phrase_end(clause: Clause, first: int, last: int) -> int | None:
    """One beyond the noun that ends a phrase; None where it is no plain phrase."""
    words = clause.words
    at = first
    while at < last and words[at].tag in ("DT", "PDT", "PRP$") and at < first + 2:
        at += 1
    start = at
    while at < last and words[at].tag in _NOUN_PARTS and words[at].key not in _PREPOSITIONS:
        at += 1
    ends = at > start and (words[at - 1].tag in ("NN", "NNS", "NNP") or words[at - 1].key in _STANDING)
    return at if ends else None
