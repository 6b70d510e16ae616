"""What leans on what in a paper, and what each passage is to it: as it is told where passages are cut or moved."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

from fairhand.language.folding import fold
from fairhand.model.point import Point
from fairhand.model.span import line_at
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.argument import Argument
from fairhand.revision.body import BodyParagraph
from fairhand.revision.cast_off import count_between
from fairhand.revision.dependence import Tie, find_ties, list_broken, needs_of
from fairhand.revision.fit import Passage, Way
from fairhand.revision.worth import Carried, list_lost, weigh_passages
from fairhand.session.drafting.cast_off import placed_words

_CALL = re.compile(r"\[\^([^\]\s]+)\](?!:)")


@dataclass(frozen=True, slots=True)
class Told:
    """A passage that is to be cut or brought back, as it is told of."""

    line: int
    """The line of the draft where it stands, or would stand."""
    words: int
    begins: str
    """Its first words."""
    why: str
    """What it carries, or what comes with it."""


@dataclass(frozen=True, slots=True)
class Proposed:
    """One way to the length that is asked."""

    passages: tuple[Told, ...]
    words: int
    """The words that they have together."""
    lost: tuple[str, ...]
    """What the paper has no more then, in sentences; empty where nothing is lost that is known of."""
    broken: tuple[str, ...]
    """What would have to be mended around them."""


class Fitting:
    """A lazy view of what leans on what in a paper, and what each passage is to it.

    Args:
        known: The paper, worked out.
    """

    def __init__(self, known: Analysis) -> None:
        """Nothing is worked out yet."""
        self.known = known
        self.text = known.manuscript.text
        self._argument = Argument(known.paper, known.title, known.manuscript, known.mentions, known.resolved)

    @property
    def body(self) -> Sequence[BodyParagraph]:
        """The passages that argue."""
        return self._argument.body

    @cached_property
    def ties(self) -> tuple[Tie, ...]:
        """What leans on what."""
        known = self.known
        return find_ties(known.manuscript, self.body, known.mentions, known.resolved, known.names)

    @cached_property
    def carried(self) -> tuple[Carried, ...]:
        """What each passage carries."""
        return weigh_passages(self.body, self.known.paper.points.points, self._argument.argued)

    @cached_property
    def passages(self) -> tuple[Passage, ...]:
        """What there is to choose from; opening, closing, and the best of a section that the sheet wants stay."""
        words = placed_words(self.known)
        wanted = {
            fold(str(one.values.get("name") or ""))
            for one in self.known.paper.requirements
            if one.kind == "section" and not self.known.is_waived(one)
        }
        stays = set()
        for section in {one.section for one in self.body if fold(one.section) in wanted}:
            own = [at for at, one in enumerate(self.body) if one.section == section]
            stays.add(max(own, key=lambda at: self.carried[at].worth))
        return tuple(
            Passage(
                count_between(words, one.span),
                self.carried[at].worth,
                needs_of(self.ties, at),
                one.role != "body" or at in stays,
            )
            for at, one in enumerate(self.body)
        )

    def tell_broken(self, order: Sequence[int]) -> tuple[str, ...]:
        """What would have to be mended where only these passages stand, in this order."""
        broken = list_broken(self.ties, order)
        once = {(tie.kind, tie.says, tie.passage, tie.ground): tie for tie in reversed(broken)}
        return tuple(
            f"Line {line_at(self.text, tie.span.start)}, “{first_words(tie.span.of(self.text))}”: {tie.says}"
            f" (line {line_at(self.text, self.body[tie.ground].span.start)})."
            for tie in broken
            if once[tie.kind, tie.says, tie.passage, tie.ground] is tie
        )

    def propose_cut(self, way: Way) -> Proposed:
        """A way to cut, as it is told of."""
        names, points = self.known.names, {one.id: one for one in self.known.paper.points.points}
        gone, unsaid = list_lost(self.carried, way.passages)
        lost = [
            f"The {points[one].weight} point {one}, “{first_words(points[one].text)}”, is carried nowhere then."
            for one in gone
        ]
        lost += [f"{names.get(one, one)} is cited nowhere then." for one in unsaid]
        lost += [f"The note {label} is called from nowhere then: cut it as well." for label in self._notes_left(way)]
        left = [at for at in range(len(self.body)) if at not in way.passages]
        return Proposed(tuple(self._tell(at) for at in way.passages), way.words, tuple(lost), self.tell_broken(left))

    def _notes_left(self, way: Way) -> list[str]:
        """The footnotes that only the passages of a way call."""
        gone = [self.body[at].span for at in way.passages]
        calls = [
            (found[1], any(span.start <= found.start() < span.end for span in gone))
            for found in _CALL.finditer(self.text)
        ]
        left = {label for label, goes in calls if not goes}
        return list(dict.fromkeys(label for label, goes in calls if goes and label not in left))

    def list_unsaid(self) -> tuple[Point, ...]:
        """The points that no passage argues yet."""
        argued = {one.point.id for one in self._argument.argued if one.is_argued}
        named = [point for point in self.known.paper.points.points if point.support]
        return tuple(point for point in named if point.id not in argued)

    def _tell(self, at: int) -> Told:
        span, carried = self.body[at].span, self.carried[at]
        begins, line = first_words(span.of(self.text)), line_at(self.text, span.start)
        return Told(line, self.passages[at].words, begins, tell_points(carried.points))


def tell_points(points: Sequence[str]) -> str:
    """Which points a passage carries, in a clause.

    >>> tell_points(("p1", "p2", "p3")), tell_points(())
    ('carries p1, p2 and p3', 'carries no point')
    """
    if not points:
        return "carries no point"
    return f"carries {' and '.join(part for part in (', '.join(points[:-1]), points[-1]) if part)}"


def first_words(text: str, most: int = 70) -> str:
    """The first words of a passage, on one line."""
    words = " ".join(text.split())
    return words if len(words) <= most else f"{words[:most].rsplit(' ', 1)[0]} …"
