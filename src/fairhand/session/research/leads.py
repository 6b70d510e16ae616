"""The leads of a paper: what its sources' reference lists point to, ranked by what the paper needs."""

from __future__ import annotations

import datetime as dt
import json
from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass, field
from functools import partial
from pathlib import Path

from fairhand.brief.telling import tell_requirement
from fairhand.desk.cache import keep_cached, read_cached
from fairhand.desk.seen import hash_bytes
from fairhand.errors import FairhandError
from fairhand.evidence.searches import Search
from fairhand.leads import asides
from fairhand.leads.asides import Aside
from fairhand.leads.lead import Lead, gather_leads, known_from
from fairhand.leads.mining import MINED_BY, Mined, mine_references
from fairhand.leads.ranking import Lacking, RankedLead, rank_leads
from fairhand.model.entry import Entry
from fairhand.model.problem import Problem
from fairhand.model.requirement import Requirement
from fairhand.model.source import SourceText
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.verdicts.sources import is_asked
from fairhand.session.editing import read_text
from fairhand.session.job import Job
from fairhand.session.opened import OpenPaper
from fairhand.session.research.lead_choices import take_lead
from fairhand.session.research.support import log_search


@dataclass(frozen=True)
class LeadsFound:
    """What the sources' reference lists point to."""

    leads: tuple[RankedLead, ...] = ()
    """Those still to be looked at, the most needed first."""
    aside: tuple[tuple[Lead, Aside], ...] = ()
    """Those that the writer put aside, with the reason."""
    mined: Mapping[str, int] = field(default_factory=dict)
    """How many references were found in each source that was looked through, by id."""
    unmined: tuple[SourceText, ...] = ()
    """The texts that were not looked through."""
    problems: tuple[Problem, ...] = ()

    def find(self, id_: str) -> Lead:
        """The lead of that name, those put aside included.

        Raises:
            FairhandError: There is none.
        """
        for lead in (*(one.lead for one in self.leads), *(lead for lead, _ in self.aside)):
            if lead.entry.id == id_:
                return lead
        message = f"{id_}: no lead has that name; look at their names again"
        raise FairhandError(message)


def list_leads(opened: OpenPaper, *, at_once: bool = False) -> LeadsFound:
    """The leads of a paper; what each source points to is worked out once and kept.

    Args:
        opened: The paper.
        at_once: Whether sources that were not looked through before are left out.
    """
    known = opened.look()
    texts = opened.source_texts
    mined: dict[str, tuple[Mined, ...]] = {}
    unmined = []
    for id_ in known.entries:
        text = texts.get(id_)
        if text is None:
            continue
        found = _read_kept(opened.folder, text)
        if found is None and not at_once:
            found = _mine(opened.folder, text)
        if found is None:
            unmined.append(text)
        else:
            mined[id_] = found
    put, problems = asides.read_asides(read_text(opened.folder, asides.WHERE).text)
    leads = gather_leads(mined, known.paper.entries)
    ranked = rank_leads(leads, known.paper.focus.questions, list_lacking(known))
    return LeadsFound(
        tuple(one for one in ranked if one.lead.entry.id not in put),
        tuple((one.lead, put[one.lead.entry.id]) for one in ranked if one.lead.entry.id in put),
        {id_: len(found) for id_, found in mined.items()},
        tuple(unmined),
        problems,
    )


def mine_sources(folder: Path, texts: Sequence[SourceText], job: Job[int]) -> int:
    """The references of these texts are found and kept; how many texts were looked through is returned.

    Args:
        folder: The paper's folder.
        texts: The texts.
        job: Counts them, and says when to stop.
    """
    job.total = len(texts)
    for text in texts:
        if job.cancelled:
            break
        _mine(folder, text)
        job.count()
    return job.done


def follow_lead(opened: OpenPaper, lead: Lead, at: dt.datetime) -> str:
    """The lead is a source now, and that references were followed stands in the log of searches; its id is returned.

    What the followed list points to and was known already is written down with it: it tells how much two ways of
    looking find alike.

    Args:
        opened: The paper.
        lead: The lead.
        at: The present hour.

    Raises:
        FileUnreadable: The list is no list of records, and must be mended first.
        DraftChangedOnDisk: It or the log was changed meanwhile.
    """
    known = opened.look()
    new = take_lead(opened.folder, lead, known.names)
    source = lead.pointers[0].source
    text = opened.source_texts.get(source)
    references = (text and _read_kept(opened.folder, text)) or ()
    kept = (*known_from(references, [one for one in known.paper.entries if one.id != new]), new)
    log_search(opened.folder, Search(known.names.get(source, source), kept=kept, route="leads"), at)
    return new


def _key(text: SourceText) -> str:
    return f"references {MINED_BY} {hash_bytes(repr(text.pages).encode(errors='surrogateescape'))}"


def _read_kept(folder: Path, text: SourceText) -> tuple[Mined, ...] | None:
    """The references of a text as they were kept by the content of its pages; None where none were."""
    kept = read_cached(folder, _key(text), "texts")
    if kept is None:
        return None
    try:
        return tuple(Mined(**{**one, "guessed": frozenset(one["guessed"])}) for one in json.loads(kept))
    except (ValueError, KeyError, TypeError):
        return None  # what was kept is damaged: the text is looked through again


def _mine(folder: Path, text: SourceText) -> tuple[Mined, ...]:
    found = mine_references(text)
    frozen = [{**asdict(one), "guessed": sorted(one.guessed)} for one in found]
    keep_cached(folder, _key(text), json.dumps(frozen).encode(), "texts")
    return found


def list_lacking(known: Analysis) -> Sequence[Lacking]:
    """What the sheet asks of the sources, by kind or age, that those on the list do not meet yet."""
    lacking = []
    for requirement in known.paper.requirements:
        low = requirement.values.get("min")
        if requirement.kind != "sources" or known.is_waived(requirement) or not isinstance(low, int | float):
            continue
        special = requirement.values.get("since") or requirement.values.get("type") not in (None, "any", "outside")
        have = sum(1 for entry in known.paper.entries if is_asked(entry, requirement) and not entry.is_for_references)
        if special and have < low:
            lacking.append(Lacking(tell_requirement(requirement), partial(_is_asked, requirement)))
    return lacking


def _is_asked(requirement: Requirement, entry: Entry) -> bool:
    return is_asked(entry, requirement)
