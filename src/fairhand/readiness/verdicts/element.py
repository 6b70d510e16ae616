"""Whether the paper has the elements that the sheet asks for."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping

from rapidfuzz import fuzz

from fairhand.language.counts import count_of
from fairhand.manuscript.parts import Manuscript
from fairhand.model.requirement import Requirement
from fairhand.model.span import Span, line_at
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.judgement import CONFIRM, Judgement, State
from fairhand.readiness.verdicts import section

ALIKE = 75.0
"""Likeness, of 100, from which a sentence of the opening is shown as the thesis (from trial)."""

_FIRST_PERSON = re.compile(
    r"(?<![\w'’])(?:I|me|my|mine|myself|we|us|our|ours|ourselves)(?=['’](?:m|ve|ll|d|re)\b|(?![\w'’]))"
)
_STATED_COUNT = re.compile(r"word\s+count\s*[:=]?\s*\(?(\d[\d,]*)", re.IGNORECASE)


def judge(requirement: Requirement, analysis: Analysis) -> Judgement:
    """Whether the element is there, as far as can be seen."""
    what = str(requirement.values.get("what"))
    judge_one = JUDGES.get(what)
    if judge_one is not None:
        return judge_one(requirement, analysis)
    return Judgement(
        "ask", None, f"The sheet wants: “{' '.join(requirement.evidence.split())}”. Is it there? {CONFIRM}"
    )


def _judge_figures(requirement: Requirement, analysis: Analysis) -> Judgement:
    return _at_least(requirement, len(analysis.manuscript.figures), "figure")


def _judge_tables(requirement: Requirement, analysis: Analysis) -> Judgement:
    return _at_least(requirement, len(analysis.manuscript.tables), "table")


def _judge_headings(requirement: Requirement, analysis: Analysis) -> Judgement:
    headings = [s for s in analysis.manuscript.sections if s.heading and s.heading.content != analysis.manuscript.title]
    return _at_least(requirement, len(headings), "heading")


def _judge_quotations(requirement: Requirement, analysis: Analysis) -> Judgement:
    if requirement.values.get("form") == "block":
        blocks = [quotation for quotation in analysis.manuscript.quotations if quotation.kind == "block"]
        return _at_least(requirement, len(blocks), "block quotation")
    return _at_least(requirement, len(analysis.looked_up), "cited quotation")


def _at_least(requirement: Requirement, number: int, what: str) -> Judgement:
    """A count against the least that the sheet asks, one where it names no number."""
    least = requirement.values.get("min")
    needed = int(least) if isinstance(least, int | float) and not isinstance(least, bool) else 1
    state: State = "met" if number >= needed else "unmet"
    return Judgement(state, number, f"{count_of(number, what)} in the draft; the sheet wants {needed}.")


def _judge_no_first_person(requirement: Requirement, analysis: Analysis) -> Judgement:  # noqa: ARG001 - one signature for all
    """Words of the first person outside quotations and asides."""
    manuscript = analysis.manuscript
    left_out = [quotation.span for quotation in manuscript.quotations] + manuscript.left_matter
    lines = []
    for paragraph in manuscript.paragraphs:
        if paragraph.in_quote:
            continue
        for found in _FIRST_PERSON.finditer(manuscript.text, paragraph.span.start, paragraph.span.end):
            place = Span(found.start(), found.end())
            if not _is_numeral(manuscript, place) and not any(span.overlaps(place) for span in left_out):
                lines.append(line_at(manuscript.text, place.start))
    if not lines:
        return Judgement("met", 0, "No word of the first person stands outside quotations.")
    shown = ", ".join(map(str, dict.fromkeys(lines)))
    return Judgement("unmet", len(lines), f"{count_of(len(lines), 'word')} of the first person, on line {shown}.")


def _is_numeral(manuscript: Manuscript, place: Span) -> bool:
    """Whether an *I* is a number (*World War I*, *Elizabeth I*): a capitalised word or a stop stands against it."""
    if place.of(manuscript.text) != "I":
        return False
    before = manuscript.text[max(0, place.start - 30) : place.start].split()
    after = manuscript.text[place.end : place.end + 1]
    return (
        bool(before)
        and before[-1][0].isupper()
        and (after in {",", ".", ";", ":", ")"} or before[-1] in {"War", "Part"})
    )


def _judge_thesis(requirement: Requirement, analysis: Analysis) -> Judgement:  # noqa: ARG001 - one signature for all
    """Whether the paper's thesis, as the writer set it down, is stated in the opening."""
    thesis = analysis.paper.points.thesis
    if not thesis:
        return Judgement("ask", None, f"Is the thesis stated where the sheet wants it? {CONFIRM}")
    manuscript = analysis.manuscript
    prose = [p for p in manuscript.paragraphs if not (p.in_quote or p.in_note or p.in_caption or p.in_table)]
    for paragraph in prose[: max(2, len(prose) // 5)]:
        for number, sentence in enumerate(paragraph.sentences):
            end = paragraph.sentences[min(number + 1, len(paragraph.sentences) - 1)].end
            for candidate in (sentence, Span(sentence.start, end)):
                if fuzz.token_set_ratio(thesis, candidate.of(manuscript.text)) >= ALIKE:
                    line = line_at(manuscript.text, sentence.start)
                    return Judgement("met", f"line {line}", f"Your thesis is stated on line {line}.")
    return Judgement(
        "ask", None, f"No sentence of the opening is close to your thesis, “{thesis}”. Is it stated? {CONFIRM}"
    )


def _judge_word_count(requirement: Requirement, analysis: Analysis) -> Judgement:  # noqa: ARG001 - one signature for all
    """Whether the draft states its word count, and states it truly."""
    stated = _STATED_COUNT.search(analysis.paper.draft)
    counted = analysis.words.counted
    if stated is None:
        return Judgement("unmet", None, f"The draft states no word count; by the sheet's rule it is {counted:,}.")
    number = int(stated.group(1).replace(",", ""))
    if abs(number - counted) <= max(10, counted // 100):
        return Judgement("met", number, f"The draft states {number:,}; counted {counted:,}.")
    return Judgement("unmet", number, f"The draft states {number:,} words, but {counted:,} are counted.")


def _judge_keywords(requirement: Requirement, analysis: Analysis) -> Judgement:
    found = re.search(
        r"^[*_]{0,3}Key ?words[*_]{0,3}\s*[:.—–-]\s*[*_]{0,3}(.+)$", analysis.paper.draft, re.IGNORECASE | re.MULTILINE
    )
    words = [w for w in re.split(r"[,;]", found.group(1)) if w.strip()] if found else []
    return _at_least(requirement, len(words), "keyword")


def _judge_part(name: str) -> Callable[[Requirement, Analysis], Judgement]:
    """A judge of an element that is a section of its own, which only a paper with headings needs to head.

    **Source**: Publication Manual of the APA, 7th ed., 2.27 (an introduction has no heading); of essays without
    headings, common practice.
    """

    def judge_part(requirement: Requirement, analysis: Analysis) -> Judgement:
        asked = Requirement("section", {"name": name}, requirement.evidence, requirement.span)
        judgement = section.judge(asked, analysis)
        manuscript = analysis.manuscript
        headings = [s for s in manuscript.sections if s.heading and s.heading.content != manuscript.title]
        if judgement.state == "met" or name == "abstract" or not manuscript.paragraphs:
            return judgement
        if not headings:
            return Judgement("ask", None, f"The draft has no headings. Has it the {name} asked for? {CONFIRM}")
        if name == "introduction" and manuscript.paragraphs[0].span.start < headings[0].span.start:
            return Judgement("met", None, "The draft opens before its first heading.")
        return judgement

    return judge_part


PARTS = frozenset({"abstract", "introduction", "conclusion", "literature-review", "method"})
"""The elements that are sections of their own."""

JUDGES: Mapping[str, Callable[[Requirement, Analysis], Judgement]] = {
    "figure": _judge_figures,
    "table": _judge_tables,
    "headings": _judge_headings,
    "direct-quotation": _judge_quotations,
    "no-first-person": _judge_no_first_person,
    "thesis": _judge_thesis,
    "word-count-stated": _judge_word_count,
    "keywords": _judge_keywords,
    "abstract": _judge_part("abstract"),
    "introduction": _judge_part("introduction"),
    "conclusion": _judge_part("conclusion"),
    "literature-review": _judge_part("literature review"),
    "method": _judge_part("method"),
}
"""The elements that can be seen; of the others the writer is asked."""
