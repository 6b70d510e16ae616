"""One paper, worked out: each part of the answer is computed when it is first asked for, and once.

It is long because it names, in one place and in a line or two each, everything that checks and judges may ask for; how
each is worked out stands in the room that it is taken from.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from fairhand.brief.length_counts import uncounted_parts
from fairhand.brief.spelling import spelling_asked
from fairhand.citing.attach import attach
from fairhand.citing.mention import Locator, Mention, QuotationCited, Resolved
from fairhand.citing.named import find_named
from fairhand.citing.recognise import recognise
from fairhand.citing.resolve import resolve
from fairhand.citing.style_rules import StyleRules
from fairhand.citing.styles import Style, find_style
from fairhand.citing.titles import titles_quoted
from fairhand.copyedit.grammar.clauses import Clause, Shown, blank_brackets, read_clauses, show_sentences
from fairhand.copyedit.own_prose import OwnParagraph, own_prose
from fairhand.evidence.support import PointSupport, weigh_support
from fairhand.fair_copy.document import Layout
from fairhand.fair_copy.layout import layout_for
from fairhand.fair_copy.student_papers import PLAIN_PAGE
from fairhand.fidelity.allowed import QuotationRules
from fairhand.fidelity.allowed import rules_for as quotation_rules_for
from fairhand.fidelity.copying import Likeness, OwnWords, find_likenesses, own_words
from fairhand.fidelity.match import QuotationMatch
from fairhand.fidelity.prepared import PreparedSource, prepare
from fairhand.fidelity.quotation import find_quotation
from fairhand.fidelity.shelf import shelve
from fairhand.language.folding import fold
from fairhand.language.parsing import Sentence, parse_sentences
from fairhand.language.words import words
from fairhand.manuscript.counting import WordCount, count_words
from fairhand.manuscript.draft import read_manuscript
from fairhand.manuscript.parts import Manuscript, Quotation
from fairhand.manuscript.sections import named_sections
from fairhand.manuscript.unlabelled import Unlabelled, find_unlabelled
from fairhand.model.entry import Entry
from fairhand.model.paper import Paper
from fairhand.model.requirement import Requirement
from fairhand.model.span import Span
from fairhand.readiness.argument import Argument
from fairhand.readiness.naming import name_entries
from fairhand.readiness.settled import Spoken, find_anywhere, may_mean, settle
from fairhand.reading.labels import labels_in

UNPAGED = frozenset(
    {"webpage", "post", "post-weblog", "personal_communication", "broadcast", "motion_picture", "song", "speech"}
    | {"interview", "software", "dataset", "graphic", "map"}
)
"""CSL types of what is cited without a page."""
TOGETHER = 120
"""Characters that may lie between a quotation and its citation for a finding to take in both."""
WITHOUT_BRIEF = frozenset(
    "manuscript entries names mentions resolved _understood spoken cited cited_by_name cited_quotations prepared"
    " title_quotations style quotation_rules likenesses own_likenesses own_prose clauses".split()
)
"""What is worked out from the draft, the sources and the style alone."""


@dataclass(frozen=True, slots=True)
class Measured:
    """The paper's extent, from the real typesetting."""

    sheets: int
    """Pages printed, the title page and the list included."""
    body_pages: float
    """Pages of the parts that the sheet counts, with the last page's fraction."""


@dataclass(frozen=True, slots=True)
class LookedUp:
    """A quotation, the citation that belongs to it, and what became of it in the sources."""

    quotation: Quotation
    entry: str | None
    """Id of the source that it is cited from, or that has its words where it cites none; None where ambiguous."""
    citation: Span | None
    """The citation in the draft; None where the source is merely named in the sentence, or known by its words."""
    locator: Locator | None
    sure: bool
    """Whether the citation plainly belongs to the quotation."""
    match: QuotationMatch

    @property
    def with_citation(self) -> Span:
        """From the quotation to its citation, where the two stand together; else the quotation alone."""
        a, b = self.quotation.span, self.citation
        if b is None or max(b.start - a.end, a.start - b.end) > TOGETHER:
            return a
        return Span(min(a.start, b.start), max(a.end, b.end))


class Analysis:
    """What can be known of a paper; a lazy view that never changes.

    Args:
        paper: The paper as it was read.
        measure: Typesets the paper and measures it; None where the engine could not.
        parse: Parses sentences; another where they were parsed ahead.
    """

    def __init__(
        self,
        paper: Paper,
        measure: Callable[[Analysis], Measured | None],
        parse: Callable[[Sequence[str]], Sequence[Sentence]] = parse_sentences,
    ) -> None:
        """The analysis of ``paper``; nothing is worked out yet."""
        self.paper = paper
        self._measure = measure
        self._parse = parse
        self._counts: dict[frozenset[str], WordCount] = {}

    def take_over(self, before: Analysis) -> None:
        """What ``before`` worked out from the same draft, sources and style is known here too.

        Args:
            before: An analysis of the paper made before its brief was read.
        """
        if before.paper == replace(
            self.paper,
            brief=before.paper.brief,
            requirements=before.paper.requirements,
            style_why=before.paper.style_why,
            problems=before.paper.problems,
        ):
            self.__dict__ |= {name: value for name, value in before.__dict__.items() if name in WITHOUT_BRIEF}

    @cached_property
    def manuscript(self) -> Manuscript:
        """The draft, taken apart."""
        return read_manuscript(self.paper.draft)

    @cached_property
    def entries(self) -> Mapping[str, Entry]:
        """The list of sources, by id."""
        return {entry.id: entry for entry in self.paper.entries}

    @cached_property
    def names(self) -> Mapping[str, str]:
        """Each source as the writer is told of it, by id."""
        return name_entries(self.paper.entries)

    @cached_property
    def mentions(self) -> tuple[Mention, ...]:
        """Every in-text citation."""
        return recognise(self.manuscript, self.paper.entries)

    @cached_property
    def resolved(self) -> tuple[Resolved, ...]:
        """Every work cited, and the source that is meant."""
        return self._understood[0]

    @cached_property
    def _understood(self) -> tuple[tuple[Resolved, ...], tuple[QuotationCited, ...]]:
        """The works cited and the citation of each quotation; a page alone is settled by the words beside it."""
        entries = self.paper.entries
        resolved = resolve(self.manuscript, self.mentions, entries)
        cited = attach(self.manuscript, self.mentions, resolved, entries)
        if all(mention.form != "page-only" for mention in self.mentions):
            return resolved, cited
        spoken = Spoken(self.manuscript, self.mentions, resolved, entries)
        settled = settle(spoken, resolved, cited, self.prepared, self.quotation_rules)
        return settled, cited if settled == resolved else attach(self.manuscript, self.mentions, settled, entries)

    @cached_property
    def spoken(self) -> Spoken:
        """Which sources each passage speaks of."""
        return Spoken(self.manuscript, self.mentions, self.resolved, self.paper.entries)

    def repeats_trouble(self, one: Resolved) -> bool:
        """Whether a page alone has its trouble from the citation that it follows, where it is told once."""
        troubled = {self.mentions[r.mention].span for r in self.resolved if r.trouble}
        return self.mentions[one.mention].form == "page-only" and one.named_at in troubled

    @cached_property
    def cited(self) -> frozenset[str]:
        """Ids of the sources that the draft cites, those that a doubtful citation may mean included."""
        sure = {r.entry for r in self.resolved if r.entry is not None}
        maybe = {i for r in self.resolved if r.trouble == "ambiguous" for i in may_mean(r, self.paper.texts)}
        return frozenset(sure | maybe | self.cited_by_name)

    @cached_property
    def cited_by_name(self) -> frozenset[str]:
        """Ids of the sources cited by being named in a sentence: in a style of author and page, those without pages."""
        if self.style_rules.in_text != "author-page":
            return frozenset()
        return frozenset(i for i in find_named(self.manuscript, self.paper.entries) if not self.has_pages(i))

    def has_pages(self, entry: str) -> bool:
        """Whether a source has pages to be cited by: as its text shows, else as its record says."""
        record, text = self.entries[entry], self.paper.texts.get(entry)
        return text.paged if text is not None else bool(record.page) and record.type not in UNPAGED

    @cached_property
    def cited_quotations(self) -> tuple[QuotationCited, ...]:
        """The citation that belongs to each quotation."""
        return self._understood[1]

    @cached_property
    def title_quotations(self) -> Collection[int]:
        """Indices of the quotations that are titles."""
        return titles_quoted(self.manuscript, self.paper.entries, self.mentions)

    @cached_property
    def style(self) -> Style:
        """The citation style that the paper is set in."""
        return find_style(self.paper.style, self.paper.style_csl)

    @property
    def style_rules(self) -> StyleRules:
        """The manual's own rules, its edition named."""
        return self.style.rules

    @cached_property
    def layout(self) -> Layout:
        """The page of the fair copy: the style's student paper with the sheet's own rules over it."""
        style = PLAIN_PAGE if self.has_plain_page else self.paper.style
        return layout_for(style, self._held, "a4" if self.is_british else "us-letter")

    @cached_property
    def has_plain_page(self) -> bool:
        """Whether it follows no style: nobody names one, the sheet asks for no sources, and nothing is cited."""
        asked = any(r.kind == "sources" and r.values.get("max") != 0 for r in self._held)
        return not (self.paper.style_named or self.mentions or asked)

    @cached_property
    def _held(self) -> tuple[Requirement, ...]:
        """The requirements that still hold."""
        return tuple(r for r in self.paper.requirements if not self.is_waived(r))

    @property
    def is_british(self) -> bool:
        """Whether the paper is in British English: by the desk, else by the sheet's own words, else by its style."""
        if self.paper.desk.spelling:
            return self.paper.desk.spelling == "GB"
        asked = spelling_asked(self.paper.brief.texts.values())
        return asked == "GB" if asked else self.style_rules.british

    @property
    def title(self) -> str:
        """The paper's title: the draft's own, else the one that the writer set down, else the folder's name."""
        manuscript = self.manuscript
        heading = next((s for s in manuscript.sections if s.heading and s.heading.content == manuscript.title), None)
        return heading.title if heading else self.paper.settings.title or self.paper.name

    @cached_property
    def prepared(self) -> Mapping[str, PreparedSource]:
        """The sources' texts, made ready to be searched."""
        return {i: prepare(self.paper.texts[i]) for i in self.entries if i in self.paper.texts}

    @cached_property
    def likenesses(self) -> tuple[tuple[int, Likeness], ...]:
        """What in the writer's own words is like a source's, each with where its paragraph begins."""
        shelf = shelve(tuple(self.prepared.values()))
        return tuple((start, one) for start, own in self.own_passages for one in find_likenesses(own, shelf))

    @cached_property
    def own_likenesses(self) -> tuple[tuple[int, Likeness], ...]:
        """What is like another paper of the writer's own, and no source's, each with where its paragraph begins."""
        shelf = shelve(tuple(prepare(one.text) for one in self.paper.own_papers))
        of_sources = [likeness.span.shifted(start) for start, likeness in self.likenesses]
        found = ((start, one) for start, own in self.own_passages for one in find_likenesses(own, shelf))
        return tuple(
            (start, one)
            for start, one in (found if shelf.sources else ())
            if not any(one.span.shifted(start).overlaps(span) for span in of_sources)
        )

    @cached_property
    def own_passages(self) -> tuple[tuple[int, OwnWords], ...]:
        """The words of each paragraph that are the writer's own, with where it begins."""
        manuscript = self.manuscript
        quoted = [quotation.span for quotation in manuscript.quotations]
        skipped = sorted([mention.span for mention in self.mentions] + manuscript.left_matter)
        lists = [section.span for kind, section in named_sections(manuscript) if kind == "references"]
        out = []
        for paragraph in manuscript.paragraphs:
            span = paragraph.span
            if paragraph.in_quote or paragraph.in_table or paragraph.in_caption or any(s.contains(span) for s in lists):
                continue
            within = [
                tuple(each.shifted(-span.start) for each in spans if each.overlaps(span))
                for spans in (paragraph.sentences, quoted, skipped)
            ]
            out.append((span.start, own_words(span.of(manuscript.text), *within)))
        return tuple(out)

    @cached_property
    def own_prose(self) -> tuple[OwnParagraph, ...]:
        """The paragraphs as far as they are the writer's own words."""
        return own_prose(self.manuscript, [mention.span for mention in self.mentions])

    @cached_property
    def unlabelled(self) -> tuple[Unlabelled, ...]:
        """What reads like a remark to oneself or like a gap, in the draft; citations are looked through too."""
        return tuple(
            replace(found, span=found.span.shifted(own.start))
            for own in own_prose(self.manuscript, ())
            for found in find_unlabelled(own.text)
        )

    @property
    def sentences_shown(self) -> tuple[Shown, ...]:
        """The sentences of the writer's own prose as the parser is to see them."""
        return show_sentences(self._prose_in_sentences)

    @cached_property
    def clauses(self) -> tuple[Clause, ...]:
        """The same, parsed."""
        return tuple(read_clauses(self._prose_in_sentences, self._parse))

    def parse(self, sentences: Sequence[str]) -> Sequence[Sentence]:
        """Sentences parsed, such as a half of one of the draft's."""
        return self._parse(sentences)

    @property
    def _prose_in_sentences(self) -> list[OwnParagraph]:
        """The writer's own prose without captions, notes, which need be no sentences, and citations in brackets."""
        text = self.manuscript.text
        aside = {each.span.start for each in self.manuscript.paragraphs if each.in_caption or each.in_note}
        brackets = [each.span for each in self.mentions if text[each.span.start] == "("]
        return [blank_brackets(each, brackets) for each in self.own_prose if each.start not in aside]

    @cached_property
    def looked_up(self) -> tuple[LookedUp, ...]:
        """Each quotation, looked for in the source that it cites; where it cites none, in all of them."""
        rules = self.quotation_rules
        out = []
        for cited in self.cited_quotations:
            resolved = self.resolved[cited.resolved] if cited.resolved is not None else None
            meant = (cited.entry,) if cited.entry else resolved.candidates if resolved else ()
            quotation = self.manuscript.quotations[cited.quotation]
            if cited.quotation in self.title_quotations or quotation.within is not None:
                continue
            if not meant or not cited.sure:
                found = find_anywhere(quotation.text, self.prepared, rules)
                if found is not None and (not meant or self._is_spoken_of(found.source, quotation, meant)):
                    out.append(LookedUp(quotation, found.source, None, None, sure=False, match=found))
                    continue
                if not meant:
                    continue
            labels = labels_in(cited.locator.text) if cited.locator and cited.locator.kind == "page" else ()
            citation = self.mentions[resolved.mention].span if resolved else None
            for number, entry in enumerate(meant):
                others = {i: p for i, p in self.prepared.items() if i != entry}
                match = find_quotation(quotation.text, self.prepared.get(entry), labels, others, rules)
                found_here = match.source == entry and match.outcome != "no-text"
                if found_here or number == len(meant) - 1:
                    out.append(LookedUp(quotation, cited.entry, citation, cited.locator, cited.sure, match))
                    break
        return tuple(out)

    def _is_spoken_of(self, source: str | None, quotation: Quotation, meant: Collection[str]) -> bool:
        """Whether the passage around a quotation speaks of a source, and its citation, if any, means another."""
        return source not in meant and source in self.spoken.of(quotation.paragraph)

    @cached_property
    def quotation_rules(self) -> QuotationRules:
        """What the style lets one change in a quotation without a mark."""
        return quotation_rules_for(self.paper.style)

    @cached_property
    def argument(self) -> Argument:
        """What the draft argues."""
        return Argument(self.paper, self.title, self.manuscript, self.mentions, self.resolved)

    @cached_property
    def support(self) -> tuple[PointSupport, ...]:
        """How well each point is supported."""
        desk = self.paper.desk
        return weigh_support(
            self.paper.points,
            self.entries,
            self.paper.texts,
            main=desk.sources_per_main_point,
            optional=desk.sources_per_optional_point,
            rulings=self.paper.rulings,
        )

    @cached_property
    def length_rule(self) -> Requirement | None:
        """The sheet's rule on the paper's length, waived or not; the one in words where there are two."""
        rules = [r for r in self.paper.requirements if r.kind == "length" and r.values.get("part") == "paper"]
        rules.sort(key=lambda r: r.values.get("unit") != "words")
        return rules[0] if rules else None

    @cached_property
    def words(self) -> WordCount:
        """The words that count by the sheet's rule, and those that do not."""
        return self.count(self.length_excludes)

    @property
    def length_excludes(self) -> frozenset[str]:
        """The parts of the paper that do not count by the sheet's rule."""
        return uncounted_parts(self.length_rule.values if self.length_rule else {})

    def count(self, excludes: Collection[str]) -> WordCount:
        """The draft's words, without the parts named in ``excludes``."""
        left_out = frozenset(excludes)
        if left_out not in self._counts:
            self._counts[left_out] = count_words(self.manuscript, left_out, [m.span for m in self.mentions])
        return self._counts[left_out]

    def words_in(self, part: str) -> int | None:
        """The words of the section headed as ``part`` (``"annotated-bibliography"``); None where there is none."""
        wanted = part.replace("-", " ")
        for section in self.manuscript.sections:
            if section.heading and fold(section.title).strip(" .:") == wanted:
                body = [p for p in self.manuscript.paragraphs if section.span.contains(p.span)]
                return sum(len(words(p.span.of(self.manuscript.text))) for p in body)
        return None

    @cached_property
    def measured(self) -> Measured | None:
        """Pages, from the real typesetting; None where the engine could not."""
        return self._measure(self)

    @cached_property
    def asks_for_sources(self) -> bool:
        """Whether support is judged: not where the sheet was read and asks for no sources."""
        kinds = {r.kind for r in self.paper.requirements}
        return not kinds or bool(kinds & {"sources", "style"})

    def is_waived(self, requirement: Requirement) -> bool:
        """Whether the writer has said that the requirement no longer holds."""
        answer = self.paper.answers.get(requirement.id)
        return answer is not None and answer.waived

    def sentence_around(self, span: Span) -> Span:
        """The sentence of the draft that holds the start of ``span``, or ``span`` itself."""
        for paragraph in self.manuscript.paragraphs:
            if paragraph.span.start <= span.start < paragraph.span.end:
                for sentence in paragraph.sentences:
                    if sentence.start <= span.start < sentence.end:
                        return sentence
        return span
