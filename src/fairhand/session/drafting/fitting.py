"""A paper brought to its length by whole passages: what to cut, or to bring back, and what is lost by it."""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from fairhand.errors import DraftChangedOnDisk
from fairhand.language.counts import count_of
from fairhand.manuscript.draft import read_manuscript
from fairhand.model.span import Span
from fairhand.proof.passages import list_passages
from fairhand.readiness.analysis import Analysis
from fairhand.revision.cast_off import count_between
from fairhand.revision.fit import ALTERNATIVES, Passage, Way, cut_least, gain_fewest
from fairhand.revision.offcuts import find_cut
from fairhand.revision.returning import find_return
from fairhand.session.drafting.bounds import Bounds, find_bounds
from fairhand.session.drafting.cast_off import placed_words
from fairhand.session.drafting.leaning import Fitting, Proposed, Told, first_words, tell_points
from fairhand.session.drafting.offcuts import Kept, bring_back, cut_span, list_offcuts
from fairhand.session.editing import state_of
from fairhand.session.opened import OpenPaper

MANY = 150
"""From more passages on, some 20,000 words, one way alone is worked out."""
TRIALS = 4
"""How often a draft is set without what is to go, to see whether it fits."""
NEAR = 0.05
"""Pages that are rounded away where a length is judged."""


@dataclass(frozen=True, slots=True)
class Fit:
    """How a paper stands to the length that the sheet asks, and the ways to it."""

    says: str
    words: int
    """Words to cut, above nought, or to bring back, below it; 0 where it fits, or no length is asked."""
    ways: tuple[Proposed, ...] = ()
    wanting: tuple[str, ...] = ()
    """Where passages do not reach: what is still to be written, from what is there."""


def look_at_fit(known: Analysis, folder: Path) -> Fit:
    """How the paper stands to its length, and up to three ways to it by whole passages."""
    bounds = find_bounds(known)
    if bounds.over > 0:
        fitting = Fitting(known)
        ways = tuple(_tell_cut(fitting, way, bounds) for way in _list_cuts(fitting, folder, bounds))
        wanting = () if ways else ("Whole passages alone do not bring it there: shorten within them.",)
        return Fit(bounds.says, bounds.over, ways, wanting)
    if bounds.over < 0:
        back = _returning(known, list_offcuts(folder)[0])
        ways = tuple(back.tell(way) for way in gain_fewest(back.passages, -bounds.over))
        has = sum(one.words for one in back.passages)
        return Fit(bounds.says, bounds.over, ways, _list_wanting(Fitting(known), has, -bounds.over))
    return Fit(bounds.says, 0)


def _list_cuts(fitting: Fitting, folder: Path, bounds: Bounds) -> tuple[Way, ...]:
    """The ways to cut, those that leave enough first; of a very long paper the best alone.

    Where pages count, the draft is set without the passages of the best way, and more is cut until it fits.
    """
    count, over = 2 * ALTERNATIVES if len(fitting.passages) <= MANY else 1, bounds.over
    for _ in range(TRIALS):
        ways = cut_least(fitting.passages, over, count)
        ways = tuple(sorted(ways, key=lambda way: _is_short(fitting, way, bounds)))[:ALTERNATIVES]
        pages = _set_without(fitting, folder, ways[0]) if ways and bounds.pages is not None else None
        if pages is None or bounds.pages is None or pages <= bounds.pages + NEAR:
            break
        over += math.ceil((pages - bounds.pages) * bounds.words_a_page)
    return ways


def _is_short(fitting: Fitting, way: Way, bounds: Bounds) -> bool:
    """Whether a way leaves fewer words than are asked."""
    return fitting.known.words.counted - way.words < bounds.least


def _set_without(fitting: Fitting, folder: Path, way: Way) -> float | None:
    """The pages of the draft, set without the passages of a way."""
    text = fitting.text
    for at in reversed(way.passages):
        cut = find_cut(text, fitting.body[at].span)
        text = text[: cut.start] + text[cut.end :]
    measured = OpenPaper(folder, draft=text).look().measured
    return measured.body_pages if measured else None


def _tell_cut(fitting: Fitting, way: Way, bounds: Bounds) -> Proposed:
    """A way to cut as it is told of; also where it goes too far."""
    told = fitting.propose_cut(way)
    if not _is_short(fitting, way, bounds):
        return told
    short = math.ceil(bounds.least - fitting.known.words.counted + way.words)
    return replace(told, lost=(*told.lost, f"It would then be {count_of(short, 'word')} short of what is asked."))


def carry_out(folder: Path, known: Analysis, number: int, was: str, at: dt.datetime) -> int:
    """The passages of one way are cut, or brought back; how many they were.

    Args:
        folder: The paper's folder.
        known: The paper as it now stands.
        number: Which way, from 0.
        was: The state of the draft, as ``state_of`` has it, from which the ways were worked out.
        at: The present hour.

    Raises:
        DraftChangedOnDisk: There is no such way any more.
    """
    bounds = find_bounds(known) if state_of(known.manuscript.text) == was else Bounds("")
    done = 0
    if bounds.over > 0:
        fitting = Fitting(known)
        for way in _list_cuts(fitting, folder, bounds)[number : number + 1]:
            done = len(way.passages)
            for one in reversed(way.passages):
                span = fitting.body[one].span
                cut_span(folder, span, span.of(fitting.text), "for the length", at)
    elif bounds.over < 0:
        back = _returning(known, list_offcuts(folder)[0])
        for way in gain_fewest(back.passages, -bounds.over)[number : number + 1]:
            done = len(way.passages)
            for one in way.passages:
                bring_back(folder, back.kept[one].offcut.name)
    if not done:
        message = "the paper was changed meanwhile, and there is no such way any more; look at it again"
        raise DraftChangedOnDisk(message)
    return done


@dataclass(frozen=True)
class _Returning:
    """The offcuts as they are chosen from: each with what it would be to the paper if all of them were back."""

    kept: tuple[Kept, ...]
    passages: tuple[Passage, ...]
    points: tuple[tuple[str, ...], ...]
    """Ids of the points that each carries."""

    def tell(self, way: Way) -> Proposed:
        """A way to bring back, as it is told of."""
        told = []
        for at in way.passages:
            one, points = self.kept[at], self.points[at]
            why = tell_points(points)
            reason = f"; it was cut: {one.offcut.reason.rstrip('.')}" if one.offcut.reason else ""
            told.append(Told(one.line, self.passages[at].words, first_words(one.offcut.text), why + reason))
        return Proposed(tuple(told), way.words, (), ())


def _returning(known: Analysis, kept: Sequence[Kept]) -> _Returning:
    text, spans = known.manuscript.text, list[Span]()
    for one in kept:
        back = find_return(text, one.offcut, list_passages(read_manuscript(text)))
        many = len(back.words)
        text = text[: back.at] + back.words + text[back.at :]
        spans = [span.shifted(many) if span.start >= back.at else span for span in spans]
        spans.append(Span(back.at, back.at + many))
    whole = Fitting(Analysis(replace(known.paper, draft=text), lambda _: None))
    words = placed_words(whole.known)
    within = [[at for at, each in enumerate(whole.body) if span.overlaps(each.own_span)] for span in spans]
    passages = []
    for number, own in enumerate(within):
        grounds = {tie.ground for tie in whole.ties if tie.firm and tie.passage in own}
        needs = {other for other, each in enumerate(within) if other != number and grounds & set(each) - set(own)}
        worth = 1 + sum(whole.carried[at].worth for at in own if spans[number].contains(whole.body[at].own_span))
        passages.append(Passage(count_between(words, spans[number]), worth, frozenset(needs)))
    points = [tuple(dict.fromkeys(point for at in own for point in whole.carried[at].points)) for own in within]
    return _Returning(tuple(kept), tuple(passages), tuple(points))


def _list_wanting(fitting: Fitting, has: int, short: int) -> tuple[str, ...]:
    """Where the offcuts do not reach, what the paper still has to say; never words for words’ sake."""
    if has >= short:
        return ()
    out = [f"The offcuts have {count_of(has, 'word')}, and {short - has:,} more are wanted."] if has else []
    unsaid = fitting.list_unsaid()
    out += [
        f"Not argued yet: the {one.weight} point {one.id}, “{first_words(one.text).rstrip('.')}”." for one in unsaid
    ]
    if not fitting.known.paper.points.points:
        out.append("No points are set down yet: they say what there is to write.")
    elif not unsaid:
        out.append("Every point is argued: see in the support and the notes what a point still lacks.")
    return tuple(out)
