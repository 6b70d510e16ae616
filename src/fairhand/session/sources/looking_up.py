"""What is asked of the world outside: a work's record by its number, a page by its address; only once it is allowed."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path, PurePosixPath
from urllib.parse import unquote, urlsplit

from fairhand.citing.identifiers import Identifier
from fairhand.citing.registries import ADDRESSES, ask_registry, read_registry
from fairhand.desk.answers import set_setting
from fairhand.desk.clock import now
from fairhand.desk.inbox import put_in_inbox
from fairhand.desk.making import name_folder
from fairhand.desk.paper_files import PaperFiles
from fairhand.errors import NoPaperHere, NotAllowedOutside
from fairhand.model.description import Said
from fairhand.model.entry import Entry
from fairhand.model.request import WebRequest
from fairhand.outside.fetching import Bounds, fetch
from fairhand.reading.kinds import ending_of

WHAT_LEAVES = (
    "What leaves this machine then is the number or the address that you give, and with it this machine’s own "
    "address; nothing of your papers. A DOI is asked at doi.org, a PMID at the National Library of Medicine, an ISBN "
    "in a public library’s catalogue, a page at its own site."
)
"""What the writer is told before it is allowed."""
_QUICK = Bounds(seconds=20, most_bytes=4 * 2**20)
"""For a record."""
_ENDINGS = {
    "application/pdf": "pdf",
    "application/epub+zip": "epub",
    "text/plain": "txt",
    "text/html": "html",
    "application/xhtml+xml": "xhtml",
    "application/vnd.openxmlformats-officedocument.wordprocessingml.document": "docx",
    "application/vnd.oasis.opendocument.text": "odt",
    "image/jpeg": "jpg",
    "image/png": "png",
}


def allow_outside(files: PaperFiles, *, allowed: bool = True) -> None:
    """The desk's settings say that registries and addresses elsewhere may be asked, or that they may not.

    Raises:
        NoPaperHere: The paper stands on no desk.
        FolderNotWritable: The desk is closed.
    """
    if files.desk_folder is None:
        message = f"{files.folder}: it stands on no desk to set that down on; make one with fairhand desk --begin"
        raise NoPaperHere(message)
    set_setting(files.desk_folder, "outside", allowed, name="desk.toml")


def refuse_outside(files: PaperFiles, what: str) -> None:
    """Nothing, where it is allowed to ask elsewhere.

    Raises:
        NotAllowedOutside: It is not.
    """
    if not files.desk.outside:
        mend = "write outside = true in desk.toml, or save it yourself and add the file"
        message = f"{what}: nothing is asked elsewhere until you allow it; {mend}"
        raise NotAllowedOutside(message)


def look_up(files: PaperFiles, identifier: Identifier) -> Entry:
    """The record of a work from the registry of its number.

    Raises:
        NotAllowedOutside: The writer has not allowed it.
        NotReached: The registry gave no answer.
        FileUnreadable: It has no such record.
    """
    refuse_outside(files, str(identifier))
    own = files.desk.other.get("registries")
    named = own.items() if isinstance(own, Mapping) else ()
    addresses = {**ADDRESSES, **{str(kind).upper(): str(address) for kind, address in named}}
    return read_registry(identifier, fetch(ask_registry(identifier, addresses), _QUICK))


def fetch_page(files: PaperFiles, address: str) -> tuple[Path, tuple[Said, ...]]:
    """What stands at an address waits in the inbox; with it what is known of it: where it was, and on which day.

    Raises:
        NotAllowedOutside: The writer has not allowed it.
        NotReached: No answer came.
    """
    refuse_outside(files, address)
    answer = fetch(WebRequest(address, "text/html,application/pdf;q=0.9,*/*;q=0.5"))
    at = urlsplit(answer.address)
    last = unquote(PurePosixPath(at.path).name) or at.hostname or "page"
    ending = _ENDINGS.get(answer.media_type, ending_of(last) or "html")
    path = put_in_inbox(files.folder, f"{name_folder(last.removesuffix(f'.{ending}'))}.{ending}", answer.data)
    today = now(files.desk.time_zone).date().isoformat()
    said: list[Said] = [("URL", answer.address, "the address that you gave")]
    if ending in {"html", "xhtml"}:
        said.append(("accessed", today, "the day on which it was fetched"))
    return path, tuple(said)
