"""The order of the numbers that tables and figures bear."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence

from fairhand.copyedit.form.exhibits import Mentioned, Numbered, find_exhibit_mentions
from fairhand.manuscript.parts import Manuscript
from fairhand.model.span import Span


def find_misnumbered(exhibits: Sequence[Numbered]) -> Iterator[tuple[Numbered, int]]:
    """The tables and figures whose number is no higher than that of one of their kind before, and that number.

    **Source**: APA 7, 7.10; MLA 9, 1.7; Chicago 17, 3.9 and 3.50 (from memory): numbered through in their order.

    >>> rows = [Numbered("table", n, Span(n, n + 1), True) for n in (2, 1)]
    >>> [(one.number, before) for one, before in find_misnumbered(rows)]
    [(1, 2)]
    """
    last: dict[str, int] = {}
    for exhibit in exhibits:
        before = last.get(exhibit.kind)
        if before is not None and exhibit.number <= before:
            yield exhibit, before
        last[exhibit.kind] = max(exhibit.number, before or 0)


def find_mentioned_early(
    manuscript: Manuscript, exhibits: Sequence[Numbered], skipped: Collection[Span]
) -> Iterator[tuple[Mentioned, int, int]]:
    """The first mention of each kind of exhibit that comes before a lower number's first: it, its number, the lower.

    **Source**: APA 7, 7.10; Chicago 17, 3.50 (from memory): numbered as the text speaks of them.
    """
    there = {(each.kind, each.number) for each in exhibits}
    told: set[str] = set()
    seen: dict[str, list[tuple[int, Mentioned]]] = {}
    for mentioned in find_exhibit_mentions(manuscript, skipped):
        for number in mentioned.numbers:
            known = seen.setdefault(mentioned.kind, [])
            if (mentioned.kind, number) not in there or any(number == one for one, _ in known):
                continue
            higher = [(one, at) for one, at in known if one > number]
            if higher and mentioned.kind not in told:
                told.add(mentioned.kind)
                yield higher[0][1], higher[0][0], number
            known.append((number, mentioned))
