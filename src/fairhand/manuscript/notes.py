"""Notes that only cite, told from notes that say something."""

from __future__ import annotations

import re
from functools import lru_cache

_SIGNAL = (
    r"(?:(?:[Ss]ee(?: also)?|[Cc]f\.?|[Cc]ompare|[Aa]lso|[Ee]\.g\.|[Ff]or example|[Qq]td\.? in|[Qq]uoted in|[Cc]ited in"
    r"|[Aa]nd|[Bb]ut see),? )?"
)
_AGAIN = r"(?:[Ii]bid|[Ii]dem|[Ii]d|[Oo]p\. cit|[Ll]oc\. cit)\b\.?"
_LOCATOR = (
    r"(?:,? ?(?:at |pp?\. ?|fols?\. ?|nn?\. ?|ll?\. ?|§+ ?|¶+ ?|[cC]h(?:ap)?s?\. ?)?[ivxlcdm\d][\w–—,. -]{0,40})?"
)
_CITES = re.compile(
    rf"{_SIGNAL}(?:{_AGAIN}{_LOCATOR}"
    r"|(?:[^\W\d_a-z]|[\"“‘*_])[^;]{1,300}?(?:\((?:[^()]{0,120}\b)?(?:1[5-9]|20)\d\d[a-z]?[^()]{0,40}\)"
    r"|, (?:pp?\. ?)?\d|https?://\S{3,200})[^;]{0,160})[.\s]*"
)
_SAYS = re.compile(
    r"\b(?:is|are|was|were|am|be|been|has|have|had|does|do|did|can|could|will|would|should|may|might|must|argu\w+"
    r"|claim\w*|suggest\w*|show\w*|point\w*|remark\w*|seem\w*|this|these|that|which|who|I|we|he|she|they|it|because"
    r"|although|however|thank\w*|not)\b"
)
_TITLE = re.compile(r"[\"“][^\"”]{1,200}[\"”]|(?<!\w)([*_])[^*_]{1,200}\1(?!\w)")
_BRACKETED = re.compile(r"\((?:[^()]{0,80}\D)?\d{1,4}[a-z]?\)")


@lru_cache(maxsize=4096)
def is_bibliographic(note: str) -> bool:
    """Whether a note does nothing but cite: each of its parts is a reference, and nothing is said beside.

    A judgement by form, so that a note with a remark of a few words may pass for one that only cites.

    **Source**: common practice (rules that leave "purely bibliographic notes" out of the count).

    >>> is_bibliographic("See Ada Orr, *Bells of the Coast* (Hull: Tern Press, 1998), 12–14; Marsh, *Tides*, 3.")
    True
    >>> is_bibliographic("Orr thinks the bell was stolen, which the ledger does not bear out (Orr 12).")
    False
    """
    words = " ".join(note.split())
    if len(words) > 1200 or not words or _SAYS.search(_TITLE.sub("“”", words)):
        return False
    return all(_CITES.fullmatch(part.strip()) or _alone(part) for part in words.rstrip(". ").split(";"))


def _alone(part: str) -> bool:
    """Whether a part of a note is a citation in brackets and no more ("(Orr 12)", "See (Orr 12)")."""
    rest = _BRACKETED.sub("", part)
    return rest != part and re.fullmatch(rf"\s*{_SIGNAL.replace(' )?', ' ?)?')}\W*", rest) is not None
