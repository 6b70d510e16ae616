"""What ``ready`` costs on the demo's paper, as ratios measured in one run.

The floor is what no program of this kind can do without: one run of pandoc over the paper's citations and one of typst
over its pages, in a new process. A second floor has the reader of PDF besides, run once over each of the sources that
are PDFs. Every figure is the median of several runs, floors and subject in turn. The package is compiled before, as an
installation does, whatever the surroundings say of writing compiled files.
"""

from __future__ import annotations

import compileall
import shutil
import statistics
import sys
import tempfile
from pathlib import Path

from measuring import RUNS, in_turn, measured, over, seconds_of, tell

import fairhand
from fairhand.citing.rendering import citation_request
from fairhand.fair_copy.typesetting import to_typst
from fairhand.session.demo import lay_out_demo
from fairhand.session.opened import OpenPaper

FLOOR = """
import subprocess, sys
from pathlib import Path
folder = Path(sys.argv[1])
subprocess.run([sys.argv[2], *(folder / "args").read_text().split("\\n")], input=(folder / "stdin").read_bytes(),
               cwd=folder, capture_output=True, check=True)
import typst
typst.compile((folder / "paper.typ").read_bytes(), root=str(folder), font_paths=[sys.argv[3]], pdf_standards=["ua-1"])
"""
READING = """
import pypdfium2
for name in sys.argv[4:]:
    with pypdfium2.PdfDocument(name) as document:
        for page in document:
            page.get_textpage().get_text_range()
"""


def main() -> None:
    """Measures and prints."""
    compileall.compile_dir(Path(fairhand.__file__).parent, quiet=2)
    with tempfile.TemporaryDirectory(prefix="fairhand-bench-") as name:
        scratch = Path(name)
        paper = lay_out_demo(scratch / "desk")
        floor = floor_command(paper, scratch)
        ready = [sys.executable, "-m", "fairhand", "ready", str(paper)]
        reading = [*floor[:2], FLOOR + READING, *floor[3:], *map(str, sorted((paper / "sources").glob("*.pdf")))]
        floors, readings, colds = in_turn(
            lambda: seconds_of(floor), lambda: seconds_of(reading), lambda: cold_run(paper, ready)
        )
        starts, warms = in_turn(
            lambda: seconds_of([sys.executable, "-c", "pass"]), lambda: seconds_of(ready, fails_with=1)
        )
        imports = [seconds_of([sys.executable, "-c", "import fairhand.cli"]) for _ in range(RUNS)]
        unchanged, changed = open_session(paper)
    cold = statistics.median(colds)
    start = statistics.median(starts)
    tell("cold: a new process, an empty cache, over pandoc and typst alone", over(colds, floors), "at most 2.5")
    tell("the same over pandoc, typst and the reader of PDF", over(colds, readings), "at most 2.5")
    tell("open, unchanged, over cold", unchanged / cold, "at most .1")
    tell("open, one paragraph changed, over cold", changed / cold, "at most .2")
    tell(
        "a new process on an unchanged paper, more than Python's start",
        statistics.median(warms) - start,
        "at most .3 s",
    )
    tell("import fairhand.cli, more than Python's start", statistics.median(imports) - start, "under .15 s")


def floor_command(paper: Path, scratch: Path) -> list[str]:
    """A command that does what the engines alone have to do for the paper."""
    import importlib.resources

    from fairhand.press.pandoc import pandoc_path

    opened = OpenPaper(paper)
    analysis = opened.look()
    request = citation_request(
        analysis.manuscript, analysis.mentions, analysis.resolved, analysis.paper.entries, analysis.style
    )
    folder = scratch / "floor"
    folder.mkdir()
    for name, data in request.files.items():
        (folder / name).write_bytes(data)
    (folder / "args").write_text("\n".join(request.args), "utf-8")
    (folder / "stdin").write_bytes(request.stdin)
    (folder / "paper.typ").write_text(to_typst(opened.fair_copy()).source, "utf-8")
    fonts = importlib.resources.files("fairhand") / "built" / "fonts"
    return [sys.executable, "-c", FLOOR, str(folder), pandoc_path(), str(fonts)]


def cold_run(paper: Path, command: list[str]) -> float:
    """Seconds of a run with nothing kept from before."""
    shutil.rmtree(paper / ".fairhand", ignore_errors=True)
    return seconds_of(command, fails_with=1)


def open_session(paper: Path) -> tuple[float, float]:
    """Median seconds of a verdict in an open session: nothing changed, and one paragraph changed."""
    opened = OpenPaper(paper)
    opened.verdict()
    draft = opened.look().paper.draft
    place = draft.index("It looked at no other line.")
    unchanged = [measured(opened.verdict) for _ in range(RUNS)]
    changed = []
    for number in range(RUNS):
        edited = f"{draft[:place]}It looked {number + 1} times at no other line.{draft[place + 27 :]}"
        changed.append(measured(lambda edited=edited: (opened.with_draft(edited), opened.verdict())))
    return statistics.median(unchanged), statistics.median(changed)


if __name__ == "__main__":
    main()
