"""What a mark makes of the draft, as the writer is shown it before it is written.

Only what the mark itself says is done: its reader's own new matter, or its words taken out, moved or set otherwise.
A mark that leaves the wording to the writer, as a query, changes nothing.

**Source**: the signs are those of BS 5261-2 and ISO 5776 (forms from memory).
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping

from fairhand.model.proof_mark import ProofMark, ProofSign
from fairhand.model.span import Span

_WORDS = re.compile(r"\S+")
_HEAD = re.compile(r"(?<![\w'’])\w")
"""The first letter of a word: a capital is asked for it alone."""


def mend_text(draft: str, span: Span, mark: ProofMark) -> str | None:
    """The draft with a mark carried out; None where what it asks is for the writer to word.

    Args:
        draft: The draft's text.
        span: Where the mark's words stand in it.
        mark: The mark.

    >>> from fairhand.model.proof_mark import ProofMark
    >>> mend_text("We saw the the quay.", Span(11, 14), ProofMark("m", "p", "delete", "the"))
    'We saw the quay.'
    >>> mend_text("We saw only is it.", Span(7, 14), ProofMark("m", "p", "transpose", "only is"))
    'We saw is only it.'
    """
    words = span.of(draft)
    if mark.sign == "delete":
        return _delete(draft, span)
    if mark.sign == "insert":
        point = "" if mark.words[:1] in ".,;:!?)]’”" else " "
        return draft[: span.end] + point + mark.words + draft[span.end :] if mark.words else None
    if mark.sign == "new paragraph":
        return draft[: span.start].rstrip() + "\n\n" + draft[span.start :]
    if mark.sign == "run on":
        return draft[: span.start].rstrip() + " " + draft[span.start :].lstrip()
    if mark.sign == "substitute":
        now: str | None = mark.words or None
    elif mark.sign == "transpose":
        now = mark.words or _transpose(words)
    else:
        made = _MADE.get(mark.sign)
        now = made(words) if made else None
    return None if now is None or now == words else draft[: span.start] + now + draft[span.end :]


def _delete(draft: str, span: Span) -> str:
    """The words taken out, with one of the blanks around them, and with a comma or point left at its word."""
    before, after = draft[: span.start], draft[span.end :]
    if before[-1:] in (" ", "\n", "") and after[:1] == " ":
        after = after[1:]
    elif before[-1:] == " " and (not after or after[:1] in "\n.,;:!?)]’”"):
        before = before[:-1]
    return before + after


def _transpose(words: str) -> str | None:
    """Two words, or two letters, in the other order; more are for the writer to set in order."""
    parts = words.split()
    if len(parts) == 2:
        first, last = _WORDS.match(words), parts[-1]
        return f"{last}{words[first.end() if first else 0 : len(words) - len(last)]}{parts[0]}"
    return words[1] + words[0] if len(words) == 2 else None


def _space(words: str) -> str | None:
    """Two letters parted; in longer words the place cannot be told."""
    return f"{words[0]} {words[1]}" if len(words) == 2 else None


def _upright(words: str) -> str | None:
    bare = re.sub(r"(?<!\w)[*_]+|[*_]+(?!\w)", "", words)
    return bare if bare != words else None


_MADE: Mapping[ProofSign, Callable[[str], str | None]] = {
    "close up": lambda words: "".join(words.split()),
    "space": _space,
    "italic": lambda words: f"*{words}*",
    "bold": lambda words: f"**{words}**",
    "upright": _upright,
    "capitals": lambda words: _HEAD.sub(lambda head: head.group().upper(), words),
    "lower case": str.lower,
}
"""What becomes of the words under each sign that needs no new matter."""
