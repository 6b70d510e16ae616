"""A reader's mark on the proof, and the pass in which it was made."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

ProofSign = Literal[
    "delete", "substitute", "insert", "transpose", "close up", "space", "new paragraph", "run on",
    "italic", "upright", "bold", "capitals", "lower case", "stet", "query",
]  # fmt: skip
"""What a mark asks for, as BS 5261-2 and ISO 5776 name it."""
Fate = Literal["open", "mended", "stet", "query"]
"""What became of a mark: not yet gone through; done; let stand as it was; left to be asked about."""
Medium = Literal["paper", "screen", "page", "aloud"]
"""In what form a pass was read: printed out, as a PDF on a screen, in the program's own page, or by ear."""


@dataclass(frozen=True, slots=True)
class ProofMark:
    """One mark."""

    id: str
    in_pass: str
    """The id of the pass in which it was made."""
    sign: ProofSign
    exact: str
    """The words that are marked, as their text has them; for an insertion, those after which the new matter stands."""
    before: str = ""
    """The code points before them."""
    after: str = ""
    """The code points after them."""
    where: Literal["draft.md", "fair copy"] = "draft.md"
    """The text they stand in: what only the printed paper has, as a reference, is anchored in that."""
    words: str = ""
    """The new matter, or what is asked."""
    page: int = 0
    """The page of the proof; 0 where none was printed."""
    line: int = 0
    """The line of that page, from 1; 0 where the line has no number."""
    when: str = ""
    """The moment, as ISO 8601 has it."""
    fate: Fate = "open"
    why: str = ""
    """The writer's reason for its fate."""


@dataclass(frozen=True, slots=True)
class ProofPass:
    """One reading of the proof, in which marks were made and nothing was changed."""

    id: str
    medium: Medium
    by: str = ""
    """Who read; empty for the writer."""
    lapse: str = ""
    """The one thing that was looked for; empty where everything was."""
    begun: str = ""
    closed: str = ""
    """When it was ended; empty while it is under way."""
    read_to: tuple[int, int] = (0, 0)
    """Page and line of the last line read; zeros where it was read to its end."""
    unread: str = ""
    """What was not read, in words; empty where all was."""
    draft: str = ""
    """The hash of the draft's bytes when it was begun."""
