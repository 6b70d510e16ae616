"""What a first reader wrote into a copy: remarks beside the words, and changes to them."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from fairhand.model.span import Span

RemarkKind = Literal["comment", "insertion", "deletion", "form"]
"""Words beside the text; words put in; words taken out; a change of type or layout alone."""


@dataclass(frozen=True, slots=True)
class Remark:
    """One remark or change, as it stands in the file that came back."""

    kind: RemarkKind
    span: Span
    """What it is about, in the text as it was sent; empty where it stands between two characters."""
    said: str = ""
    """Of a comment, its words; of an insertion, the words put in; of a deletion, those taken out."""
    by: str = ""
    """Whose it is, as the file has it."""
    when: str = ""
    """The moment, as ISO 8601 has it; empty where the file does not say."""
    id: str = ""
    """Its name in the file."""
    answers: str = ""
    """The ``id`` of the comment that this one answers."""


@dataclass(frozen=True)
class Returned:
    """A copy that came back: the text as it was sent, and what was written into it."""

    text: str
    """The words without any change that is tracked, a paragraph a line."""
    remarks: tuple[Remark, ...] = field(default=())
    """In the order of their places."""
