"""Vocabularies: what a sheet's words name, the first entry that fits winning."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Terms:
    """Names, each with the words that mean it."""

    names: tuple[str, ...]
    pattern: re.Pattern[str]
    """All the words, one group for each name."""

    def name(self, match: re.Match[str]) -> str:
        """The name that a match of ``pattern`` stands for."""
        return self.names[int((match.lastgroup or "t0")[1:])]

    def search(self, text: str, start: int = 0, end: int | None = None) -> re.Match[str] | None:
        """The first match in a stretch of ``text``."""
        return self.pattern.search(text, start, len(text) if end is None else end)

    def finditer(self, text: str, start: int = 0, end: int | None = None) -> Iterator[re.Match[str]]:
        """The matches in a stretch of ``text``, in order."""
        return self.pattern.finditer(text, start, len(text) if end is None else end)

    def named(self, text: str, start: int = 0) -> list[str]:
        """What ``text`` names from ``start`` on, each once, in its order.

        >>> make_terms([("cat", "cats?"), ("dog", "dogs?|hounds?")]).named("Hounds and cats and dogs")
        ['dog', 'cat']
        """
        return list(dict.fromkeys(self.name(match) for match in self.finditer(text, start)))


def make_terms(
    pairs: Iterable[tuple[str, str]], *, before: str = r"\b", after: str = r"\b", flags: int = re.IGNORECASE
) -> Terms:
    """The vocabulary of ``pairs``: a name, and a regular expression (without groups) for the words that mean it."""
    rows = tuple(pairs)
    pattern = "|".join(f"(?P<t{i}>{before}(?:{words}){after})" for i, (_, words) in enumerate(rows))
    return Terms(tuple(name for name, _ in rows), re.compile(pattern, flags))
