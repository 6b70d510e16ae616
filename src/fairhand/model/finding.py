"""What a check says about a place in the draft."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from fairhand.model.span import Span

Weight = Literal["must", "should", "query"]
"""How loud a finding is: a *must*, a *should*, or a *query* (a question)."""

Pass = Literal["revision", "copy-edit"]
"""The pass it belongs to: argument and length first, language and form second."""


@dataclass(frozen=True, slots=True)
class Wordings:
    """Two wordings side by side, with the places where they differ."""

    draft: str
    """The words of the draft."""
    source: str
    """The words of the source."""
    draft_differs: tuple[Span, ...]
    """The differing words, as half-open intervals of ``draft``."""
    source_differs: tuple[Span, ...]
    """The differing words, as half-open intervals of ``source``."""


@dataclass(frozen=True, slots=True)
class Instead:
    """A place where something else belongs, and what, where a check can say so."""

    span: Span
    """The place in the draft; empty where something is missing there."""
    words: str = ""
    """What belongs there: a page, a year; empty where nothing does, or only the writer knows."""


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing that a check says."""

    check: str
    """The check's name, as ``quotation-differs``."""
    in_pass: Pass
    """The pass it belongs to."""
    weight: Weight
    """How loud it is."""
    span: Span | None
    """Its place in the draft, or None where it is about the whole document."""
    says: str
    """What is wrong and why, in one or two plain sentences."""
    rule: str
    """Where the rule comes from: a manual and edition, the sheet, or "common practice"."""
    wordings: Wordings | None = None
    """Both wordings, where the finding compares two."""
    concerns: tuple[str, ...] = ()
    """The ids of the sources (or points) that it is about."""
    instead: tuple[Instead, ...] = ()
    """Where exactly the mark goes, in order, where that is not the whole of ``span``."""
