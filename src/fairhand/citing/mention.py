"""In-text citations as they are found in prose, and what they were understood to cite."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from fairhand.model.span import Span

LocatorKind = Literal[
    "page", "line", "act", "chapter", "section", "paragraph", "time", "volume", "figure", "table", "note"
]


@dataclass(frozen=True, slots=True)
class Locator:
    """Where in the source: ``p. 102``, ``pp. 3–5``, ``1.2.34–36``, ``lines 5–7``."""

    kind: LocatorKind
    text: str
    """The place alone, as written: ``"102"``, ``"3–5"``, ``"1.2.34–36"``."""
    span: Span
    """In the draft, label included."""
    within: str = ""
    """The larger part named beside it: the ``vol. 2`` of ``vol. 2, p. 45``."""


@dataclass(frozen=True, slots=True)
class Cite:
    """One work cited in a mention, as the draft says it."""

    span: Span
    """This work's part of the mention, in the draft."""
    names: tuple[str, ...] = ()
    """Surnames, or the name of a body, in the order given; empty where a title stands instead."""
    initials: str = ""
    """Initials or given name before the first surname."""
    et_al: bool = False
    year: str = ""
    """``"2019"``, ``"2019a"``, ``"n.d."``, ``"1966/1969"``, or empty."""
    title: str = ""
    """A title, short or whole, where one stands in the citation."""
    locator: Locator | None = None
    secondary: str = ""
    """The source's own author where the citation is second-hand: ``(Reyes, as cited in Lind, 2019)``."""
    prefix: str = ""
    """*see*, *cf.*, *e.g.*"""
    suffix: str = ""
    """What follows the locator: *emphasis added*."""


@dataclass(frozen=True, slots=True)
class Mention:
    """One place in the draft that cites something."""

    span: Span
    """A parenthesis with its brackets; of a narrative citation, from the name to the end of its parenthesis or year."""
    form: Literal["parenthetical", "narrative", "page-only", "note"]
    """``page-only``: ``(p. 102)`` or ``(102)`` after a work already named."""
    paragraph: int
    cites: tuple[Cite, ...]


Trouble = Literal["unknown", "ambiguous", "year"]
"""Why a citation could not be resolved: no such source, several fit, or the year differs from the source's."""


@dataclass(frozen=True, slots=True)
class Resolved:
    """A cite, and the source that is meant."""

    mention: int
    """Index of the mention."""
    cite: Cite
    entry: str | None
    """The id of the source meant. With trouble ``"year"`` it is the source that fits but for its year."""
    trouble: Trouble | None
    candidates: tuple[str, ...]
    """The ids of all the sources that fit, or nearly fit."""
    why: str
    """One sentence for the writer: how it was understood, or why not."""
    named_at: Span | None = None
    """Of a page alone: where the work was named."""


@dataclass(frozen=True, slots=True)
class QuotationCited:
    """The citation that belongs to a quotation."""

    quotation: int
    """Index of the quotation in the manuscript."""
    resolved: int | None
    """Index of the resolved cite, or None where no citation belongs to it."""
    locator: Locator | None
    """The locator that applies, even where it stands apart: *Reyes (2018) … "…" (p. 1)*."""
    entry: str | None = None
    """The id of the source meant, where one is: also where its author is named in the sentence and nothing is cited."""
    sure: bool = True
    """False where the citation was taken from further off than the quotation's own sentence, or could be another's."""
