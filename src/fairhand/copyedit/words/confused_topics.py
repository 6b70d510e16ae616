"""Words that stand in the same places: which was meant is told by what the sentence, or the paper, is about.

**Source**: ours; the words of each row stand in ``confused_topics.txt``.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from collections.abc import Set as AbstractSet
from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files

_ROW = re.compile(r"(paper )?(\S+) > (\S+): (\d) (.*?)(?: but not (.*))?$")


@dataclass(frozen=True, slots=True)
class Topic:
    """What shows that a word was taken for another."""

    meant: str
    of_paper: bool
    """Whether the whole paper is looked at, not the sentence alone."""
    least: int
    """Words of ``about`` that must be met, at least."""
    about: frozenset[str]
    beside: frozenset[str]
    """Words of which none may be met."""

    def holds(self, sentence: AbstractSet[str], paper: AbstractSet[str]) -> bool:
        """Whether it is about that, by the words of a sentence and of its paper.

        >>> topics()["desert"][0].holds({"the", "guests", "ate", "desert"}, set())
        True
        """
        words = paper if self.of_paper else sentence
        return len(self.about & words) >= self.least and not self.beside & words


@lru_cache(maxsize=1)
def topics() -> Mapping[str, tuple[Topic, ...]]:
    """By the word as written.

    >>> topics()["counsellors"][0].meant
    'councillors'
    """
    rows: dict[str, tuple[Topic, ...]] = {}
    for line in (files("fairhand") / "copyedit" / "words" / "confused_topics.txt").read_text("utf-8").splitlines():
        if not line.startswith("#") and (found := _ROW.match(line)):
            paper, wrote, meant, least, about, beside = found.groups()
            topic = Topic(meant, bool(paper), int(least), frozenset(about.split()), frozenset((beside or "").split()))
            rows[wrote] = (*rows.get(wrote, ()), topic)
    return rows
