"""The documents say what the code does."""

from __future__ import annotations

import importlib.util
import re
from pathlib import Path
from types import ModuleType

import pytest

from fairhand.cli import COMMANDS
from fairhand.readiness.table import CHECKS

ROOT = Path(__file__).resolve().parents[2]


def load_tool(name: str) -> ModuleType:
    """One of the tools that write the documents."""
    spec = importlib.util.spec_from_file_location(name, ROOT / "tools" / f"{name}.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


@pytest.mark.parametrize("page", ["commands.md", "checks.md"])
def test_the_reference_pages_are_written_from_the_code(page: str) -> None:
    """``python tools/write_reference.py`` would change nothing."""
    assert (ROOT / "docs" / page).read_text("utf-8") == load_tool("write_reference").PAGES[page]()


def test_the_readme_names_only_commands_that_there_are() -> None:
    """Each ``fairhand …`` of the README is a command, and both of its make targets exist."""
    readme = (ROOT / "README.md").read_text("utf-8")
    named = set(re.findall(r"(?:\$ |`)fairhand ([a-z]+(?:-[a-z]+)*)", readme))
    assert named
    assert named <= set(COMMANDS)
    makefile = (ROOT / "Makefile").read_text("utf-8")
    for target in ("make demo", "make test"):
        assert target in readme
        assert target.split()[1] in makefile


def test_every_check_file_has_its_row() -> None:
    """A check is one file and one row, of one name."""
    files = {path.stem.replace("_", "-") for path in (ROOT / "src/fairhand/readiness/checks").glob("[a-z]*.py")}
    assert files == {check.name for check in CHECKS}


def test_the_architecture_names_every_room() -> None:
    """No room stands outside the plan."""
    plan = (ROOT / "docs" / "architecture.md").read_text("utf-8")
    rooms = {path.parent.name for path in (ROOT / "src" / "fairhand").glob("*/__init__.py")}
    assert {room for room in rooms if room not in plan} == set()


def test_the_page_of_the_plan_is_what_the_program_plans() -> None:
    """Seven papers due over nine days: the plan, what does not fit, and the ways out, as the document prints them."""
    page = load_tool("draw_plan").plan_page()
    assert (ROOT / "docs" / "plan.md").read_text("utf-8") == page
    fits, late = page.split("## With 7 hours a day")
    assert "What does not fit" not in fits
    assert "Ways out, the cheapest first" in late
