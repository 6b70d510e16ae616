"""The body of a draft as the revision reads it: its paragraphs, each sentence with what it cites and names."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Literal

from fairhand.citing.known import know
from fairhand.citing.mention import Mention, Resolved
from fairhand.citing.recognise import read_paragraphs
from fairhand.manuscript.parts import Manuscript, Paragraph
from fairhand.manuscript.sections import named_sections
from fairhand.model.entry import Entry
from fairhand.model.span import Span

Role = Literal["opening", "closing", "body"]
"""Whether a paragraph opens the paper (its introduction), closes it (its conclusion), or stands between."""

_OPENING = re.compile(r"(?:\d+[.)]?\s*)?(?:introduction|introductory\b.*|opening|prologue)", re.IGNORECASE)
_CLOSING = re.compile(r"(?:\d+[.)]?\s*)?(?:conclusions?|concluding\b.*|.*\band conclusions?|epilogue)", re.IGNORECASE)
_NUMBERED = re.compile(r"\[\d{1,3}(?:[–,-] ?\d{1,3}){0,6}\](?!\()")
"""A citation by number, which is told of no source."""
_NOTE = re.compile(r"\[\^([^\]\s]+)\]")
MOST_OPENING = 5
"""One paragraph in so many, and two in any case, may belong to an opening or a closing that a heading names: what else
stands under it argues (our own rule)."""
FEWEST_WORDS = 20
"""Words of a paragraph that argues something; a shorter one is a link or a line of a heading (from trial)."""


@dataclass(frozen=True, slots=True)
class Cited:
    """A work cited in a sentence."""

    entry: str | None
    """The source's id; None where it is not on the list, or ambiguous."""
    pages: str
    """The place as it is cited, or empty."""
    opens: bool
    """Whether the author is named before the words: a citation that leads, and does not close."""


@dataclass(frozen=True, slots=True)
class Sentence:
    """A sentence of the body."""

    span: Span
    own: str
    """Its text, as long as it stands in the draft, with citations, asides and what is quoted blanked."""
    cites: tuple[Cited, ...]
    named: frozenset[str]
    """Ids of the sources that its prose names."""
    quoted: int
    """Characters within quotation marks."""


@dataclass(frozen=True, slots=True)
class BodyParagraph:
    """A paragraph that argues."""

    index: int
    """Its number among the manuscript's paragraphs."""
    span: Span
    """With the block quotations that it introduces."""
    section: str
    """The title of the section that it stands in; empty where there is none."""
    role: Role
    sentences: tuple[Sentence, ...]
    words: int
    """Its own words, citations and quotations included."""
    after: tuple[Cited, ...] = ()
    """What its block quotations cite."""
    blocks: int = 0
    """Words of its block quotations."""

    @property
    def cites(self) -> tuple[Cited, ...]:
        """Everything that it cites, in order."""
        return tuple(cited for sentence in self.sentences for cited in sentence.cites) + self.after

    @property
    def own(self) -> str:
        """Its sentences without citations and quotations."""
        return " ".join(" ".join(sentence.own.split()) for sentence in self.sentences)

    @property
    def own_span(self) -> Span:
        """The paragraph alone, without its block quotations."""
        return Span(self.span.start, self.sentences[-1].span.end if self.sentences else self.span.end)


def read_body(
    manuscript: Manuscript,
    mentions: Sequence[Mention],
    resolved: Sequence[Resolved],
    entries: Sequence[Entry],
) -> tuple[BodyParagraph, ...]:
    r"""The paragraphs that argue, in order: not lists of sources, abstracts, captions, tables, notes, or short links.

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> draft = read_manuscript("# Tides\n\n" + "The ebb was strong and the harbour silted up each year. " * 3)
    >>> [(one.role, len(one.sentences)) for one in read_body(draft, (), (), ())]
    [('opening', 3)]
    """
    reader = _Reader(manuscript, mentions, resolved, entries)
    left_out = [section.span for _, section in named_sections(manuscript)]
    found: list[BodyParagraph] = []
    for paragraph in manuscript.paragraphs:
        if paragraph.in_note or paragraph.in_caption or paragraph.in_table:
            continue
        if any(span.contains(paragraph.span) for span in left_out):
            continue
        if paragraph.in_quote:
            if found:
                found[-1] = reader.with_block(found[-1], paragraph)
            continue
        found.append(reader.read(paragraph))
    return tuple(_with_roles([one for one in found if one.words + one.blocks >= FEWEST_WORDS]))


class _Reader:
    """The draft's citations and names by paragraph."""

    def __init__(
        self,
        manuscript: Manuscript,
        mentions: Sequence[Mention],
        resolved: Sequence[Resolved],
        entries: Sequence[Entry],
    ) -> None:
        self.manuscript = manuscript
        known = know(tuple(entries))
        self._ids = [work.entry.id for work in known.works]
        self._prose = read_paragraphs(manuscript, known)
        self._cites: dict[int, list[tuple[Span, Cited]]] = {}
        self._spans: dict[int, list[Span]] = {}
        self._notes: dict[int, list[Cited]] = {}
        met: set[int] = set()
        for one in resolved:
            mention = mentions[one.mention]
            opens = mention.form == "narrative" and mention.span.of(manuscript.text)[:1] != "("
            place = one.cite.locator.text if one.cite.locator else ""
            cited = Cited(one.entry if one.trouble != "ambiguous" else None, place, opens)
            self._cites.setdefault(mention.paragraph, []).append((mention.span, cited))
            met.add(one.mention)
        for at, mention in enumerate(mentions):
            self._spans.setdefault(mention.paragraph, []).append(mention.span)
            if at not in met:
                self._cites.setdefault(mention.paragraph, []).append((mention.span, Cited(None, "", opens=False)))
        self._quoted: dict[int, list[Span]] = {}
        for quotation in manuscript.quotations:
            if quotation.kind == "run-in":
                self._quoted.setdefault(quotation.paragraph, []).append(quotation.inner)
        self._left = manuscript.left_matter

    def read(self, paragraph: Paragraph) -> BodyParagraph:
        """A paragraph of prose."""
        text = self.manuscript.text
        cites = self._cites.get(paragraph.index, [])
        quoted = self._quoted.get(paragraph.index, [])
        left = [span for span in self._left if span.overlaps(paragraph.span)]
        hidden = self._spans.get(paragraph.index, []) + quoted + left
        start = paragraph.span.start
        namings = [
            (naming.span.shifted(start), frozenset(self._ids[work] for work in naming.works))
            for naming in self._prose[paragraph.index].namings
        ]
        sentences = []
        for number, span in enumerate(paragraph.sentences):
            last = number + 1 == len(paragraph.sentences)
            until = paragraph.span.end if last else paragraph.sentences[number + 1].start
            within = [cited for at, cited in cites if span.start <= at.start < until]
            within += [
                cited for note in _NOTE.finditer(text, span.start, span.end) for cited in self._cited_in_note(note[1])
            ]
            within = _placed(within)
            if not within and _NUMBERED.search(text, span.start, until):
                within = [Cited(None, "", opens=False)]
            named = [ids for at, ids in namings if span.start <= at.start < until]
            sentences.append(
                Sentence(
                    span,
                    _blank(text, span, hidden),
                    tuple(within),
                    frozenset().union(*named),
                    sum(min(one.end, span.end) - max(one.start, span.start) for one in quoted if one.overlaps(span)),
                )
            )
        section = self.manuscript.sections[paragraph.section] if self.manuscript.sections else None
        title = section.title if section and section.heading else ""
        if section and section.heading and section.heading.content == self.manuscript.title:
            title = ""
        words = sum(len(sentence.span.of(text).split()) for sentence in sentences)
        return BodyParagraph(paragraph.index, paragraph.span, title, "body", tuple(sentences), words)

    def with_block(self, before: BodyParagraph, block: Paragraph) -> BodyParagraph:
        """The paragraph with a block quotation that it introduces."""
        cites = tuple(cited for _, cited in self._cites.get(block.index, []))
        words = before.blocks + len(block.span.of(self.manuscript.text).split())
        return replace(before, span=Span(before.span.start, block.span.end), after=before.after + cites, blocks=words)

    def _cited_in_note(self, label: str) -> Sequence[Cited]:
        """What a footnote cites; a note that cites nothing known still tells that a source is given."""
        block = self.manuscript.notes.get(label)
        if block is None:
            return ()
        found = [
            cited
            for paragraph in self.manuscript.paragraphs
            if paragraph.in_note and block.span.contains(paragraph.span)
            for _, cited in self._cites.get(paragraph.index, [])
        ]
        return found or [Cited(None, "", opens=False)]


def _placed(cites: Sequence[Cited]) -> list[Cited]:
    """The works cited; an author named first has the page that closes the words: *Lind (2019) found … (p. 4)*."""
    if len(cites) < 2:
        return list(cites)
    found: list[Cited] = []
    for cited in cites:
        led = next((at for at, one in enumerate(found) if one.opens and one.entry == cited.entry), None)
        if led is not None and cited.entry is not None and not found[led].pages:
            found[led] = replace(found[led], pages=cited.pages)
        else:
            found.append(cited)
    return found


def _blank(text: str, span: Span, hidden: Sequence[Span]) -> str:
    """The sentence with blanks where something is not the writer's own."""
    own = span.of(text)
    for one in hidden:
        start, end = max(one.start, span.start) - span.start, min(one.end, span.end) - span.start
        if start < end:
            own = own[:start] + " " * (end - start) + own[end:]
    return own


def _with_roles(found: Sequence[BodyParagraph]) -> list[BodyParagraph]:
    """The paragraphs with their roles: by the headings where they say so, else the first and the last."""
    most = max(2, len(found) // MOST_OPENING)
    opens = [at for at, one in enumerate(found) if _OPENING.fullmatch(one.section.strip())]
    closes = [at for at, one in enumerate(found) if _CLOSING.fullmatch(one.section.strip())]
    roles: dict[int, Role] = dict.fromkeys(opens[:most], "opening")
    roles.update(dict.fromkeys(closes[-most:], "closing"))
    if found and "opening" not in roles.values():
        roles.setdefault(0, "opening")
    if len(found) > 2 and "closing" not in roles.values():
        roles.setdefault(len(found) - 1, "closing")
    return [replace(one, role=roles.get(at, "body")) for at, one in enumerate(found)]
