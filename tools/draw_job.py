"""Takes the pictures of the whole job that the README and docs/job.md show: the demo's paper, worked on, page by page.

They stand in ``docs/pictures``; ``make pictures`` takes them with all the others, ``python tools/draw_job.py`` alone.
"""

from __future__ import annotations

import sys
import tempfile
from dataclasses import dataclass
from pathlib import Path

from playwright.sync_api import sync_playwright
from take_pictures import AT, SECRET, find_chromium, serving
from worked_on import work_on

from fairhand.session.demo import PAPER, lay_out_demo

PICTURES = Path(__file__).resolve().parents[1] / "docs" / "pictures"


@dataclass(frozen=True)
class Shown:
    """One picture."""

    path: str
    """The page that it is of."""
    at: str = ""
    """What stands near its top, as a selector; the page's own top where there is none."""
    high: int = 620
    """Its height in pixels."""


PAGES = {
    "job-desk": Shown("/", high=480),
    "job-brief": Shown(f"/paper/{PAPER}/brief"),
    "job-find": Shown(f"/paper/{PAPER}/find"),
    "job-notes": Shown(f"/paper/{PAPER}/notes"),
    "job-support": Shown(f"/paper/{PAPER}/support"),
    "job-revision": Shown(f"/paper/{PAPER}/revision", at=".side"),
    "job-copy-edit": Shown(f"/paper/{PAPER}/copy-edit?finding=3", at=".marked"),
    "job-proof": Shown(f"/paper/{PAPER}/proof", at="#page-1"),
    "job-verdict": Shown(f"/paper/{PAPER}/verdict"),
    "job-hand-in": Shown(f"/paper/{PAPER}/hand-in"),
}
"""The pictures' names, and what they show."""
WIDE, ABOVE = 900, 90


def draw() -> None:
    """The pictures stand in their folder."""
    PICTURES.mkdir(exist_ok=True)
    with tempfile.TemporaryDirectory(prefix="fairhand-job-") as scratch:
        desk = lay_out_demo(Path(scratch) / "desk").parent
        work_on(desk, AT)
        with serving(desk) as address, sync_playwright() as playwright:
            browser = playwright.chromium.launch(executable_path=find_chromium(), args=["--no-sandbox"])
            page = browser.new_page(viewport={"width": WIDE, "height": 620})
            page.goto(f"{address}/?key={SECRET}")
            page.goto(f"{address}/now")  # the plan is made, so that the desk shows it
            for name, shown in PAGES.items():
                page.set_viewport_size({"width": WIDE, "height": shown.high})
                page.goto(address + shown.path)
                page.wait_for_timeout(500)
                top = page.locator(shown.at).first.bounding_box() if shown.at else None
                page.evaluate("top => scrollTo(0, scrollY + top)", top["y"] - ABOVE if top else -(10**6))
                page.wait_for_timeout(200)
                page.screenshot(path=PICTURES / f"{name}.png")
            browser.close()


if __name__ == "__main__":
    draw()
    sys.stdout.write(f"{len(PAGES)} pictures stand in {PICTURES}\n")
