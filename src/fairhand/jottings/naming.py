"""A phrase for each group of jottings, out of the writer's own words."""

from __future__ import annotations

import math
import re
from collections import Counter
from collections.abc import Iterator, Sequence

from fairhand.jottings.plain_words import cut_to_stem, list_plain_words
from fairhand.language.words import words

LONGEST = 4
"""Words of the longest phrase."""
_RUN = re.compile(r"[ \n]+")


def name_groups(groups: Sequence[Sequence[str]]) -> tuple[str, ...]:
    """A phrase that stands in one of each group's jottings, of the words by which the group is told from the others.

    **Source**: a word tells the more the more of the group's jottings, and the fewer of the others, have it: common
    practice after Spärck Jones 1972.

    >>> name_groups([["the printers' strike of 1911", "printers out"], ["paper was dear", "why was paper dear"]])
    ('printers', 'paper dear')
    """
    stems = [[set(map(cut_to_stem, list_plain_words(text))) for text in group] for group in groups]
    among = Counter(stem for group in stems for own in group for stem in own)
    names: list[str] = []
    for group, own in zip(groups, stems, strict=True):
        within = Counter(stem for one in own for stem in one)
        weights = {stem: many * many / among[stem] for stem, many in within.items()}
        found = sorted(_weigh_phrases(group, weights), key=lambda pair: -pair[0])
        names.append(next((name for _, name in found if name not in names), " ".join(group[0].split())))
    return tuple(names)


def _weigh_phrases(texts: Sequence[str], weights: dict[str, float]) -> Iterator[tuple[float, str]]:
    """Each phrase that begins and ends with a word that tells something, and how much it tells for its length."""
    for text in texts:
        found = words(text)
        plain = set(list_plain_words(text))
        for start, first in enumerate(found):
            if first.key not in plain:
                continue
            told: dict[str, float] = {}
            for many, last in enumerate(found[start : start + LONGEST], 1):
                if many > 1 and not _RUN.fullmatch(text[found[start + many - 2].span.end : last.span.start]):
                    break
                if last.key in plain:
                    stem = cut_to_stem(last.key)
                    told[stem] = weights[stem]
                    name = " ".join(text[first.span.start : last.span.end].split())
                    yield sum(told.values()) / math.sqrt(many), name
