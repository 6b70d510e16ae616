"""One worker and pieces of work with due hours: the orders that are known to be best, each for its own purpose.

Minutes are counted from the beginning; a piece is late by its end less its due minute.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from heapq import heappop, heappush


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece of work."""

    name: str
    minutes: int
    due: int
    weight: float = 1
    """What each minute of its lateness costs; above 0."""
    opens: int = 0
    """The minute before which it cannot begin."""


def end_minutes(order: Sequence[Piece]) -> tuple[int, ...]:
    """When each ends, if they are worked on one after another from the beginning.

    >>> end_minutes([Piece("read", 6, 8), Piece("draft", 9, 14)])
    (6, 15)
    """
    ends = []
    at = 0
    for piece in order:
        at += piece.minutes
        ends.append(at)
    return tuple(ends)


def latenesses(order: Sequence[Piece]) -> tuple[int, ...]:
    """How late each is, below 0 where it is early."""
    return tuple(end - piece.due for end, piece in zip(end_minutes(order), order, strict=True))


def order_by_due(pieces: Sequence[Piece]) -> tuple[Piece, ...]:
    """Earliest due first: the order with the least greatest lateness.

    **Source**: Jackson 1955, Scheduling a Production Line to Minimize Maximum Tardiness.

    >>> max(latenesses(order_by_due([Piece("draft", 9, 14), Piece("read", 6, 8)])))
    1
    """
    return tuple(sorted(pieces, key=lambda piece: piece.due))


def order_for_fewest_late(pieces: Sequence[Piece]) -> tuple[tuple[Piece, ...], tuple[Piece, ...]]:
    """The pieces that can be on time, as many as possible and in order, and those that had best be late.

    Taken by due minute; whenever one would be late, that which so far is longest for its weight is given up. With equal
    weights no order has fewer late; with others it is a rule of thumb.

    **Source**: Moore 1968, Management Science 15, in Hodgson's form; weights are our addition.

    >>> on_time, late = order_for_fewest_late([Piece("read", 6, 8), Piece("draft", 9, 14), Piece("proof", 4, 16)])
    >>> [piece.name for piece in on_time], [piece.name for piece in late]
    (['read', 'proof'], ['draft'])
    """
    ordered = order_by_due(pieces)
    longest: list[tuple[float, int]] = []
    late: set[int] = set()
    at = 0
    for number, piece in enumerate(ordered):
        heappush(longest, (-piece.minutes / piece.weight, number))
        at += piece.minutes
        if at > piece.due:
            _, given_up = heappop(longest)
            at -= ordered[given_up].minutes
            late.add(given_up)
    return (
        tuple(piece for number, piece in enumerate(ordered) if number not in late),
        tuple(ordered[number] for number in sorted(late)),
    )


def work_by_due(pieces: Sequence[Piece]) -> tuple[tuple[Piece, int, int], ...]:
    """At each minute the piece of those begun or open that is due first, broken off for one due earlier.

    No way of working has a smaller greatest lateness, where pieces open at minutes of their own.

    Returns:
        Runs of work in order, half-open.

    **Source**: Horn 1974, Naval Research Logistics Quarterly 21: earliest due first, preemptive.

    >>> [(piece.name, start, end) for piece, start, end in work_by_due([Piece("a", 4, 9), Piece("b", 2, 5, opens=1)])]
    [('a', 0, 1), ('b', 1, 3), ('a', 3, 6)]
    """
    coming = sorted((piece.opens, number) for number, piece in enumerate(pieces))
    left = [piece.minutes for piece in pieces]
    open_now: list[tuple[int, int]] = []
    runs: list[tuple[Piece, int, int]] = []
    at = next_one = 0
    while open_now or next_one < len(coming):
        if not open_now:
            at = max(at, coming[next_one][0])
        while next_one < len(coming) and coming[next_one][0] <= at:
            number = coming[next_one][1]
            heappush(open_now, (pieces[number].due, number))
            next_one += 1
        number = open_now[0][1]
        until = at + left[number]
        if next_one < len(coming):
            until = min(until, coming[next_one][0])
        if runs and runs[-1][0] is pieces[number] and runs[-1][2] == at:
            runs[-1] = (pieces[number], runs[-1][1], until)
        else:
            runs.append((pieces[number], at, until))
        left[number] -= until - at
        at = until
        if not left[number]:
            heappop(open_now)
    return tuple(runs)


def order_after_one_another(
    pieces: Sequence[Piece], after: Mapping[str, Sequence[str]], cost: Callable[[Piece, int], float]
) -> tuple[Piece, ...]:
    """The order, each after those it must follow, in which the dearest end is least dear.

    Built from the back: of those that nothing left must follow, the one whose end there costs least comes last.

    Args:
        pieces: no two of one name.
        after: by a piece's name, those that come before it; there is no ring among them.
        cost: what a piece costs that ends at a minute; it never falls as the minutes pass.

    **Source**: Lawler 1973, Management Science 19.

    >>> read, draft = Piece("read", 6, 20), Piece("draft", 9, 14)
    >>> order = order_after_one_another([draft, read], {"draft": ["read"]}, lambda piece, end: end - piece.due)
    >>> [piece.name for piece in order]
    ['read', 'draft']
    """
    names = {piece.name for piece in pieces}
    followers = dict.fromkeys(names, 0)
    for piece in pieces:
        for name in set(after.get(piece.name, ())) & names:
            followers[name] += 1
    left = list(pieces)
    at = sum(piece.minutes for piece in pieces)
    backwards = []
    while left:
        last = min((piece for piece in left if not followers[piece.name]), key=lambda piece: cost(piece, at))
        left.remove(last)
        backwards.append(last)
        at -= last.minutes
        for name in set(after.get(last.name, ())) & names:
            followers[name] -= 1
    return tuple(reversed(backwards))
