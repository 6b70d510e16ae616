"""The choice of most worth within a room, exactly: a knapsack in which one thing may need another.

**Source**: dynamic programming over choices that no other beats (Nemhauser & Ullmann 1969, Management Science 15), with
bounds (``bounds.py``), and a first answer from the things around the break (Balas & Zemel 1980, Operations Research
28). All numbers are brought to whole ones first, so that no sum is rounded.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import floor, lcm
from typing import Any

from fairhand.revision.bounds import Pair, Tail, bound_by_number, by_efficiency

CORE = 20
"""How many things on either side of the break the first answer is sought among."""

State = tuple[int, int, Any]
"""What is chosen so far: its weight, its worth, and the trail of its nodes, last first: ``(node, trail)``, or None."""


@dataclass(frozen=True, slots=True)
class Thing:
    """Something that may be chosen."""

    weight: float
    """What it takes of the room; not below nought."""
    worth: float
    """What it is worth; not below nought."""
    needs: frozenset[int] = frozenset()
    """Indices of those that must be chosen with it."""


def choose_most(
    things: Sequence[Thing], room: float, *, keep: Collection[int] = (), leave: Collection[int] = ()
) -> frozenset[int] | None:
    """The indices of the choice that is worth most among those that fit the room; nothing is chosen without its needs.

    Args:
        things: What there is to choose from.
        room: What the chosen may weigh together.
        keep: Indices that are chosen in any case.
        leave: Indices that are not.

    Returns:
        The indices; None where what is to be kept does not fit, or needs what is to be left.

    >>> five = [Thing(180, 6), Thing(240, 7), Thing(120, 4), Thing(300, 8), Thing(90, 2)]
    >>> sorted(choose_most(five, 500))
    [0, 3]
    >>> sorted(choose_most([Thing(1, 9, frozenset({1})), Thing(3, 0), Thing(3, 5)], 3))
    [2]
    """
    needs = [with_needs(things, number) for number in range(len(things))]
    left = frozenset(leave)
    kept = frozenset[int]().union(*(needs[number] for number in keep))
    pairs, space = _in_whole(things, room)
    space -= sum(pairs[number].weight for number in kept)
    if space < 0 or kept & left:
        return None
    groups: dict[frozenset[int], list[int]] = {}
    for number, all_of in enumerate(needs):
        if number not in kept and not all_of & left:
            groups.setdefault(all_of - kept, []).append(number)
    nodes = [
        _Node(tuple(own), frozenset(all_of - set(own)), Pair(*map(sum, zip(*(pairs[one] for one in own), strict=True))))
        for all_of, own in groups.items()
    ]
    return kept.union(*(node.members for node in _Search(nodes, space).run()))


def choose_best(things: Sequence[Thing], room: float, count: int = 3) -> tuple[frozenset[int], ...]:
    """The best choice, then the next best, and so on; each has something that those before it lack.

    **Source**: E. L. Lawler 1972, "A Procedure for Computing the K Best Solutions", Management Science 18.

    >>> [sorted(one) for one in choose_best([Thing(2, 3), Thing(2, 2), Thing(2, 1)], 4, 2)]
    [[0, 1], [0, 2]]
    """
    first = choose_most(things, room)
    waiting = [(first, frozenset[int](), frozenset[int]())] if first is not None else []
    found: list[frozenset[int]] = []
    while waiting and len(found) < count:
        best = max(waiting, key=lambda one: sum(things[number].worth for number in one[0]))
        waiting.remove(best)
        chosen, keep, leave = best
        if any(chosen <= one for one in found):
            continue
        found.append(chosen)
        for number in range(len(things)):
            if number not in chosen and number not in leave:
                other = choose_most(things, room, keep=keep | {number}, leave=leave)
                if other is not None:
                    waiting.append((other, keep | {number}, leave))
                leave = leave | {number}
    return tuple(found)


def with_needs(things: Sequence[Thing], number: int) -> frozenset[int]:
    """A thing, what it needs, what that needs, and so on."""
    found, waiting = {number}, [number]
    while waiting:
        new = things[waiting.pop()].needs - found
        found |= new
        waiting += new
    return frozenset(found)


def _in_whole(things: Sequence[Thing], room: float) -> tuple[list[Pair], int]:
    """Weights, worths and room as whole numbers: decimal fractions are taken as they are written."""
    weights = [Fraction(str(thing.weight)) for thing in things]
    worths = [Fraction(str(thing.worth)) for thing in things]
    by, of = (lcm(1, *(one.denominator for one in values)) for values in (weights, worths))
    pairs = [Pair(int(weight * by), int(worth * of)) for weight, worth in zip(weights, worths, strict=True)]
    return pairs, floor(Fraction(str(room)) * by)


@dataclass(frozen=True, slots=True, eq=False)
class _Node:
    """Things that are chosen together or not at all."""

    members: tuple[int, ...]
    needs: frozenset[int]
    """Indices of the things that must be chosen before."""
    pair: Pair


class _Search:
    """One search: through the nodes that are tied to others, then through the rest, the worthiest by weight first."""

    def __init__(self, nodes: Sequence[_Node], room: int) -> None:
        """Nothing is chosen yet."""
        there = {number for node in nodes for number in node.members if node.pair.weight <= room}
        fits = [node for node in nodes if there >= {*node.members, *node.needs}]
        needed = {number for node in fits for number in node.needs}
        tied = [node for node in fits if node.needs or needed.intersection(node.members)]
        self.room = room
        self.tied = _in_turn(tied)
        self.rest = sorted((node for node in fits if node not in tied), key=lambda node: by_efficiency(node.pair))
        self.tail = Tail([node.pair for node in self.rest])
        self.best: tuple[int, Any, int, int] = (0, None, 0, 0)
        """Its worth, its trail, and from where to where the rest is taken on whole."""

    def run(self) -> list[_Node]:
        """The nodes of the best choice; it is over as soon as no other can be better."""
        most = self._tail_from(0).bound(0, self.room)[2]
        begun: list[State] = [(0, 0, None)]
        if not self.tied:
            self._complete(begun, self.tail, 0)
            if self.best[0] < most:
                self._try_core()
            if self.best[0] < most:
                most = min(most, bound_by_number(self.tail.pairs, self.room))
        if self.best[0] < most:
            self._choose_rest(self._choose_tied(begun), 0, len(self.rest), most)
        return self._list_best()

    def _tail_from(self, turn: int) -> Tail:
        """Everything that is still to be looked at from a turn on, whatever it needs."""
        left = [*self.tied[turn:], *self.rest]
        return Tail(sorted((node.pair for node in left), key=by_efficiency)) if turn < len(self.tied) else self.tail

    def _choose_tied(self, states: list[State]) -> list[State]:
        """The undominated choices among the nodes that are tied to others.

        Two choices are compared only where both have the same of what later nodes still need.
        """
        turn_of = {number: turn for turn, node in enumerate(self.tied) for number in node.members}
        direct = [_without_further(node, self.tied, turn_of) for node in self.tied]
        last = {need: turn for turn, needs in enumerate(direct) for need in needs}
        held: dict[frozenset[int], list[State]] = {frozenset(): states}
        for turn, node in enumerate(self.tied):
            done = {need for need in direct[turn] if last[need] == turn}
            new: dict[frozenset[int], list[State]] = {}
            for have, found in held.items():
                new.setdefault(have - done, []).extend(found)
                if direct[turn] <= have:
                    having = (have | {turn} if turn in last else have) - done
                    new.setdefault(having, []).extend(_taken(found, node, self.room))
            tail = self._tail_from(turn + 1)
            held = {have: self._prune(_undominated(found), tail, 0) for have, found in new.items()}
        return [state for found in held.values() for state in found]

    def _choose_rest(self, states: list[State], start: int, end: int, most: int) -> None:
        """The undominated choices, one more node of the rest after another."""
        for at in range(start, end):
            if not states or self.best[0] >= most:
                return
            states = self._prune(_undominated([*states, *_taken(states, self.rest[at], self.room)]), self.tail, at + 1)

    def _try_core(self) -> None:
        """A good first answer: what comes long before the break is taken, what comes long after it is left."""
        end = self.tail.bound(0, self.room)[0]
        start = max(0, end - CORE)
        trail: Any = None
        for node in self.rest[:start]:
            trail = (node, trail)
        begun: State = (self.tail.weights[start], self.tail.worths[start], trail)
        self._choose_rest([begun], start, min(len(self.rest), end + CORE), self.tail.bound(0, self.room)[2])

    def _prune(self, states: list[State], tail: Tail, start: int) -> list[State]:
        """The states that may still lead to a better choice than the best so far, which they may give themselves."""
        self._complete(states, self.tail, start if tail is self.tail else 0)
        least = self.best[0]
        return [one for one in states if one[1] + tail.bound(start, self.room - one[0])[2] > least]

    def _complete(self, states: Iterable[State], tail: Tail, start: int) -> None:
        """Each state with as much of the rest as follows wholly is a choice."""
        for weight, worth, trail in states:
            end, whole, _ = tail.bound(start, self.room - weight)
            if worth + whole > self.best[0]:
                self.best = (worth + whole, trail, start, end)

    def _list_best(self) -> list[_Node]:
        _, trail, start, end = self.best
        chosen = list(self.rest[start:end])
        while trail is not None:
            node, trail = trail
            chosen.append(node)
        return chosen


def _taken(states: Sequence[State], node: _Node, room: int) -> list[State]:
    """The states in which the node is chosen too."""
    weight, worth = node.pair
    return [(w + weight, p + worth, (node, trail)) for w, p, trail in states if w + weight <= room]


def _undominated(states: list[State]) -> list[State]:
    """The states of which none is both lighter and worth as much as another."""
    states.sort(key=lambda state: (state[0], -state[1]))
    out: list[State] = []
    for state in states:
        if not out or state[1] > out[-1][1]:
            out.append(state)
    return out


def _in_turn(nodes: list[_Node]) -> list[_Node]:
    """The nodes each after what it needs, so that as little as can be is waited for at any time."""
    out: list[_Node] = []
    done: set[int] = set()
    waiting = list(nodes)
    while waiting:
        ready = [node for node in waiting if node.needs <= done]
        # One that others of the ready ones do not wait for, and that ends what is waited for, comes first.
        node = min(ready, key=lambda one: (not one.needs, sum(bool(one.needs & other.needs) for other in waiting)))
        out.append(node)
        done.update(node.members)
        waiting.remove(node)
    return out


def _without_further(node: _Node, nodes: Sequence[_Node], turn_of: dict[int, int]) -> frozenset[int]:
    """The turns of the nodes that a node needs, without those that one of these needs in its turn."""
    turns = {turn_of[number] for number in node.needs}
    return frozenset(turns - {turn_of[number] for turn in turns for number in nodes[turn].needs})
