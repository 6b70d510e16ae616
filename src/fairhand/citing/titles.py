"""Titles in quotation marks, which quote nobody.

**Source**: MLA Handbook 9, 2.106; Publication Manual of the APA 7, 6.7; Chicago Manual of Style 17, 8.163; common
practice.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence

from fairhand.citing.known import Known, know, title_words
from fairhand.citing.mention import Mention
from fairhand.citing.recognise import recognise
from fairhand.manuscript.parts import Manuscript, Quotation
from fairhand.model.entry import Entry

_SMALL = frozenset(
    "a about after against among an and as at before between but by for from if in into is its nor of off on or "
    "over per so than the to under up upon via vs with within without yet de la le du der und el y et".split()
)


def titles_quoted(
    manuscript: Manuscript, entries: Sequence[Entry], mentions: Sequence[Mention] | None = None
) -> set[int]:
    """Indices of the quotations that are titles: of a source, within a citation, or by their capitals.

    Args:
        manuscript: The draft.
        entries: The list of sources.
        mentions: Its citations, where they are at hand.
    """
    known = know(tuple(entries))
    if mentions is None:
        mentions = recognise(manuscript, entries)
    found = set()
    for at, quotation in enumerate(manuscript.quotations):
        if quotation.kind != "run-in":
            continue
        before = bisect_right(mentions, quotation.span.start, key=lambda mention: mention.span.start) - 1
        cited = before >= 0 and mentions[before].span.contains(quotation.span)
        if cited or _is_title(quotation, known):
            found.add(at)
    return found


def _is_title(quotation: Quotation, known: Known) -> bool:
    words = title_words(quotation.text)
    if quotation.text[:1].islower():
        return False
    if any(words == have for work in known.works for have in (*work.titles, *work.containers)):
        return True
    return looks_like_title(quotation.text)


def looks_like_title(text: str) -> bool:
    """Whether every word of two or more has the capital that a title gives it.

    >>> looks_like_title("Ode to a Nightingale,"), looks_like_title("The union did not count them")
    (True, False)
    """
    stripped = text.strip(" ,.;:")
    words = [word.strip("“”\"'‘’()[],.:;!?—–-") for word in stripped.split()]
    words = [word for word in words if word]
    if not 2 <= len(words) <= 20 or not words[0][0].isupper() or not words[-1][0].isupper():
        return False
    great = [word for word in words if word.casefold() not in _SMALL]
    return (
        len(great) >= 2 and all(not word[0].islower() for word in great) and any(word[1:].islower() for word in great)
    )
