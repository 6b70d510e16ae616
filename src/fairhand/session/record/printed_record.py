"""The record told sitting by sitting, printed with its hashes, and a printed one checked on any machine."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import cast

from fairhand.desk.clock import find_zone, now
from fairhand.desk.decoding import decode_text
from fairhand.desk.paper_files import read_paper
from fairhand.desk.record import list_links, read_states
from fairhand.desk.state import How, Link, Row, find_breaks
from fairhand.errors import FairhandError, FileUnreadable, InputError, UnknownFormat
from fairhand.press.typst_press import typeset
from fairhand.reading.attached import read_attached
from fairhand.reading.packed import may_expand
from fairhand.reading.pdf import read_pdf
from fairhand.record.document import Document, find_disorder, hash_page, read_document
from fairhand.record.page import read_page, without_data, write_page
from fairhand.record.sheet import ATTACHED, to_typst
from fairhand.record.sittings import Kept, list_sittings, part_sittings
from fairhand.session.hand_in.printing import write_copy
from fairhand.session.saving import keep_record

FORMS: Mapping[str, Callable[[Document], bytes]] = {
    "pdf": lambda document: typeset(to_typst(document)).pdf,
    "html": write_page,
}
"""How each form of a printed record is made."""


OTHER_WORDS = (
    "Its page has other words than this program would print for its list: it was printed by another version, or its "
    "words were changed before it was sealed; read the one against the other."
)


@dataclass(frozen=True)
class Checked:
    """A printed record that was looked through."""

    document: Document
    faults: tuple[str, ...]
    """What is not as it should be; nothing where all is whole."""
    note: str = ""
    """What should be known of it besides."""


def tell_record(folder: Path, at: dt.datetime | None = None) -> Document:
    """How the paper came to be, by the states that can be read; hours are told by the desk's clock.

    Args:
        folder: The paper's folder.
        at: The hour that it is told at; the clock's, where it is None.

    Raises:
        RecordDamaged: The record cannot be opened at all.
    """
    files = read_paper(folder)
    keep_record(files)
    name = files.desk.time_zone
    zone = find_zone(name) if name else None
    links = list_links(folder)
    states = [_keep(link.row, zone) for link in links]
    wanted = [seq for these in part_sittings(states) for seq in {one.name: one.seq for one in these}.values()]
    found = read_states(folder, wanted)
    names = {state.seq: state.name for state in states}

    def text_of(seq: int) -> str | None:
        data = found.get(seq) if seq in found or seq in wanted else read_states(folder, [seq]).get(seq)
        return _read(names[seq], data)

    sittings = list_sittings(states, text_of)
    moment = (at or now(name)).astimezone(zone).replace(microsecond=0)
    title = files.settings.title or folder.name
    return Document(title, moment.isoformat(), sittings, tuple(_tell(link) for link in links))


def print_record(folder: Path, kind: str = "pdf", *, to: Path | None = None, at: dt.datetime | None = None) -> Path:
    """The record stands in a file, with its hashes.

    Args:
        folder: The paper's folder.
        kind: ``pdf`` or ``html``.
        to: The file, or a folder for it; ``fair/`` in the paper's folder where it is None.
        at: The hour that it is printed at; the clock's, where it is None.

    Raises:
        RecordDamaged: The record cannot be opened at all.
        FolderNotWritable: The place is closed or full.
    """
    data = set_record(folder, kind, at)
    return write_copy(folder, to, f"record of {folder.name}.{kind}", data)


def set_record(folder: Path, kind: str, at: dt.datetime | None = None) -> bytes:
    """The record in one form, not yet in any file.

    Raises:
        RecordDamaged: The record cannot be opened at all.
    """
    document = tell_record(folder, at)
    words = _words_of(kind, FORMS[kind](document), f"record.{kind}")
    return FORMS[kind](replace(document, page=hash_page(words, document.seal)))


def check_printed(file: str, data: bytes) -> Checked:
    """A printed record, looked through with nothing but itself at hand.

    Its seal, the chain of its states, its list against them, and its page against what was printed.

    Args:
        file: Its name, whose ending tells its form.
        data: Its bytes.

    Raises:
        FileUnreadable: It is no printed record.
        UnknownFormat: It is no PDF and no HTML.
    """
    kind = {".pdf": "pdf", ".html": "html", ".htm": "html"}.get(Path(file).suffix.lower(), "")
    if kind not in FORMS:
        message = f"{file}: a printed record is a PDF or an HTML file; choose one that `fairhand record --print` made"
        raise UnknownFormat(message)
    if kind == "pdf" and may_expand(data):
        message = f"{file}: it is packed as no printed record is; choose one that `fairhand record --print` made"
        raise FileUnreadable(message)
    text = read_page(data, file) if kind == "html" else _attached(data, file)
    document, is_sealed = read_document(text, file)
    faults = [] if is_sealed else ["the seal is not that of what the list tells: it was changed after it was printed"]
    faults += [f"state {seq} does not follow from the one before" for seq in find_breaks(_links_of(document))]
    faults += find_disorder(document)
    if hash_page(_words_of(kind, data, file), document.seal) != document.page:
        faults.append("the page does not read as it was printed")
    note = "" if faults or _reads_as_list(document, kind, data, file) else OTHER_WORDS
    return Checked(document, tuple(faults), note)


def compare_with_paper(document: Document, folder: Path) -> str:
    """How many of a printed record's states are in the record of a paper, in a sentence.

    Raises:
        RecordDamaged: The record cannot be opened at all.
    """
    known = {link.row.hash for link in list_links(folder)}
    shared = sum(link[8] in known for link in document.links)
    if shared == len(document.links):
        return f"Each of its states is in the record of {folder.name}, which has {len(known):,}."
    return f"{shared:,} of its {len(document.links):,} states are in the record of {folder.name}."


def _keep(row: Row, zone: dt.tzinfo | None) -> Kept:
    return Kept(row.seq, row.name, dt.datetime.fromisoformat(row.at).astimezone(zone), row.how)


def _read(name: str, data: bytes | None) -> str | None:
    try:
        return decode_text(data, name).text.replace("\r\n", "\n").replace("\r", "\n") if data is not None else None
    except InputError:
        return None


def _tell(link: Link) -> tuple[int, str, str, str, int, str, int, int | None, str, str]:
    row = link.row
    return (
        row.seq, row.name, row.at, row.how, row.size, row.sha256, row.place, row.base, row.hash, link.blob_sha256
    )  # fmt: skip


def _links_of(document: Document) -> list[Link]:
    return [
        Link(Row(seq, name, at, cast("How", how), size, sha256, place, base, chained), packed)
        for seq, name, at, how, size, sha256, place, base, chained, packed in document.links
    ]


def _attached(data: bytes, file: str) -> str:
    found = read_attached(data, file, ATTACHED)
    if found is None:
        message = f"{file}: no record is attached to it; choose one that was made with `fairhand record --print`"
        raise FileUnreadable(message)
    return found.decode("utf-8", "replace")


def _words_of(kind: str, data: bytes, file: str) -> str:
    return without_data(data) if kind == "html" else "".join(read_pdf(data, file).texts)


def _reads_as_list(document: Document, kind: str, data: bytes, file: str) -> bool:
    """Whether a page reads as this program would print its list; another version may have other words for it."""
    try:
        made = FORMS[kind](document)
    except (FairhandError, ValueError, OverflowError):
        return False
    mine, its = (hash_page(_words_of(kind, one, file), document.seal) for one in (made, data))
    return mine == its
