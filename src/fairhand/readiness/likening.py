"""What is said of the writer's own words where a source has nearly the same."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.fidelity.copying import How
from fairhand.fidelity.passages import Passage
from fairhand.fidelity.wordings import differing_wordings
from fairhand.language.counts import count_of
from fairhand.model.span import Span
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark
from fairhand.readiness.naming import name_place

CAUTION = "This is a place to look, never a verdict."


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
            wordings=differing_wordings(
                span.of(draft),
                [each.shifted(-likeness.span.start) for each in likeness.draft_differs],
                prepared,
                (Passage(likeness.start, likeness.end, ()),),
                likeness.source_differs,
            ),
            concerns=(entry,),
        )


def _is_cited(analysis: Analysis, span: Span, entry: str) -> bool:
    """Whether a sentence that the words stand in cites the source."""
    first, last = analysis.sentence_around(span), analysis.sentence_around(Span(span.end - 1, span.end))
    around = Span(first.start, last.end)
    return any(one.entry == entry and analysis.mentions[one.mention].span.overlaps(around) for one in analysis.resolved)
