"""Whether what stands before a comma may open what follows: *costs, and where they rise, trade stops*.

**Source**: handbooks of usage on the comma after an opening element; the words from memory.
"""

from __future__ import annotations

from fairhand.copyedit.grammar.clauses import Clause

LINKS = frozenset("that and but or because since which so whereas while where when though if why how".split())
"""Words after which a clause may open with a phrase of its own."""
HELD = frozenset(
    "although though if when whenever while because since unless until as where whereas once anywhere"
    " everywhere".split()
)
_BEFORE_HELD = frozenset("just even only especially".split())
_PHRASES = frozenset("IN WRB TO VBG VBN RB".split())
_TIMES = frozenset("today yesterday tomorrow now then here next soon".split())


def opens_late(clause: Clause, comma: int, *, whole: bool = True) -> bool:
    """Whether what stands before the comma may open what follows: *costs, and where they rise, trade stops*.

    Args:
        clause: The sentence.
        comma: The index of the comma.
        whole: Whether the sentence itself may be opened so, and not only a clause within it.
    """
    words = clause.words
    links = [n for n in range(comma) if words[n].key in LINKS and not _goes_on(clause, n)]
    being = [n for n in range(comma - 1) if words[n].key in ("is", "was", "are") and words[n + 1].key in HELD]
    return any(_is_opening(clause, link + 1, comma) for link in ((-1,) * whole + (*links, *being)))


def _is_opening(clause: Clause, first: int, comma: int) -> bool:
    """Whether all parts between commas are openings: phrases without a verb, clauses with a word that binds them."""
    words = clause.words
    at = first
    if at + 1 < comma and words[at].tag == "CD" and words[at + 1].text == ")":
        at += 2
    at += at < comma and words[at].text == ","
    if at >= comma:
        return False
    begins = at
    while at < comma:
        end = next(n for n in range(at, comma + 1) if words[n].text == "," or n == comma)
        if not (_opens(clause, at, end) if at == begins else _continues(clause, begins, at, end)):
            return False
        at = end + 1
    return True


def _opens(clause: Clause, at: int, end: int) -> bool:
    """Whether the first part between commas is an opening."""
    words = clause.words
    bound = at + 1 if words[at].key in _BEFORE_HELD and at + 1 < end else at
    if words[bound].key in HELD:
        return True
    if words[at].key in ("that", "than", "of") or (words[at].tag not in _PHRASES and words[at].key not in _TIMES):
        return False
    verb = next((n for n in range(at, end) if clause.is_finite(n)), None)
    return verb is None or any(
        words[n].tag in ("WDT", "WP", "WP$", "WRB") or words[n].key == "that" for n in range(at, verb)
    )


def _continues(clause: Clause, begins: int, at: int, end: int) -> bool:
    """Whether a further part between commas belongs to the opening."""
    words = clause.words
    bound = begins + 1 if words[begins].key in _BEFORE_HELD else begins
    waits = words[bound].key in HELD and words[bound + 1].key not in ("of", "a")
    said = max((n for n in range(begins, at) if words[n].key == "that"), default=begins)
    if (waits or said > begins) and not any(clause.is_finite(n) for n in range(said, at)):
        return True  # if the rents, the wages, and the price of bread rise
    if sum(each.text == "(" for each in words[begins:at]) > sum(each.text == ")" for each in words[begins:at]):
        return True
    relative = any(each.tag in ("WDT", "WP", "WP$", "WRB") for each in words[at : min(end, at + 4)])
    return relative or not any(clause.is_finite(n) for n in range(at, end)) or _opens(clause, at, end)


def _goes_on(clause: Clause, link: int) -> bool:
    """Whether an *and* or *or* joins one phrase to another of the same preposition: *in dollars and in lives*."""
    words = clause.words
    if words[link].key not in ("and", "or", "but") or words[link - 1].text == "," or link + 1 >= len(words):
        return False
    verb = next((n for n in range(link - 1, -1, -1) if clause.is_finite(n)), 0)
    after = words[link + 1]
    return after.tag in ("IN", "TO") and any(each.key == after.key for each in words[verb:link])
