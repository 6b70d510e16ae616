"""Citations that name no work, settled by the words that they vouch for.

A page alone means the work last named, and which one that is, prose does not always tell: *For Aldana the matter is
plain: Calloway, she says, “…” (204)*. The words quoted beside it do, where they stand in another source that the
passage speaks of. **Source**: MLA Handbook 9, 6.3 and 6.38 (from memory); that the text decides is our own rule.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from fairhand.citing.known import know
from fairhand.citing.mention import Mention, QuotationCited, Resolved
from fairhand.citing.recognise import read_paragraphs
from fairhand.fidelity.allowed import QuotationRules
from fairhand.fidelity.match import QuotationMatch
from fairhand.fidelity.prepared import PreparedSource, prepare
from fairhand.fidelity.quotation import find_quotation
from fairhand.manuscript.parts import Manuscript
from fairhand.model.entry import Entry
from fairhand.model.source import SourceText
from fairhand.reading.labels import labels_in

_NOTHING = SourceText("", (), paged=False)
_BY_LINE = ("act", "line")
MOST_LINES = 20
"""Lines that are quoted at once, at most."""
FEWEST_WORDS = 4
"""Words that a quotation must have to be held against the only text that it may come from."""


def find_anywhere(text: str, prepared: Mapping[str, PreparedSource], rules: QuotationRules) -> QuotationMatch | None:
    """Where words that cite nothing stand, exactly or nearly; None where in no source, or where they are too few.

    Of several sources one must have them plainly; where there is one text alone, it is searched as if it were cited.
    """
    if len(prepared) == 1:
        match = find_quotation(text, next(iter(prepared.values())), (), {}, rules)
        return match if match.outcome != "not-found" and len(text.split()) >= FEWEST_WORDS else None
    match = find_quotation(text, prepare(_NOTHING), (), prepared, rules)
    if match.outcome != "other-source" or match.source is None:
        return None
    return find_quotation(text, prepared[match.source], (), {}, rules)


def may_mean(one: Resolved, texts: Mapping[str, SourceText]) -> Sequence[str]:
    """The sources that a citation may mean that fits several; where one of them has its page, none that has not."""
    locator = one.cite.locator
    asked = set(labels_in(locator.text)) if locator is not None and locator.kind == "page" else set()
    paged = {i: texts[i] for i in one.candidates if i in texts and texts[i].paged}
    without = {i for i, text in paged.items() if not asked & {page.label for page in text.pages}}
    return one.candidates if len(without) == len(paged) else [i for i in one.candidates if i not in without]


def take_by_page(one: Resolved, texts: Mapping[str, SourceText]) -> Resolved:
    """A citation that fits several sources, taken for the only one that has its page: what is argued rests on it."""
    if one.trouble != "ambiguous" or len(meant := may_mean(one, texts)) != 1:
        return one
    return replace(one, entry=meant[0], trouble=None)


class Spoken:
    """Which sources each passage of a draft speaks of."""

    def __init__(
        self,
        manuscript: Manuscript,
        mentions: Sequence[Mention],
        resolved: Sequence[Resolved],
        entries: Sequence[Entry],
    ) -> None:
        """The draft's citations and namings, ready to be looked up by paragraph."""
        self.manuscript = manuscript
        self.mentions = mentions
        known = know(tuple(entries))
        self._named = [
            [(naming.span, frozenset(known.works[work].entry.id for work in naming.works)) for naming in prose.namings]
            for prose in read_paragraphs(manuscript, known)
        ]
        self._cited: dict[int, set[str]] = {}
        self.by_line: set[str] = set()
        self.verse: set[str] = set()
        """Ids of the sources of which the draft gives a line, called so: later numbers alone are lines too."""
        for one in resolved:
            if one.entry is None:
                continue
            self._cited.setdefault(mentions[one.mention].paragraph, set()).add(one.entry)
            if one.cite.locator and one.cite.locator.kind in _BY_LINE and mentions[one.mention].form != "page-only":
                self.by_line.add(one.entry)
            if one.cite.locator and one.cite.locator.kind == "line" and one.trouble is None:
                self.verse.add(one.entry)

    def named_in(self, paragraph: int) -> frozenset[str]:
        """Ids of the sources that a paragraph names in its prose, an author's several works all counted."""
        return frozenset().union(*(ids for _, ids in self._named[paragraph]))

    def of(self, paragraph: int) -> frozenset[str]:
        """Ids of the sources that a paragraph, or the one that leads to it, names or cites."""
        before = paragraph - 1
        while before >= 0 and self.manuscript.paragraphs[before].in_quote:
            before -= 1
        near = (paragraph, before) if before >= 0 else (paragraph,)
        return frozenset().union(*(self.named_in(at) | self._cited.get(at, set()) for at in near))

    def plainly_names(self, one: Resolved, other: str) -> bool:
        """Whether a page's own sentence names the work taken to be meant, and not the ``other``."""
        mention = self.mentions[one.mention]
        paragraph = self.manuscript.paragraphs[mention.paragraph]
        sentence = next((s for s in paragraph.sentences if s.start <= mention.span.start < s.end), paragraph.span)
        if one.named_at is None or not sentence.contains(one.named_at):
            return False
        named = self._named[mention.paragraph]
        return all(other not in ids for span, ids in named if sentence.contains(span.shifted(paragraph.span.start)))


def settle(
    spoken: Spoken,
    resolved: Sequence[Resolved],
    cited: Sequence[QuotationCited],
    prepared: Mapping[str, PreparedSource],
    rules: QuotationRules,
) -> tuple[Resolved, ...]:
    """The citations, those that name no work given the source in which the words that they vouch for stand.

    Where the page's own sentence names a work and the words are another's, nothing is settled: that is a fault. A
    number beside words of a source that is cited by line is a line of it, where it is no page on which they stand.
    """
    out = list(resolved)
    for one in cited:
        if one.resolved is None:
            continue
        here = resolved[one.resolved]
        mention = spoken.mentions[here.mention]
        if mention.form != "page-only":
            continue
        text = spoken.manuscript.quotations[one.quotation].text
        taken = prepared.get(here.entry) if here.entry else None
        if taken is None and here.entry is not None:
            continue
        match = find_quotation(text, taken or prepare(_NOTHING), (), _others(prepared, here.entry), rules)
        if match.outcome != "other-source" or match.source is None:
            continue
        if _may_mean(spoken, here, match):
            found = match.source
            why = "The words quoted beside it stand there."
            out[one.resolved] = replace(here, entry=found, trouble=None, candidates=(found,), why=why, named_at=None)
    if spoken.verse:
        _take_lines(spoken, out, cited, prepared, rules)
    return tuple(out)


def _take_lines(
    spoken: Spoken,
    out: list[Resolved],
    cited: Sequence[QuotationCited],
    prepared: Mapping[str, PreparedSource],
    rules: QuotationRules,
) -> None:
    """The numbers that are lines, made so."""
    for one in cited:
        here = out[one.resolved] if one.resolved is not None else None
        locator = here.cite.locator if here is not None else None
        if here is None or here.entry not in spoken.verse or here.entry not in prepared:
            continue
        if one.resolved is None or locator is None or locator.kind != "page":
            continue
        text = spoken.manuscript.quotations[one.quotation].text
        match = find_quotation(text, prepared[here.entry], (), {}, rules)
        if match.outcome != "not-found" and not set(labels_in(locator.text)) & set(match.pages):
            out[one.resolved] = replace(here, cite=replace(here.cite, locator=replace(locator, kind="line")))


def _may_mean(spoken: Spoken, one: Resolved, match: QuotationMatch) -> bool:
    """Whether a citation that names no work may mean the source that has its words.

    The passage speaks for it, or the kind of its place; that the sentence names the work which the paper is about does
    not speak against it, where the page is right.
    """
    source, locator = match.source, one.cite.locator
    if source is None:
        return False
    if locator is not None and locator.kind in _BY_LINE and source in spoken.by_line:
        return True
    if locator is not None and locator.kind == "page":
        fits = bool(set(labels_in(locator.text)) & set(match.pages))
        if source in spoken.verse and not fits and len(labels_in(locator.text)) <= MOST_LINES:
            return True
        if one.entry in spoken.verse and fits and source in spoken.of(spoken.mentions[one.mention].paragraph):
            return True
    return source in spoken.of(spoken.mentions[one.mention].paragraph) and not spoken.plainly_names(one, source)


def _others(prepared: Mapping[str, PreparedSource], entry: str | None) -> Mapping[str, PreparedSource]:
    return {i: p for i, p in prepared.items() if i != entry}
