"""Speeches that a teller breaks to say who speaks, and a quotation runs together."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fairhand.fidelity.prepared import PreparedSource

LONGEST_BREAK = 25
"""Words beyond which a teller does more than break a speech."""
SAYS = "The speech is broken there to say who speaks: close the quotation and open it again, or mark the gap."
"""What is said of a quotation that runs such a speech together."""

_CLOSES = re.compile(r"[^\w\s\"“”«»]{0,2}[\"”»]|[,.!?…—–-]{1,3}['’]|['’][,;.:—–]")
"""A closing mark, at the start of what follows a word; a single one only beside a point, else it is an apostrophe."""
_OPENS = re.compile(r"(?:^|[\s(—–-])[\"“„«'‘]\s?$")
_QUOTES = re.compile(r"[\"“”„«»‘]")
_PARAGRAPH_ENDS = re.compile(r"\n\s{0,40}\n")


def breaks_speech(prepared: PreparedSource, run: Sequence[int]) -> bool:
    """Whether words of the source, given by their indices in a row, stand between two halves of one speech.

    The source closes its quotation marks before them and opens them again after, in one paragraph. *“Go,” he said. “I
    shall stay.”*

    **Source**: common practice; no manual lets them be dropped without a mark, so it is told, but as a question.
    """
    gaps = [prepared.gap_after(word) for word in (run[0] - 1, *run)]
    if len(run) > LONGEST_BREAK or None in gaps:
        return False
    first, *inner, last = [gap or "" for gap in gaps]
    closing = _CLOSES.match(first)
    return bool(
        closing
        and _OPENS.search(last)
        and not _QUOTES.search(first, closing.end())
        and not any(map(_QUOTES.search, inner))
        and not any(map(_PARAGRAPH_ENDS.search, (first, *inner, last)))
    )
