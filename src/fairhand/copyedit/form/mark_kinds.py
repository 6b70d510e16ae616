"""Single quotation marks where the country has double ones, and both kinds in one paper."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from fairhand.manuscript.parts import Manuscript
from fairhand.model.span import Span

_SINGLE = frozenset("'‘’‚")
_DOUBLE = frozenset('"“”„')
_SHORTEST = 3
"""Letters: a sign in single marks (an allele, a letter) is none of the writer's quotations."""


def outer_marks(manuscript: Manuscript, kind: Literal["single", "double"]) -> tuple[Span, ...]:
    """The quotations in running text that stand in no other one, by the kind of their marks.

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> draft = read_manuscript("It was 'dry' and “low, a 'neap' tide”.")
    >>> [span.of(draft.text) for span in outer_marks(draft, "single")]
    ["'dry'"]
    """
    marks = _SINGLE if kind == "single" else _DOUBLE
    return tuple(
        quotation.span
        for quotation in manuscript.quotations
        if quotation.kind == "run-in"
        and quotation.closed
        and quotation.within is None
        and not manuscript.paragraphs[quotation.paragraph].in_quote
        and manuscript.text[quotation.span.start] in marks
        and sum(sign.isalpha() for sign in quotation.text) >= _SHORTEST
    )


def marks_of_other_kind(manuscript: Manuscript, *, british: bool) -> Sequence[Span]:
    """The quotations whose marks are not the paper's: single ones in American usage, the fewer of the two in British.

    **Source**: MLA 9, 6.4; APA 7, 6.7; Chicago 17, 13.30 (from memory): double outside, single within. British houses
    have either, and one of them throughout (New Hart's Rules 9.2, from memory).

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> draft = read_manuscript("It was 'dry', 'low' and “mild”.")
    >>> [span.of(draft.text) for span in marks_of_other_kind(draft, british=True)]
    ['“mild”']
    """
    single, double = outer_marks(manuscript, "single"), outer_marks(manuscript, "double")
    if not british:
        return single
    return double if len(double) < len(single) else single if len(single) < len(double) and double else ()
