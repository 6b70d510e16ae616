"""What is said of the writer's own words where a source, or another paper of the writer's, has nearly the same."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from fairhand.fidelity.copying import BREAK, How, Likeness
from fairhand.fidelity.passages import Passage
from fairhand.fidelity.prepared import PreparedSource, prepare
from fairhand.fidelity.wordings import differing_wordings
from fairhand.language.counts import count_of
from fairhand.language.shingles import containment
from fairhand.model.finding import Wordings
from fairhand.model.own_paper import OwnPaper
from fairhand.model.span import Span
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark
from fairhand.readiness.naming import name_place

CAUTION = "This is a place to look, never a verdict."
RUN_OF = 3
"""Words in a row of which it is told how many another paper has: as many as its index holds."""
LEAVE = (
    "What was handed in once may be handed in again only with your instructor's leave, and then with a note that says"
    " so."
)
"""What is said beside words of the writer's own."""


def remarks_on_likeness(analysis: Analysis, how: How, cited: str, uncited: str) -> Iterator[Remark]:
    """A remark, with both wordings, on each stretch that is like a source's in this way.

    Args:
        analysis: The paper.
        how: In what way.
        cited: What is said where the source is cited in the same sentence; ``{words}`` stands for the number of words,
            ``{place}`` for the source and page, ``{exactly}`` for whether it is word for word.
        uncited: What is said where it is not.
    """
    sources = list(analysis.prepared)
    draft = analysis.paper.draft
    for begin, likeness in analysis.likenesses:
        if likeness.how != how:
            continue
        entry = sources[likeness.source]
        prepared = analysis.prepared[entry]
        span = likeness.span.shifted(begin)
        pages = {prepared.page_at(word) for word in (likeness.start, likeness.end - 1)}
        labels = [prepared.source.pages[page].label for page in sorted(pages)] if prepared.source.paged else []
        lead = cited if _is_cited(analysis, span, entry) else uncited
        exactly = "nearly word for word" if likeness.draft_differs or likeness.source_differs else "word for word"
        place = name_place(analysis.names[entry], [label for label in labels if label])
        yield Remark(
            span,
            f"{lead.format(words=count_of(likeness.words, 'word'), place=place, exactly=exactly)} {CAUTION}",
            wordings=_word_both(draft, span, likeness, prepared),
            concerns=(entry,),
        )


def remarks_on_reuse(analysis: Analysis, how: How, follows: str) -> Iterator[Remark]:
    """A query, with both wordings, on each stretch that is like another paper of the writer's own in this way.

    Where most of the draft stands in one of them, that is said once, of the whole.

    Args:
        analysis: The paper.
        how: In what way.
        follows: What the words do, ``{exactly}`` standing for whether it is word for word.

    **Source**: MLA Handbook, 9th ed., 4.14; APA 7, 8.3; from memory.
    """
    papers = analysis.paper.own_papers
    whole = _reused_whole(analysis)
    if how == "copied":
        for number in whole:
            share = containment(_said(analysis), prepare(papers[number].text).words, RUN_OF)
            how_much = f"{round(100 * share)} in 100 of its runs of three words"
            told = f"Most of this draft stands in {_name_own(papers[number])} too ({how_much}). {LEAVE}"
            yield Remark(None, told, weight="query", concerns=(papers[number].name,))
    draft = analysis.paper.draft
    for begin, likeness in analysis.own_likenesses:
        if likeness.how != how or likeness.source in whole:
            continue
        paper, prepared = papers[likeness.source], prepare(papers[likeness.source].text)
        span = likeness.span.shifted(begin)
        exactly = "nearly word for word" if likeness.draft_differs or likeness.source_differs else "word for word"
        said = f"These {count_of(likeness.words, 'word')} {follows.format(exactly=exactly)} {_name_own(paper)}."
        yield Remark(
            span,
            f"{said} {LEAVE}",
            weight="query",
            wordings=_word_both(draft, span, likeness, prepared),
            concerns=(paper.name,),
        )


def _name_own(paper: OwnPaper) -> str:
    return f"your own paper “{paper.title}”{', which has come back' if paper.put_away else ''}"


def _said(analysis: Analysis) -> list[str]:
    """The writer's own words, one after another."""
    return [word for _, own in analysis.own_passages for word in own.words if word != BREAK]


def _reused_whole(analysis: Analysis) -> frozenset[int]:
    """The numbers of the writer's papers that hold most of the draft's words, as an earlier version of it would."""
    written = len(_said(analysis))
    words: Counter[int] = Counter()
    for _, likeness in analysis.own_likenesses:
        words[likeness.source] += likeness.words
    return frozenset(number for number, many in words.items() if many > written / 2)


def _word_both(draft: str, span: Span, likeness: Likeness, prepared: PreparedSource) -> Wordings:
    """Both wordings, with the words that each has alone."""
    return differing_wordings(
        span.of(draft),
        [each.shifted(-likeness.span.start) for each in likeness.draft_differs],
        prepared,
        (Passage(likeness.start, likeness.end, ()),),
        likeness.source_differs,
    )


def _is_cited(analysis: Analysis, span: Span, entry: str) -> bool:
    """Whether a sentence that the words stand in cites the source."""
    first, last = analysis.sentence_around(span), analysis.sentence_around(Span(span.end - 1, span.end))
    around = Span(first.start, last.end)
    return any(one.entry == entry and analysis.mentions[one.mention].span.overlaps(around) for one in analysis.resolved)
