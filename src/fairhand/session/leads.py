"""The leads of a paper, as the terminal and the page both show them, and what the writer does with each."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass, field
from functools import partial
from pathlib import Path

from fairhand.brief.telling import tell_requirement
from fairhand.citing.described import mark_origin
from fairhand.citing.entries import read_entry
from fairhand.citing.entry_list import put_record
from fairhand.desk.cache import keep_cached, read_cached
from fairhand.desk.seen import hash_bytes
from fairhand.errors import FairhandError
from fairhand.language.counts import count_of
from fairhand.leads import asides
from fairhand.leads.asides import Aside
from fairhand.leads.lead import Lead, gather_leads
from fairhand.leads.mining import MINED_BY, Mined, mine_references
from fairhand.leads.ranking import Lacking, RankedLead, rank_leads
from fairhand.model.entry import Entry
from fairhand.model.problem import Problem
from fairhand.model.requirement import Requirement
from fairhand.model.source import SourceText
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.verdicts.sources import is_asked
from fairhand.session.editing import read_text, save_text
from fairhand.session.job import Job
from fairhand.session.opened import OpenPaper
from fairhand.session.sources import LIST, join_list, open_list, write_list

READ_FOR = "read-for"
"""The key in a record's ``custom`` that says what it is read for, where that is less than the whole."""
REFERENCES = "references"


@dataclass(frozen=True)
class LeadsFound:
    """What the sources' reference lists point to."""

    leads: tuple[RankedLead, ...] = ()
    """Those still to be looked at, the most needed first."""
    aside: tuple[tuple[Lead, Aside], ...] = ()
    """Those that the writer put aside, with the reason."""
    mined: Mapping[str, int] = field(default_factory=dict)
    """How many references were found in each source whose text is at hand, by id."""
    problems: tuple[Problem, ...] = ()


def list_leads(opened: OpenPaper, job: Job[LeadsFound] | None = None) -> LeadsFound:
    """The leads of a paper; what each source points to is worked out once and kept.

    Args:
        opened: The paper.
        job: Counts the sources, and says when to stop.
    """
    known = opened.look()
    texts = opened.source_texts
    mined: dict[str, tuple[Mined, ...]] = {}
    if job:
        job.total = len(known.entries)
    for id_ in known.entries:
        if job and job.cancelled:
            break
        text = texts.get(id_)
        if text is not None:
            mined[id_] = _mine_once(opened.folder, text)
        if job:
            job.count()
    leads = gather_leads(mined, known.paper.entries)
    put, problems = asides.read_asides(read_text(opened.folder, asides.WHERE).text)
    ranked = rank_leads(leads, known.paper.focus.questions, tuple(list_lacking(known)))
    return LeadsFound(
        tuple(one for one in ranked if one.lead.entry.id not in put),
        tuple((one.lead, put[one.lead.entry.id]) for one in ranked if one.lead.entry.id in put),
        {id_: len(found) for id_, found in mined.items()},
        problems,
    )


def _mine_once(folder: Path, text: SourceText) -> tuple[Mined, ...]:
    """The references of a source, kept by the content of its pages."""
    key = f"references {MINED_BY} {hash_bytes(repr(text.pages).encode(errors='surrogateescape'))}"
    kept = read_cached(folder, key, "texts")
    if kept is not None:
        try:
            return tuple(Mined(**{**one, "guessed": frozenset(one["guessed"])}) for one in json.loads(kept))
        except (ValueError, KeyError, TypeError):
            pass  # what was kept is damaged: mine the source again
    found = mine_references(text)
    frozen = [{**asdict(one), "guessed": sorted(one.guessed)} for one in found]
    keep_cached(folder, key, json.dumps(frozen).encode(), "texts")
    return found


def list_lacking(known: Analysis) -> Sequence[Lacking]:
    """What the sheet asks of the sources that those on the list do not meet yet."""
    lacking = []
    for requirement in known.paper.requirements:
        low = requirement.values.get("min")
        if requirement.kind != "sources" or known.is_waived(requirement) or not isinstance(low, int | float):
            continue
        special = requirement.values.get("since") or requirement.values.get("type") not in (None, "any", "outside")
        have = sum(1 for entry in known.paper.entries if is_asked(entry, requirement) and not is_for_references(entry))
        if special and have < low:
            lacking.append(Lacking(tell_requirement(requirement), partial(_is_asked, requirement)))
    return lacking


def _is_asked(requirement: Requirement, entry: Entry) -> bool:
    return is_asked(entry, requirement)


def find_lead(found: LeadsFound, id_: str) -> Lead:
    """The lead of that name, those put aside included.

    Raises:
        FairhandError: There is none.
    """
    every = (*(one.lead for one in found.leads), *(lead for lead, _ in found.aside))
    for lead in every:
        if lead.entry.id == id_:
            return lead
    message = f"{id_}: no lead has that name; fairhand leads shows them"
    raise FairhandError(message)


def take_lead(folder: Path, lead: Lead, names: Mapping[str, str]) -> str:
    """The lead is a source now, each field with the reference that it came from; its id in the list is returned.

    Args:
        folder: The paper's folder.
        lead: The lead.
        names: The sources as the writer is told of them, by id.

    Raises:
        FileUnreadable: The list is no list of records, and must be mended first.
        DraftChangedOnDisk: It was changed meanwhile.
    """
    where = tell_pointer(lead, names)
    record = mark_origin({**lead.entry.csl, "id": ""}, where)
    entry, _ = read_entry(record, LIST)
    if entry is None:
        message = f"{lead.entry.id}: it has nothing to cite it by; add the source by hand"
        raise FairhandError(message)
    joined = join_list(folder, [entry], "taken")
    return (*joined.new, *joined.there)[0]


def tell_pointer(lead: Lead, names: Mapping[str, str]) -> str:
    """Where the first of its references stands, in words."""
    one = lead.pointers[0]
    page = f", p. {one.page}" if one.page else ""
    return f"the references of {names.get(one.source, one.source)}{page}"


def put_aside(folder: Path, lead: Lead, why: str, when: str) -> None:
    """The lead is shown no more among those to look at; the reason is kept in ``leads.jsonl``.

    Raises:
        DraftChangedOnDisk: Another program wrote to the file at the same moment.
        FolderNotWritable: The folder is closed or full.
    """
    _say(folder, Aside(lead.entry.id, " ".join(why.split()), when))


def bring_back(folder: Path, lead: Lead, when: str) -> None:
    """The lead is among those to look at again.

    Raises:
        DraftChangedOnDisk: Another program wrote to the file at the same moment.
        FolderNotWritable: The folder is closed or full.
    """
    _say(folder, Aside(lead.entry.id, "", when, back=True))


def _say(folder: Path, aside: Aside) -> None:
    present = read_text(folder, asides.WHERE)
    save_text(folder, asides.WHERE, asides.add_aside(present.text, aside), present.seen)


def is_for_references(entry: Entry) -> bool:
    """Whether the writer marked the source as read for its references only."""
    custom = entry.csl.get("custom")
    return isinstance(custom, Mapping) and custom.get(READ_FOR) == REFERENCES


def read_for_references(folder: Path, entry: Entry, *, only: bool) -> None:
    """The source's record says that it is read for its references only, or does not any more.

    Raises:
        FileUnreadable: The list is no list of records, and must be mended first.
        DraftChangedOnDisk: It was changed meanwhile.
    """
    if is_for_references(entry) == only:
        return
    files, records = open_list(folder)
    held = entry.csl.get("custom")
    custom = {key: value for key, value in held.items() if key != READ_FOR} if isinstance(held, Mapping) else {}
    custom |= {READ_FOR: REFERENCES} if only else {}
    record = {key: value for key, value in entry.csl.items() if key != "custom"}
    write_list(files, put_record(records, entry, {**record, **({"custom": custom} if custom else {})}))


def tell_found(found: LeadsFound) -> str:
    """How many leads there are, from how many sources, in one sentence."""
    with_list = sum(1 for count in found.mined.values() if count)
    if not found.mined:
        return "No text of a source is at hand yet: leads are read off the reference lists of the sources' texts."
    if not with_list:
        return f"No reference list was found in {count_of(len(found.mined), 'source text')}."
    looked_at = f"{count_of(with_list, 'reference list')} in {count_of(len(found.mined), 'source text')}"
    return f"{count_of(len(found.leads), 'lead')} from {looked_at}, the most needed first."


def tell_lead(lead: Lead) -> str:
    """A lead in one line: who, when, what, and where it stands."""
    entry = lead.entry
    people = entry.authors or entry.editors
    who = ", ".join(name.surname for name in people[:3]) + (
        " and others" if len(people) > 3 or "author" in lead.guessed else ""
    )
    year = str(entry.issued.year or entry.issued.literal) if entry.issued else "no year"
    title = entry.title or "no title given"
    where = entry.container_title or entry.publisher
    return (
        f"{f'{who}. ' if who else ''}{year}. {title}{'' if title[-1:] in '?!.' else '.'}{f' {where}.' if where else ''}"
    )


def tell_pointers(lead: Lead, names: Mapping[str, str]) -> str:
    """The sources in whose lists it stands, with the page."""
    told = dict.fromkeys(
        f"{names.get(one.source, one.source)}{f', p. {one.page}' if one.page else ''}" for one in lead.pointers
    )
    return "; ".join(told)
