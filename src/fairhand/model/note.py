"""A note: a short remark or a quotation, with the source and the page that it is from."""

from __future__ import annotations

from dataclasses import dataclass

KINDS = ("quotation", "paraphrase", "summary", "thought")
"""What a note may be: the source's words, its sense in other words, its gist, or the writer's own thought."""


@dataclass(frozen=True, slots=True)
class Note:
    """One note."""

    id: str
    source: str
    """The entry's id."""
    page: str = ""
    """Page label, or empty."""
    quotation: str = ""
    """Words of the source, as they stand there."""
    before: str = ""
    """The 32 code points before them in the source, where they were found."""
    after: str = ""
    """The 32 code points after them."""
    remark: str = ""
    """What the writer says."""
    when: str = ""
    """The moment, as ISO 8601 has it."""
    kind: str = ""
    """One of ``KINDS``, or empty where the writer has not said."""
    question: str = ""
    """Id of the question that it helps to answer, or empty."""
    point: str = ""
    """Id of the point that it is for, or empty."""
