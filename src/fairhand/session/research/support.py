"""What carries the points of a paper, as the terminal and the page both show it, and what the writer says of it."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from fairhand.brief.telling import tell_requirement
from fairhand.errors import FairhandError
from fairhand.evidence import rulings, searches
from fairhand.evidence.independence import Dependence
from fairhand.evidence.searches import Search, found_by
from fairhand.evidence.share_found import coverage_of, estimate_richness, routes_meet
from fairhand.evidence.stopping import holes_first, say_when_to_stop
from fairhand.evidence.support import PointSupport
from fairhand.language.counts import count_of
from fairhand.model.problem import Problem
from fairhand.model.ruling import Ruling
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.verdicts.sources import is_asked
from fairhand.session.editing import read_text, save_text

NOT_ASKED = "The sheet asks for no sources: support is not judged."
"""What is said instead, where that is so."""


@dataclass(frozen=True, slots=True)
class Rule:
    """What the sheet asks of the sources, beside those that carry a point."""

    asks: str
    carrying: tuple[str, ...]
    """Ids of the sources in the grid that are of the kind and age it asks; one may serve several rules."""


@dataclass(frozen=True, slots=True)
class Survey:
    """What carries the points."""

    sentence: str
    """Stop, or look for these things."""
    points: tuple[PointSupport, ...] = ()
    """Those that lack sources first."""
    sources: tuple[str, ...] = ()
    """Ids of the sources that carry a point, in the order of the list of sources: the other side of the grid."""
    held: tuple[Dependence, ...] = ()
    """Pairs that count as one, each once."""
    overruled: tuple[Dependence, ...] = ()
    """Pairs that look dependent, and count as two by the writer's word."""
    cited: tuple[Dependence, ...] = ()
    """Pairs of which one merely cites the other, and which count as two."""
    confirmed: frozenset[frozenset[str]] = frozenset()
    """Pairs that count as one by the writer's word too."""
    rules: tuple[Rule, ...] = ()


def survey_support(known: Analysis) -> Survey:
    """The grid of points against sources, holes first, with the sheet's rules; empty where it asks for no sources."""
    if not known.asks_for_sources:
        return Survey(NOT_ASKED)
    points = holes_first(known.support)
    carrying = {source for one in points for source in one.sources}
    sources = tuple(i for i in known.entries if i in carrying)
    asked = [r for r in known.paper.requirements if r.kind == "sources" and not known.is_waived(r)]
    return Survey(
        sentence=say_when_to_stop(points),
        points=points,
        sources=sources,
        held=tuple(dict.fromkeys(tie for one in points for tie in one.dependences)),
        overruled=tuple(dict.fromkeys(tie for one in points for tie in one.overruled)),
        cited=tuple(dict.fromkeys(tie for one in points for tie in one.cited)),
        confirmed=frozenset(ruling.pair for ruling in known.paper.rulings if not ruling.independent),
        rules=tuple(
            Rule(tell_requirement(r), tuple(i for i in sources if is_asked(known.entries[i], r))) for r in asked
        ),
    )


def unnamed_of(point: PointSupport, noted: Mapping[str, Sequence[str]]) -> tuple[str, ...]:
    """The sources that a point has notes from, and does not name.

    Args:
        point: The point.
        noted: The sources that each point has notes from.
    """
    return tuple(i for i in noted.get(point.point.id, ()) if i not in point.sources and i not in point.missing)


def pages_of(point: PointSupport, source: str) -> str:
    """The pages on which a source carries a point, or an empty string where none is given."""
    return ", ".join(one.page for one in point.point.support if one.source == source and one.page)


def tell_estimates(
    points: Sequence[PointSupport], log: Sequence[Search], questions: Mapping[str, Sequence[str]] | None = None
) -> tuple[str, ...]:
    """How much has been found, it may be, each figure with its range and assumption; nothing where too little tells.

    Args:
        points: The points with their sources.
        log: The searches.
        questions: The sources that each guiding question has notes from: the themes of the reading.
    """
    told = []
    counts = [len(one.sources) for one in points] + [len(sources) for sources in (questions or {}).values()]
    what = "points and questions" if questions else "points"
    richness = estimate_richness(counts)
    if richness.enough:
        told.append(
            f"About {coverage_of(counts):.0%} of what a further source says would be on {what} that you have (Good–"
            f"Turing); there may be {richness.total:.0f} such {what} or more, between {richness.at_least:.0f} and "
            f"{richness.high:.0f} (Chao). This takes each source to be found without regard to the others, and counts "
            "too few rather than too many."
        )
    met = routes_meet(found_by(log, "searching"), found_by(log, "leads"))
    if met.enough:
        told.append(
            f"By searching and by following leads you found {count_of(met.found, 'source')}; there may be "
            f"{met.total:.0f} in all, between {met.at_least:.0f} and {met.high:.0f}, so that {met.share:.0%} are found "
            "(Chapman). This takes the two ways to be independent; works that both find easily make it too low."
        )
    return tuple(told)


def list_searches(folder: Path) -> tuple[tuple[Search, ...], tuple[Problem, ...]]:
    """The log of searches in its order, and each line that cannot be read."""
    return searches.read_searches(read_text(folder, searches.WHERE).text)


def log_search(folder: Path, search: Search, at: dt.datetime) -> None:
    """The search stands in ``searches.jsonl``; one that is sent twice stands there once.

    Raises:
        FairhandError: It has no words.
        DraftChangedOnDisk: Another program wrote to the log at the same moment.
        FolderNotWritable: The folder is closed or full.
    """
    search = replace(search, words=" ".join(search.words.split()), place=" ".join(search.place.split()))
    if not search.words:
        message = "A search needs its words: write what you searched for, or whose references you followed."
        raise FairhandError(message)
    present = read_text(folder, searches.WHERE)
    before = searches.read_searches(present.text)[0]
    if before and replace(before[-1], when="") == search:
        return
    dated = replace(search, when=at.isoformat(timespec="seconds"))
    save_text(folder, searches.WHERE, searches.add_search(present.text, dated), present.seen)


def rule_pair(folder: Path, ruling: Ruling) -> None:
    """The writer's word on a pair of sources stands in ``support.toml``.

    Raises:
        FileUnreadable: The file must be mended first.
        DraftChangedOnDisk: Another program wrote to it at the same moment.
        FolderNotWritable: The folder is closed or full.
    """
    present = read_text(folder, rulings.WHERE)
    if ruling not in rulings.read_rulings(present.text)[0]:
        save_text(folder, rulings.WHERE, rulings.put_ruling(present.text, ruling), present.seen)


def take_ruling_back(folder: Path, pair: frozenset[str]) -> None:
    """Nothing is said of the pair any more; what was said stays among the earlier states.

    Raises:
        FileUnreadable: The file must be mended first.
        DraftChangedOnDisk: Another program wrote to it at the same moment.
        FolderNotWritable: The folder is closed or full.
    """
    present = read_text(folder, rulings.WHERE)
    text = rulings.drop_ruling(present.text, pair)
    if text != present.text:
        save_text(folder, rulings.WHERE, text, present.seen)
