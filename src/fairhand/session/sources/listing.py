"""The list of sources as it will be set, with what is at hand of each."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from fairhand.citing.rendering import citation_key, read_answer, reference_request
from fairhand.errors import EngineFailed
from fairhand.model.entry import Entry
from fairhand.model.inline import Inline, Text
from fairhand.model.source import SourceText

if TYPE_CHECKING:
    from fairhand.readiness.analysis import Analysis
    from fairhand.session.opened import OpenPaper


@dataclass(frozen=True)
class Listed:
    """One source in the list."""

    entry: Entry
    reference: tuple[Inline, ...]
    """Its line as the paper's style has it."""
    text: SourceText | None
    """Its text, where one is at hand."""
    cited: bool
    """Whether the draft cites it."""
    points: tuple[str, ...]
    """The ids of the points that name it."""


def list_sources(opened: OpenPaper) -> tuple[Listed, ...]:
    """Every source in the order and form in which the list will be set; where the engine fails, by its name."""
    known = opened.look()
    paper = known.paper
    lines = _references(opened, known)
    points: dict[str, list[str]] = {}
    for point in paper.points.points:
        for source in dict.fromkeys(one.source for one in point.support):
            points.setdefault(source, []).append(point.id)
    order = [known.entries[i] for i in lines if i in known.entries]
    order += [entry for entry in paper.entries if entry.id not in lines]
    return tuple(
        Listed(
            entry,
            lines.get(entry.id) or (Text(f"{known.names.get(entry.id, entry.id)}. {entry.title}"),),
            paper.texts.get(entry.id),
            entry.id in known.cited,
            tuple(points.get(entry.id, ())),
        )
        for entry in order
    )


def _references(opened: OpenPaper, known: Analysis) -> dict[str, tuple[Inline, ...]]:
    """The line of each source in the paper's style; none where the engine fails."""
    if not known.paper.entries:
        return {}
    request = reference_request(known.paper.entries, known.style, "en-GB" if known.is_british else "en-US")
    try:
        return dict(read_answer(opened.engines.ask_pandoc(request, citation_key(request)), request).references)
    except EngineFailed:
        return {}
