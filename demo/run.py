"""The demo: a desk with one paper, judged, printed and opened in a folder that may be kept or thrown away."""

from __future__ import annotations

import os
import shutil
import sys
import tempfile
from pathlib import Path

from fairhand.cli import commands
from fairhand.model.request import TypesetJob
from fairhand.press.typst_press import typeset

HERE = Path(__file__).parent
FIRST_PAGES = {"haldane-2008": 1, "osei-2014": 118}
"""The page number that each of the sources begins on that the demo sets in type itself."""
AS_OF = "2027-02-08"
"""The day that the demo's deadlines are judged by."""


def lay_out_desk(folder: Path) -> Path:
    """The demo's desk stands in ``folder``, its two printed sources made as PDF; the paper's folder is returned."""
    shutil.copytree(HERE / "desk", folder, dirs_exist_ok=True)
    paper = folder / "tram-libraries"
    for name, first_page in FIRST_PAGES.items():
        pages = (HERE / "typeset" / f"{name}.txt").read_text("utf-8").split("\\f\n")
        (paper / "sources" / f"{name}.pdf").write_bytes(typeset(set_pages(name, pages, first_page)).pdf)
    return paper


def set_pages(title: str, pages: list[str], first_page: int) -> TypesetJob:
    """The pages as they would be printed, each with its number at the foot."""
    body = "\n#pagebreak()\n".join(
        "\n\n".join(f"#{quote(p)}" for p in page.split("\n\n") if p.strip()) for page in pages
    )
    head = (
        f"#set document(title: {quote(title)}, date: none)\n"
        '#set page(paper: "a5", numbering: "1")\n'
        '#set text(font: "Tinos", size: 11pt, lang: "en")\n#set par(justify: true)\n'
        f"#counter(page).update({first_page})\n"
    )
    return TypesetJob(head + body + "\n")


def quote(text: str) -> str:
    """Text as a string of typst."""
    plain = " ".join(text.split()).replace("\\", "\\\\").replace('"', '\\"')
    return f'"{plain}"'


def run(*words: str) -> None:
    """Shows a command and what it prints."""
    print(f"\n$ fairhand {' '.join(words)}\n", flush=True)
    commands.main(args=list(words), prog_name="fairhand", standalone_mode=False)


def main() -> None:
    """Lays the desk out, judges the paper, prints it twice, and opens the desk where somebody is there to look."""
    for stream in (sys.stdout, sys.stderr):
        stream.reconfigure(encoding="utf-8")  # type: ignore[union-attr]
    desk = Path(tempfile.mkdtemp(prefix="fairhand-demo-"))
    paper = lay_out_desk(desk)
    print(f"The demo's desk is in {desk}.")
    run("ready", str(paper), "--on", AS_OF)
    run("print", str(paper), "--as", "pdf", "--anyway")
    run("print", str(paper), "--as", "docx", "--anyway")
    print(f"\nMend the draft, {paper / 'draft.md'}, in any editor, and ask again:\n$ fairhand ready {paper}")
    if sys.stdin.isatty() and not os.environ.get("CI"):
        run("open", str(desk), "--on", AS_OF)


if __name__ == "__main__":
    main()
