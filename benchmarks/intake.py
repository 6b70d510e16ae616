"""What taking PDFs in costs, beside the bare library that reads their text, as ratios measured in one run.

Three things are timed on the same files, in turn: the library alone, page after page in one process; one process of
ours, which also numbers the pages, leaves out running heads, joins hyphens, reads what the file says of its work, and
keeps the text; and the whole intake, with its processes, copies and list, and with the index made afterwards. The
articles are set by typst, from words made up on the spot.
"""

from __future__ import annotations

import os
import random
import shutil
import sys
import tempfile
from pathlib import Path
from typing import Any

import pypdfium2
import typst
from measuring import in_turn, measured, over, tell

from fairhand.desk.paper_files import read_paper
from fairhand.session.job import Job
from fairhand.session.loading import load_entries
from fairhand.session.research.searching import open_search
from fairhand.session.sources.intake import Taken, take_files
from fairhand.session.sources.reading_apart import Task, read_apart
from fairhand.session.texts import SourceTexts

FILES = int(sys.argv[1]) if len(sys.argv) > 1 else 40
PAGES = 20
RUNS = 5
LETTERS = "etaoinshrdlucmfwypvbgkjqxz"


def set_article(number: int) -> bytes:
    """A PDF of some twenty pages, with running heads, folios and a heading in larger type."""
    chance = random.Random(number)  # noqa: S311 - words, no secrets
    words = ["".join(chance.choices(LETTERS, range(26, 0, -1), k=chance.randint(2, 11))) for _ in range(900)]
    text = "\n\n".join(" ".join(chance.choice(words) for _ in range(110)).capitalize() + "." for _ in range(5 * PAGES))
    head = f'#set document(title: "Article {number} of the run", author: "Writer {number}")\n'
    page = f'#set page(paper: "a5", header: [Journal {number}], numbering: "1", margin: 14mm)\n#set text(9pt)\n'
    return typst.compile((head + page + f"= Article {number}\n#set par(justify: true)\n" + text).encode())


def read_bare(paths: list[Path]) -> int:
    """The pages of the files, their text read and let go."""
    pages = 0
    for path in paths:
        document = pypdfium2.PdfDocument(path.read_bytes())
        for number in range(len(document)):
            page = document[number]
            page.get_textpage().get_text_range()
            page.close()
        pages += len(document)
        document.close()
    return pages


def take_all(desk: Path, paths: list[Path]) -> Path:
    """A new paper, into which the files were taken."""
    paper = desk / "paper"
    shutil.rmtree(paper, ignore_errors=True)
    paper.mkdir()
    (paper / "draft.md").write_text("", "utf-8")
    job: Job[Any] = Job(lambda _: None)
    taken: tuple[Taken, ...] = take_files(paper, paths, job)
    if any(one.outcome != "new" for one in taken):
        sys.exit(f"not all were taken: {next(one for one in taken if one.outcome != 'new')}")
    return paper


def index_all(paper: Path) -> None:
    """The index over the paper's sources is up to date."""
    files = read_paper(paper)
    texts = SourceTexts(files)
    texts.entries = {entry.id: entry for entry in load_entries(files, [])}
    with open_search(texts):
        pass


def main() -> None:
    """Measures and prints."""
    cores = os.cpu_count() or 1
    with tempfile.TemporaryDirectory(prefix="fairhand-bench-") as name:
        desk = Path(name)
        (desk / "desk.toml").write_text("", "utf-8")
        paths = [desk / f"article {number}.pdf" for number in range(FILES)]
        for number, path in enumerate(paths):
            path.write_bytes(set_article(number))
        pages = read_bare(paths)
        apart = desk / "apart"
        apart.mkdir()
        tasks = [Task(path, path.name, apart) for path in paths]
        bare, read, taken, indexed = in_turn(
            lambda: measured(lambda: read_bare(paths)),
            lambda: measured(lambda: [read_apart(task) for task in tasks]),
            lambda: measured(lambda: take_all(desk, paths)),
            lambda: measured(lambda: index_all(desk / "paper")),
            runs=RUNS,
        )
        print(f"{FILES} files, {pages} pages, {cores} processors, {pages / min(bare):.0f} pages a second bare")
        tell("pages a second, one process, over the bare library", 1 / over(read, bare), "goal .8")
        searched = [one + other for one, other in zip(read, indexed, strict=True)]
        tell("the same, with the index", 1 / over(searched, bare), "goal .5")
        tell(
            "the whole intake, for each processor", 1 / over(taken, bare) / cores, "goal .8, start of the processes too"
        )


if __name__ == "__main__":
    main()
