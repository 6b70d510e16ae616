"""A draft cast off: its words and pages by the sheet's rule, and those of each section, from the real typesetting."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from fairhand.errors import EngineFailed
from fairhand.fair_copy.casting_off import pages_of, part_starts
from fairhand.fair_copy.flow import flow
from fairhand.fair_copy.typesetting import to_typst
from fairhand.language.counts import count_of
from fairhand.manuscript.counting import place_words
from fairhand.model.requirement import Requirement
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.judgement import Judgement
from fairhand.readiness.verdicts.length import judge
from fairhand.revision.cast_off import SectionCast, cast_sections
from fairhand.session.opened import OpenPaper


@dataclass(frozen=True, slots=True)
class CastOff:
    """A whole draft, cast off."""

    words: int
    """The words that count by the sheet's rule."""
    rule: str
    """What counts, in words."""
    excluded: Mapping[str, int]
    """The words that do not count, by their part."""
    sheets: int | None
    """Sheets printed; None where nothing could be set."""
    body_pages: float | None
    judged: tuple[tuple[Requirement, Judgement], ...]
    """Each rule of the sheet on length, with whether it is met."""
    sections: tuple[SectionCast, ...]


def cast_off(opened: OpenPaper) -> CastOff:
    """The draft as it now stands, set as it would be printed."""
    known = opened.look()
    starts, end = _find_starts(opened) if known.paper.draft.strip() else ({}, None)
    words, measured = known.words, known.measured
    rules = [one for one in known.paper.requirements if one.kind == "length" and not known.is_waived(one)]
    return CastOff(
        words=words.counted,
        rule=words.rule,
        excluded={str(part): many for part, many in words.excluded.items()},
        sheets=measured.sheets if measured else None,
        body_pages=measured.body_pages if measured else None,
        judged=tuple((one, judge(one, known)) for one in rules),
        sections=cast_sections(known.manuscript, placed_words(known), starts, end, _read_shares(known)),
    )


def placed_words(known: Analysis) -> tuple[int, ...]:
    """Where each word that counts by the sheet's rule begins."""
    return place_words(known.manuscript, known.length_excludes, [mention.span for mention in known.mentions])


def _find_starts(opened: OpenPaper) -> tuple[dict[int, float], float | None]:
    """Where each heading, and the body, begins in type, and where the body ends; nothing where an engine failed."""
    try:
        copy = opened.fair_copy()
        typeset = opened.engines.typeset(to_typst(copy))
    except EngineFailed:
        return {}, None
    (begin,) = part_starts(typeset, copy.layout, "body")
    headings = [piece.block.span for piece in flow(copy.body, copy.layout) if piece.block.kind == "heading"]
    places = part_starts(typeset, copy.layout, "heading")
    if len(places) != len(headings):  # a heading within a quotation or a list: which is which is not known
        return {-1: begin}, begin + pages_of(typeset, copy.layout, "body")
    starts = {span.start: at for span, at in zip(headings, places, strict=True) if span is not None}
    return {-1: begin, **starts}, begin + pages_of(typeset, copy.layout, "body")


def _read_shares(known: Analysis) -> Mapping[str, int]:
    """The words that ``[plan.shares]`` in ``paper.toml`` gives each section, by its heading."""
    plan = known.paper.settings.other.get("plan")
    shares = plan.get("shares") if isinstance(plan, Mapping) else None
    return {
        str(title): share
        for title, share in (shares.items() if isinstance(shares, Mapping) else ())
        if isinstance(share, int) and not isinstance(share, bool) and share > 0
    }


def tell_cast(cast: CastOff) -> Iterator[str]:
    """The whole draft in sentences: what counts, by which rule, the pages, and what the sheet allows."""
    left = ", ".join(f"{part.replace('-', ' ')} {many:,}" for part, many in cast.excluded.items() if many)
    yield f"{count_of(cast.words, 'word')} count ({cast.rule}){f'; not counted: {left}' if left else ''}."
    if cast.sheets is not None and cast.body_pages is not None:
        sheets = count_of(cast.sheets, "sheet")
        yield f"Printed now, it would have {sheets}, with {cast.body_pages:.1f} pages of text."
    for rule, judgement in cast.judged:
        yield f"The sheet: “{' '.join(rule.evidence.split())}”. {judgement.why}"


def tell_section(one: SectionCast) -> str:
    """What a section fills, in a clause.

    >>> tell_section(SectionCast("Ebb", 2, 310, 1.24, 300))
    '310 words, 1.2 pages; the plan gives it 300'
    """
    pages = f", {one.pages:.1f} pages" if one.pages is not None else ""
    given = f"; the plan gives it {one.share:,}" if one.share else ""
    return f"{count_of(one.words, 'word')}{pages}{given}"
