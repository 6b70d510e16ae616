"""The citation that belongs to each quotation.

**Source**: common practice: a citation stands after the words that it vouches for, within their sentence, or before
them where the author is named in it (MLA Handbook 9, 6.3 and 6.43; Publication Manual of the APA 7, 8.25–8.27; Chicago
Manual of Style 17, 13.64–13.71).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from fairhand.citing.known import know
from fairhand.citing.mention import Locator, Mention, QuotationCited, Resolved
from fairhand.citing.naming import Naming
from fairhand.citing.parenthesis import SECOND_HAND
from fairhand.citing.prose import sentence_around
from fairhand.citing.recognise import closes_block, read_paragraphs
from fairhand.citing.titles import titles_quoted
from fairhand.manuscript.parts import Manuscript, Quotation
from fairhand.model.entry import Entry

_SCARE_WORDS = 3
_NEAR = 80


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
        self.known = know(tuple(entries))
        self.prose = read_paragraphs(manuscript, self.known)
        first: dict[int, int] = {}
        for at, one in enumerate(resolved):
            first.setdefault(one.mention, at)
        self.by_paragraph: dict[int, list[_Citation]] = {}
        for at, mention in enumerate(mentions):
            if at in first and mention.form != "note":
                citation = _Citation(first[at], resolved[first[at]], mention)
                self.by_paragraph.setdefault(mention.paragraph, []).append(citation)

    def of_run_in(self, at: int, quotation: Quotation) -> QuotationCited:
        """The citation of a quotation that runs on within a paragraph."""
        paragraph = self.manuscript.paragraphs[quotation.paragraph]
        citations = self.by_paragraph.get(paragraph.index, [])
        sentence = sentence_around(paragraph.sentences, quotation.span)
        after = [one for one in citations if one.mention.span.start >= quotation.span.end]
        if after and self._touches(quotation.span.end, after[0].mention.span.start):
            return _cited(at, after[0], after[0].resolved.cite.locator)
        here = [one for one in after if one.mention.span.start < sentence.end]
        earlier = [
            one
            for one in citations
            if sentence.start <= one.mention.span.start and one.mention.span.end <= quotation.span.start
        ]
        before = [one for one in earlier if one.mention.form == "narrative" or _is_second_hand(one)]
        naming = self._last_naming(quotation.paragraph, sentence.start, quotation.span.start, citations)
        follows = here[0] if here else None
        if follows is not None and self._opens_new_voice(follows, before, naming, quotation):
            follows = None
        if (
            before
            and self._is_whole(before[-1])
            and (naming is None or naming.span.start < before[-1].mention.span.start)
        ):
            follows = None
        if follows is not None:
            sure = not before or follows.resolved.entry == before[-1].resolved.entry
            return _cited(at, follows, follows.resolved.cite.locator, sure=sure)
        if before and (naming is None or before[-1].mention.span.start > naming.span.start):
            return _cited(at, before[-1], before[-1].resolved.cite.locator)
        if len(quotation.text.split()) <= _SCARE_WORDS and not before:
            return QuotationCited(at, None, None)
        if naming is not None:
            return self._named(at, naming, citations, quotation.span.start)
        past = [one for one in citations if one.mention.span.end <= quotation.span.start]
        if past:
            return _cited(at, past[-1], None if not earlier else past[-1].resolved.cite.locator, sure=False)
        return QuotationCited(at, None, None)

    def of_block(self, at: int, quotation: Quotation) -> QuotationCited:
        """The citation of a block quotation: its closing parenthesis, else the sentence that introduces it."""
        paragraphs = self.manuscript.paragraphs
        last = quotation.paragraph
        while last + 1 < len(paragraphs) and paragraphs[last + 1].span.start < quotation.span.end:
            last += 1
        for index in (last, last + 1):
            for one in self.by_paragraph.get(index, []):
                span = one.mention.span
                if self._touches(quotation.span.end, span.start) or (
                    quotation.span.contains(span) and closes_block(self.manuscript.text, quotation, span)
                ):
                    return _cited(at, one, one.resolved.cite.locator)
        above = quotation.paragraph - 1
        while above >= 0 and paragraphs[above].in_quote:
            above -= 1
        if above < 0 or not paragraphs[above].sentences:
            return QuotationCited(at, None, None)
        citations = self.by_paragraph.get(above, [])
        sentence = paragraphs[above].sentences[-1]
        here = [one for one in citations if one.mention.span.start >= sentence.start]
        if here:
            return _cited(at, here[-1], here[-1].resolved.cite.locator)
        naming = self._last_naming(above, sentence.start, paragraphs[above].span.end, citations)
        if naming is not None:
            return self._named(at, naming, citations, paragraphs[above].span.end)
        return _cited(at, citations[-1], None, sure=False) if citations else QuotationCited(at, None, None)

    def _touches(self, end: int, start: int) -> bool:
        """Whether nothing but spaces, stops and marks stands between a quotation and a citation."""
        between = self.manuscript.text[end:start]
        return start >= end - 1 and len(between) < 40 and not between.strip(" \t\r\n>.,;:!?*_\"”’'…\\—–-")

    def _opens_new_voice(
        self, follows: _Citation, before: Sequence[_Citation], naming: Naming | None, quotation: Quotation
    ) -> bool:
        """Whether the citation after a quotation speaks of another author than the one who is quoted."""
        gap = follows.mention.span.start - quotation.span.end
        if follows.mention.form != "narrative" or not self._names_author(follows):
            return False
        return bool(before) or naming is not None or gap > _NEAR

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
        by = self.manuscript.paragraphs[paragraph].span.start
        for naming in reversed(self.prose[paragraph].namings):
            span = naming.span.shifted(by)
            if (
                start <= span.start
                and span.end <= end
                and not any(one.mention.span.overlaps(span) for one in citations)
            ):
                return Naming(span, naming.works, naming.full)
        return None

    def _named(self, at: int, naming: Naming, citations: Sequence[_Citation], before: int) -> QuotationCited:
        """A quotation whose author is named in the sentence, where nothing is cited there."""
        ids = {self.known.works[work].entry.id for work in naming.works}
        for one in reversed(citations):
            if one.mention.span.end <= before and one.resolved.entry in ids:
                return _cited(at, one, None, sure=False)
        return QuotationCited(at, None, None, next(iter(ids)) if len(ids) == 1 else None, sure=False)


def _is_second_hand(citation: _Citation) -> bool:
    """Whether a citation only passes on another's words: *as cited in*."""
    return bool(citation.resolved.cite.secondary or SECOND_HAND.search(citation.resolved.cite.prefix + " "))


def _cited(at: int, citation: _Citation, locator: Locator | None, sure: bool = True) -> QuotationCited:
    return QuotationCited(at, citation.at, locator, citation.resolved.entry, sure)
