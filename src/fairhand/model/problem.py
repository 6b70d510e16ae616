"""A fault in something the writer gave us, told without stopping the rest."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Problem:
    """One faulty piece of input: the rest of the file is still read.

    >>> str(Problem("sources.json, record 3", "it has no title", "add a title, or remove the record"))
    'sources.json, record 3: it has no title; add a title, or remove the record'
    """

    where: str
    """The file, and the record, line or page in it."""
    what: str
    """What is wrong there."""
    mend: str
    """What the writer can do."""

    def __str__(self) -> str:
        """The problem as one line."""
        return f"{self.where}: {self.what}; {self.mend}"
