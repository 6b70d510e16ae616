"""Where a text turns to another topic, told by its words alone.

Two measures. *Depth* is how far the likeness of two neighbours falls below that of their surroundings. *Shifts* are the
parting into segments under which the words of the text are the likeliest, each segment using its own.

**Source**: depths and their bound: M. Hearst 1997, *TextTiling*, Computational Linguistics 23(1). The likeliest
parting: M. Utiyama and H. Isahara 2001, *A Statistical Model for Domain-Independent Text Segmentation*, ACL.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Sequence

from fairhand.revision.likeness import count_stems

LONGEST = 60
"""Passages of the longest segment that is looked for: it bounds the work on a very long text."""


def measure_depths(likenesses: Sequence[float]) -> tuple[float, ...]:
    """How deep each gap is: from the peak on its left down to it, and up to the peak on its right.

    Args:
        likenesses: How alike the two sides of each gap are.

    >>> [round(depth, 3) for depth in measure_depths((.907, .218, .873, .926))]
    [0.0, 1.397, 0.053, 0.0]
    """
    depths = []
    for at, here in enumerate(likenesses):
        left = right = at
        while left > 0 and likenesses[left - 1] >= likenesses[left]:
            left -= 1
        while right + 1 < len(likenesses) and likenesses[right + 1] >= likenesses[right]:
            right += 1
        depths.append((likenesses[left] - here) + (likenesses[right] - here))
    return tuple(depths)


def find_deep_gaps(likenesses: Sequence[float]) -> tuple[int, ...]:
    """The gaps deeper than the mean depth less half its spread, and deeper than nothing.

    >>> find_deep_gaps((.907, .218, .873, .926))
    (1,)
    """
    depths = measure_depths(likenesses)
    if not depths:
        return ()
    mean = sum(depths) / len(depths)
    spread = math.sqrt(sum((depth - mean) ** 2 for depth in depths) / len(depths))
    return tuple(at for at, depth in enumerate(depths) if depth > max(0.0, mean - spread / 2))


def find_shifts(passages: Sequence[str]) -> tuple[int, ...]:
    """The passages with which a new topic begins, the first of the text left out.

    >>> coal = ["Coal was dug.", "Miners dug coal.", "The coal seam."]
    >>> find_shifts([*coal, "Roses flower.", "Roses smell.", "A garden of roses."])
    (3,)
    """
    counts = [count_stems(passage) for passage in passages]
    tokens = sum(sum(one.values()) for one in counts)
    known = len({stem for one in counts for stem in one})
    start_costs = math.log(max(2, tokens))
    costs = [0.0] + [math.inf] * len(counts)
    begins = [0] * (len(counts) + 1)
    for first in range(len(counts)):
        cost = costs[first] + start_costs
        within: Counter[str] = Counter()
        total, kept = 0, 0.0  # kept: the sum of f·log(f + 1) over the words of the segment so far
        for last in range(first, min(len(counts), first + LONGEST)):
            for stem, many in counts[last].items():
                had = within[stem]
                within[stem] = had + many
                kept += _weigh(had + many) - _weigh(had)
                total += many
            here = cost + total * math.log(total + known) - kept if total else cost
            if here < costs[last + 1]:
                costs[last + 1], begins[last + 1] = here, first
    found: list[int] = []
    at = len(counts)
    while at > 0:
        at = begins[at]
        if at:
            found.append(at)
    return tuple(reversed(found))


def _weigh(times: int) -> float:
    return times * math.log(times + 1)
