"""Sources that running text names, whether or not a parenthesis follows."""

from __future__ import annotations

from collections.abc import Sequence

from fairhand.citing.known import know
from fairhand.citing.recognise import read_paragraphs
from fairhand.manuscript.parts import Manuscript
from fairhand.model.entry import Entry


def find_named(manuscript: Manuscript, entries: Sequence[Entry]) -> frozenset[str]:
    """The ids of the sources whose author, body or title the prose names, where the name means one source alone.

    Where a work has no pages, naming it in the sentence is its whole citation in the styles that cite author and page.

    **Source**: MLA Handbook, 9th ed., 6.3 (from memory).
    """
    known = know(tuple(entries))
    prose = read_paragraphs(manuscript, known)
    named = {naming.works[0] for one in prose for naming in one.namings if len(naming.works) == 1}
    return frozenset(known.works[work].entry.id for work in named)
