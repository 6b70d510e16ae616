"""New desks, courses and papers."""

from __future__ import annotations

import os
import re
import secrets
import shutil
import unicodedata
from collections.abc import Mapping
from pathlib import Path

from fairhand.desk.disk import ABANDONED_SECONDS, put_file, sweep_unfinished, writable
from fairhand.desk.file_names import name_file
from fairhand.desk.places import DONE, OWN_FILES, SHEET_SUFFIXES, list_folder
from fairhand.desk.record import keep_state
from fairhand.desk.seen import hash_bytes
from fairhand.errors import NoPaperHere, PaperExistsAlready, UnknownFormat
from fairhand.model.settings import CourseSettings, DeskSettings, PaperSettings

_LONGEST = 60
_TAKEN = frozenset(
    {"con", "prn", "aux", "nul", "courses", DONE, *(f"{port}{n}" for port in ("com", "lpt") for n in range(10))}
)
"""Names that one system keeps for its devices (Win32, "Naming Files, Paths, and Namespaces"), and ours."""
_ACCENTS = re.compile("[\u0300-\u036f]")
_APOSTROPHES = re.compile("['\u2018\u2019\u02bc]")


def name_folder(title: str) -> str:
    """A title as the name of a folder that every system can hold: lower case, hyphens, no accents on Latin letters.

    >>> name_folder("Who's Afraid of the “Déjà Vu”?"), name_folder("CON"), name_folder("…")
    ('whos-afraid-of-the-deja-vu', 'con-paper', 'paper')
    """
    plain = unicodedata.normalize("NFC", _ACCENTS.sub("", unicodedata.normalize("NFKD", title.casefold()))).casefold()
    kept = (letter if unicodedata.category(letter)[0] in "LMN" else " " for letter in _APOSTROPHES.sub("", plain))
    words = "".join(kept).split()
    name = ""
    for word in words:
        if name and len(name) + 1 + len(word) > _LONGEST:
            break
        name = f"{name}-{word}" if name else word[:_LONGEST]
    return f"{name}-paper" if name in _TAKEN else name or "paper"


def make_desk(folder: Path, settings: DeskSettings) -> Path:
    """A desk stands at the folder, which may hold papers already.

    Raises:
        PaperExistsAlready: A desk is there.
        FolderNotWritable: The place is closed or full.
    """
    path = folder.absolute() / "desk.toml"
    if path.exists():
        message = f"{folder}: a desk is there already; make papers on it with `fairhand new`"
        raise PaperExistsAlready(message)
    with writable(folder):
        folder.mkdir(parents=True, exist_ok=True)
    told = {"name": settings.name, "time_zone": settings.time_zone, "spelling": settings.spelling, **settings.other}
    put_file(path, write_settings(told))
    return path.parent


def make_course(desk: Path, settings: CourseSettings, sheets: Mapping[str, bytes] | None = None) -> Path:
    """A course's folder stands on the desk, with its settings and the sheets that hold for all its papers.

    Args:
        desk: The desk's folder.
        settings: Its title gives the folder's name, unless ``folder`` does.
        sheets: By file name.

    Raises:
        PaperExistsAlready: There is a folder of that name.
        FolderNotWritable: The desk is closed or full.
        UnknownFormat: A sheet is of a kind that is not read.
    """
    names = ("title", "teacher", "institution", "style")
    told = {**{name: getattr(settings, name) for name in names}, **settings.other}
    files = {"course.toml": write_settings(told)} | {name_sheet(name): data for name, data in (sheets or {}).items()}
    return _make_folder(desk / "courses", settings.folder or name_folder(settings.title), files)


def make_paper(desk: Path, settings: PaperSettings, sheets: Mapping[str, bytes] | None = None) -> Path:
    """A new paper's folder stands on the desk, with its settings and sheets; nothing that the course has is repeated.

    Args:
        desk: The desk's folder, or any other that shall hold the paper's.
        settings: Its title gives the folder's name; what is empty is not written.
        sheets: By file name, oldest first. One alone becomes ``brief`` with its ending; several stand in ``brief/``;
            one that is a sheet of the course is left there.

    Raises:
        PaperExistsAlready: There is a folder of that name.
        NoPaperHere: There is no such course.
        FolderNotWritable: The desk is closed or full.
        UnknownFormat: A sheet is of a kind that is not read.
    """
    at_course = desk / "courses" / settings.course
    if settings.course and not (at_course.is_dir() and Path(settings.course).name == settings.course):
        message = f"{settings.course}: there is no such course on {desk}; make its folder under courses/ first"
        raise NoPaperHere(message)
    held: set[str] = set()
    if settings.course:
        at_hand = (*list_folder(at_course), *list_folder(at_course / "brief"))
        held = {hash_bytes(path.read_bytes()) for path in at_hand if path.is_file()}
    own = {name_sheet(name): data for name, data in (sheets or {}).items() if hash_bytes(data) not in held}
    if len(own) == 1:
        files = {f"brief{Path(name).suffix.lower()}": data for name, data in own.items()}
    else:
        files = {f"brief/{name}": data for name, data in own.items()}
    told = {
        "title": settings.title,
        "course": settings.course,
        "given": settings.given,
        "style": settings.style,
        "assignment": settings.assignment,
        **settings.other,
    }
    return _make_folder(desk, name_folder(settings.title), {"paper.toml": write_settings(told)} | files)


def name_sheet(name: str) -> str:
    """The file name of a sheet, without folders and without what some system refuses.

    Raises:
        UnknownFormat: No sheet is read from a file with that ending.

    >>> name_sheet("sheets/Paper 2: ports.pdf")
    'Paper 2_ ports.pdf'
    """
    path = Path(name.replace("\\", "/").rpartition("/")[2])
    if path.suffix.lower() not in SHEET_SUFFIXES:
        message = f"{path.name}: a sheet is not read from such a file; save it as PDF, DOCX or plain text"
        raise UnknownFormat(message)
    return f"{name_file(path.stem, 'sheet')}{path.suffix}"


def write_settings(told: Mapping[str, object]) -> bytes:
    r"""TOML of the settings that say something.

    >>> write_settings({"title": 'The "Salt" March', "style": ""})
    b'title = "The \\"Salt\\" March"\n'
    """
    import tomlkit

    return tomlkit.dumps({key: value for key, value in told.items() if value not in ("", None)}).encode()


def _make_folder(within: Path, name: str, files: Mapping[str, bytes]) -> Path:
    """A new folder of a paper or a course; one that is there already is left as it is."""
    try:
        return put_folder(within, name, files)
    except FileExistsError as error:
        message = f"{within / name}: there is a folder of that name already; give another title, or go on with that one"
        raise PaperExistsAlready(message) from error


def put_folder(within: Path, name: str, files: Mapping[str, bytes]) -> Path:
    """A new folder with all its files and their record, made aside and put in place as a whole.

    Args:
        within: The folder that it stands in; made where it is not there.
        name: Its name.
        files: What it holds, by name, oldest first.

    Raises:
        FileExistsError: There is a folder of that name.
        FolderNotWritable: The place is closed or full.
    """
    final = within / name
    if final.exists() or final.is_symlink():
        raise FileExistsError(name)
    sweep_unfinished(within, older_seconds=ABANDONED_SECONDS)
    aside = within / f".{secrets.token_hex(6)}.new"
    try:
        with writable(within):
            aside.mkdir(parents=True)
        for number, (file, data) in enumerate(files.items()):
            (aside / file).parent.mkdir(exist_ok=True)
            path = put_file(aside / file, data)
            mtime_ns = path.stat().st_mtime_ns + number * 1_000_000  # a tick of the clock may span several files
            os.utime(path, ns=(mtime_ns, mtime_ns))
            if file in OWN_FILES:
                keep_state(aside, file, data, "written")
        with writable(within):
            aside.replace(final)
    finally:
        shutil.rmtree(aside, ignore_errors=True)
    return final
