"""The fair copy of an analysed paper: citations rendered, the front filled in, the pages set and measured."""

from __future__ import annotations

import datetime as dt

from fairhand.citing.rendering import CitationRequest, RenderedCitations, citation_key, citation_request, read_answer
from fairhand.fair_copy.building import build_fair_copy
from fairhand.fair_copy.document import FairCopy, FrontMatter, Layout
from fairhand.fair_copy.layout import proof_layout
from fairhand.manuscript.front import front_lines
from fairhand.manuscript.setting import set_blocks
from fairhand.readiness.analysis import Analysis
from fairhand.session.engines import Engines


def begin_citations(analysis: Analysis, engines: Engines) -> None:
    """Pandoc is at work on the paper's citations."""
    request = _request(analysis)
    engines.begin_pandoc(request, citation_key(request))


def render_citations(analysis: Analysis, engines: Engines) -> RenderedCitations:
    """Every citation and the list, in the paper's style; pandoc runs only where they, or the style, are new."""
    request = _request(analysis)
    return read_answer(engines.ask_pandoc(request, citation_key(request)), request)


def _request(analysis: Analysis) -> CitationRequest:
    return citation_request(
        analysis.manuscript,
        analysis.mentions,
        analysis.resolved,
        analysis.paper.entries,
        analysis.style,
        "en-GB" if analysis.is_british else "en-US",
        uncited=sorted(analysis.cited_by_name),
    )


def make_fair_copy(analysis: Analysis, engines: Engines, *, proof: bool = False) -> FairCopy:
    """The paper as it is handed in; asides and TKs are not in it."""
    manuscript = analysis.manuscript
    rendered = render_citations(analysis, engines)
    gone = [*manuscript.left_matter, *(line.span for line in front_lines(manuscript))]
    blocks = set_blocks(manuscript, [r.span for r in rendered.mentions], gone, curl=True)
    layout = proof_layout(analysis.layout) if proof else analysis.layout
    return build_fair_copy(
        blocks,
        [r.inlines for r in rendered.mentions],
        [inlines for _, inlines in rendered.references],
        front_matter(analysis, layout),
        layout,
        language="en-GB" if analysis.is_british else "en-US",
        pictures=analysis.paper.pictures,
    )


def front_matter(analysis: Analysis, layout: Layout, due: str = "final") -> FrontMatter:
    """The lines of the first page: those that the draft has, completed by what desk, course and sheet say.

    Where one of the draft's own lines may be anything, all of them stand as they are, and nothing is added.

    Args:
        analysis: The paper.
        layout: The page of its style.
        due: Which of the sheet's deadlines dates it, where the draft does not.
    """
    lines = front_lines(analysis.manuscript)
    own = {line.what: line.says for line in lines}
    paper = analysis.paper
    on = next((r.values.get("on") for r in paper.requirements if r.id == f"due.{due}"), None)
    day = dt.date.fromisoformat(on) if isinstance(on, str) else (paper.now.date() if paper.now else None)
    return FrontMatter(
        author=own.get("author", paper.desk.name),
        institution=own.get("institution", paper.course.institution),
        course=own.get("course", paper.course.title),
        instructor=own.get("instructor", paper.course.teacher),
        date=own.get("date", _say_day(day, layout, british=analysis.is_british) if day else ""),
        lines=tuple(line.text for line in lines if line.what != "title") if "" in own else (),
    )


def _say_day(day: dt.date, layout: Layout, *, british: bool) -> str:
    """A day as the style's first page has it: day first in MLA and in Britain."""
    if british or layout.style.startswith("MLA"):
        return f"{day.day} {day:%B %Y}"
    return f"{day:%B} {day.day}, {day.year}"
