"""The raw leaves of a source's file, before anyone knows how they are numbered."""

from __future__ import annotations

from dataclasses import dataclass

from fairhand.model.problem import Problem


@dataclass(frozen=True)
class Leaves:
    """The text of a file, leaf by leaf."""

    texts: tuple[str, ...]
    """The text of each leaf, or of each part where the file has no leaves."""
    leaved: bool
    """Whether the parts are the leaves of a printed thing, and not a file's chapters."""
    labels: tuple[str, ...] | None = None
    """The leaves' labels, where the file states them."""
    printed: bool = False
    """Whether those labels are the printed pages' own, told one by one (as an EPUB tells them)."""
    problems: tuple[Problem, ...] = ()
