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
from fairhand.readiness.verdicts.length import allowed_range
from fairhand.revision.cast_off import count_between
from fairhand.revision.fit import ALTERNATIVES, Passage, Way, cut_least, gain_fewest
from fairhand.revision.returning import find_return
from fairhand.session.cast_off import placed_words
from fairhand.session.editing import state_of
from fairhand.session.leaning import Fitting, Proposed, Told, first_words
from fairhand.session.offcuts import Kept, bring_back, cut_span, list_offcuts

MANY = 150
"""From more passages on, some 20,000 words, one way alone is worked out."""


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
    over, says = words_over(known)
    if over > 0:
        fitting = Fitting(known)
        ways = tuple(fitting.propose_cut(way) for way in _list_cuts(fitting, over))
        wanting = () if ways else ("Whole passages alone do not bring it there: shorten within them.",)
        return Fit(says, over, ways, wanting)
    if over < 0:
        back = _returning(known, list_offcuts(folder)[0])
        ways = tuple(back.tell(way) for way in gain_fewest(back.passages, -over))
        has = sum(one.words for one in back.passages)
        return Fit(says, over, ways, _list_wanting(Fitting(known), has, -over))
    return Fit(says, 0)


def _list_cuts(fitting: Fitting, over: int) -> tuple[Way, ...]:
    """The ways to cut; of a very long paper the best alone, since each further one is as much work again."""
    return cut_least(fitting.passages, over, ALTERNATIVES if len(fitting.passages) <= MANY else 1)


def words_over(known: Analysis) -> tuple[int, str]:
    """By how many words the paper is over the most that is asked, or, below nought, short of the least; and that said.

    A length in pages is reckoned in words by the sheet's own rate, or by what a page of this paper holds in type.
    """
    rule = known.length_rule
    if rule is None or known.is_waived(rule) or not known.paper.draft.strip():
        return 0, "The sheet asks for no length." if known.paper.draft.strip() else "There is no draft yet."
    low, high = allowed_range(rule)
    has, rate, unit, how = float(known.words.counted), 1.0, "words", ""
    if rule.values.get("unit") != "words":
        unit = "pages"
        given, set_in_type = rule.values.get("words_per_page"), known.measured
        if isinstance(given, int | float) and given:
            rate, how = float(given), f", reckoned at the sheet’s {given:g} words a page"
        elif set_in_type is not None and set_in_type.body_pages > 0:
            rate = has / set_in_type.body_pages
            how = f", reckoned at the {rate:.0f} words that a page of it holds in type"
        else:
            return 0, "The pages could not be measured."
    if high is not None and has > high * rate:
        over = math.ceil(has - high * rate)
        return over, f"It is {count_of(over, 'word')} too long: the sheet allows {high:,g} {unit}{how}."
    if low is not None and has < low * rate:
        short = math.ceil(low * rate - has)
        return -short, f"It is {count_of(short, 'word')} too short: the sheet asks for {low:,g} {unit} at least{how}."
    return 0, f"Its {count_of(round(has), 'word')} are within what the sheet asks{how}."


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
    over, _ = words_over(known) if state_of(known.manuscript.text) == was else (0, "")
    if over > 0:
        fitting = Fitting(known)
        ways = _list_cuts(fitting, over)
        spans = [fitting.body[one].span for one in ways[number].passages] if number < len(ways) else []
        for span in reversed(spans):
            cut_span(folder, span, span.of(fitting.text), "for the length", at)
        done = len(spans)
    else:
        back = _returning(known, list_offcuts(folder)[0])
        ways = gain_fewest(back.passages, -over) if over else ()
        chosen = [back.kept[one].offcut.name for one in ways[number].passages] if number < len(ways) else []
        for name in chosen:
            bring_back(folder, name)
        done = len(chosen)
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
            why = f"carries {' and '.join(points)}" if points else "carries no point"
            reason = f"; it was cut: {one.offcut.reason}" if one.offcut.reason else ""
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
    out += [f"Not argued yet: the {one.weight} point {one.id}, “{first_words(one.text)}”." for one in unsaid]
    if not unsaid:
        out.append("Every point is argued: see in the support and the notes what a point still lacks.")
    return tuple(out)
