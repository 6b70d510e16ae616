"""Writes ``docs/plan.md`` and its picture: seven papers due over nine days, of our own invention, at two paces of work.

``python tools/draw_plan.py``: the words are what ``fairhand plan`` prints, which a test holds them to; the picture is
the desk's own line of time.
"""

from __future__ import annotations

import contextlib
import datetime as dt
import sys
import tempfile
from pathlib import Path

from click.testing import CliRunner

from fairhand.cli import commands
from fairhand.desk.disk import put_file
from fairhand.planning.hours_written import WEEKDAYS

DOCS = Path(__file__).resolve().parents[1] / "docs"
SUNDAY = dt.date(2031, 3, 2)
PAPERS = (
    ("Peat and Parliament", 2, 400, 0),
    ("Ferries of the Upper Forth", 3, 400, 1),
    ("Kelp, Glass and Soap", 4, 500, 1),
    ("Works Choirs", 5, 500, 1),
    ("Canals in Drought", 7, 600, 2),
    ("Weather in the Almanacs", 8, 500, 1),
    ("Looms after 1900", 9, 800, 2),
)
"""Title, days after that Sunday, words, sources."""
ABOUT = """<!-- Written from the code by tools/draw_plan.py: change it there. -->

# The plan over all papers

Seven papers due over nine days, of our own invention. Each sheet asks for so many words and sources, and takes 5 % of
the mark for each day that a paper is late. What a paper still needs comes from its sheet and its folder, which is empty
but for the sheet; the paces are the published ones, since nothing is logged yet. [How the steps are
placed](decisions/0050-the-plan-aims-each-paper-at-an-hour.md), and [where they come
from](decisions/0051-the-plan-begins-from-now.md).

![The line of time: seven due hours, and below the line a stroke for each day's work](pictures/seven-papers.png)
"""


def lay_out(desk: Path, hours: int) -> Path:
    """The seven papers stand on a desk with so many free hours each day."""
    week = "\n".join(f"{day} = {hours}" for day in WEEKDAYS)
    settings = f'name = "R. Ferrier"\ntime_zone = "UTC"\n\n[hours]\nfrom = "9:00"\n{week}\n'
    desk.mkdir(parents=True)
    put_file(desk / "desk.toml", settings.encode())
    for title, days, words, sources in PAPERS:
        folder = desk / title.lower().replace(",", "").replace(" ", "-")
        folder.mkdir()
        due = SUNDAY + dt.timedelta(days=days)
        asked = [f"Write an essay of {words} words. It is due on {due.day} {due:%B %Y} at 5 pm."]
        asked += [f"Cite at least {sources} sources."] if sources else []
        asked += ["Late papers lose 5% of the mark for each day; nothing is accepted after 5 days."]
        put_file(folder / "brief.txt", " ".join(asked).encode())
        put_file(folder / "paper.toml", f'title = "{title}"\ngiven = {SUNDAY - dt.timedelta(days=14)}\n'.encode())
    return desk


def plan_page() -> str:
    """The page, as the program now plans."""
    out = [ABOUT]
    for hours in (8, 7):
        with tempfile.TemporaryDirectory(prefix="fairhand-plan-") as scratch:
            desk = lay_out(Path(scratch) / "desk", hours)
            with contextlib.chdir(desk):  # papers are then named as on the desk
                said = CliRunner(env={"COLUMNS": "92"}).invoke(commands, ["plan", "--on", str(SUNDAY)]).output
        out.append(f"\n## With {hours} hours a day\n\n```text\n{said.rstrip()}\n```\n")
    return "".join(out)


def draw() -> None:
    """The picture of the desk's line of time stands beside the page."""
    from playwright.sync_api import sync_playwright
    from take_pictures import SECRET, find_chromium, serving

    target = DOCS / "pictures"
    target.mkdir(exist_ok=True)
    at = dt.datetime.combine(SUNDAY, dt.time(12), dt.UTC)
    with tempfile.TemporaryDirectory(prefix="fairhand-plan-") as scratch, sync_playwright() as playwright:
        desk = lay_out(Path(scratch) / "desk", 7)
        browser = playwright.chromium.launch(executable_path=find_chromium(), args=["--no-sandbox"])
        with serving(desk, at) as address:
            page = browser.new_page(viewport={"width": 1100, "height": 700})
            page.goto(f"{address}/?key={SECRET}")
            page.wait_for_timeout(1500)
            page.screenshot(path=target / "seven-papers.png", full_page=True)
            browser.close()


def main() -> int:
    """Writes both."""
    (DOCS / "plan.md").write_text(plan_page(), "utf-8")
    draw()
    return 0


if __name__ == "__main__":
    sys.exit(main())
