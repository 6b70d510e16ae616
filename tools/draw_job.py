"""Takes the pictures of the whole job that the README shows: the demo's paper, page by page.

``python tools/draw_job.py`` writes them to ``docs/pictures``; the words under them stand in the README.
"""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path

from playwright.sync_api import sync_playwright
from take_pictures import SECRET, find_chromium, serving

from fairhand.session.demo import PAPER, lay_out_demo

PICTURES = Path(__file__).resolve().parents[1] / "docs" / "pictures"
PAGES = {
    "job-desk": "/now",
    "job-brief": f"/paper/{PAPER}/brief",
    "job-support": f"/paper/{PAPER}/support",
    "job-copy-edit": f"/paper/{PAPER}/copy-edit",
    "job-verdict": f"/paper/{PAPER}/verdict",
    "job-hand-in": f"/paper/{PAPER}/hand-in",
}
"""The pictures' names, and the pages that they are of."""
WIDE, HIGH = 1000, 720


def draw() -> None:
    """The pictures stand in their folder."""
    PICTURES.mkdir(exist_ok=True)
    with tempfile.TemporaryDirectory(prefix="fairhand-job-") as scratch:
        desk = lay_out_demo(Path(scratch) / "desk").parent
        with serving(desk) as address, sync_playwright() as playwright:
            browser = playwright.chromium.launch(executable_path=find_chromium(), args=["--no-sandbox"])
            page = browser.new_page(viewport={"width": WIDE, "height": HIGH})
            page.goto(f"{address}/?key={SECRET}")
            for name, path in PAGES.items():
                page.goto(address + path)
                page.wait_for_timeout(500)
                page.screenshot(path=PICTURES / f"{name}.png")
            browser.close()


if __name__ == "__main__":
    draw()
    sys.stdout.write(f"{len(PAGES)} pictures stand in {PICTURES}\n")
