"""The fair copy, written to a file."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path

from fairhand.desk.disk import ABANDONED_SECONDS, put_file, sweep_unfinished, writable
from fairhand.desk.file_names import name_file
from fairhand.errors import MatterLeft, NothingToPrint
from fairhand.fair_copy.document import FairCopy
from fairhand.fair_copy.layout import layout_notes
from fairhand.fair_copy.opendocument import finish_odt
from fairhand.fair_copy.proof_copy import with_sheet_of_marks
from fairhand.fair_copy.requests import ODT_BASE, docx_request, html_request, md_request, odt_request
from fairhand.fair_copy.typesetting import to_typst
from fairhand.fair_copy.web_page import finish_html
from fairhand.fair_copy.word import finish_docx
from fairhand.language.counts import count_of
from fairhand.manuscript.parts import Manuscript
from fairhand.model.span import line_at
from fairhand.press.pandoc import run_pandoc
from fairhand.readiness.analysis import Analysis
from fairhand.session.opened import OpenPaper


def _as_docx(copy: FairCopy) -> bytes:
    return finish_docx(run_pandoc(docx_request(copy)))


def _as_odt(copy: FairCopy) -> bytes:
    return finish_odt(run_pandoc(odt_request(copy, run_pandoc(ODT_BASE))))


FORMS: Mapping[str, Callable[[FairCopy], bytes]] = {
    "docx": _as_docx,
    "odt": _as_odt,
    "html": lambda copy: finish_html(run_pandoc(html_request(copy))),
    "md": lambda copy: run_pandoc(md_request(copy)),
}
"""How each form but the PDF is made."""


_NAME_PART = re.compile(
    r"(?P<first>first[ _-]?name|given[ _-]?name)|last[ _-]?name|surname|family[ _-]?name|your[ _-]?name", re.IGNORECASE
)
"""What in a file name of the sheet's stands for a part of the writer's name."""


@dataclass(frozen=True)
class SetCopy:
    """A fair copy in one form, not yet in any file."""

    name: str
    """The file name that it is handed in under."""
    data: bytes
    pages: int | None
    """Of a PDF, its pages."""
    notes: tuple[str, ...]
    """What the writer should know of it."""


@dataclass(frozen=True)
class Printed:
    """A fair copy that was written."""

    path: Path
    pages: int | None
    """Of a PDF, its pages."""
    notes: tuple[str, ...]
    """What the writer should know of it."""


def print_paper(
    folder: Path, kind: str = "pdf", *, to: Path | None = None, proof: bool = False, anyway: bool = False
) -> Printed:
    """The fair copy of the paper in ``folder`` stands in a file.

    Args:
        folder: The paper's folder.
        kind: ``pdf``, ``docx``, ``odt``, ``html`` or ``md``.
        to: The file, or a folder for it; ``fair/`` in the paper's folder where it is None.
        proof: Whether lines are numbered and margins wide (PDF).
        anyway: Whether asides and TKs that are left may be left out silently.

    Raises:
        MatterLeft: Asides or TKs stand in the draft, and ``anyway`` is not set.
        NothingToPrint: There is no draft yet.
        EngineFailed: Pandoc or typst refused the paper.
        FolderNotWritable: The place is closed or full.
    """
    made = set_copy(OpenPaper(folder), kind, proof=proof, anyway=anyway)
    return Printed(write_copy(folder, to, made.name, made.data), made.pages, made.notes)


def set_copy(paper: OpenPaper, kind: str, *, proof: bool = False, anyway: bool = False) -> SetCopy:
    """The fair copy of an open paper in one form.

    Args:
        paper: The paper.
        kind: ``pdf``, ``docx``, ``odt``, ``html`` or ``md``.
        proof: Whether lines are numbered and margins wide (PDF).
        anyway: Whether asides and TKs that are left may be left out silently.

    Raises:
        MatterLeft: Asides or TKs stand in the draft, and ``anyway`` is not set.
        NothingToPrint: There is no draft yet.
        EngineFailed: Pandoc or typst refused the paper.
    """
    refuse_unprintable(paper, anyway=anyway)
    analysis = paper.look()
    stem = file_stem(analysis, analysis.paper.desk.name)
    return make_copy(paper, paper.fair_copy(proof=proof), f"{stem}{' (proof)' if proof else ''}", kind)


def refuse_unprintable(paper: OpenPaper, *, anyway: bool = False) -> None:
    """Raises where there is no draft, or matter is left in it that may not be left out silently.

    Raises:
        MatterLeft: Asides or TKs stand in the draft, and ``anyway`` is not set.
        NothingToPrint: There is no draft yet.
    """
    analysis = paper.look()
    if not analysis.paper.draft.strip():
        where = paper.folder / "draft.md"
        message = f"{where}: the draft is empty or not there yet; write it, or bring it in with fairhand take"
        raise NothingToPrint(message)
    if not anyway:
        refuse_left_matter(analysis.manuscript)


def make_copy(paper: OpenPaper, copy: FairCopy, stem: str, kind: str) -> SetCopy:
    """A copy in one form, under its name.

    Raises:
        EngineFailed: Pandoc or typst refused it.
    """
    notes = list(layout_notes(copy.layout))
    pages = None
    if kind == "pdf":
        at = paper.look().paper.now
        job = to_typst(copy, at.replace(microsecond=0) if at else None)
        typeset = paper.engines.typeset(with_sheet_of_marks(job) if copy.layout.proof else job)
        data, pages = typeset.pdf, typeset.pages
        notes += [str(problem) for problem in typeset.problems]
    else:
        data = FORMS[kind](copy)
    return SetCopy(f"{stem}.{kind}", data, pages, tuple(notes))


def refuse_left_matter(manuscript: Manuscript) -> None:
    """Raises where matter is left that is not to be printed.

    Raises:
        MatterLeft: Asides or TKs stand in the draft.
    """
    left = manuscript.left_matter
    if left:
        lines = list(dict.fromkeys(str(line_at(manuscript.text, span.start)) for span in left))
        where = f"lines {', '.join(lines[:-1])} and {lines[-1]}" if len(lines) > 1 else f"line {lines[0]}"
        told = count_of(len(left), "aside or TK is", "asides or TKs are")
        message = f"draft.md, {where}: {told} left; settle them"
        raise MatterLeft(message)


def file_stem(analysis: Analysis, name: str) -> str:
    """The file name that the sheet asks for, its ``name`` parts filled; else the folder's name.

    Args:
        analysis: The paper.
        name: The writer's name, or what stands in its place.
    """
    asked = next((r.values.get("value") for r in analysis.paper.requirements if r.id == "format.file-name"), None)
    names = name.split()
    if not isinstance(asked, str) or (not names and _NAME_PART.search(asked)):
        return analysis.paper.name
    stem = _NAME_PART.sub(lambda part: names[0 if part["first"] else -1], asked)
    return name_file(re.sub(r"\.(?:pdf|docx?|odt|html?|md)$", "", stem), analysis.paper.name)


def write_copy(folder: Path, to: Path | None, name: str, data: bytes) -> Path:
    """The copy stands in a file; a folder named in ``to`` gets it under its own name.

    Raises:
        FolderNotWritable: The place is closed or full.
    """
    path = folder / "fair" / name if to is None else (to / name if to.is_dir() else to)
    with writable(next(place for place in path.absolute().parents if place.exists())):
        path.parent.mkdir(parents=True, exist_ok=True)
    sweep_unfinished(path.parent, older_seconds=ABANDONED_SECONDS)
    return put_file(path, data)
