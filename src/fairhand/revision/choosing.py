"""One search for the choice of most worth: states that no other beats, one node after another, as far as bounds let it.

**Source**: see ``knapsack.py``.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any

from fairhand.revision.bounds import Pair, Tail, bound_by_number, by_efficiency

CORE = 20
"""How many things on either side of the break the first answer is sought among."""

State = tuple[int, int, Any]
"""What is chosen so far: its weight, its worth, and the trail of its nodes, last first: ``(node, trail)``, or None."""


@dataclass(frozen=True, slots=True, eq=False)
class Node:
    """Things that are chosen together or not at all."""

    members: tuple[int, ...]
    needs: frozenset[int]
    """Indices of the things that must be chosen before."""
    pair: Pair


class Search:
    """One search: through the nodes that are tied to others, then through the rest, the worthiest by weight first."""

    def __init__(self, nodes: Sequence[Node], room: int) -> None:
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
        self.least = -1
        """What a choice must be worth more than, to be of interest."""

    def run(self) -> list[Node] | None:
        """The nodes of the best choice, None where none is of interest; it ends as soon as no other can be better."""
        if self.tied:
            self._try_dropping()
        if self.best[0] <= self.least:
            self.best = (self.least, None, 0, 0)
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
        return self._list_best() if self.best[0] > self.least else None

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

    def _try_dropping(self) -> None:
        """A good first answer: from everything, what weighs most for its worth is dropped with all that needs it."""
        every = [*self.tied, *self.rest]
        chosen = set(every)
        needed_by = {
            node: [other for other in self.tied if other.needs.intersection(node.members)] for node in self.tied
        }
        weight = sum(node.pair.weight for node in chosen)
        while weight > self.room:
            groups = [[node, *(o for o in needed_by.get(node, ()) if o in chosen)] for node in every if node in chosen]
            group = min(groups, key=lambda own: _efficiency_of([node.pair for node in own]))
            chosen -= set(group)
            weight -= sum(node.pair.weight for node in group)
        have = {number for node in chosen for number in node.members}
        for node in sorted((one for one in every if one not in chosen), key=lambda node: by_efficiency(node.pair)):
            if node.needs <= have and weight + node.pair.weight <= self.room:
                chosen.add(node)
                have.update(node.members)
                weight += node.pair.weight
        trail: Any = None
        for node in every:
            trail = (node, trail) if node in chosen else trail
        self.best = (sum(node.pair.worth for node in chosen), trail, 0, 0)

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

    def _list_best(self) -> list[Node]:
        _, trail, start, end = self.best
        chosen = list(self.rest[start:end])
        while trail is not None:
            node, trail = trail
            chosen.append(node)
        return chosen


def _efficiency_of(pairs: Sequence[Pair]) -> float:
    """What some things are worth by weight; what weighs nothing is not worth dropping."""
    weight = sum(pair.weight for pair in pairs)
    return sum(pair.worth for pair in pairs) / weight if weight else float("inf")


def _taken(states: Sequence[State], node: Node, room: int) -> list[State]:
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


def _in_turn(nodes: list[Node]) -> list[Node]:
    """The nodes each after what it needs, so that as little as can be is waited for at any time."""
    out: list[Node] = []
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


def _without_further(node: Node, nodes: Sequence[Node], turn_of: dict[int, int]) -> frozenset[int]:
    """The turns of the nodes that a node needs, without those that one of these needs in its turn."""
    turns = {turn_of[number] for number in node.needs}
    return frozenset(turns - {turn_of[number] for turn in turns for number in nodes[turn].needs})
