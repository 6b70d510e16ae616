"""The citation that belongs to each quotation.

**Source**: common practice: a citation stands after the words that it vouches for, within their sentence, or before
them where the author is named in it (MLA Handbook 9, 6.3 and 6.43; Publication Manual of the APA 7, 8.25–8.27; Chicago
Manual of Style 17, 13.64–13.71).
"""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass

from fairhand.citing.grading import SECOND_HAND
from fairhand.citing.known import know
from fairhand.citing.lookup import LOOK_BACK, Lookup, ids_of
from fairhand.citing.mention import Locator, Mention, QuotationCited, Resolved
from fairhand.citing.naming import Naming
from fairhand.citing.recognise import closes_block
from fairhand.citing.sighting import sentence_around
from fairhand.citing.telltales import read_reporting
from fairhand.citing.titles import titles_quoted
from fairhand.manuscript.parts import Manuscript, Quotation
from fairhand.model.entry import Entry

_SCARE_WORDS = 3
_NEAR = 80
_GOES_ON = re.compile(r"[^.!?“”\"‘]{1,40}[“\"‘]")
"""From the author named between two parts of a quotation to the second of them."""


_NUMBER = re.compile(r"\[\^([^\]\s]+)\]")
_NUMBERS = re.compile(r"[\s.,;:!?”\"’'*_]{0,6}(?:\[\^[^\]\s]+\])+")
"""The numbers of footnotes, after the marks that close a sentence."""


@dataclass(frozen=True, slots=True)
class _Citation:
    """The first resolved cite of a mention."""

    at: int
    resolved: Resolved
    mention: Mention


def attach(
    manuscript: Manuscript, mentions: Sequence[Mention], resolved: Sequence[Resolved], entries: Sequence[Entry] = ()
) -> tuple[QuotationCited, ...]:
    """The citation of each quotation, in order; none for titles, words quoted in passing, and quotations within others.

    Args:
        manuscript: The draft.
        mentions: Its citations.
        resolved: What each cite of them means.
        entries: The list of sources; with it, an author merely named in the sentence counts, as a *weak* attachment.
    """
    desk = _Attaching(manuscript, mentions, resolved, entries)
    titles = titles_quoted(manuscript, entries, mentions)
    out = []
    for at, quotation in enumerate(manuscript.quotations):
        if at in titles or quotation.within is not None:
            out.append(QuotationCited(at, None, None))
        elif quotation.kind == "block":
            out.append(desk.of_block(at, quotation))
        else:
            out.append(desk.of_run_in(at, quotation))
    return tuple(out)


class _Attaching:
    """The draft's citations, ready to be looked up by place."""

    def __init__(
        self,
        manuscript: Manuscript,
        mentions: Sequence[Mention],
        resolved: Sequence[Resolved],
        entries: Sequence[Entry],
    ) -> None:
        self.manuscript = manuscript
        self.lookup = Lookup(manuscript, know(tuple(entries)))
        first: dict[int, int] = {}
        for at, one in enumerate(resolved):
            first.setdefault(one.mention, at)
        self.by_paragraph: dict[int, list[_Citation]] = {}
        for at, mention in enumerate(mentions):
            if at in first and mention.form != "note":
                citation = _Citation(first[at], resolved[first[at]], mention)
                self.by_paragraph.setdefault(mention.paragraph, []).append(citation)
        self.by_note: dict[str, list[_Citation]] = {
            label: [
                _Citation(first[at], resolved[first[at]], mention)
                for at, mention in enumerate(mentions)
                if at in first and block.span.contains(mention.span)
            ]
            for label, block in manuscript.notes.items()
        }

    def of_run_in(self, at: int, quotation: Quotation) -> QuotationCited:
        """The citation of a quotation that runs on within a paragraph."""
        paragraph = self.manuscript.paragraphs[quotation.paragraph]
        citations = self.by_paragraph.get(paragraph.index, [])
        split = bisect_left(citations, quotation.span.end, key=_start)
        past = [one for one in citations[max(0, split - LOOK_BACK) : split] if _end(one) <= quotation.span.start]
        follows = citations[split] if split < len(citations) else None
        sentence = sentence_around(paragraph.sentences, quotation.span)
        ends = min(sentence.end, _start(follows)) if follows is not None else sentence.end
        if (noted := self._noted(at, quotation.span.end, ends)) is not None:
            return noted
        touches = follows is not None and self._touches(quotation.span.end, _start(follows))
        if follows is not None and (
            (touches and not self._begins_sentence(follows, quotation)) or self._attributes(follows, quotation)
        ):
            return _cited(at, follows, self._place_of(follows, citations[split + 1 : split + 2]))
        if (speaker := self._speaker_after(quotation)) is not None:
            goes_on = _GOES_ON.match(self.manuscript.text, speaker.span.end) is not None
            near = [one for one in citations[split : split + 1] if goes_on or _start(one) < sentence.end]
            return self._spoken_by(at, speaker, near)
        if follows is not None and _start(follows) >= sentence.end and not touches:
            follows = None
        earlier = [one for one in past if sentence.start <= _start(one)]
        before = [one for one in earlier if one.mention.form == "narrative" or _is_second_hand(one)]
        naming = self._last_naming(quotation.paragraph, sentence.start, quotation.span.start, past)
        speaks = bool(before) and (naming is None or naming.span.start < _start(before[-1]))
        if speaks and self._is_whole(before[-1]):
            follows = None
        if follows is not None and not self._opens_new_voice(follows, bool(before or naming), quotation):
            sure = not before or follows.resolved.entry == before[-1].resolved.entry
            return _cited(at, follows, follows.resolved.cite.locator, sure=sure)
        if speaks:
            return _cited(at, before[-1], before[-1].resolved.cite.locator)
        if len(quotation.text.split()) <= _SCARE_WORDS and not before:
            return QuotationCited(at, None, None)
        if naming is not None:
            return self._named(at, naming, past)
        if past:
            return _cited(at, past[-1], past[-1].resolved.cite.locator if earlier else None, sure=False)
        return QuotationCited(at, None, None)

    def of_block(self, at: int, quotation: Quotation) -> QuotationCited:
        """The citation of a block quotation: its closing parenthesis, else the sentence that introduces it."""
        paragraphs = self.manuscript.paragraphs
        if (noted := self._noted(at, quotation.inner.start, quotation.span.end)) is not None:
            return noted
        last = quotation.paragraph
        while last + 1 < len(paragraphs) and paragraphs[last + 1].span.start < quotation.span.end:
            last += 1
        below = [one for one in self.by_paragraph.get(last + 1, [])[:1] if not self._names_author(one)]
        closing = [*self.by_paragraph.get(last, [])[-1:], *below]
        for one in closing:
            span = one.mention.span
            within = quotation.span.contains(span) and closes_block(self.manuscript.text, quotation, span)
            if within or self._touches(quotation.span.end, span.start):
                return _cited(at, one, one.resolved.cite.locator)
        above = quotation.paragraph - 1
        while above >= 0 and paragraphs[above].in_quote:
            above -= 1
        if above < 0 or not paragraphs[above].sentences:
            return QuotationCited(at, None, None)
        citations = self.by_paragraph.get(above, [])[-LOOK_BACK:]
        sentence = paragraphs[above].sentences[-1]
        if citations and _start(citations[-1]) >= sentence.start:
            return _cited(at, citations[-1], citations[-1].resolved.cite.locator)
        naming = self._last_naming(above, sentence.start, paragraphs[above].span.end, citations)
        if naming is not None:
            return self._named(at, naming, citations)
        return _cited(at, citations[-1], None, sure=False) if citations else QuotationCited(at, None, None)

    def _noted(self, at: int, start: int, end: int) -> QuotationCited | None:
        """The citation in the footnote whose number stands between two places, or just after; None where none cites.

        In a note with several it is not sure which of them belongs to the words.
        """
        text = self.manuscript.text
        until = _NUMBERS.match(text, end)
        marker = _NUMBER.search(text, start, until.end() if until else end)
        cites = self.by_note.get(marker[1], []) if marker else []
        return _cited(at, cites[0], cites[0].resolved.cite.locator, sure=len(cites) == 1) if cites else None

    def _touches(self, end: int, start: int) -> bool:
        """Whether nothing but spaces, stops and marks stands between a quotation and a citation."""
        between = self.manuscript.text[end:start]
        return start >= end - 1 and len(between) < 40 and not between.strip(" \t\r\n>.,;:!?*_\"”’'…\\—–-")

    def _begins_sentence(self, follows: _Citation, quotation: Quotation) -> bool:
        """Whether an author named after a quotation stands at the head of the next sentence."""
        text = self.manuscript.text
        closes = text[quotation.inner.end - 1 : _start(follows)].rstrip(" \t\r\n*_")
        return (
            follows.mention.form == "narrative"
            and self._names_author(follows)
            and any(stop in closes for stop in (".", "!", "?"))
        )

    def _attributes(self, follows: _Citation, quotation: Quotation) -> bool:
        """Whether nothing but a verb of saying stands between a quotation and the author named after it."""
        text, start = self.manuscript.text, _start(follows)
        said = read_reporting(text, quotation.span.end, start)
        return said is not None and not text[said:start].strip() and self._names_author(follows)

    def _place_of(self, citation: _Citation, after: Sequence[_Citation]) -> Locator | None:
        """The place that a citation gives, or that follows the rest of the words: *“…,” Reyes (2018) says, “…” (1)*."""
        here = citation.resolved.cite.locator
        if here is None and self._names_author(citation) and _GOES_ON.match(self.manuscript.text, _end(citation)):
            for one in after:
                if one.resolved.entry == citation.resolved.entry and self._closes_quotation(one):
                    return one.resolved.cite.locator
        return here

    def _closes_quotation(self, citation: _Citation) -> bool:
        """Whether a citation that names nobody stands just after a quotation's mark."""
        start = _start(citation)
        before = self.manuscript.text[max(0, start - 3) : start].rstrip(" .,\n")
        return not self._names_author(citation) and before.endswith(("”", '"', "’", "'"))

    def _speaker_after(self, quotation: Quotation) -> Naming | None:
        """The author named, without a year, just after the words or after a verb of saying: *“…,” says Reyes*."""
        text, end = self.manuscript.text, quotation.span.end
        for naming in self.lookup.namings(quotation.paragraph, end, end + _NEAR)[:1]:
            between = text[end : naming.span.start]
            said = read_reporting(text, end, naming.span.start)
            speaks = said is not None and not text[said : naming.span.start].strip()
            if speaks or (not between.strip(" ,") and "," in text[quotation.inner.end - 1 : naming.span.start]):
                return naming
        return None

    def _spoken_by(self, at: int, speaker: Naming, after: Sequence[_Citation]) -> QuotationCited:
        """A quotation whose author is named after it, with the citation that follows where it is of the same work."""
        ids = ids_of(self.lookup.known, speaker.works)
        for one in after:
            if one.resolved.entry in ids:
                return _cited(at, one, one.resolved.cite.locator)
        return QuotationCited(at, None, None, ids[0] if len(ids) == 1 else None, sure=False)

    def _opens_new_voice(self, follows: _Citation, spoken: bool, quotation: Quotation) -> bool:
        """Whether the citation after a quotation speaks of another author than the one who is quoted."""
        if follows.mention.form != "narrative" or not self._names_author(follows):
            return False
        return spoken or _start(follows) - quotation.span.end > _NEAR

    def _names_author(self, citation: _Citation) -> bool:
        """Whether a narrative citation starts with the name, not with a parenthesis after it."""
        return citation.mention.span.of(self.manuscript.text)[:1] != "("

    def _is_whole(self, citation: _Citation) -> bool:
        """Whether a citation before a quotation gives author and place at once, so that nothing need follow."""
        return (self._names_author(citation) and citation.resolved.cite.locator is not None) or _is_second_hand(
            citation
        )

    def _last_naming(self, paragraph: int, start: int, end: int, citations: Sequence[_Citation]) -> Naming | None:
        """The last known author named between two places, outside citations."""
        for naming in reversed(self.lookup.namings(paragraph, start, end)):
            if not any(one.mention.span.overlaps(naming.span) for one in citations):
                return naming
        return None

    def _named(self, at: int, naming: Naming, citations: Sequence[_Citation]) -> QuotationCited:
        """A quotation whose author is named in the sentence, where nothing is cited there."""
        ids = ids_of(self.lookup.known, naming.works)
        for one in reversed(citations):
            if one.resolved.entry in ids:
                return _cited(at, one, None, sure=False)
        return QuotationCited(at, None, None, ids[0] if len(ids) == 1 else None, sure=False)


def _start(citation: _Citation) -> int:
    return citation.mention.span.start


def _end(citation: _Citation) -> int:
    return citation.mention.span.end


def _is_second_hand(citation: _Citation) -> bool:
    """Whether a citation only passes on another's words: *as cited in*."""
    return bool(citation.resolved.cite.secondary or SECOND_HAND.search(citation.resolved.cite.prefix + " "))


def _cited(at: int, citation: _Citation, locator: Locator | None, sure: bool = True) -> QuotationCited:
    return QuotationCited(at, citation.at, locator, citation.resolved.entry, sure)
