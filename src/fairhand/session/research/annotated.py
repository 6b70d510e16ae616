"""The annotated bibliography of a paper, set and written to a file."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from fairhand.citing.rendering import citation_key, read_answer, reference_request
from fairhand.errors import NothingToPrint
from fairhand.fair_copy.annotated import build_annotated
from fairhand.fair_copy.layout import proof_layout
from fairhand.language.counts import open_with
from fairhand.session.fair import front_matter
from fairhand.session.hand_in.printing import Printed, SetCopy, make_copy, write_copy
from fairhand.session.opened import OpenPaper
from fairhand.session.research.notes_for import order_notes
from fairhand.session.research.noting import list_notes


def print_annotated(folder: Path, kind: str = "pdf", *, to: Path | None = None, proof: bool = False) -> Printed:
    """The annotated bibliography of the paper in ``folder`` stands in a file.

    Args:
        folder: The paper's folder.
        kind: ``pdf``, ``docx``, ``odt``, ``html`` or ``md``.
        to: The file, or a folder for it; ``fair/`` in the paper's folder where it is None.
        proof: Whether lines are numbered and margins wide (PDF).

    Raises:
        NothingToPrint: The paper has no sources yet.
        EngineFailed: Pandoc or typst refused it.
        FolderNotWritable: The place is closed or full.
    """
    made = set_annotated(OpenPaper(folder), kind, proof=proof)
    return Printed(write_copy(folder, to, made.name, made.data), made.pages, made.notes)


def set_annotated(paper: OpenPaper, kind: str, *, proof: bool = False) -> SetCopy:
    """Every source in the paper's style, under each what the writer noted from it; who has no note is told.

    Args:
        paper: The paper.
        kind: ``pdf``, ``docx``, ``odt``, ``html`` or ``md``.
        proof: Whether lines are numbered and margins wide (PDF).

    Raises:
        NothingToPrint: The paper has no sources yet.
        EngineFailed: Pandoc or typst refused it.
    """
    known = paper.look()
    if not known.paper.entries:
        message = f"{paper.folder / 'sources.json'}: there are no sources yet; add the first with fairhand add"
        raise NothingToPrint(message)
    language = "en-GB" if known.is_british else "en-US"
    request = reference_request(known.paper.entries, known.style, language)
    lines = read_answer(paper.engines.ask_pandoc(request, citation_key(request)), request).references
    notes = [note for group in order_notes(list_notes(paper.folder)[0], known) for note in group.notes]
    layout = proof_layout(known.layout) if proof else known.layout
    copy = build_annotated(
        lines,
        notes,
        front_matter(known, layout, "annotated-bibliography"),
        layout,
        language=language,
        bare_pages=known.style_rules.in_text == "author-page",
    )
    made = make_copy(paper, copy, f"{known.paper.name} (annotated bibliography)", kind)
    bare = [i for (i, _), said in zip(lines, copy.annotations, strict=True) if not said]
    them = "it" if len(bare) == 1 else "them"
    told = f"{open_with(len(bare), 'source has', 'sources have')} no note under {them}: "
    said = (f"{told}{'; '.join(known.names.get(i, i) for i in bare)}.",) if bare else ()
    return replace(made, notes=(*made.notes, *said))
