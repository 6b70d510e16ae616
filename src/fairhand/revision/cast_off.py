"""Cast-off: how many words and pages each section fills, by the sheet's own rule, against the share it was given."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from fairhand.language.folding import fold
from fairhand.manuscript.parts import Manuscript, Section
from fairhand.manuscript.sections import section_kind
from fairhand.model.span import Span


@dataclass(frozen=True, slots=True)
class SectionCast:
    """One section, with those under it."""

    title: str
    """Its heading; empty for what stands before the first one, and ``Title`` where that is the title alone."""
    level: int
    """0 for what stands before the first heading."""
    words: int
    """The words that count."""
    pages: float | None
    """What it fills in type; None where its heading runs in, or nothing could be set."""
    share: int | None = None
    """The words that the plan gave it; None where it gave none."""


def cast_sections(
    manuscript: Manuscript,
    words: Sequence[int],
    starts: Mapping[int, float],
    end: float | None,
    shares: Mapping[str, int],
) -> tuple[SectionCast, ...]:
    r"""Each section of the argument in order, with what stands under it.

    Args:
        manuscript: The draft.
        words: Where each word that counts begins, in order.
        starts: On which page, with its fraction, each heading begins, by its place in the draft; at -1 the body.
        end: Where the body ends in type; None where nothing was set.
        shares: The words that each section was given, by its heading.

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> draft = read_manuscript("# Tides\n\nOne.\n\n## Ebb\n\nTwo words.\n")
    >>> [(one.title, one.words, one.pages) for one in cast_sections(draft, (9, 23, 27), {-1: 0.0, 15: 0.5}, 1.0, {})]
    [('', 1, 0.5), ('Ebb', 2, 0.5)]
    """
    given = {_plain(title): share for title, share in shares.items()}
    kept = [one for one in manuscript.sections if one.heading and not _is_apart(one, manuscript)]
    lists = [one.span.start for one in manuscript.sections if section_kind(one)]
    first = min([one.span.start for one in kept] + lists, default=len(manuscript.text))
    out = []
    if count_between(words, Span(0, first)):
        stop = min((starts[one.span.start] for one in kept if one.span.start in starts), default=end)
        pages = stop - starts[-1] if stop is not None and -1 in starts else None
        is_title = not any(one.span.start < first for one in manuscript.paragraphs)
        own = count_between(words, Span(0, first))
        out.append(SectionCast("Title", 0, own, None) if is_title else SectionCast("", 0, own, pages))
    for number, one in enumerate(kept):
        after = next((other for other in kept[number + 1 :] if other.level <= one.level), None)
        stop = starts.get(after.span.start) if after else end
        begins = starts.get(one.span.start)
        pages = stop - begins if stop is not None and begins is not None else None
        own = count_between(words, one.span)
        out.append(SectionCast(one.title, one.level, own, pages, given.get(_plain(one.title))))
    return tuple(out)


def count_between(words: Sequence[int], span: Span) -> int:
    """How many words that count stand in a place.

    >>> count_between((0, 4, 22), Span(4, 22))
    1
    """
    return bisect_left(words, span.end) - bisect_left(words, span.start)


def _is_apart(section: Section, manuscript: Manuscript) -> bool:
    """Whether a heading is the title's, or that of a part that is none of the argument."""
    is_title = section.heading is not None and section.heading.content == manuscript.title
    return is_title or section_kind(section) in {"references", "contents"}


def _plain(title: str) -> str:
    return " ".join(fold(title).split())
