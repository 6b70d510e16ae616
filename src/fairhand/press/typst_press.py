"""Typst, run within this process on bytes, with the program's own typefaces, so that pages fall alike everywhere."""

from __future__ import annotations

import functools
import importlib.resources
import json
import tempfile
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any, Literal

from fairhand.errors import EngineFailed
from fairhand.model.problem import Problem
from fairhand.model.request import Typeset, TypesetJob

if TYPE_CHECKING:
    import typst

PLACES = "query(<place>).map(m => (m.value, m.location().page(), m.location().position().y / 1pt))"
"""Typst's words for "where does each labelled place lie"."""
SOURCE_NAME = "source.typ"
"""The source among its pictures, which are named without an ending."""
NO_GLYPH = ("could not be displayed", "disallowed codepoint")
"""What typst says of a character that no face at hand has."""
BLANK_PICTURE = bytes.fromhex(
    "89504e470d0a1a0a0000000d49484452000000010000000108000000003a7e9b55"
    "0000000a4944415478da63f80f00010101001cb08c990000000049454e44ae426082"
)
"""A picture of one white point, set in the place of one that cannot be read."""


def typeset(job: TypesetJob) -> Typeset:
    """The pages of ``job`` as a tagged PDF (PDF/UA-1), with the places that its source labels.

    The source labels a place by ``#metadata("name")<place>``, and names pictures without an ending, so that their kind
    is told from their bytes. The same job with the same date gives the same bytes. A picture that cannot be read is
    left blank, and a character that the program's faces lack is looked for in the machine's own; ``problems`` of the
    answer tells of both.

    Raises:
        EngineFailed: Typst refused the source.
    """
    try:
        return _set(job)
    except EngineFailed:
        mended, problems = _with_pictures_that_open(job)
        if not problems:
            raise
        done = _set(mended)
        return replace(done, problems=(*problems, *done.problems))


def _set(job: TypesetJob) -> Typeset:
    """The job set with the program's own faces; where they lack a character, with the machine's."""
    try:
        return _compile(job)
    except _GlyphMissing as lack:
        problem = Problem("the fair copy", str(lack), "look at the place on the page, or write it in another way")
    try:
        return replace(_compile(job, system_faces=True), problems=(problem,))
    except _GlyphMissing:
        return replace(_compile(job, system_faces=True, standard=None), problems=(problem,))


class _GlyphMissing(Exception):
    """PDF/UA was refused because no face at hand has some character."""


def _compile(job: TypesetJob, *, system_faces: bool = False, standard: Literal["ua-1"] | None = "ua-1") -> Typeset:
    """One run of typst; its pictures stand in a folder of their own, the only one that it can see."""
    import pypdfium2
    import typst

    fonts: Any = _faces(system_faces=system_faces)  # typst's own types allow a list only
    standards: Any = [standard] if standard else []
    stamp = int(job.dated.timestamp()) if job.dated else 0
    with tempfile.TemporaryDirectory(prefix="fairhand-") as folder:
        for name, data in job.files.items():
            (Path(folder) / name).write_bytes(data)
        source = Path(folder) / SOURCE_NAME
        source.write_bytes(job.source.encode())
        try:
            # One compiler for both: asked for the places, it remembers the pages that it has just set.
            compiler = typst.Compiler(source, root=folder, font_paths=fonts)
            pdf: Any = compiler.compile(timestamp=stamp, pdf_standards=standards)  # one file, so bytes
            places = json.loads(compiler.eval(PLACES))
        except typst.TypstError as error:
            if any(words in error.message for words in NO_GLYPH):
                raise _GlyphMissing(error.message.removeprefix("PDF/UA-1 error: ")) from None
            message = f"the page could not be set: {error.message}; this is a fault of the program, please report it"
            raise EngineFailed(message) from None
    with pypdfium2.PdfDocument(pdf) as document:
        pages = len(document)
    return Typeset(pdf, pages, {name: (page, y_pt) for name, page, y_pt in places})


def _with_pictures_that_open(job: TypesetJob) -> tuple[TypesetJob, tuple[Problem, ...]]:
    """The job with a blank in the place of each picture that cannot be read."""
    files, problems = dict(job.files), []
    for name, data in job.files.items():
        if not _opens(data):
            files[name] = BLANK_PICTURE
            problems.append(
                Problem(name, "the picture cannot be read", "give it as a whole PNG, JPEG, GIF or SVG file")
            )
    return replace(job, files=files), tuple(problems)


def _opens(picture: bytes) -> bool:
    """Whether typst can read the picture."""
    try:
        _compile(TypesetJob('#image("picture", alt: "")', {"picture": picture}), standard=None)
    except EngineFailed:
        return False
    return True


@functools.cache
def _faces(*, system_faces: bool) -> typst.Fonts:
    """The typefaces to set with, loaded once: the program's own, and where asked the machine's too."""
    import typst

    folder = importlib.resources.files("fairhand") / "built" / "fonts"
    if not folder.is_dir():
        message = "the program's typefaces are missing; install it again, or run its set-up"
        raise EngineFailed(message)
    with importlib.resources.as_file(folder) as path:
        return typst.Fonts(include_system_fonts=system_faces, font_paths=[path])
