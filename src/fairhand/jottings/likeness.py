"""How alike jottings are: in meaning where an encoder is at hand, in words otherwise."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Sequence

from fairhand.jottings.plain_words import cut_to_stem, list_plain_words
from fairhand.language.meaning import Meanings, liken


def liken_jottings(texts: Sequence[str], meanings: Meanings | None) -> list[list[float]]:
    """How alike each jotting is to each other: by its meaning, or where there is no encoder by its words."""
    return liken_by_meaning(texts, meanings) if meanings else liken_by_words(texts)


def liken_by_meaning(texts: Sequence[str], meanings: Meanings) -> list[list[float]]:
    """Each jotting beside each other, in meaning: as it is written, and by the words that say what it is about.

    How a thing is jotted, as a doubt, a question or a task, sways an encoder; its plain words do not.
    """
    return liken([(text, " ".join(list_plain_words(text))) for text in texts], meanings)


def liken_by_words(texts: Sequence[str]) -> list[list[float]]:
    """Each jotting beside each other by the words they share, a rare one telling more than a common one: 0 to 1.

    **Source**: term frequency by inverse document frequency: Spärck Jones 1972; the cosine: Salton and McGill 1983.

    >>> alike = liken_by_words(["printers struck", "the printer's strike", "paper was dear"])
    >>> alike[0][1] > alike[0][2] == 0
    True
    """
    bags = [Counter(map(cut_to_stem, list_plain_words(text))) for text in texts]
    among = Counter(stem for bag in bags for stem in bag)
    weighed = []
    for bag in bags:
        row = {stem: many * math.log(1 + len(texts) / among[stem]) for stem, many in bag.items()}
        length = math.sqrt(sum(weight * weight for weight in row.values())) or 1.0
        weighed.append({stem: weight / length for stem, weight in row.items()})
    return [[sum(w * other.get(stem, 0.0) for stem, w in row.items()) for other in weighed] for row in weighed]
