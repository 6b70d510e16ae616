"""Other versions of the writer's files, as a synchronised folder leaves them beside these: held, and taken."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from fairhand.desk.copies import Copy, list_copies
from fairhand.desk.decoding import decode_text
from fairhand.desk.paper_files import read_paper
from fairhand.desk.seen import see_file
from fairhand.desk.writing import write_file
from fairhand.errors import InputError, NoSuchState
from fairhand.proof.comparison import Difference, compare_states
from fairhand.session.editing import one_line_end, read_text, refuse_changed
from fairhand.session.saving import keep_record


@dataclass(frozen=True)
class Version:
    """A version, held against the file that it is one of."""

    copy: Copy
    text: str | None
    """None where it is no text."""
    present: str | None
    """The hash of the file's bytes now; None where there is no such file."""
    differs: tuple[Difference, ...] = ()
    """Where the file differs from it."""

    @property
    def is_present(self) -> bool:
        """Whether the file stands so now."""
        return self.present == self.copy.seen.sha256


def list_versions(folder: Path, of: str = "") -> tuple[Copy, ...]:
    """The other versions of one of the paper's files, or of all of them, by name.

    Args:
        folder: The paper's folder.
        of: The file; empty for all.
    """
    return tuple(one for one in list_copies(folder) if of in ("", one.of))


def look_at_version(folder: Path, name: str) -> Version:
    """A version, and where the file that it is one of differs from it.

    Args:
        folder: The paper's folder.
        name: The version's own name.

    Raises:
        NoSuchState: No version of that name stands there.
        FileUnreadable: The file that it is one of is no text.
    """
    copy = _find(folder, name)
    present = read_text(folder, copy.of)
    try:
        text = one_line_end(decode_text(copy.seen.data, name).text)
    except InputError:
        return Version(copy, None, present.seen)
    return Version(copy, text, present.seen, compare_states(copy.of, text, present.text))


def put_version(folder: Path, name: str, seen: str | None, was: str) -> str:
    """The file holds what a version holds; what it held before is kept, and the version stays where it is.

    Args:
        folder: The paper's folder.
        name: The version's own name.
        seen: The hash of the file's bytes as the writer saw it; None where there was none.
        was: The same of the version.

    Returns:
        The name of the file.

    Raises:
        NoSuchState: No version of that name stands there.
        DraftChangedOnDisk: The file or the version is not the one that was seen.
        FolderNotWritable: The folder is closed or full.
    """
    copy = _find(folder, name)
    refuse_changed(folder.name, name, copy.seen.sha256, was)
    keep_record(read_paper(folder))
    write_file(folder, copy.of, copy.seen.data, seen, how="brought back")
    return see_file(folder / copy.of, copy.of).name


def tell_version(copy: Copy) -> str:
    """What a version is, in a few words."""
    how = "left in conflict by a synchronised folder" if copy.kind == "in conflict" else "brought back from the record"
    return f"another version of {copy.of}, {how}"


def _find(folder: Path, name: str) -> Copy:
    found = next((one for one in list_copies(folder) if one.seen.name == name), None)
    if found is None:
        message = f"{name}: no other version of that name stands in {folder.name}; see its earlier states"
        raise NoSuchState(message)
    return found
