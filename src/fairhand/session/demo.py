"""The demo: a desk of our own invention with a paper in hand and two that came back, for a first look round."""

from __future__ import annotations

import shutil
from importlib.resources import files
from pathlib import Path

from fairhand.copyedit.lapses import WHERE as LAPSES
from fairhand.desk.disk import writable
from fairhand.desk.places import OWN_FILES, list_done, list_papers
from fairhand.desk.record import keep_state
from fairhand.errors import PaperExistsAlready
from fairhand.model.request import TypesetJob
from fairhand.press.typst_press import typeset

PAPER = "tram-libraries"
FIRST_PAGES = {"haldane-2008": 1, "osei-2014": 118}
"""The page number that each of the sources begins on that is set in type here."""


def lay_out_demo(desk: Path) -> Path:
    """The demo's paper, course and settings stand on the desk, two printed sources made as PDF; its folder is returned.

    Its writer's lapses and earlier papers are laid out on an empty desk alone: on another they would be taken for the
    desk's own.

    Args:
        desk: The desk's folder; what stands on it already stays as it is.

    Raises:
        PaperExistsAlready: A folder of the paper's name is there.
        FolderNotWritable: The desk is closed or full.
    """
    data, paper = Path(str(files("fairhand"))) / "demo", desk / PAPER
    if paper.exists():
        message = f"{PAPER}: the demo stands on this desk already; open it there"
        raise PaperExistsAlready(message)
    is_empty = not (list_papers(desk) or list_done(desk) or (desk / LAPSES).exists())
    with writable(desk):
        if is_empty:
            shutil.copytree(data / "earlier", desk, dirs_exist_ok=True, copy_function=_copy_new)
        shutil.copytree(data / "desk", desk, dirs_exist_ok=True, copy_function=_copy_new)
        for name, first_page in FIRST_PAGES.items():
            pages = (data / "typeset" / f"{name}.txt").read_text("utf-8").split("\\f\n")
            (paper / "sources" / f"{name}.pdf").write_bytes(typeset(_set_pages(name, pages, first_page)).pdf)
    for name in OWN_FILES:
        if (paper / name).is_file():
            keep_state(paper, name, (paper / name).read_bytes(), "written")
    return paper


def _copy_new(source: str, target: str) -> str:
    """Copies a file, unless one stands there."""
    return target if Path(target).exists() else shutil.copyfile(source, target)


def _set_pages(title: str, pages: list[str], first_page: int) -> TypesetJob:
    """The pages as they would be printed, each with its number at the foot."""
    body = "\n#pagebreak()\n".join(
        "\n\n".join(f"#{_quote(p)}" for p in page.split("\n\n") if p.strip()) for page in pages
    )
    head = (
        f"#set document(title: {_quote(title)}, date: none)\n"
        '#set page(paper: "a5", numbering: "1")\n'
        '#set text(font: "Tinos", size: 11pt, lang: "en")\n#set par(justify: true)\n'
        f"#counter(page).update({first_page})\n"
    )
    return TypesetJob(head + body + "\n")


def _quote(text: str) -> str:
    """Text as a string of typst."""
    plain = " ".join(text.split()).replace("\\", "\\\\").replace('"', '\\"')
    return f'"{plain}"'
