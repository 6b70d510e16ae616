"""What the writer does with leads: takes one among the sources, puts one aside, reads a source for its references."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from pathlib import Path

from fairhand.citing.described import mark_origin
from fairhand.citing.entries import read_entry
from fairhand.citing.entry_list import put_record
from fairhand.errors import FairhandError
from fairhand.leads import asides
from fairhand.leads.asides import Aside
from fairhand.leads.lead import Lead
from fairhand.model.entry import READ_FOR, REFERENCES, Entry
from fairhand.session.editing import read_text, save_text
from fairhand.session.sources.entries import LIST, join_list, open_list, write_list


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
    first = lead.pointers[0]
    where = f"the references of {names.get(first.source, first.source)}{f', p. {first.page}' if first.page else ''}"
    entry, _ = read_entry(mark_origin({**lead.entry.csl, "id": ""}, where), LIST)
    if entry is None:
        message = f"{lead.entry.id}: it has nothing to cite it by; add the source by hand"
        raise FairhandError(message)
    joined = join_list(folder, [entry], "taken")
    return (*joined.new, *joined.there)[0]


def put_aside(folder: Path, lead: Lead, why: str, at: dt.datetime) -> None:
    """The lead is shown no more among those to look at; the reason is kept in ``leads.jsonl``.

    Raises:
        DraftChangedOnDisk: Another program wrote to the file at the same moment.
        FolderNotWritable: The folder is closed or full.
    """
    _say(folder, Aside(lead.entry.id, " ".join(why.split()), at.isoformat(timespec="seconds")))


def bring_back(folder: Path, lead: Lead, at: dt.datetime) -> None:
    """The lead is among those to look at again.

    Raises:
        DraftChangedOnDisk: Another program wrote to the file at the same moment.
        FolderNotWritable: The folder is closed or full.
    """
    _say(folder, Aside(lead.entry.id, when=at.isoformat(timespec="seconds"), back=True))


def _say(folder: Path, aside: Aside) -> None:
    present = read_text(folder, asides.WHERE)
    save_text(folder, asides.WHERE, asides.add_aside(present.text, aside), present.seen)


def read_for_references(folder: Path, entry: Entry, *, only: bool) -> None:
    """The source's record says that it is read for its references only, or does not any more.

    Raises:
        FileUnreadable: The list is no list of records, and must be mended first.
        DraftChangedOnDisk: It was changed meanwhile.
    """
    if entry.is_for_references == only:
        return
    files, records = open_list(folder)
    held = entry.csl.get("custom")
    custom = {key: value for key, value in held.items() if key != READ_FOR} if isinstance(held, Mapping) else {}
    custom |= {READ_FOR: REFERENCES} if only else {}
    record = {key: value for key, value in entry.csl.items() if key != "custom"}
    write_list(files, put_record(records, entry, {**record, **({"custom": custom} if custom else {})}))
