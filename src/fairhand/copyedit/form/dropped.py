"""Quotations that stand as sentences of their own, with no words of the writer's that lead into them.

**Source**: "Poorly integrated quotation" in A. A. Lunsford and K. J. Lunsford 2008, a *dropped quotation* in handbooks
of usage: a quotation wants a signal phrase, a colon after a whole sentence, or a place in a sentence of the writer's.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Sequence

from fairhand.language.words import words
from fairhand.manuscript.parts import Manuscript, Paragraph, Quotation
from fairhand.model.span import Span

FEWEST = 5
"""Words of the shortest that is told; fewer are a title, a cry, a word as a word."""
_STOP = r"[.!?]"
_ENDED = re.compile(rf"{_STOP}[”\"’')\]]*(?:\[\^[^\]]+\])*\s*\Z")
"""How the sentence before ends where the quotation opens one of its own."""
_STOPPED = re.compile(rf"\s*{_STOP}?(?:\[\^[^\]]+\])*(?:\s+|\Z)")
"""What follows the quotation and its citation where they end a sentence."""
_BRACKET = re.compile(r"\s*\([^()]{1,200}\)")
_NOTE = re.compile(r"\[\^[^\]]+\]")
_SAYING = re.compile(
    r"\b(?:(?:add|admit|announc|answer|argu|ask|assert|assur|boast|claim|complain|conced|conclud|confess|continu|declar"
    r"|describ|exclaim|explain|express|insist|mention|object|observ|predict|promis|propos|protest|quot|recall|recit"
    r"|recount|remark|remember|repeat|report|respond|shout|stat|stress|suggest|summari[sz]|threaten|urg|utter|vow|warn"
    r"|wonder|writ|say|sing|speak|teach|tell|think|swear)(?:ted|e[ds]?|s|es|ing|ting)?|replie[sd]|reply|notes?"
    r"|noted|call(?:s|ed)|cri(?:es|ed)|puts?|said|sang|spoke|swore|taught|told|thought|wrote|points? out|pointed out"
    r"|testifie[sd]|testify|went on|goes on)\b(?:\W+(?!that\b|how\b|why\b|whether\b)[\w’'-]+){0,3}\W*\Z"
    r"|\b(?:answer|example|line|motto|oath|order|passage|question|remark|reply|saying|sentence|verse|warning|word)s?\W*\Z",
    re.IGNORECASE,
)
"""A verb of saying, or the name of what is said, at the end: the sentence before leads into the quotation."""
_TAKES_UP = re.compile(
    r"(?:so|thus|such|this is how|this was how|(?:these|those) (?:words|lines|are|were)|(?:with|in) (?:these|this)|here"
    r"|the (?:words|lines?|quotation|passage|sentence)|(?:he|she|they|it) (?:said|wrote|was|were)|it is|who)\b",
    re.IGNORECASE,
)
"""How a sentence opens that says after the quotation whose words they were."""


def find_dropped(manuscript: Manuscript, cited: Sequence[Span], titles: Collection[int]) -> Iterator[Quotation]:
    r"""Each quotation, cited, that is a sentence by itself and that nothing leads into.

    Let be are block quotations, mottoes and what else opens a section, speeches that nobody cites, one that goes on
    with the quotation before it, and one that a verb of saying before it leads into or a sentence after it takes up.

    Args:
        manuscript: The draft.
        cited: The places of its in-text citations.
        titles: Indices of the quotations that are titles.

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> draft = "It rained. The mill stood still. “Nobody came for a whole week” (Vale 3). The owner left."
    >>> [found.text for found in find_dropped(read_manuscript(draft), [Span(66, 74)], ())]
    ['Nobody came for a whole week']
    """
    spans = {span.start: span for span in cited}
    for index, quotation in enumerate(manuscript.quotations):
        paragraph = manuscript.paragraphs[quotation.paragraph]
        if quotation.kind != "run-in" or quotation.within is not None or not quotation.closed or index in titles:
            continue
        if len(words(quotation.text)) < FEWEST or not _is_running_text(manuscript, paragraph):
            continue
        if _stands_alone(manuscript.text, quotation, paragraph, spans) and not _is_lead_in(
            manuscript, quotation, paragraph
        ):
            yield quotation


def _is_running_text(manuscript: Manuscript, paragraph: Paragraph) -> bool:
    """Whether it is a paragraph of prose: no note, caption, cell, block quotation or item of a list."""
    start = paragraph.span.start
    begins = manuscript.text[manuscript.text.rfind("\n", 0, start) + 1 : start]
    return not (paragraph.in_note or paragraph.in_caption or paragraph.in_table or paragraph.in_quote or begins.strip())


def _stands_alone(text: str, quotation: Quotation, paragraph: Paragraph, cited: dict[int, Span]) -> bool:
    """Whether nothing but a citation shares its sentence."""
    before = text[paragraph.span.start : quotation.span.start]
    if before.strip() and not (_ENDED.search(before) and before[-1].isspace()):
        return False
    at, ends = quotation.span.end, quotation.inner.of(text).rstrip()[-1:] in (".", "!", "?", "…")
    cites = False
    while True:
        blank = at + len(text[at:]) - len(text[at:].lstrip(" \n"))
        bracket = _BRACKET.match(text, at)
        note = _NOTE.match(text, at)
        if blank in cited:
            at, cites = cited[blank].end, True
        elif bracket and bool(re.search(r"\d", bracket[0])):
            at, cites = bracket.end(), True
        elif note:
            at, cites = note.end(), True
        else:
            break
    stop = _STOPPED.match(text, at, paragraph.span.end)
    return cites and stop is not None and (ends or any(sign in stop[0] for sign in ".!?"))


def _sentence_above(manuscript: Manuscript, paragraph: Paragraph) -> Span | None:
    """The last sentence of the paragraph before, for a quotation that opens one.

    None at the head of a section, where it is a motto or opens the matter, for a paragraph that is nothing else, and
    after a paragraph that is quoted or opens with a quotation too, as talk does.
    """
    above = manuscript.paragraphs[paragraph.index - 1] if paragraph.index else None
    if above is None or above.section != paragraph.section or len(paragraph.sentences) == 1 or not above.sentences:
        return None
    if not _is_running_text(manuscript, above) or manuscript.text[above.span.start] in "“\"‘'":
        return None
    return above.sentences[-1]


def _is_lead_in(manuscript: Manuscript, quotation: Quotation, paragraph: Paragraph) -> bool:
    """Whether the sentence before it or after it says whose words they are, or a quotation goes on there."""
    text = manuscript.text
    place = next((n for n, s in enumerate(paragraph.sentences) if s.start <= quotation.span.start < s.end), None)
    before = paragraph.sentences[place - 1] if place else _sentence_above(manuscript, paragraph)
    if place is None or before is None or _ENDED.search(before.of(text)) is None:
        return True
    quoted = any(q.span.overlaps(before) and q.span.end >= before.end - 1 for q in manuscript.quotations)
    if quoted or _SAYING.search(before.of(text)):
        return True
    after = paragraph.sentences[place + 1].of(text) if place + 1 < len(paragraph.sentences) else ""
    return bool(_TAKES_UP.match(after))
