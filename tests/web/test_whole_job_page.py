"""The whole job on one paper in a real browser, from its sheet to the archive that is handed in.

The paper is ``rain-gardens``, made for measuring this program; nothing of it stands here, and the test skips where it
is missing (CONTRIBUTING, outside data).
"""

from __future__ import annotations

import json
import shutil
import zipfile
from collections.abc import Callable
from contextlib import AbstractContextManager
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from fairhand.hand_in.names import holds_name
from fairhand.web.parts import LEAVES
from fairhand.web.routes import list_routes, working_leaves

NAME = "R. Ferrier-Quill"
PAPER = "slowing-the-storm"


@pytest.fixture
def matter(outside_data: Callable[[str], Path]) -> Path:
    """The paper's matter."""
    return outside_data("papers/rain-gardens")


def test_the_whole_job_in_the_page(
    browser: Browser, matter: Path, tmp_path: Path, serve: Callable[..., AbstractContextManager[str]]
) -> None:
    """Every page of the paper opened, every stage touched, and an archive without a name at the end."""
    desk = tmp_path / "desk"
    desk.mkdir()
    (desk / "desk.toml").write_text(f'name = "{NAME}"\ntime_zone = "Etc/UTC"\n', "utf-8")
    folder = desk / PAPER
    with serve(desk) as address, browser.new_context() as context:
        context.set_default_timeout(60_000)
        page = context.new_page()
        faults: list[str] = []
        page.on("pageerror", lambda error: faults.append(str(error)))
        page.goto(address)
        home = f"{address.partition('/?')[0]}/paper/{PAPER}"
        # Preparation
        page.get_by_label("Assignment sheet").set_input_files(matter / "brief.txt")
        page.get_by_label("Title of the paper").fill("Slowing the Storm")
        page.get_by_role("button", name="Begin the paper").click()
        page.wait_for_url(f"**/paper/{PAPER}/**")
        page.goto(f"{home}/brief")
        expect(page.locator("main")).to_contain_text("1,350 to 1,600 words")
        page.goto(f"{home}/jottings")
        page.get_by_role("textbox", name="Jottings").fill("What does a cloudburst cost?")
        page.get_by_role("button", name="Save").click()
        page.goto(f"{home}/focus")
        page.get_by_label("What the paper is about").fill("Rain gardens before pipes.")
        page.get_by_role("button", name="Save the focus").click()
        # Research
        add_sources(page, home, matter, folder)
        page.goto(f"{home}/find?words=rain")
        # Drafting: the first draft is judged, and its faults are mended in the second
        for name in ("draft.md", "clean.md"):
            page.goto(f"{home}/draft")
            page.get_by_role("textbox", name="Draft").fill((matter / name).read_text("utf-8"))
            page.get_by_role("button", name="Save").click()
            page.wait_for_load_state()
            page.goto(f"{home}/verdict")
            expect(page.locator("main")).to_contain_text("Before the hour")
        # Correction
        page.goto(f"{home}/proof")
        page.get_by_role("button", name="Begin", exact=True).click()
        page.get_by_text("End the pass").click()
        page.get_by_role("button", name="End it").click()
        hand_in(page, home)
        for leaf in LEAVES:
            if leaf in working_leaves(list_routes()):
                answer = page.goto(f"{home}/{leaf}")
                assert answer is not None
                assert answer.ok, leaf
        assert faults == []
    (made,) = folder.glob("fair/hand-in*")
    (archive,) = (made / "to hand in").iterdir()
    with zipfile.ZipFile(archive) as whole:
        assert whole.testzip() is None
        assert sorted(Path(name).suffix for name in whole.namelist()) == [".pdf", ".txt"]
    for path in made.rglob("*"):
        if path.is_file():
            assert holds_name(NAME, path.name, path.read_bytes()) == ()


def add_sources(page: Page, home: str, matter: Path, folder: Path) -> None:
    """The list by a file, the texts put into the folder, the points beside them."""
    page.goto(f"{home}/sources/add")
    page.get_by_label("Or a list, pasted").fill((matter / "sources.json").read_text("utf-8"))
    page.get_by_role("button", name="Add", exact=True).click()
    page.wait_for_load_state()
    listed = json.loads((folder / "sources.json").read_text("utf-8"))
    assert len(listed) == len(json.loads((matter / "sources.json").read_text("utf-8")))
    shutil.copytree(matter / "sources", folder / "sources", dirs_exist_ok=True)
    shutil.copyfile(matter / "points.json", folder / "points.json")


def hand_in(page: Page, home: str) -> None:
    """A statement, the name left out, everything as one archive, and what shows that it arrived."""
    page.goto(f"{home}/hand-in")
    page.get_by_label("About").select_option("help")
    page.get_by_label("Your words").fill("Nobody helped me.")
    page.get_by_role("button", name="Save the statement").click()
    page.get_by_label("left out").check()
    page.get_by_label("What stands in its place").fill("Candidate 0421")
    page.get_by_role("button", name="Save what is said of your name").click()
    page.get_by_label("Everything as one archive").check()
    page.get_by_role("button", name="Make what is handed in").click()
    expect(page.locator("#handed")).to_contain_text(".zip")
    page.get_by_label("What shows that the last one arrived").fill("No. 7")
    page.get_by_role("button", name="Keep the receipt").click()
    expect(page.locator("#handed")).to_contain_text("Receipt: No. 7")
